/** From a change of core ends to the text of a mistaken plan. */
import { keyOf, type Wiring } from '../brute-read.ts';
import { type Core, type End, partOf, type Sheet, type Splice, splice } from './sheet.ts';

/** `wiring` the loop, `mains` anything that touches a mains or protective conductor, `data` a figure. */
export type Family = 'wiring' | 'mains' | 'data';

export interface Mutant {
  name: string;
  kind: string;
  family: Family;
  text: string;
  /** parts at either end of what changed, the cores by run and colour, and their lines in the new text */
  touched: { parts: string[]; cores: string[]; lines: number[] };
  /** the plan with the mistake, where only cores changed; the places of its ends are those before the change */
  sheet?: Sheet;
}

export interface Change {
  name: string;
  kind: string;
  family: Family;
  moves: { end: End; to: string }[];
  leftOut?: Core[];
  /** name of a joint that the change adds */
  fresh?: string;
}

const coreName = (c: Core): string => `run ${c.run + 1} ${c.colour}`;

/** All joins after the change, in any order of writing: two changes with one shape are one mistake. */
export function shapeAfter(s: Sheet, change: Change): string | undefined {
  const to = new Map<End, string>();
  for (const m of change.moves) to.set(m.end, m.to === change.fresh ? m.to : keyOf(s.wiring.parts, m.to));
  const out: string[] = [];
  for (const c of s.cores) {
    if (change.leftOut?.includes(c)) continue;
    const [a, b] = c.ends.map((e) => to.get(e) ?? e.key) as [string, string];
    if (a === b) return undefined;
    out.push(a < b ? `${a}=${b}` : `${b}=${a}`);
  }
  return out.sort().join(' ');
}

/** The sheet of the changed plan, without reading its text again. */
function changed(s: Sheet, change: Change, text: string): Sheet {
  const to = new Map(change.moves.map((m) => [m.end, m.to]));
  const { parts, intent } = s.wiring;
  const spare = change.fresh;
  const own: Wiring['parts'] = spare
    ? new Map([...parts, [spare, { name: spare, kind: 'joint', fields: {}, contacts: [], alias: new Map() }]])
    : parts;
  const end = (e: End): End => {
    const written = to.get(e);
    return written === undefined ? e : { ...e, written, key: keyOf(own, written) };
  };
  const cores = s.cores
    .filter((c) => !change.leftOut?.includes(c))
    .map((c): Core => ({ ...c, ends: [end(c.ends[0]), end(c.ends[1])] }));
  const ends = cores.flatMap((c) => c.ends);
  const joins = cores.map((c): [string, string] => [c.ends[0].key, c.ends[1].key]);
  const wiring: Wiring = { parts: own, joins, used: new Set(joins.flat()), intent };
  return { ...s, text, wiring, cores, ends, runsEnd: s.runsEnd + text.length - s.text.length };
}

/** The change as a plan text. */
export function render(s: Sheet, change: Change): Mutant {
  const edits: Splice[] = change.moves.map((m) => ({ from: m.end.from, to: m.end.to, put: m.to }));
  for (const c of change.leftOut ?? []) edits.push({ from: c.span[0], to: c.span[1], put: '' });
  if (change.fresh) {
    edits.push({ from: s.partsAt, to: s.partsAt, put: `  ${change.fresh}: {kind: joint}\n` });
  }
  const cores = [...new Set([...change.moves.map((m) => s.cores[m.end.core]!), ...(change.leftOut ?? [])])];
  const parts = [...cores.flatMap((c) => c.ends.map((e) => e.written)), ...change.moves.map((m) => m.to)];
  const shift = change.fresh ? 1 : 0;
  const text = splice(s.text, edits);
  return {
    name: change.name,
    kind: change.kind,
    family: change.family,
    text,
    sheet: changed(s, change, text),
    touched: {
      parts: [...new Set(parts.map(partOf))],
      cores: cores.map(coreName),
      lines: change.leftOut ? [] : cores.map((c) => c.line + shift),
    },
  };
}

/** The changes as mutants, each circuit once and never the right one. */
export function distinct(s: Sheet, changes: readonly Change[]): Mutant[] {
  const seen = new Set([shapeAfter(s, { name: '', kind: '', family: 'wiring', moves: [] })]);
  const out: Mutant[] = [];
  for (const c of changes) {
    const shape = shapeAfter(s, c);
    if (shape === undefined || seen.has(shape)) continue;
    seen.add(shape);
    out.push(render(s, c));
  }
  return out;
}
