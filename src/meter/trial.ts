/** Kinds of trials, and what of a circuit decides where a fault is tried. */
import type { WiredCircuit } from '../circuit/build.ts';
import { UnionFind } from '../circuit/union-find.ts';
import { partOfKey } from '../plan/terminal-key.ts';
import type { Fault } from './fault.ts';
import type { Measure } from './measure.ts';
import type { Stance } from './stance.ts';

/** `dead` for the first stage, `loop` for the second, each also with pins joined by a clip lead, `mains` for the third. */
export type Trial = 'dead' | 'dead clipped' | 'loop' | 'loop clipped' | 'mains';

/** The kind of trial that a reading belongs to. */
export function trialOf({ stage, clipped }: Pick<Measure, 'stage' | 'clipped'>): Trial {
  if (stage === 3) return 'mains';
  const live = stage === 1 ? 'dead' : 'loop';
  return clipped.length > 0 ? `${live} clipped` : live;
}

/** Of all gates the first and the last, and every input that is no gate. */
export function spread({ inputs }: Pick<WiredCircuit, 'inputs'>, single: readonly Stance[]): Stance[] {
  const gates = single.filter((s) => inputs[s.moved[0]!]!.kind === 'gate');
  const others = single.filter((s) => inputs[s.moved[0]!]!.kind !== 'gate');
  return [...new Set([...gates.slice(0, 1), ...gates.slice(-1), ...others])];
}

/** What wires, elements and contacts in any position tie together. */
export function allTogether({ netCount, wires, contacts, passives, diodes }: WiredCircuit): UnionFind {
  const sets = new UnionFind(netCount);
  for (const x of [...wires, ...contacts, ...passives]) sets.union(x.a, x.b);
  for (const d of diodes) sets.union(d.anode, d.cathode);
  return sets;
}

/** The parts of a fault and of its terminals. */
export function partsAt(fault: Fault): ReadonlySet<string> {
  return new Set([...fault.parts, ...fault.at.map(partOfKey)]);
}

/** Name of the readings that a fault is tried with: those near its parts, or all. */
export function setName(fault: Fault, all: boolean): string {
  return all ? '*' : [...fault.parts].sort().join();
}
