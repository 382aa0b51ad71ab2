/** Volts at every coil for every gate: least over states and corners, as printed, and greatest. */
import type { Relay } from '../circuit/circuit.ts';
import { type Island, islandOf } from '../electric/island.ts';
import type { Fn } from '../logic/bdd.ts';
import { baseState, entryState } from '../logic/entry-states.ts';
import { type Moved, movedIn } from '../logic/verify.ts';
import { kept } from '../plan/map-entries.ts';
import { type CoilRow, type Found, LazyRow, size } from './coil-row.ts';
import { togglesOf } from './coil-toggles.ts';
import type { Corner } from './corners.ts';
import type { Electrics } from './electrics.ts';
import type { Standing } from './situations.ts';
import { type FloorCorner, worstRows } from './worst/worst-rows.ts';

/** Above so many inputs that change the other loads, their combinations are searched, not all tried. */
const MOST_TOGGLES = 8;
/** Toggles tried at a time when searching, and rows searched from. */
const SAMPLE = 24;
const SEARCHED_ROWS = 4;

const finders = new WeakMap<Electrics, Map<number, RowFinder>>();

function finderOf(own: Electrics, relay: Relay): RowFinder {
  const known = kept(finders, own, () => new Map<number, RowFinder>());
  return kept(known, relay.index, () => new RowFinder(own, relay));
}

/** A row for each way of feeding the relay's coil. */
export function coilRows(own: Electrics, relay: Relay): readonly CoilRow[] {
  return finderOf(own, relay).rows();
}

/**
 * V that the relay's coil gets in every way of feeding it and in every state, by bounds that cost far less than the rows;
 * undefined where there are no such.
 */
export function coilFloor(own: Electrics, relay: Relay, corner: FloorCorner): number | undefined {
  return finderOf(own, relay).floor(corner);
}

/** Inputs moved in each state that feeds the relay's coil: entries of the intent, then single inputs. */
export function statesFeeding(own: Electrics, relay: Relay): readonly Moved[] {
  if (!own.islandOf(relay)) return [];
  return finderOf(own, relay)
    .states()
    .map((s) => s.moved);
}

/**
 * Which states matter. Opening one more gate closes one more contact, which by Rayleigh's monotonicity law can only
 * lower the resistance between supply and coil; so while nothing else in the island draws current, the least volts of a
 * gate are those with that gate alone open, and the most those with every contact made. Only inputs that open a contact
 * or change what else is fed can make it worse: those are the toggles, and all their combinations are tried.
 */
class RowFinder {
  private readonly island: Island;
  private readonly feeding: Fn;
  private readonly toggles: readonly number[];
  private readonly makers: readonly number[];
  private readonly cache = new Map<string, number>();
  private withAll: Found | undefined;

  constructor(
    private readonly own: Electrics,
    private readonly relay: Relay,
  ) {
    this.island = own.islandOf(relay) ?? islandOf(own.circuit, [], true);
    this.feeding = own.situations.feeding(relay);
    this.toggles = togglesOf(own, relay, this.island, this.feeding);
    this.makers = [
      ...new Set(
        this.island.contacts.flatMap((c) => (c.when.by === 'input' && c.when.value ? [c.when.input] : [])),
      ),
    ].filter((i) => !this.toggles.includes(i));
  }

  rows(): CoilRow[] {
    const states = this.states();
    if (this.toggles.length > MOST_TOGGLES) {
      const found = worstRows(this.own, this.relay)?.rows(
        this.relay,
        states.map((s) => s.moved),
      );
      if (found)
        return found.map((row, k) => ({
          ...states[k]!,
          ...row,
          nominal: size(row.nominal),
          nominalPhasor: row.nominal,
        }));
    }
    const rows = states.flatMap(({ gate, moved }) => this.row(gate, moved));
    if (this.toggles.length > MOST_TOGGLES) return this.searchWorst(rows);
    return this.island.contacts.some((c) => c.when.by === 'input')
      ? rows
      : rows.slice(0, 1).map((r) => r.ofAnyGate());
  }

  floor(corner: FloorCorner): number | undefined {
    if (this.toggles.length <= MOST_TOGGLES) return undefined;
    const states = this.states().map((s) => s.moved);
    return worstRows(this.own, this.relay)?.floor(this.relay, states, corner);
  }

  private standing(moved: Moved): Standing | undefined {
    const { situations } = this.own;
    const settled = situations.at(moved);
    return settled && situations.beforePullIn(settled, this.relay);
  }

  /** Each entry of an intent, then every other input by itself; failing all, the nearest state that feeds the coil. */
  states(): readonly Way[] {
    const { v } = this.own;
    const { circuit } = v;
    const found = waysOf(this.own).filter(({ moved }) => this.standing(moved) !== undefined);
    const named = new Set(found.filter((f) => f.entry).map((f) => f.gate));
    const ways = found.filter((f) => f.entry || !named.has(f.gate!));
    if (ways.length > 0) return ways;
    const moved = movedIn(circuit, v.model.bdd, this.feeding);
    // A coil whose gates are break contacts may be fed with nothing moved at all.
    if (!moved || !this.standing(moved)) return [];
    const names = [...new Set(moved.map((i) => circuit.inputs[i]!.part))];
    return [{ gate: names.length === 0 ? undefined : names.join(' + '), moved, entry: false }];
  }

  private row(gate: string | undefined, moved: Moved): LazyRow[] {
    const at = this.standing(moved);
    if (!at) return [];
    const few = this.toggles.length <= MOST_TOGGLES;
    const extra = few ? subsets(this.toggles.filter((i) => !moved.includes(i))) : [[]];
    return [
      new LazyRow(gate, moved, few, {
        nominal: () => this.own.coilVolts(this.relay, at, 'nominal'),
        least: () => this.best(extra, moved, 'low', (x, y) => x < y) ?? this.found(at, 'low'),
        most: () => {
          const alone = this.best(extra, moved, 'high', (x, y) => x > y) ?? this.found(at, 'high');
          const all = this.mostWithAll(extra, moved);
          return all && all.volts >= alone.volts ? all : alone;
        },
      }),
    ];
  }

  /** Every contact made that can be; the same for all rows while no toggle is among them. */
  private mostWithAll(extra: readonly Moved[], moved: Moved): Found | undefined {
    const common = this.toggles.length === 0 && moved.every((i) => this.makers.includes(i));
    if (common && this.withAll !== undefined) return this.withAll;
    const found = this.best(extra, this.union(moved, this.makers), 'high', (x, y) => x > y);
    if (common) this.withAll = found;
    return found;
  }

  private found(standing: Standing, corner: Corner): Found {
    const key = `${corner}/${standing.moved.join()}`;
    let volts = this.cache.get(key);
    if (volts === undefined) {
      volts = size(this.own.coilVolts(this.relay, standing, corner));
      this.cache.set(key, volts);
    }
    return { volts, standing };
  }

  private best(
    extra: readonly Moved[],
    moved: Moved,
    corner: Corner,
    better: (x: number, y: number) => boolean,
  ): Found | undefined {
    let best: Found | undefined;
    for (const more of extra) {
      const standing = this.standing(this.union(moved, more));
      if (!standing) continue;
      const found = this.found(standing, corner);
      if (!best || better(found.volts, best.volts)) best = found;
    }
    return best;
  }

  /** Inputs moved together, one position for each selector. */
  private union(a: Moved, b: Moved): Moved {
    const { inputs } = this.own.v.circuit;
    const taken = new Set(a.map((i) => inputs[i]!.part));
    return [...new Set([...a, ...b.filter((i) => a.includes(i) || !taken.has(inputs[i]!.part))])].sort(
      (x, y) => x - y,
    );
  }

  /** Too many toggles to try all: from the worst rows, the toggle that lowers the volts most, again and again. */
  private searchWorst(rows: readonly LazyRow[]): LazyRow[] {
    const order = [...rows].sort((x, y) => x.least - y.least).slice(0, SEARCHED_ROWS);
    const step = Math.max(1, Math.floor(this.toggles.length / SAMPLE));
    const sample = this.toggles.filter((_, k) => k % step === 0 || k === this.toggles.length - 1);
    const found = new Map<LazyRow, Found>();
    let common: Moved = [];
    for (const row of order) {
      let moved = row.moved;
      let best: Found = { volts: row.least, standing: row.leastIn };
      for (let round = 0; round < this.own.circuit.relays.length + 1; round++) {
        const next = this.best(
          sample.map((i) => [i]),
          moved,
          'low',
          (x, y) => x < y,
        );
        if (!next || next.volts >= best.volts - 1e-12) break;
        best = next;
        moved = next.standing.moved;
      }
      if (row === order[0]) common = moved.filter((i) => !row.moved.includes(i));
      found.set(row, best);
    }
    return rows.map((row) => {
      const best = found.get(row) ?? this.best([[], common], row.moved, 'low', (x, y) => x < y);
      return best && best.volts < row.least ? row.withLeast(best) : row;
    });
  }
}

/** Inputs moved to try what they feed, with a name for it. */
interface Way {
  readonly gate: string | undefined;
  readonly moved: Moved;
  /** an entry of an intent, and not an input by itself */
  readonly entry: boolean;
}

const ways = new WeakMap<Electrics, readonly Way[]>();

/** Entries of the intents, then single inputs, each state once; the same for every coil. */
function waysOf(own: Electrics): readonly Way[] {
  return kept(ways, own, () => {
    const { v } = own;
    const entries = v.intents.wanted.flatMap((w) => {
      const base = baseState(v, w);
      return w.entries.map((e) => ({
        gate: e.refs.map((r) => r.part).join(' + '),
        moved: entryState(v, w, e.works, base) ?? [],
        entry: true,
      }));
    });
    const single = v.circuit.inputs.map((i) => ({ gate: i.part, moved: [i.index], entry: false }));
    const seen = new Set<string>();
    return [...entries, ...single].filter(({ moved }) => {
      const key = moved.join();
      if (moved.length === 0 || seen.has(key)) return false;
      seen.add(key);
      return true;
    });
  });
}

function subsets(of: readonly number[]): number[][] {
  let all: number[][] = [[]];
  for (const i of of) all = [...all, ...all.map((s) => [...s, i])];
  return all;
}
