/** What can be observed of a circuit that does not do as it should, each without a probe on live mains. */
import type { Study } from '../../study/study.ts';
import practice from '../faults/practice.json' with { type: 'json' };
import type { Pair } from '../probe-pairs.ts';
import type { Stance } from '../stance.ts';

/** How much trouble one observation is beside opening a gate. */
export const EFFORT = practice.effort.of;

interface At {
  /** the same text for the same observation */
  readonly key: string;
  readonly stance: Stance;
}
/** Which of the loads run. */
export interface Look extends At {
  readonly kind: 'look';
}
/** The same with a finger on the switch of each gate that is open. */
export interface Finger extends At {
  readonly kind: 'finger';
}
/** Whether a relay pulls in, by ear or by eye. */
export interface Click extends At {
  readonly kind: 'click';
  readonly part: string;
}
/** Whether a lamp or indicator of the plan gives light. */
export interface Lit extends At {
  readonly kind: 'lit';
  readonly part: string;
}
/** Whether a lamp or a plug-in tester lights in an outlet, or in the socket that a plug goes into. */
export interface LampIn extends At {
  readonly kind: 'lamp';
  readonly part: string;
}
/** Volts on the loop, with everything on mains unplugged that it can do without. */
export interface Volts extends At {
  readonly kind: 'volts';
  readonly pair: Pair;
  /** where the meter's dial stands */
  readonly range: 'dc' | 'ac';
}
/** Ohms with everything off and unplugged. */
export interface Ohms extends At {
  readonly kind: 'ohms';
  readonly pair: Pair;
}
export type Observation = Look | Finger | Click | Lit | LampIn | Volts | Ohms;

type Unkeyed<T> = T extends At ? Omit<T, 'key'> : never;

/** An observation with its key. */
export function observe(o: Unkeyed<Observation>): Observation {
  const probes = 'pair' in o ? `${o.pair.a} ${o.pair.b}${o.kind === 'volts' ? ` ${o.range}` : ''}` : '';
  const what = 'part' in o ? o.part : probes;
  return { ...o, key: `${o.kind} ${what} ${o.stance.key}` } as Observation;
}

/** What was answered. Of loads those that run, each told of; of readings what the meter showed. */
export type Answer =
  | { readonly by: 'loads'; readonly on: readonly string[]; readonly of: readonly string[] }
  | { readonly by: 'chatters' }
  | { readonly by: 'yes'; readonly yes: boolean }
  | { readonly by: 'volts'; readonly volts: number }
  | { readonly by: 'ohms'; readonly ohms: number }
  | { readonly by: 'beeps' };

export interface Answered {
  readonly observation: Observation;
  readonly answer: Answer;
}

/** The kind of current that the loop's supplies give: what the dial is put to. */
export function loopKind({ wired }: Study): 'dc' | 'ac' {
  return wired.sources.find((s) => !s.mains)?.kind ?? 'dc';
}
