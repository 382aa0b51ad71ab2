/** Single wiring mistakes: one end on the wrong tab, or two ends changed over. The text stays a plan. */
import { isScalar, isSeq, isMap as isYamlMap, parseDocument, type Scalar } from 'yaml';
import { keyOf, readWiring, type Wiring } from './brute-read.ts';

export interface Mutant {
  name: string;
  text: string;
  /** the parts at which an end moved */
  touched: string[];
}

/** One end of one core: which run, which core of it, which of its two ends, and the terminal it is on. */
interface End {
  run: number;
  core: number;
  side: 0 | 1;
  written: string;
}

type Doc = ReturnType<typeof parseDocument>;

function scalarAt(doc: Doc, e: { run: number; core: number; side: number }): Scalar | undefined {
  const runs = doc.get('runs');
  const run = isSeq(runs) ? runs.items[e.run] : undefined;
  const cores = isYamlMap(run) ? run.get('cores') : undefined;
  const pair = isYamlMap(cores) ? cores.items[e.core]?.value : undefined;
  const end = isSeq(pair) ? pair.items[e.side] : undefined;
  return isScalar(end) ? end : undefined;
}

function allEnds(doc: Doc): End[] {
  const runs = doc.get('runs');
  const out: End[] = [];
  if (!isSeq(runs)) return out;
  runs.items.forEach((run, r) => {
    const cores = isYamlMap(run) ? run.get('cores') : undefined;
    if (!isYamlMap(cores)) return;
    cores.items.forEach((_, core) => {
      for (const side of [0, 1] as const) {
        const s = scalarAt(doc, { run: r, core, side });
        if (s) out.push({ run: r, core, side, written: String(s.value) });
      }
    });
  });
  return out;
}

const partOf = (written: string): string => written.split('.')[0]!;

/** The set of joins, whatever their order: two texts with the same one are the same circuit. */
function shape(w: Wiring): string {
  return w.joins
    .map(([a, b]) => (a < b ? `${a}=${b}` : `${b}=${a}`))
    .sort()
    .join(' ');
}

/** Every other tab of the same contact that an end may have landed on. */
function otherTabs(w: Wiring, written: string): string[] {
  const part = w.parts.get(partOf(written));
  if (!part) return [];
  const tab = keyOf(w.parts, written).slice(part.name.length + 1);
  const k = part.contacts.find((c) => [c.com, c.no, c.nc].includes(tab));
  if (!k) return [];
  const to = tab === k.com ? [k.no, k.nc] : tab === k.no ? [k.nc] : [k.no];
  return to.filter((t) => t !== '').map((t) => `${part.name}.${t}`);
}

type Edit = { end: End; to: string }[];

function swaps(ends: End[]): { name: string; edit: Edit }[] {
  const out: { name: string; edit: Edit }[] = [];
  const swap = (a: End, b: End, how: string): void => {
    out.push({
      name: `${how}: ${a.written} and ${b.written} changed over (runs ${a.run + 1} and ${b.run + 1})`,
      edit: [
        { end: a, to: b.written },
        { end: b, to: a.written },
      ],
    });
  };
  ends.forEach((a, i) => {
    for (const b of ends.slice(i + 1)) {
      const sameCore = a.run === b.run && a.core === b.core;
      if (sameCore || a.written === b.written) continue;
      if (partOf(a.written) === partOf(b.written)) swap(a, b, 'swap at part');
      else if (a.run === b.run && sameEnd(ends, a, b)) swap(a, b, 'swap in run');
    }
  });
  return out;
}

/** Two ends of two cores at the same end of their cable: listed alike, unless the far parts say otherwise. */
function sameEnd(ends: End[], a: End, b: End): boolean {
  const part = (e: End, flip: boolean): string => {
    const other = ends.find(
      (x) => x.run === e.run && x.core === e.core && x.side === (flip ? 1 - e.side : e.side),
    );
    return partOf(other?.written ?? '');
  };
  if (part(a, true) === part(b, true)) return true;
  if (part(a, true) === part(b, false) || part(a, false) === part(b, true)) return false;
  return a.side === b.side;
}

/** Every single-tab and single-swap mistake that changes the circuit, each once. */
export function mutants(text: string): Mutant[] {
  const doc = parseDocument(text);
  const w = readWiring(text);
  const ends = allEnds(doc);
  const edits: { name: string; edit: Edit }[] = [];
  for (const end of ends) {
    for (const to of otherTabs(w, end.written)) {
      edits.push({ name: `tab: ${end.written} to ${to} (run ${end.run + 1})`, edit: [{ end, to }] });
    }
  }
  edits.push(...swaps(ends));
  const seen = new Set([shape(w)]);
  const out: Mutant[] = [];
  for (const { name, edit } of edits) {
    const before = edit.map(({ end }) => scalarAt(doc, end)!);
    edit.forEach(({ to }, i) => {
      before[i]!.value = to;
    });
    const changed = doc.toString({ lineWidth: 0 });
    edit.forEach(({ end }, i) => {
      before[i]!.value = end.written;
    });
    const now = readWiring(changed);
    const s = shape(now);
    if (seen.has(s) || now.joins.some(([a, b]) => a === b)) continue;
    seen.add(s);
    out.push({ name, text: changed, touched: [...new Set(edit.map(({ end }) => partOf(end.written)))] });
  }
  return out;
}
