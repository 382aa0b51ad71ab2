/**
 * Whether a fault can change anything in a state of the right circuit. Taking out what carries no current, and joining
 * what has the same volts or hangs on nothing, changes no volts anywhere (compensation theorem, any textbook on
 * networks); so nothing moves either. Told for the low-voltage side, where volts decide, and for conductors of the mains side
 * that metal joins to no pole, which feed nothing whatever they are joined to among themselves.
 */
import type { WiredCircuit } from '../../circuit/build.ts';
import { isLow, isMains } from '../../circuit/sides.ts';
import { joinedByMetal } from '../../machine/joined-nets.ts';
import type { MachineState } from '../../machine/machine.ts';
import { kept } from '../../plan/map-entries.ts';
import type { Study } from '../../study/study.ts';
import type { SolvedIsland } from '../../study/supply-limits.ts';

/** V and A that are rounding. */
const NOTHING = 1e-7;

/** What is between two nets and was put in or taken out. */
interface Between {
  readonly a: number;
  readonly b: number;
  readonly closed: (state: MachineState) => boolean;
  /** without ohms of its own no volts tell its current */
  readonly sure: (state: MachineState) => boolean;
}

/** The difference of a faulty circuit from the right one; undefined where it is more than things between two nets. */
export interface Difference {
  readonly out: readonly Between[];
  readonly into: readonly Between[];
}

const always = () => true;

/** What a fault takes out and puts in, told by which objects the two circuits share. */
export function differenceOf(right: WiredCircuit, faulty: WiredCircuit): Difference | undefined {
  if (
    right.sources !== faulty.sources ||
    right.relays !== faulty.relays ||
    right.consumers !== faulty.consumers
  )
    return undefined;
  const wires = apart(right.wires, faulty.wires);
  const contacts = apart(right.contacts, faulty.contacts);
  const passives = apart(right.passives, faulty.passives);
  const diodes = apart(right.diodes, faulty.diodes);
  if (passives.into.length + diodes.into.length + diodes.out.length > 0) return undefined;
  const plain = (list: readonly { readonly a: number; readonly b: number }[]): Between[] =>
    list.map(({ a, b }) => ({ a, b, closed: always, sure: always }));
  const cores = (list: WiredCircuit['wires']): Between[] =>
    list.map(({ a, b, metres }) => ({ a, b, closed: always, sure: () => metres > 0 }));
  const moved = (list: WiredCircuit['contacts']): Between[] =>
    list.map((c) => ({
      a: c.a,
      b: c.b,
      closed: (state) => state.situation.closed(c),
      sure: (state) => state.figures.contact(c) > 0,
    }));
  return {
    out: [...cores(wires.out), ...moved(contacts.out), ...plain(passives.out)],
    into: [...plain(wires.into), ...moved(contacts.into)],
  };
}

function apart<T>(right: readonly T[], faulty: readonly T[]): { readonly out: T[]; readonly into: T[] } {
  if (right === faulty) return { out: [], into: [] };
  const [was, is] = [new Set(right), new Set(faulty)];
  return { out: right.filter((x) => !is.has(x)), into: faulty.filter((x) => !was.has(x)) };
}

/** Tells for states of the right circuit whether a difference can matter there. */
export class Touched {
  private readonly low: ReadonlySet<number>;
  /** a dry trigger and a load on DC go by what metal joins, not by volts */
  private readonly byMetal: boolean;
  private readonly solved = new WeakMap<MachineState, readonly SolvedIsland[]>();

  constructor({ wired, circuit, sides }: Study) {
    this.low = new Set(
      wired.terminals.flatMap((keys, net) =>
        keys.some((key) => {
          const own = circuit.netOf.get(key);
          return isLow(sides, own) && !isMains(sides, own);
        })
          ? [net]
          : [],
      ),
    );
    this.byMetal =
      wired.relays.some((r) => r.senses.some((s) => s.by === 'joined')) || wired.consumers.some((c) => c.dc);
  }

  by(difference: Difference | undefined, state: MachineState): boolean {
    if (difference === undefined || this.byMetal || !state.settled) return true;
    const { out, into } = difference;
    if (![...out, ...into].every(({ a, b }) => this.isPlain(a, state) && this.isPlain(b, state))) return true;
    const islands = kept(this.solved, state, () => state.machine.solved(state.situation));
    if (islands.some((i) => i.notWorkedOut !== undefined)) return true;
    const closed = (list: readonly Between[]) => list.filter((x) => x.closed(state));
    if (closed(out).some((x) => !x.sure(state) || (volts(islands, x.a, x.b) ?? 0) !== 0)) return true;
    // What a diode keeps off while it blocks is reached once something else does.
    const blocked = state.circuit.diodes.some((d) => volts(islands, d.anode, d.cathode) === undefined);
    return this.joins(closed(into), islands, state.circuit.netCount, blocked);
  }

  /** Whether what is put in joins nets of unlike volts. Several may bridge over a net that hangs on nothing. */
  private joins(
    made: readonly Between[],
    islands: readonly SolvedIsland[],
    own: number,
    blocked: boolean,
  ): boolean {
    if (made.length === 1) return (volts(islands, made[0]!.a, made[0]!.b) ?? (blocked ? 1 : 0)) !== 0;
    const fresh = (net: number) => net >= own;
    const cluster = new Map<number, number>();
    const root = (net: number): number => {
      const up = cluster.get(net) ?? net;
      return up === net ? net : root(up);
    };
    for (const { a, b } of made) cluster.set(root(a), root(b));
    const first = new Map<number, number>();
    for (const net of new Set(made.flatMap(({ a, b }) => [a, b]))) {
      if (fresh(net)) continue;
      if (volts(islands, net, net) === undefined) return true;
      const other = first.get(root(net));
      if (other !== undefined && volts(islands, other, net) !== 0) return true;
      first.set(root(net), net);
    }
    return false;
  }

  /** Whether volts decide on a net. One that the fault itself brought in hangs on what it was put between. */
  private isPlain(net: number, state: MachineState): boolean {
    if (this.low.has(net) || net >= state.circuit.netCount) return true;
    const { circuit, situation } = state;
    const known = kept(this.floating, state, () => ({
      joined: joinedByMetal(circuit, situation),
      nets: new Map<number, boolean>(),
    }));
    // A tab without a core hangs on its contact alone, and is of the side that this joins it to.
    const bare = (circuit.terminals[net] ?? []).length === 0;
    return kept(known.nets, net, () =>
      circuit.sources.every((s) => (bare && !s.mains) || s.rails.every((r) => !known.joined(r.net, net))),
    );
  }
  private readonly floating = new WeakMap<
    MachineState,
    { readonly joined: (a: number, b: number) => boolean; readonly nets: Map<number, boolean> }
  >();
}

/** V between two nets, 0 where it is rounding; undefined where no island that has power holds both. */
function volts(islands: readonly SolvedIsland[], a: number, b: number): number | undefined {
  for (const { flows } of islands) {
    const v = flows.volts(a, b);
    if (v === undefined) continue;
    const size = Math.hypot(v.re, v.im);
    return size < NOTHING ? 0 : size;
  }
  return undefined;
}
