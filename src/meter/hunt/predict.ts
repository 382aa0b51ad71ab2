/** What each suspect would have one see, and whether that agrees with what was seen. */
import { BEEP_OHMS, isSure, Ohmmeter, type OhmsRead } from '../../machine/ohmmeter.ts';
import { plugsOut } from '../../machine/power.ts';
import { Voltmeter } from '../../machine/voltmeter.ts';
import { kept } from '../../plan/map-entries.ts';
import type { Study } from '../../study/study.ts';
import type { Fault } from '../fault.ts';
import type { Behaviour } from '../faults/behaviour.ts';
import { targetsOf } from '../faults/effect.ts';
import { FaultTrials, Powered } from '../faults/fault-trials.ts';
import practice from '../faults/practice.json' with { type: 'json' };
import type { Pair } from '../probe-pairs.ts';
import type { Stance } from '../stance.ts';
import { unpluggedCircuit } from '../unplugged.ts';
import type { Answer, Observation } from './observation.ts';

/** One fault, or two at once. */
export interface Suspect {
  readonly faults: readonly Fault[];
  /** rough, for the order alone */
  readonly weight: number;
}

/** What a suspect leads to expect: one of several things seen, a reading between two ends, or nothing that is known. */
export type Expected =
  | { readonly by: 'seen'; readonly any: readonly string[] }
  | {
      readonly by: 'band';
      readonly low: number;
      readonly high: number;
      /** the ends that it may lie at: more than one for a bad joint, which may be at its worst or hardly bad */
      readonly any: readonly Band[];
    }
  | undefined;

export interface Band {
  readonly low: number;
  readonly high: number;
}

/** How far readings stray, what counts as nothing, and from what a meter shows over range: `practice.json`. */
const SPREAD = practice.figures.voltSpread.value;
const NOTHING = practice.figures.nothing.value;
const OPEN_OHMS = practice.figures.openOhms.value;
const OHM_SPREAD = practice.figures.ohmSpread.value;
const PROBE_OHMS = practice.figures.probeOhms.value;

type VoltsAsked = Extract<Observation, { kind: 'volts' }>;

export class Predictor {
  readonly trials: FaultTrials;
  readonly loads: readonly string[];
  /** V */
  readonly highest: number;
  private readonly known = new WeakMap<Suspect, Map<string, Expected>>();
  private readonly behaviours = new Map<string, Behaviour | undefined>();
  private readonly loops = new Map<string, Powered>();
  private readonly meters = new Map<string, Ohmmeter>();
  private readonly numbers = new Map<Fault, number>();

  /** `atHand` is how many faulty circuits are kept: few where each suspect is asked about once, one after the other. */
  constructor(
    readonly study: Study,
    private readonly atHand = Math.max(KEPT, NETS / study.wired.netCount),
  ) {
    this.trials = new FaultTrials(study);
    this.loads = targetsOf(study);
    this.highest = Math.max(
      1,
      ...study.wired.sources.flatMap((s) => (s.mains ? [] : s.rails.map((r) => Math.hypot(r.re, r.im)))),
    );
  }

  /** What a suspect leads to expect; undefined where that is not worked out. */
  expected(suspect: Suspect, observation: Observation): Expected {
    const own = kept(this.known, suspect, () => new Map<string, Expected>());
    const { key } = observation;
    if (!own.has(key)) own.set(key, this.workedOut(suspect.faults, observation));
    return own.get(key);
  }

  /** Whether an answer can come of a suspect. */
  agrees(suspect: Suspect, observation: Observation, answer: Answer): boolean {
    const expected = this.expected(suspect, observation);
    if (expected === undefined) return true;
    if (expected.by === 'seen') return expected.any.some((look) => sameLook(look, answer));
    // A tester sounds from nothing up to its limit, wherever in there the ohms lie.
    if (answer.by === 'beeps') return expected.low <= BEEP_OHMS;
    return inBand(expected, this.valueOf(answer));
  }

  /** The answer that a suspect leads to expect, a bad joint at its worst; undefined where that is not worked out. */
  answer(suspect: Suspect, observation: Observation): Answer | undefined {
    const expected = this.expected(suspect, observation);
    if (expected === undefined) return undefined;
    if (expected.by === 'band') {
      const { low, high } = expected.any[0]!;
      const middle = (low + high) / 2;
      if (observation.kind === 'volts') return { by: 'volts', volts: middle };
      return { by: 'ohms', ohms: low >= OPEN_OHMS ? Number.POSITIVE_INFINITY : middle };
    }
    const look = expected.any[0]!;
    if (look === CHATTERS) return { by: 'chatters' };
    if ('part' in observation) return { by: 'yes', yes: look === yesKey(true) };
    return { by: 'loads', of: this.loads, on: this.loads.filter((l) => look.split(' ').includes(`${l}=on`)) };
  }

  /** Whether an observation may come out the same for two suspects. */
  meet(x: Suspect, y: Suspect, observation: Observation): boolean {
    const [a, b] = [this.expected(x, observation), this.expected(y, observation)];
    if (a === undefined || b === undefined) return true;
    if (a.by === 'seen') return b.by === 'seen' && a.any.some((look) => b.any.includes(look));
    return b.by === 'band' && a.low <= b.high && b.low <= a.high;
  }

  private workedOut(faults: readonly Fault[], o: Observation): Expected {
    const own = faults.some((f) => f.poor) ? [faults, faults.filter((f) => !f.poor)] : [faults];
    if (o.kind === 'volts' || o.kind === 'ohms') {
      const bands = own.map((some) =>
        o.kind === 'volts' ? this.voltsBand(some, o) : this.ohmsBand(some, o),
      );
      if (bands.some((b) => b === undefined)) return undefined;
      return {
        by: 'band',
        low: Math.min(...bands.map((b) => b!.low)),
        high: Math.max(...bands.map((b) => b!.high)),
        any: apart(bands.map((b) => b!)),
      };
    }
    // One bad joint is as bad in every position; a finger on the switch may better it.
    const looks = own.slice(0, o.kind === 'finger' ? own.length : 1).map((some) => {
      const pressed = o.kind === 'finger' ? some.filter((f) => !f.byFinger) : some;
      const seen = this.seen(pressed, o.stance);
      return seen === undefined ? undefined : this.lookAt(seen, o);
    });
    return looks.some((look) => look === undefined)
      ? undefined
      : { by: 'seen', any: [...new Set(looks.map((l) => l!))] };
  }

  /** What is seen with some faults in one position, asked for again for each thing there is to see. */
  private seen(faults: readonly Fault[], stance: Stance): Behaviour | undefined {
    const key = `${this.keyOf(faults)} ${stance.key}`;
    if (!this.behaviours.has(key)) this.behaviours.set(key, this.trials.seen(faults, stance));
    return this.behaviours.get(key);
  }

  private keyOf(faults: readonly Fault[]): string {
    return faults.map((f) => kept(this.numbers, f, () => this.numbers.size)).join();
  }

  private lookAt(seen: Behaviour, o: Exclude<Observation, { kind: 'volts' | 'ohms' }>): string {
    switch (o.kind) {
      case 'look':
      case 'finger':
        if (!seen.settled) return CHATTERS;
        return loadsKey(
          this.loads.filter((l) => seen.runs.has(l) || seen.fed.has(l) || seen.into.has(l)),
          this.loads,
        );
      case 'click':
        return seen.settled ? yesKey(seen.into.has(o.part)) : CHATTERS;
      case 'lit':
        return yesKey(seen.lit.has(o.part));
      case 'lamp':
        return yesKey(seen.fed.has(o.part));
    }
  }

  private voltsBand(faults: readonly Fault[], { stance, pair, range }: VoltsAsked) {
    const powered = this.loop(faults);
    const state = powered.at(stance);
    if (!state.settled) return undefined;
    const { netOf } = powered.made.circuit;
    const { volts, kind } = new Voltmeter(state).readOneOfMany(netOf.get(pair.a), netOf.get(pair.b));
    if (volts === null) return undefined;
    const floor = NOTHING * this.highest;
    // The other kind of current shows nothing on this dial position.
    const size = Math.abs(volts) < floor || (kind !== null && kind !== range) ? 0 : volts;
    if (size === 0) return { low: -floor, high: floor };
    const sign = kind === 'ac' ? Math.abs(size) : size;
    const spread = Math.abs(size) * SPREAD;
    return { low: sign - spread, high: sign + spread };
  }

  private ohmsBand(faults: readonly Fault[], { stance, pair }: { stance: Stance; pair: Pair }) {
    const meter = this.meter(faults);
    const read: OhmsRead = meter.readOneOfMany(
      { moved: stance.moved, relays: undefined, clipped: [] },
      pair.a,
      pair.b,
    );
    const top = (ohms: number) => (ohms >= OPEN_OHMS ? OPEN_OHMS : ohms * (1 + OHM_SPREAD) + PROBE_OHMS);
    const low = read.least >= OPEN_OHMS ? OPEN_OHMS : read.least * (1 - OHM_SPREAD) - PROBE_OHMS;
    if (!isSure(read) && read.most === Number.POSITIVE_INFINITY && read.least < BEEP_OHMS) return undefined;
    return { low: Math.max(0, low), high: top(read.most) };
  }

  private loop(faults: readonly Fault[]): Powered {
    return this.keptFor(this.loops, faults, () => {
      const made = this.trials.circuits.with(faults);
      return new Powered(made, plugsOut(made.plan, made.circuit));
    });
  }

  private meter(faults: readonly Fault[]): Ohmmeter {
    return this.keptFor(this.meters, faults, () => {
      const made = this.trials.circuits.with(faults);
      return new Ohmmeter(unpluggedCircuit(made.circuit), made.figures('ohmmeter'));
    });
  }

  private keptFor<T>(map: Map<string, T>, faults: readonly Fault[], make: () => T): T {
    const key = this.keyOf(faults);
    const found = map.get(key) ?? make();
    // What was asked for last stands last, so that the first is the one to let go.
    map.delete(key);
    map.set(key, found);
    if (map.size > this.atHand) map.delete(map.keys().next().value!);
    return found;
  }

  private valueOf(answer: Answer): number {
    if (answer.by === 'volts') return Math.abs(answer.volts) < NOTHING * this.highest ? 0 : answer.volts;
    if (answer.by === 'ohms') return Math.min(answer.ohms, OPEN_OHMS);
    return 0;
  }
}

/** Bands that a meter tells from each other. */
function apart(bands: readonly Band[]): Band[] {
  const [first, second] = bands;
  const meet = second === undefined || (first!.low <= second.high && second.low <= first!.high);
  return meet ? [first!] : [first!, second];
}

/** Circuits that are kept at hand, and nets of all of them together up to which there may be more. */
const KEPT = 400;
const NETS = 100_000;

const CHATTERS = 'chatters';
const yesKey = (yes: boolean) => (yes ? 'yes' : 'no');

function loadsKey(on: readonly string[], of: readonly string[]): string {
  return of.map((load) => `${load}=${on.includes(load) ? 'on' : 'off'}`).join(' ');
}

function sameLook(look: string, answer: Answer): boolean {
  switch (answer.by) {
    case 'chatters':
      return look === CHATTERS;
    case 'yes':
      return look === yesKey(answer.yes);
    case 'loads': {
      const told = new Set(look.split(' '));
      return answer.of.every((load) => told.has(`${load}=${answer.on.includes(load) ? 'on' : 'off'}`));
    }
    default:
      return false;
  }
}

function inBand({ low, high }: Band, value: number): boolean {
  return value >= low && value <= high;
}
