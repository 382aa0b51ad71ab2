/** Small parts by what the ends of the wires ask for: ferrules, tabs, connectors, labels. Common practice, no source. */
import type { Plan } from '../plan/plan.ts';
import type { Study } from '../study/study.ts';
import type { SmallPart } from './materials-model.ts';
import { wireRows } from './wirelist.ts';
import type { WireEnd, WireRow } from './wirelist-model.ts';

/** What an end takes by itself, for its gauge. */
const EACH: Partial<Record<WireEnd['method'], string>> = { earth: 'ring tongues for earth' };

/** What all ends at one terminal take together. */
const SHARED: Partial<Record<WireEnd['method'], string>> = {
  tab: 'quick-connect tabs (none where soldered)',
  battery: 'quick-connect tabs (none where soldered)',
  splice: 'wire nuts or splicing connectors at the leads of a motor or load',
};

/** `2 x 20 AWG`, `20 AWG + bare link`. */
function wiresTogether(rows: readonly WireRow[]): string {
  const counts = new Map<string, number>();
  for (const row of rows) {
    const what = row.gauge ?? 'bare link';
    counts.set(what, (counts.get(what) ?? 0) + 1);
  }
  return [...counts]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([what, n]) => (n === 1 ? what : `${n} x ${what}`))
    .join(' + ');
}

/** Rows that share a connector, by terminal; joints are listed with the parts, and are left out. */
function shared(plan: Plan, rows: readonly WireRow[]): { what: string; rows: WireRow[] }[] {
  const at = new Map<string, { what: string; rows: WireRow[] }>();
  for (const row of rows)
    for (const end of [row.from, row.to]) {
      const what = SHARED[end.method];
      if (what === undefined || plan.parts.get(end.part)?.kind === 'joint') continue;
      const known = at.get(end.terminal);
      if (known) known.rows.push(row);
      else at.set(end.terminal, { what, rows: [row] });
    }
  return [...at.values()];
}

/** What is needed beside parts and cable, each with its count. Pure. */
export function smallParts(study: Study): SmallPart[] {
  const { plan } = study;
  const list = wireRows(study);
  const counts = new Map<string, number>();
  const add = (what: string) => counts.set(what, (counts.get(what) ?? 0) + 1);
  for (const row of list.wires)
    for (const end of [row.from, row.to]) {
      if (row.gauge === null) continue;
      if (end.ferrule) add(`ferrules for ${row.gauge}`);
      const what = EACH[end.method];
      if (what !== undefined) add(`${what}, ${row.gauge}`);
    }
  // A bare link alone is soldered or goes under a screw.
  for (const { what, rows } of shared(plan, list.wires))
    if (rows.some((r) => r.gauge !== null)) add(`${what}, ${wiresTogether(rows)}`);
  const links = list.wires.filter((r) => r.gauge === null).length;
  return [
    ...[...counts].sort(([a], [b]) => (a < b ? -1 : 1)).map(([what, count]) => ({ what, count })),
    ...(links > 0 ? [{ what: 'bare links, from off-cuts of wire', count: links }] : []),
    ...(list.labels.length > 0 ? [{ what: 'wire labels', count: list.labels.length }] : []),
  ];
}
