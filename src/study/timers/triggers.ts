/** Dry triggers of timers: what is joined to them, how many ohms their loop has, which switches lie in it. */
import type { Relay, Sense } from '../../circuit/circuit.ts';
import { inputVariable } from '../../logic/conduction.ts';
import type { TimerPart } from '../../plan/part-types.ts';
import { statesFeeding } from '../coil-rows.ts';
import { figuresFor } from '../corner-figures.ts';
import { stepsOf, walk } from '../net-distances.ts';
import { perStudy } from '../per-study.ts';
import type { Study } from '../study.ts';

/** A timer with the two nets of its dry trigger. */
export interface Triggered {
  readonly part: TimerPart;
  readonly relay: Relay;
  readonly trigger: Extract<Sense, { by: 'joined' }>;
}

export const triggered = perStudy(({ circuit, plan }: Study): readonly Triggered[] =>
  circuit.relays.flatMap((relay) => {
    const part = plan.parts.get(relay.part);
    const trigger = relay.senses.find((s) => s.by === 'joined');
    return part?.kind === 'timer' && trigger ? [{ part, relay, trigger }] : [];
  }),
);

/** The loop of one trigger with the most ohms, among the ways of closing it. */
export interface TriggerLoop extends Triggered {
  /** ohm, wires warm and contacts at the worse end, along the way with the least wire */
  readonly ohms: number;
  /** m there and back */
  readonly metres: number;
  /** inputs away from rest */
  readonly moved: readonly number[];
}

export const triggerLoops = perStudy((study): readonly TriggerLoop[] => {
  const own = study.electrics;
  if (!own) return [];
  const steps = stepsOf(own.circuit, figuresFor(study.plan, 'low'));
  return triggered(study).flatMap((t) => {
    const wired = own.circuit.relays[t.relay.index]!.senses.find((s) => s.by === 'joined')!;
    const loops = statesFeeding(own, t.relay).flatMap((moved): TriggerLoop[] => {
      const standing = own.situations.at(moved);
      if (!standing) return [];
      const reach = walk(steps, (c) => standing.situation.closed(c), wired.a);
      const metres = reach.metres[wired.b]!;
      return Number.isFinite(metres) ? [{ ...t, ohms: reach.ohms[wired.b]!, metres, moved }] : [];
    });
    return loops.length === 0 ? [] : [loops.reduce((x, y) => (y.ohms > x.ohms ? y : x))];
  });
});

/** Names of the switches that close the way between the two terminals of a trigger. */
export function switchesOf({ verified: v, circuit }: Study, { trigger }: Triggered): string[] {
  if (!v) return [];
  const { bdd, conduction } = v.model;
  const closed = conduction.joined(trigger.a).get(trigger.b);
  if (closed === undefined) return [];
  const depends = bdd.support(closed);
  return [
    ...new Set(circuit.inputs.filter((i) => depends.has(inputVariable(circuit, i.index))).map((i) => i.part)),
  ];
}
