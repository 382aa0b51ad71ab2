/** The repairs of a plan for people: instructions for the bench, what they change, and the other ways. */

import type { Edit } from '../edit/edits.ts';
import type { Mended, Repair, StateLine } from '../repair/mended.ts';
import { ascii, printable } from '../text/escape.ts';
import { columns, pad, wrap } from '../text/wrap.ts';

export interface MendedLook {
  readonly width: number;
  readonly unicode?: boolean;
}

/** Other repairs told in a line each. */
const MOST_OTHERS = 5;

const cleaner =
  (unicode = true) =>
  (text: string) =>
    unicode ? printable(text) : ascii(printable(text));

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
  if (metres !== null && metres > 0) told.push(`${Math.round(metres * 100) / 100} m of new cable`);
  else if (metres === null && added > 0) told.push('new cable to be measured');
  return told.join(', ');
}

/** `collector runs, lamp off` of the loads named. */
function told(line: StateLine | undefined, loads: readonly string[]): string {
  if (line === undefined) return 'not told';
  return loads.map((load) => `${load} ${line.runs[load] ?? 'not told'}`).join(', ');
}

/** State, before and after, of each state that changes. */
function changes({ before, after }: Repair): string[][] {
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
    return [[(old ?? now)!.state, told(old, loads), `${told(now, loads)}${wrong}`]];
  });
}

/** Side by side where they fit, else each state filled like a sentence. */
function table(rows: readonly (readonly string[])[], width: number): string[] {
  const all = [['state', 'before', 'after'], ...rows];
  const widths = all[0]!.map((_, i) => Math.max(...all.map((row) => columns(row[i]!))));
  const lines = all.map((row) =>
    row
      .map((cell, i) => pad(cell, widths[i]!))
      .join('   ')
      .trimEnd(),
  );
  if (lines.every((line) => columns(line) <= width)) return lines;
  return rows.flatMap(([state, before, after]) =>
    wrap(`${state}: ${before} before, ${after} after`, width, '', '  '),
  );
}

/** What to do, numbered, and what it changes. */
function instructions(repair: Repair, width: number, clean: (text: string) => string): string[] {
  const words = repair.words.flatMap((text, i) => wrap(clean(text), width, `${i + 1}. `));
  const rows = changes(repair).map((row) => row.map(clean));
  const alike = `${counted(repair.alike, 'other terminal', 'other terminals')} on the same conductor would do as well.`;
  return [
    ...words,
    ...(repair.alike > 0 ? ['', ...wrap(alike, width)] : []),
    ...(rows.length > 0 ? ['', ...table(rows, width)] : []),
  ];
}

function others(mended: Mended, width: number, clean: (text: string) => string): string[] {
  const [first, ...rest] = mended.repairs;
  const same = rest.filter((repair) => repair.ends === first!.ends);
  const out: string[] = [];
  if (same.length > 0) {
    const head =
      same.length === 1
        ? '1 more repair moves as few ends:'
        : `${same.length} more repairs move as few ends:`;
    out.push('', ...wrap(head, width));
    for (const repair of same.slice(0, MOST_OTHERS))
      out.push(...wrap(clean(repair.words.map((text) => text.replace(/\.$/, '')).join('; ')), width, '- '));
    if (same.length > MOST_OTHERS) out.push(`- and ${same.length - MOST_OTHERS} more`);
  }
  if (rest.length > same.length) {
    const count = rest.length - same.length;
    out.push(
      '',
      ...wrap(`${counted(count, 'repair moves', 'repairs move')} more ends; --json lists all.`, width),
    );
  }
  return out;
}

/** The whole answer; ends in a line break. */
export function renderMended(mended: Mended, { width, unicode }: MendedLook): string {
  const clean = cleaner(unicode);
  const say = (text: string) => wrap(clean(text), width);
  const [first] = mended.repairs;
  const tried = `${counted(mended.tried, 'change was', 'changes were')} tried.`;
  const lines: string[] = [];
  if (!mended.needed) {
    lines.push(
      ...say(
        `Nothing to mend: the check finds nothing wrong with the wiring.${mended.why ? ` ${mended.why}` : ''}`,
      ),
    );
  } else if (first === undefined) {
    lines.push(...say(`No repair was found. ${mended.why ?? 'Why not cannot be told.'} ${tried}`));
  } else {
    const takes = effort(first);
    lines.push(...say(`The plan can be mended${takes === '' ? '' : `: ${takes}`}.`), '');
    lines.push(...instructions(first, width, clean), ...others(mended, width, clean), '');
    const each = mended.repairs.length === 1 ? 'This repair' : 'Each of these repairs';
    lines.push(...say(`${each} has gone through the whole check. ${tried}`));
  }
  return `${lines.join('\n')}\n`;
}

/** What was written into the file; ends in a line break. */
export function renderWritten(repair: Repair, file: string, { width, unicode }: MendedLook): string {
  const clean = cleaner(unicode);
  const head = wrap(clean(`Written into ${file}:`), width);
  return `${[...head, '', ...instructions(repair, width, clean), '', ...wrap('Wire it the same way at the bench.', width)].join('\n')}\n`;
}
