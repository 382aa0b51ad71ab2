/** When a lamp or indicator gives light over every state, and where that is not when the plan means it to. */
import type { Circuit, Passive, Sense } from '../circuit/circuit.ts';
import { flood, neighbours, type Pair } from '../circuit/graph.ts';
import { contactPairs, elementPairs } from '../circuit/sides.ts';
import type { LampIntent } from '../plan/plan.ts';
import { FALSE, type Fn } from './bdd.ts';
import { inputVariable } from './conduction.ts';
import { follow } from './follow.ts';
import { working } from './intent.ts';
import type { LogicModel } from './model.ts';
import { voltSense } from './sense.ts';
import { type Moved, movedIn, running, type Verified } from './verify.ts';

/** Share of its volts at which a lamp is taken to be seen, and of its current for an indicator; common practice, no source. */
export const SEEN_VOLTS = 0.5;
export const SEEN_AMPS = 0.1;
/** A of an indicator that states none. */
export const INDICATOR = 0.02;

/** A lamp that is lit or dark when it should be the other, with the fewest moves found that show it. */
export interface LampDeviation {
  readonly lit: boolean;
  readonly steps: readonly Moved[];
}

/** States over inputs and relays in which a lamp or led gives light, with ideal wires. Throws Undecided as the proof does. */
function litStates({ circuit, model }: Verified, lamp: string): Fn {
  const { bdd, conduction } = model;
  const sense = lampSense(circuit, lamp);
  if (sense === undefined) return FALSE;
  return voltSense(circuit, bdd, conduction, model, lamp, sense, () => {}).on;
}

type VoltSense = Extract<Sense, { by: 'volts' }>;

/** Its two ends, and the volts from which it is seen. */
function lampSense(circuit: Circuit, lamp: string): VoltSense | undefined {
  const part = circuit.plan.parts.get(lamp);
  const led = circuit.diodes.find((d) => d.load && d.part === lamp);
  if (led !== undefined) {
    // One ohm in line with its forward volts, as the solver of ideal wires has it.
    const least = led.drop + SEEN_AMPS * (led.amps ?? INDICATOR);
    return sensed(led.anode, led.cathode, least, true);
  }
  const bulb = circuit.passives.find((p) => p.what === 'lamp' && p.part === lamp);
  if (bulb === undefined) return undefined;
  const made = part?.kind === 'lamp' ? part.rated?.volts : undefined;
  return sensed(bulb.a, bulb.b, SEEN_VOLTS * (made ?? railVolts(circuit, bulb)), false);
}

function sensed(a: number, b: number, least: number, polarised: boolean): VoltSense {
  return { by: 'volts', a, b, pullIn: least, dropOut: least, polarised, what: 'input' };
}

/** V of the highest source that a lamp hangs together with, in any position of the contacts. */
function railVolts(circuit: Circuit, { a, b }: Passive): number {
  const around = neighbours([
    ...contactPairs(circuit),
    ...elementPairs(circuit),
    ...circuit.sources.flatMap((s) => s.rails.map((r): Pair => [s.rails[0]!.net, r.net])),
  ]);
  const seen = flood([a, b], around);
  const near = circuit.sources.filter((s) => s.rails.some((r) => seen.has(r.net)));
  return Math.max(1, ...near.flatMap((s) => s.rails.map((r) => Math.hypot(r.re, r.im))));
}

/** States over inputs, and over relays where it shows a load, in which the plan means a lamp to give light. */
export function meantLit(model: LogicModel, { litWhen }: LampIntent): Fn {
  const { circuit, bdd } = model;
  if (typeof litWhen === 'object' && 'runs' in litWhen) return running(model, litWhen.runs);
  const gates = circuit.inputs.filter((i) => i.kind === 'gate');
  const open = bdd.any(gates.map((i) => bdd.variable(inputVariable(circuit, i.index))));
  if (litWhen === 'any-open') return open;
  if (litWhen === 'all-shut') return bdd.not(open);
  return bdd.any(litWhen.map((refs) => bdd.every(refs.map((ref) => working(circuit, bdd, ref)))));
}

/** How a lamp departs from what is meant: dark when it should be lit, then lit when it should be dark; none where it does not. */
export function lampDeviations(v: Verified, intent: LampIntent): LampDeviation[] {
  const { model, settler, places } = v;
  const { circuit } = model;
  const { bdd } = model;
  const lit = litStates(v, intent.target);
  const meant = meantLit(model, intent);
  return [false, true].flatMap((found) => {
    const wrong = found ? bdd.diff(lit, meant) : bdd.diff(meant, lit);
    const direct = bdd.any([...v.fromRest].map(([mode, states]) => bdd.and(settler.at(wrong, mode), states)));
    const once = direct === FALSE ? undefined : movedIn(circuit, bdd, direct);
    if (once) return [{ lit: found, steps: [once] }];
    const ways = places.flatMap((place) => {
      const last = movedIn(circuit, bdd, bdd.and(settler.at(wrong, place.mode), place.states));
      return last === undefined ? [] : [wayTo(v, place, last, wrong)];
    });
    const [shortest] = ways.sort((x, y) => x.length - y.length);
    return shortest === undefined ? [] : [{ lit: found, steps: shortest }];
  });
}

/** Moves from rest that end in a position with these inputs away from rest and show what is wrong there. */
function wayTo(v: Verified, place: Verified['places'][number], last: Moved, wrong: Fn): Moved[] {
  const before: Moved[] = [];
  for (let p: typeof place | undefined = place; p?.via; p = v.places[p.via.from]) before.unshift(p.via.moved);
  const tries = [
    [...before, last],
    [...before.slice(0, -1), last],
  ];
  return tries.find((steps) => follow(v, steps).holds(wrong)) ?? tries[0]!;
}
