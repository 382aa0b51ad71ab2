/** What a coil gets in every way of feeding it, in the worst and the best state of all that hangs on the same rails. */
import type { Relay } from '../../circuit/circuit.ts';
import type { Phasor } from '../../electric/network.ts';
import { type Seen, seenFrom, voltsAt } from '../../electric/seen-from.ts';
import { FALSE } from '../../logic/bdd.ts';
import { inputVariable } from '../../logic/conduction.ts';
import { type Moved, movedIn } from '../../logic/verify.ts';
import { kept } from '../../plan/map-entries.ts';
import type { Electrics } from '../electrics.ts';
import type { Standing } from '../situations.ts';
import { PiecePorts } from './piece-ports.ts';
import type { OnePort, Piece } from './pieces.ts';
import {
  type Element,
  type Layout,
  layoutOf,
  type RailModel,
  railModel,
  type Settings,
} from './rail-model.ts';
import { type Worst, WorstStates } from './worst-state.ts';

/** Share of the volts by which bound and state found may differ: less than the last digit that a report shows. */
const PROVED_WITHIN = 1e-4;
/** The same for a solution that shares no step with this one. */
const SAME = 1e-5;

/** One row, V. */
export interface WorstRow {
  readonly least: number;
  readonly leastIn: Standing;
  readonly nominal: Phasor;
  readonly most: number;
  readonly mostIn: Standing;
  /** nominal volts in the state of the least */
  readonly nominalInLeast: number;
  /** V that it gets in every state, and never exceeds */
  readonly floor: number;
  readonly ceiling: number;
  readonly proved: boolean;
}

/** Corners in which a floor is told. */
export type FloorCorner = 'low' | 'nominal';

type Islanded = {
  readonly layout: Layout;
  readonly low: RailModel;
  readonly nominal: RailModel;
  readonly high: RailModel;
};

const known = new WeakMap<Electrics, Map<object, WorstRows | undefined>>();

/** Kept with the solvers of a study, one for each island; undefined where the island is not made of rails. */
export function worstRows(own: Electrics, relay: Relay): WorstRows | undefined {
  const island = own.islandOf(relay);
  if (!island) return undefined;
  const all = kept(known, own, () => new Map());
  if (!all.has(island)) all.set(island, WorstRows.of(own, island));
  return all.get(island);
}

class WorstRows {
  private readonly states: WorstStates;
  private readonly tops: WorstStates;
  private nominals: WorstStates | undefined;
  private readonly searches = new Map<string, Worst | undefined>();
  private readonly floors = new Map<string, number | undefined>();
  private readonly seen = new Map<string, Seen>();
  private readonly ports: PiecePorts;
  private readonly representative = new Map<number, Moved>();
  private readonly support: readonly ReadonlySet<number>[];

  private constructor(
    private readonly own: Electrics,
    private readonly at: Islanded,
  ) {
    const { bdd } = own.v.model;
    this.ports = new PiecePorts(own, at.layout);
    this.states = new WorstStates(at.low, at.layout.variables);
    this.tops = new WorstStates(at.high, at.layout.variables);
    const relays = own.circuit.relays.length;
    this.support = at.layout.variables.map((x) => new Set([...bdd.support(x.when)].map((y) => y - relays)));
  }

  static of(own: Electrics, island: Layout['island']): WorstRows | undefined {
    const layout = layoutOf(own, island);
    if (!layout) return undefined;
    const [low, nominal, high] = (['low', 'nominal', 'high'] as const).map((c) => railModel(own, layout, c));
    return low && nominal && high ? new WorstRows(own, { layout, low, nominal, high }) : undefined;
  }

  /** Undefined where one of them cannot be told, or is not what the whole island says. */
  rows(relay: Relay, all: readonly Moved[]): WorstRow[] | undefined {
    const piece = this.at.layout.coilIn.get(relay.index);
    const element = this.at.low.elements.find((e) => e.piece === piece);
    if (!piece || !element) return undefined;
    const rows: WorstRow[] = [];
    for (const moved of all) {
      const row = this.row(relay, element, moved);
      if (!row) return undefined;
      rows.push(row);
    }
    const worst = rows.reduce((x, y) => (y.least < x.least ? y : x));
    const v = this.own.coilVolts(relay, worst.leastIn, 'low');
    return Math.abs(Math.hypot(v.re, v.im) - worst.least) <= SAME * worst.least ? rows : undefined;
  }

  /** V that the relay's coil gets in each of the ways of feeding it, in every state; undefined where that cannot be told. */
  floor(relay: Relay, all: readonly Moved[], corner: FloorCorner): number | undefined {
    const model = this.at[corner];
    const piece = this.at.layout.coilIn.get(relay.index);
    const element = model.elements.find((e) => e.piece === piece);
    if (!piece || !element) return undefined;
    let lowest: { readonly floor: number; readonly alone: Standing; readonly moved: Moved } | undefined;
    for (const moved of all) {
      const alone = this.standing(relay, moved);
      const across = alone && this.floorAcross(model, element, relay, this.settledBy(moved));
      if (across === undefined) return undefined;
      const floor = this.floorIn(model, relay, element, alone!, across);
      if (!lowest || floor < lowest.floor) lowest = { floor, alone: alone!, moved };
    }
    if (!lowest) return undefined;
    const { floor, alone, moved } = lowest;
    const whole = size(this.own.coilVolts(relay, alone, corner));
    const volts = size(this.volts(model, relay, element, alone, moved));
    return Math.abs(whole - volts) <= SAME * whole ? floor : undefined;
  }

  private floorAcross(model: RailModel, element: Element, relay: Relay, settled: Settings) {
    const key = `${model.corner}/${relay.index}/${[...settled].join()}`;
    const states = model === this.at.low ? this.states : this.atNominal();
    return kept(this.floors, key, () => states.floor(element, relay.index, settled));
  }

  private atNominal(): WorstStates {
    this.nominals ??= new WorstStates(this.at.nominal, this.at.layout.variables);
    return this.nominals;
  }

  /** V at the coil where no state has less than `across` over its piece. */
  private floorIn(model: RailModel, relay: Relay, element: Element, alone: Standing, across: number): number {
    const put = this.ports.as(model, element.piece, alone, relay);
    const gain = size(put.gain);
    const shares = this.ports.shares(model, element.piece, relay)?.((c) => alone.situation.closed(c));
    return ((shares?.least ?? gain) - turned(put)) * across + put.offset;
  }

  private row(relay: Relay, element: Element, moved: Moved): WorstRow | undefined {
    const { low, nominal, high } = this.at;
    const alone = this.standing(relay, moved);
    if (!alone) return undefined;
    const settled = this.settledBy(moved);
    const key = `${relay.index}/${[...settled].join()}`;
    if (!this.searches.has(key)) this.searches.set(key, this.states.worst(element, relay.index, settled));
    const worst = this.searches.get(key);
    const inWorst = worst && this.standing(relay, this.union(moved, worst.state, settled));
    const tried = inWorst ? [alone, inWorst] : [alone];
    const volts = tried.map((s) => size(this.volts(low, relay, element, s, moved)));
    const best = volts.length > 1 && volts[1]! < volts[0]! ? 1 : 0;
    const leastIn = tried[best]!;
    const ownGates = this.standing(relay, this.withOwnGates(relay, moved)) ?? alone;
    const tops = [alone, ownGates].map((s) => size(this.volts(high, relay, element, s, moved)));
    const top = tops[1]! > tops[0]! ? 1 : 0;
    const { floor, ceiling } = this.bounds(relay, element, alone, moved, settled, worst);
    const [least, most] = [volts[best]!, tops[top]!];
    return {
      least,
      leastIn,
      nominal: this.volts(nominal, relay, element, alone, moved),
      most,
      mostIn: [alone, ownGates][top]!,
      nominalInLeast: size(this.volts(nominal, relay, element, leastIn, moved)),
      floor: Math.min(floor, least),
      ceiling: Math.max(ceiling, most),
      proved: least - floor <= PROVED_WITHIN * least && ceiling - most <= PROVED_WITHIN * most,
    };
  }

  /** V that the coil keeps within in every state in which what this one moves is moved. */
  private bounds(
    relay: Relay,
    element: Element,
    alone: Standing,
    moved: Moved,
    settled: Settings,
    worst: Worst | undefined,
  ) {
    const { high } = this.at;
    const { piece } = element;
    const put = this.ports.as(high, piece, alone, relay);
    const shares = this.ports.shares(high, piece, relay)?.((c) => alone.situation.closed(c));
    const share = shares?.most ?? this.ports.mostShare(high, piece, relay, size(put.gain));
    const drawn = this.touchedBy(high, element, moved).flatMap((e) => {
      const draws = settled.get(e.variable!) ? this.ports.least(high, e.piece, moved) : undefined;
      return draws ? [{ port: e.port, y: draws.y, emf: draws.emf }] : [];
    });
    const across = this.tops.most(element, relay.index, settled, put.y, drawn);
    return {
      floor: worst ? this.floorIn(this.at.low, relay, element, alone, worst.least) : Number.NEGATIVE_INFINITY,
      ceiling: (share + turned(put)) * across + Math.max(0, put.offset),
    };
  }

  private standing(relay: Relay, moved: Moved): Standing | undefined {
    const { situations } = this.own;
    const settled = situations.at(moved);
    return settled && situations.beforePullIn(settled, relay);
  }

  /** Variables that what is moved settles, whatever else is moved. */
  private settledBy(moved: Moved): Settings {
    const { bdd, circuit } = { ...this.own.v.model, circuit: this.own.v.circuit };
    const found = new Map<number, boolean>();
    this.at.layout.variables.forEach(({ when }, x) => {
      if (!moved.some((i) => this.support[x]!.has(i))) return;
      const space = bdd.every(moved.map((i) => bdd.variable(inputVariable(circuit, i))));
      if (bdd.diff(space, when) === FALSE) found.set(x, true);
      else if (bdd.and(space, when) === FALSE) found.set(x, false);
    });
    return found;
  }

  /** Inputs moved with what puts the variables that are on where they are. */
  private union(moved: Moved, state: Settings, settled: Settings): Moved {
    const { circuit, model } = this.own.v;
    const all = new Set(moved);
    for (const [x, value] of state) {
      if (!value || settled.has(x)) continue;
      const needed = kept(
        this.representative,
        x,
        () => movedIn(circuit, model.bdd, this.at.layout.variables[x]!.when) ?? [],
      );
      for (const i of needed) all.add(i);
    }
    return [...all].sort((a, b) => a - b);
  }

  private withOwnGates(relay: Relay, moved: Moved): Moved {
    const { contacts } = this.at.layout.coilIn.get(relay.index)!.island;
    const all = new Set(moved);
    for (const { when } of contacts) if (when.by === 'input' && when.value) all.add(when.input);
    return [...all].sort((a, b) => a - b);
  }

  /** V at the coil in one state; what the row itself moves in one other piece is kept apart, so that rows share the rest. */
  private volts(model: RailModel, relay: Relay, element: Element, s: Standing, moved: Moved): Phasor {
    const touched = this.touchedBy(model, element, moved);
    const second = touched.length === 1 ? touched[0] : undefined;
    const apart = [element, ...touched].flatMap((e) => inputsOf(e.piece));
    const others = touched.length > 1 ? s.moved : s.moved.filter((i) => !apart.includes(i));
    const relays = s.relays.map((on) => (on ? '1' : '0')).join('');
    const key = `${model.corner}/${element.port}/${second?.port}/${others.join()}/${relays}`;
    const seen = kept(this.seen, key, () => {
      const across = model.elements.flatMap((e) => {
        if (e.port === element.port || e === second) return [];
        const { y, emf } = this.ports.as(model, e.piece, s);
        return y.re === 0 && y.im === 0 ? [] : [{ port: e.port, y, emf }];
      });
      return seenFrom(model.matrix, across, element.port, second?.port ?? element.port);
    });
    const put = this.ports.as(model, element.piece, s, relay);
    const u = voltsAt(seen, put, second && this.ports.as(model, second.piece, s));
    return {
      re: put.gain.re * u.re - put.gain.im * u.im + put.offset,
      im: put.gain.re * u.im + put.gain.im * u.re,
    };
  }

  private touchedBy(model: RailModel, element: Element, moved: Moved): readonly Element[] {
    return model.elements.filter(
      (e) => e.port !== element.port && inputsOf(e.piece).some((i) => moved.includes(i)),
    );
  }
}

const inputs = new WeakMap<Piece, readonly number[]>();

function inputsOf(piece: Piece): readonly number[] {
  return kept(inputs, piece, () =>
    piece.island.contacts.flatMap((c) => (c.when.by === 'input' ? [c.when.input] : [])),
  );
}

/** Share of the volts by which reactance in the piece turns them: no more than the drop in it, squared. */
const turned = ({ gain }: OnePort): number => (gain.im === 0 ? 0 : (1 - size(gain)) ** 2);

const size = (p: Phasor): number => Math.hypot(p.re, p.im);
