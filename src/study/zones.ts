/** Zones of a large shop: gates that call a relay of their own, whose contact calls on with those of the others. */
import { inputVariable } from '../logic/conduction.ts';
import { perStudy } from './per-study.ts';
import type { Study } from './study.ts';

/** The gates of one relay, which no other relay has; the zone bears its name. */
export interface Zone {
  readonly relay: string;
  /** index of the relay in the circuit */
  readonly index: number;
  /** indices of the inputs, all of them gates */
  readonly inputs: readonly number[];
  readonly gates: readonly string[];
  /** whether each gate pulls the relay in by itself and nothing else does */
  readonly isCalledByEach: boolean;
}

/** Every zone, in the order of the plan; none where fewer than two relays have gates of their own, or nothing was decided. */
export const zonesOf = perStudy((study: Study): readonly Zone[] => {
  const { verified: v } = study;
  if (!v) return [];
  const { circuit, model } = v;
  const { bdd } = model;
  const found = circuit.relays.flatMap((r): Zone[] => {
    const on = model.sensed[r.index]!.on;
    const inputs = [...bdd.support(on)].map((x) => x - circuit.relays.length).sort((a, b) => a - b);
    if (inputs.length < 2 || inputs.some((i) => circuit.inputs[i]?.kind !== 'gate')) return [];
    const any = bdd.any(inputs.map((i) => bdd.variable(inputVariable(circuit, i))));
    const gates = inputs.map((i) => circuit.inputs[i]!.part);
    return [{ relay: r.part, index: r.index, inputs, gates, isCalledByEach: any === on }];
  });
  const users = new Map<number, number>();
  for (const i of found.flatMap((z) => z.inputs)) users.set(i, (users.get(i) ?? 0) + 1);
  const own = found.filter((z) => z.inputs.every((i) => users.get(i) === 1));
  return own.length < 2 ? [] : own;
});
