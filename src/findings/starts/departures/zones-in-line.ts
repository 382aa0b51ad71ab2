/** Zones whose relays' contacts lie in line, told from those that are dead for another reason. */
import type { Wanted } from '../../../logic/intent.ts';
import type { Study } from '../../../study/study.ts';
import { type Zone, zonesOf } from '../../../study/zones.ts';
import type { DeadEntry, DepartureOf } from './departure.ts';

/** Zones that start a load only together. */
export interface ZonesInLine {
  readonly wanted: Wanted;
  readonly zones: readonly Zone[];
  readonly dead: readonly DeadEntry[];
}

/** Groups of dead zones each of which lies in line with the others of its group and with nothing else. */
export function zonesInLine(study: Study, { wanted, dead }: DepartureOf<'dead-entries'>): ZonesInLine[] {
  const byGate = new Map(zonesOf(study).flatMap((z) => z.gates.map((g) => [g, z] as const)));
  const groups = new Map<string, DeadEntry[]>();
  for (const d of dead) {
    if (d.zone === undefined || d.cause.kind !== 'in-line') continue;
    const together = d.cause.together.map((i) => byGate.get(study.circuit.inputs[i]!.part)?.index);
    if (together.includes(undefined)) continue;
    const key = [...new Set(together)].sort((a, b) => a! - b!).join();
    groups.set(key, [...(groups.get(key) ?? []), d]);
  }
  return [...groups]
    .filter(([key, own]) => own.length > 1 && own.length === key.split(',').length)
    .map(([, own]) => ({ wanted, zones: own.map((d) => d.zone!), dead: own }));
}
