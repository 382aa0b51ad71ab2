import type { Circuit, Consumer, Source } from '../circuit/circuit.ts';
import { nextPosition, type Sensing } from '../circuit/positions.ts';
import { difference } from '../circuit/rail-volts.ts';
import { SILICON_DROP } from '../circuit/thresholds.ts';
import { splitTerminalKey } from '../plan/terminal-key.ts';
import { type Bdd, FALSE, type Fn, TRUE } from './bdd.ts';
import { Conduction, type Reach, relayVariable } from './conduction.ts';
import { byDiodes, type DcPath, type Drive, EPSILON, joinedSense, voltSense } from './sense.ts';
import { validStates } from './valid-states.ts';

/** Volts that a coil or input sees in a set of states, where elements in line share the supply. */
export interface SharedVolts {
  readonly relay: number;
  readonly sense: number;
  readonly states: Fn;
  readonly volts: number;
}

/** What every relay, load and supply does, as functions of inputs and of the relays' own positions. */
export interface LogicModel {
  readonly circuit: Circuit;
  readonly bdd: Bdd;
  readonly conduction: Conduction;
  /** states with at most one position per selector */
  readonly valid: Fn;
  /** source has power and its poles are not joined */
  readonly live: readonly Fn[];
  /** poles of a source joined through contacts or conducting diodes */
  readonly shorted: readonly Fn[];
  /** relay's next position: pulled in */
  readonly next: readonly Fn[];
  /** where each relay sees enough to pull in, and so little that it lets go; FALSE twice for a cam */
  readonly sensed: readonly Sensing<Fn>[];
  /** the coil sees its pull-in, whatever its position now */
  readonly pull: readonly Fn[];
  /** fully fed, by part */
  readonly fed: ReadonlyMap<string, Fn>;
  /** only some of the conductors fed: a three-phase motor on two phases */
  readonly partlyFed: ReadonlyMap<string, Fn>;
  readonly shared: readonly SharedVolts[];
  /** nets joined to a source's rail by contacts, by source and rail */
  readonly railReach: readonly (readonly Reach[])[];
  /** what DC sources feed and take back through diodes, by source */
  readonly paths: ReadonlyMap<number, DcPath>;
}

/** A load counts as fed at this share of its rated voltage or more. */
const FED_SHARE = 0.7;
/** Share of the volts that the plan puts on the mains side of a supply with more than which it has power. */
const FED_SIDE = 0.5;

/** Builds the model. Sources in `dead` have no power. Throws Undecided where exactness would not end. */
export function buildModel(circuit: Circuit, bdd: Bdd, dead: ReadonlySet<number> = new Set()): LogicModel {
  const earths = [...circuit.netOf]
    .filter(([key]) => splitTerminalKey(key).terminal === 'PE')
    .map(([, net]) => net);
  const conduction = new Conduction(circuit, bdd, earths);
  const railReach = circuit.sources.map((s) => s.rails.map((r) => conduction.joined(r.net)));
  // A supply has no power until what feeds it has; supplies in a ring never come to life.
  const live: Fn[] = circuit.sources.map((s) => (dead.has(s.index) || s.feed.by !== 'always' ? FALSE : TRUE));
  const valid = validStates(circuit, bdd);
  const paths = new Map<number, DcPath>();
  const shorted = circuit.sources.map((s, index) => {
    const path = s.kind === 'dc' && !s.mains ? dcPath(conduction, s) : undefined;
    if (path !== undefined) paths.set(index, path);
    if (s.mains) return mainsShort(bdd, s, railReach[index]!);
    return path === undefined ? acShort(circuit, bdd, s, railReach[index]!) : dcShort(path, s);
  });
  for (const s of circuit.sources) live[s.index] = bdd.and(live[s.index]!, bdd.not(shorted[s.index]!));
  const fed = new Map<string, Fn>();
  const partlyFed = new Map<string, Fn>();
  const feedLoads = () => {
    for (const c of circuit.consumers) {
      if (c.dc) continue;
      const found = consumerFed(circuit, bdd, live, railReach, c);
      fed.set(c.part, found.full);
      partlyFed.set(c.part, found.partly);
    }
  };
  feedLoads();
  const fedSources = circuit.sources.filter((s) => s.feed.by !== 'always' && !dead.has(s.index));
  for (let isNew = fedSources.length > 0; isNew; ) {
    isNew = false;
    for (const s of fedSources) {
      const power = bdd.and(supplyFed(circuit, bdd, fed, live, railReach, s), bdd.not(shorted[s.index]!));
      if (power === live[s.index]) continue;
      live[s.index] = power;
      isNew = true;
      if (s.mains) feedLoads();
    }
  }
  for (const c of circuit.consumers) {
    if (!c.dc) continue;
    fed.set(c.part, dcFed(circuit, bdd, { live, railReach, paths }, c));
    partlyFed.set(c.part, FALSE);
  }
  const { sensed, shared } = relaySenses(circuit, bdd, conduction, { live, railReach, paths });
  const next = nextPositions(circuit, bdd, sensed);
  const pull = sensed.map((s) => s.on);
  const made = { circuit, bdd, conduction, valid, live, shorted, next, sensed, pull };
  return { ...made, fed, partlyFed, shared, railReach, paths };
}

/** What the positive pole feeds, and what the negative one takes back, by the diodes passed. */
function dcPath(conduction: Conduction, { rails: [plus, minus] }: Source): DcPath {
  return {
    from: conduction.throughDiodes(plus!.net, true),
    to: conduction.throughDiodes(minus!.net, false),
  };
}

/** Its poles joined by contacts, or through as many diodes as its voltage drives current through. */
function dcShort({ from }: DcPath, { rails: [plus, minus] }: Source): Fn {
  const most = Math.floor(plus!.re / SILICON_DROP);
  return from[Math.min(most, from.length - 1)]?.get(minus!.net) ?? FALSE;
}

function acShort(circuit: Circuit, bdd: Bdd, source: Source, reach: readonly Reach[]): Fn {
  let short = reach[0]!.get(source.rails[1]!.net) ?? FALSE;
  for (const d of circuit.diodes)
    if (!d.load) short = bdd.or(short, acThroughDiode(bdd, reach, d.anode, d.cathode));
  return short;
}

/** Where a relay's coil has its volts; of a timer that is always fed, whatever its trigger does. */
export function fedWhere({ bdd, sensed }: LogicModel, relay: number): Fn {
  const { on, lost } = sensed[relay]!;
  return lost === undefined ? on : bdd.not(lost);
}

/** Where each relay goes next, as functions of inputs and of where relays are. */
export function nextPositions(circuit: Circuit, bdd: Bdd, sensed: readonly Sensing<Fn>[]): Fn[] {
  const truths = {
    and: (a: Fn, b: Fn) => bdd.and(a, b),
    or: (a: Fn, b: Fn) => bdd.or(a, b),
    not: (a: Fn) => bdd.not(a),
  };
  return circuit.relays.map((relay) =>
    nextPosition(
      truths,
      relay,
      (k) => sensed[k]!,
      (k) => bdd.variable(relayVariable(k)),
    ),
  );
}

/** Where each relay's coil sees its pull-in, and its drop-out. */
function relaySenses(
  circuit: Circuit,
  bdd: Bdd,
  conduction: Conduction,
  drive: Drive,
): Pick<LogicModel, 'sensed' | 'shared'> {
  const shared: SharedVolts[] = [];
  const sensed = circuit.relays.map((relay): Sensing<Fn> => {
    if (relay.senses.length === 0) return { on: FALSE, off: FALSE };
    let on: Fn = TRUE;
    let off: Fn = FALSE;
    let lost: Fn | undefined;
    relay.senses.forEach((sense, index) => {
      const note = (states: Fn, volts: number) =>
        shared.push({ relay: relay.index, sense: index, states, volts });
      const found =
        sense.by === 'joined'
          ? joinedSense(conduction, bdd, sense)
          : voltSense(circuit, bdd, conduction, drive, relay.part, sense, note);
      on = bdd.and(on, found.on);
      off = bdd.or(off, found.off);
      if (index === 0 && relay.delay?.stored === false) lost = found.off;
    });
    return { on, off, ...(lost !== undefined && { lost }) };
  });
  return { sensed, shared };
}

function mainsShort(bdd: Bdd, source: Source, reach: readonly Reach[]): Fn {
  let short: Fn = FALSE;
  source.rails.forEach((p, i) => {
    for (const q of source.rails.slice(i + 1))
      if (difference(p, q) > EPSILON) short = bdd.or(short, reach[i]!.get(q.net) ?? FALSE);
  });
  return short;
}

function acThroughDiode(bdd: Bdd, reach: readonly Reach[], a: number, b: number): Fn {
  const at = (rail: number, net: number) => reach[rail]!.get(net) ?? FALSE;
  return bdd.or(bdd.and(at(0, a), at(1, b)), bdd.and(at(1, a), at(0, b)));
}

/** Fully fed: every conductor on a rail of its own, all of one source, at a useful voltage. */
function consumerFed(
  circuit: Circuit,
  bdd: Bdd,
  live: readonly Fn[],
  reach: readonly (readonly Reach[])[],
  consumer: Consumer,
): { full: Fn; partly: Fn } {
  const nets = [...consumer.nets.values()];
  let full: Fn = FALSE;
  let some: Fn = FALSE;
  for (const s of circuit.sources) {
    if (!s.mains) continue;
    const assign = (i: number, taken: readonly number[], so: Fn): void => {
      if (so === FALSE) return;
      if (i === nets.length) {
        full = bdd.or(full, so);
        return;
      }
      s.rails.forEach((r, k) => {
        if (taken.some((t) => difference(r, s.rails[t]!) < fedVolts(consumer, s))) return;
        assign(i + 1, [...taken, k], bdd.and(so, reach[s.index]![k]!.get(nets[i]!) ?? FALSE));
      });
    };
    assign(0, [], live[s.index]!);
    if (nets.length === 3)
      for (let i = 0; i < 3; i++)
        for (let j = i + 1; j < 3; j++)
          some = bdd.or(
            some,
            bdd.and(live[s.index]!, acrossRails(bdd, reach[s.index]!, s, nets[i]!, nets[j]!, 1)),
          );
  }
  return { full, partly: bdd.diff(some, full) };
}

/** Both its conductors on the poles of one DC source, either way round, with the volts to spare for the diodes between. */
function dcFed(circuit: Circuit, bdd: Bdd, { live, paths }: Drive, consumer: Consumer): Fn {
  const [plus, minus] = [...consumer.nets.values()] as [number, number];
  if (plus === minus) return FALSE;
  return bdd.any(
    circuit.sources.flatMap((s) => {
      const path = paths.get(s.index);
      if (path === undefined) return [];
      const spare = s.rails[0]!.re - fedVolts(consumer, s);
      const ways = [...byDiodes(bdd, path, spare, plus, minus), ...byDiodes(bdd, path, spare, minus, plus)];
      return [bdd.and(live[s.index]!, bdd.any(ways))];
    }),
  );
}

/** V between two of its conductors from which a load counts as fed by a source. */
export function fedVolts(consumer: Consumer, source: Source): number {
  if (consumer.volts !== undefined) return consumer.volts * FED_SHARE;
  return Math.max(1, 0.4 * Math.max(...source.rails.map((r) => Math.hypot(r.re, r.im))));
}

/** States in which two nets lie on two rails with more than so many volts between them. */
function acrossRails(
  bdd: Bdd,
  reach: readonly Reach[],
  source: Source,
  a: number,
  b: number,
  least: number,
): Fn {
  let found: Fn = FALSE;
  source.rails.forEach((p, i) => {
    source.rails.forEach((q, j) => {
      if (difference(p, q) > least)
        found = bdd.or(found, bdd.and(reach[i]!.get(a) ?? FALSE, reach[j]!.get(b) ?? FALSE));
    });
  });
  return found;
}

function supplyFed(
  circuit: Circuit,
  bdd: Bdd,
  fed: ReadonlyMap<string, Fn>,
  live: readonly Fn[],
  reach: readonly (readonly Reach[])[],
  source: Source,
): Fn {
  const feed = source.feed;
  if (feed.by === 'always') return TRUE;
  if (feed.by === 'part') {
    const plug = circuit.sources.find((s) => s.part === feed.part);
    return plug ? live[plug.index]! : (fed.get(feed.part) ?? FALSE);
  }
  const least = feed.volts === undefined ? 1 : feed.volts * FED_SIDE;
  const across = (s: Source) =>
    bdd.and(live[s.index]!, acrossRails(bdd, reach[s.index]!, s, feed.a, feed.b, least));
  return bdd.any(circuit.sources.filter((s) => s !== source).map(across));
}
