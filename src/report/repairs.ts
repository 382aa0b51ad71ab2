/** The repairs of a plan for people: instructions for the bench, what they change, and the other ways. */

import { type Edit, isSaying } from '../edit/edits.ts';
import type { Mended, Repair, StateLine } from '../repair/mended.ts';
import { darkText } from '../repair/repair-words.ts';
import { type Block, list, paragraph, table } from './blocks.ts';

/** Other repairs told in a line each. */
const MOST_OTHERS = 5;

const counted = (n: number, one: string, many: string) => `${n} ${n === 1 ? one : many}`;

/** `1 end to move, 3 m of new cable`: what a repair takes. */
function effort({ metres, edits }: Repair): string {
  const count = (kind: Edit['do']) => edits.filter((edit) => edit.do === kind).length;
  const moved = count('move') + 2 * count('swap');
  const [added, removed] = [count('add'), count('remove')];
  const told: string[] = [];
  if (moved > 0) told.push(`${counted(moved, 'end', 'ends')} to move`);
  if (added > 0) told.push(`${counted(added, 'core', 'cores')} to add`);
  if (removed > 0) told.push(`${counted(removed, 'core', 'cores')} to take out`);
  if (edits.some(isSaying)) told.push('other words in the plan');
  if (metres !== null && metres > 0) told.push(`${Math.round(metres * 100) / 100} m of new cable`);
  else if (metres === null && added > 0) told.push('new cable to be measured');
  return told.join(', ');
}

/** `collector runs, lamp off` of the loads named. */
function told(line: StateLine | undefined, loads: readonly string[]): string {
  if (line === undefined) return 'not told';
  return loads.map((load) => `${load} ${line.runs[load] ?? 'not told'}`).join(', ');
}

interface Change {
  readonly state: string;
  readonly before: string;
  readonly after: string;
}

/** What changes, state by state. */
function changes({ before, after }: Repair): Change[] {
  const later = new Map(after.map((line) => [line.state, line]));
  const earlier = new Set(before.map((line) => line.state));
  const pairs: [StateLine | undefined, StateLine | undefined][] = [
    ...before.map((line): [StateLine, StateLine | undefined] => [line, later.get(line.state)]),
    ...after
      .filter((line) => !earlier.has(line.state))
      .map((line): [undefined, StateLine] => [undefined, line]),
  ];
  return pairs.flatMap(([old, now]) => {
    const all = [...new Set([...Object.keys(old?.runs ?? {}), ...Object.keys(now?.runs ?? {})])];
    const loads = all.filter((load) => old?.runs[load] !== now?.runs[load]);
    if (loads.length === 0) return [];
    const wrong = now !== undefined && !now.right ? ', still wrong' : '';
    return [{ state: (old ?? now)!.state, before: told(old, loads), after: `${told(now, loads)}${wrong}` }];
  });
}

/** What to do, numbered, and what it changes. */
function instructions(repair: Repair): Block[] {
  const alike = `${counted(repair.alike, 'other terminal', 'other terminals')} on the same conductor would do as well.`;
  return [
    list('number', repair.words),
    ...(repair.alike > 0 ? [paragraph(alike)] : []),
    ...(repair.uncovers.length > 0
      ? [paragraph(`The mistake hid this, which shows once it is mended: ${repair.uncovers.join('; ')}.`)]
      : []),
    ...(repair.dark.length > 0 ? [paragraph(darkText(repair.dark))] : []),
    table(
      changes(repair),
      [
        { head: 'state', of: (c) => c.state },
        { head: 'before', of: (c) => c.before },
        { head: 'after', of: (c) => c.after },
      ],
      { gap: 3 },
      (c) => ({ sentence: `${c.state}: ${c.before} before, ${c.after} after` }),
    ),
  ];
}

function others({ repairs }: Mended): Block[] {
  const [first, ...others] = repairs;
  const inALine = (repair: Repair) => repair.words.map((text) => text.replace(/\.$/, '')).join('; ');
  const likely = others.filter((repair) => repair.asLikely);
  const rest = others.filter((repair) => !repair.asLikely);
  const same = rest.filter((repair) => repair.ends === first!.ends);
  const more = rest.length - same.length;
  return [
    ...(likely.length === 0
      ? []
      : [
          paragraph('As likely to be what went wrong, so look at the bench which it is:'),
          list('dash', likely.slice(0, MOST_OTHERS).map(inALine), { close: true }),
        ]),
    ...(same.length === 0
      ? []
      : [
          paragraph(
            same.length === 1
              ? '1 more repair moves as few ends:'
              : `${same.length} more repairs move as few ends:`,
          ),
          list(
            'dash',
            [
              ...same.slice(0, MOST_OTHERS).map(inALine),
              ...(same.length > MOST_OTHERS ? [`and ${same.length - MOST_OTHERS} more`] : []),
            ],
            { close: true },
          ),
        ]),
    ...(more === 0
      ? []
      : [paragraph(`${counted(more, 'repair moves', 'repairs move')} more ends; --json lists all.`)]),
  ];
}

/** The whole answer. */
export function repairsDocument(mended: Mended): Block[] {
  const [first] = mended.repairs;
  const tried = `${counted(mended.tried, 'change was', 'changes were')} tried.`;
  if (mended.needed === null)
    return [paragraph(`Whether there is anything to mend cannot be told. ${mended.why ?? ''}`.trim())];
  if (!mended.needed) {
    const why = mended.why ? ` ${mended.why}` : '';
    return [paragraph(`Nothing to mend: the check finds nothing wrong with the wiring.${why}`)];
  }
  if (first === undefined)
    return [paragraph(`No repair was found. ${mended.why ?? 'Why not cannot be told.'} ${tried}`)];
  const takes = effort(first);
  const each = mended.repairs.length === 1 ? 'This repair' : 'Each of these repairs';
  return [
    paragraph(`The plan can be mended${takes === '' ? '' : `: ${takes}`}.`),
    ...instructions(first),
    ...others(mended),
    paragraph(`${each} has gone through the whole check. ${tried}`),
  ];
}

/** What was written into the file. */
export function writtenDocument(repair: Repair, file: string): Block[] {
  return [
    paragraph(`Written into ${file}:`),
    ...instructions(repair),
    paragraph('Wire it the same way at the bench.'),
  ];
}
