/**
 * Which cores lead a motor's current through the power poles of its overload relay. A plan shows the relay by its contact
 * 95-96 alone and lets the motor's cores begin at the contactor; in the shop they land on the relay that hangs below it.
 */
import type { WiredCircuit } from '../circuit/build.ts';
import type { ContactEdge } from '../circuit/circuit.ts';
import { conductorNames } from '../circuit/nets.ts';
import { cutoutsOf, isOverload, stops } from '../findings/contacts/overload-relays.ts';
import { push } from '../plan/map-entries.ts';
import type { CutoutPart, MotorPart } from '../plan/part-types.ts';
import type { Core } from '../plan/plan.ts';
import { terminalKey } from '../plan/terminal-key.ts';
import { judgeSetting, settingBounds } from '../ratings/overload.ts';
import { neighbours, reachable, type Step } from '../study/mains/motor-path.ts';
import type { Study } from '../study/study.ts';

/** How one core of the plan goes by way of an overload relay. */
export interface OverloadWay {
  /** the relay; of several the plan does not say which, and all that may be it stand here */
  readonly relays: readonly string[];
  /** the marks of its pole that are common on such relays, line side and motor side */
  readonly pole: readonly [line: string, motor: string];
  /** which of the two marks the core lands on */
  readonly lands: string;
  /** the end of the core that lands there, and not where the plan has it */
  readonly end: 'a' | 'b';
}

/** Terminals of the power poles by phase: IEC 60947-4-1 annex L, EN 50005 (from memory); the relay itself counts. */
const POLES: readonly (readonly [string, string])[] = [
  ['1/L1', '2/T1'],
  ['3/L2', '4/T2'],
  ['5/L3', '6/T3'],
];

/** Every core that goes by way of an overload relay, by the core itself. */
export function overloadWays(study: Study): ReadonlyMap<Core, OverloadWay> {
  const motors = [...study.plan.parts.values()].filter((p): p is MotorPart => p.kind === 'motor');
  const overloads = cutoutsOf(study).filter((c) => isOverload(study, c));
  if (overloads.length === 0) return new Map();
  const circuit = study.linksApart;
  const paths = motors.flatMap((motor) => {
    const relays = relaysOf(study, motor, motors, overloads);
    return relays.length === 0 ? [] : pathsOf(circuit, motor, relays);
  });
  const ways = new Map<Core, OverloadWay>();
  for (const path of paths) {
    const others = paths.filter((p) => keyOf(p) !== keyOf(path)).flatMap((p) => p.crossings);
    const own = path.crossings.filter((c) => !others.some((o) => o.wire === c.wire));
    for (const { wire, end, motorSide } of nearestContactor(own.length > 0 ? own : path.crossings)) {
      const { run, core } = circuit.wires[wire]!;
      const at = study.plan.runs[run]!.cores[core]!;
      const pole = POLES[path.phase]!;
      const relays = [...new Set([...(ways.get(at)?.relays ?? []), ...path.relays])];
      ways.set(at, { relays, pole, lands: pole[motorSide ? 1 : 0], end });
    }
  }
  return ways;
}

/** Overload relays that see the current of a motor: of those that stop it, the ones whose setting suits its plate. */
function relaysOf(
  study: Study,
  motor: MotorPart,
  motors: readonly MotorPart[],
  overloads: readonly CutoutPart[],
): string[] {
  const stopping = overloads.filter((c) => stops(study, c, motor));
  // One whose contact stops nothing has its power poles all the same, and where there is one motor it is for that.
  const seeing = (stopping.length > 0 || motors.length > 1 ? stopping : overloads).filter(
    (c) => !liesInLine(study, c, motor),
  );
  const { amps, serviceFactor } = motor;
  const plate =
    amps === undefined
      ? undefined
      : settingBounds([{ amps, ...(serviceFactor !== undefined && { serviceFactor }) }], study.plan.practice);
  const fitting = seeing.filter(
    (c) => plate !== undefined && c.setting !== undefined && judgeSetting(c.setting, plate) === 'fits',
  );
  return (fitting.length > 0 ? fitting : seeing).map((c) => c.name);
}

/** The cut-out's own contact carries the motor's current, so that the plan has all of it. */
function liesInLine({ linksApart }: Study, cutout: CutoutPart, motor: MotorPart): boolean {
  const starts = pins(linksApart);
  const without = (skip: (c: ContactEdge) => boolean) =>
    reachable(starts, around(linksApart, skip), undefined);
  const whole = without(() => false);
  const left = without((c) => c.part === cutout.name);
  return terminalsOf(linksApart, motor).some((net) => whole.has(net) && !left.has(net));
}

/** Nets of the pins of every plug. */
const pins = ({ sources }: WiredCircuit): number[] =>
  sources.filter((s) => s.mains).flatMap((s) => s.rails.map((r) => r.net));

/** Nets of the conductors of a motor, in the order of its phases. */
function terminalsOf({ netOf }: WiredCircuit, motor: MotorPart): number[] {
  return conductorNames(motor.feed).flatMap((t) => netOf.get(terminalKey(motor.name, t)) ?? []);
}

function around(circuit: WiredCircuit, skip: (contact: ContactEdge) => boolean): Map<number, Step[]> {
  return neighbours({ ...circuit, contacts: circuit.contacts.filter((c) => !skip(c)) });
}

/** A core that a conductor of the motor passes between its contactor and the motor. */
interface Crossing {
  readonly wire: number;
  /** the end on the contactor's side, or where several cores meet at the motor, theirs at the motor */
  readonly end: 'a' | 'b';
  /** what lands on the relay comes from the motor's side of it */
  readonly motorSide: boolean;
  /** how much of the conductor lies behind it; the more, the nearer it is to the contactor */
  readonly behind: number;
}

interface MotorPath {
  readonly relays: readonly string[];
  /** counted from 0 */
  readonly phase: number;
  readonly crossings: readonly Crossing[];
}

const keyOf = ({ relays }: MotorPath): string => relays.join(' ');

/** Conductors of a motor that a relay's contact switches. One that comes straight from the plug passes no overload relay. */
function pathsOf(circuit: WiredCircuit, motor: MotorPart, relays: readonly string[]): MotorPath[] {
  const steps = around(circuit, (c) => c.when.by === 'relay');
  const fed = new Set(pins(circuit));
  const switched = new Map<number, ContactEdge[]>();
  for (const contact of circuit.contacts)
    if (contact.when.by === 'relay') for (const net of [contact.a, contact.b]) push(switched, net, contact);
  return terminalsOf(circuit, motor).flatMap((start, phase) => {
    const whole = reachable([start], steps, undefined);
    if ([...whole].some((net) => fed.has(net)) || ![...whole].some((net) => switched.has(net))) return [];
    return [{ relays, phase, crossings: crossings(circuit, { start, whole, steps, switched }) }];
  });
}

interface Conductor {
  readonly start: number;
  readonly whole: ReadonlySet<number>;
  readonly steps: ReadonlyMap<number, readonly Step[]>;
  readonly switched: ReadonlyMap<number, readonly ContactEdge[]>;
}

function crossings({ wires }: WiredCircuit, { start, whole, steps, switched }: Conductor): Crossing[] {
  const inside = [...wires.keys()].filter((i) => whole.has(wires[i]!.a));
  const single = inside.flatMap((wire): Crossing[] => {
    const left = reachable([start], steps, wire);
    if ([...left].some((net) => switched.has(net))) return [];
    return [{ wire, end: left.has(wires[wire]!.a) ? 'b' : 'a', motorSide: true, behind: left.size }];
  });
  if (single.length > 0) return single;
  // Cores of several contactors that meet at the motor meet at the relay, on the side that the current comes from.
  return inside
    .filter((wire) => [wires[wire]!.a, wires[wire]!.b].includes(start))
    .map((wire) => ({ wire, end: wires[wire]!.a === start ? 'a' : 'b', motorSide: false, behind: 0 }));
}

function nearestContactor(crossed: readonly Crossing[]): Crossing[] {
  const most = Math.max(...crossed.map((c) => c.behind));
  return crossed.filter((c) => c.behind === most);
}
