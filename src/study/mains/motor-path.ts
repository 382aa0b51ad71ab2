/** Which cables carry the current of which wired-in load. */
import type { WiredCircuit } from '../../circuit/build.ts';
import type { Source } from '../../circuit/circuit.ts';
import { kept, push } from '../../plan/map-entries.ts';
import type { LoadPart, MotorPart } from '../../plan/part-types.ts';

type Load = MotorPart | LoadPart;

/** What a run carries: loads, and the share of their current that comes to its busiest core. */
export interface Carried {
  readonly loads: readonly Load[];
  /** 1 for a core alone, less where others lie beside it between the same two ends */
  readonly share: number;
}

/**
 * Runs by index with the loads that lose a conductor when one core of the run is taken away, whatever position the
 * contacts are in. Cores between the same two ends are taken away together, and each carries its share by its copper.
 */
export function carriedBy(
  circuit: WiredCircuit,
  source: Source,
  loads: readonly Load[],
): Map<number, Carried> {
  const around = neighbours(circuit);
  const starts = source.rails.map((r) => r.net);
  const whole = reachable(starts, around, undefined);
  const nets = loads.map((load) => ({
    load,
    nets: [...(circuit.consumers.find((c) => c.part === load.name)?.nets.values() ?? [])].filter((n) =>
      whole.has(n),
    ),
  }));
  const carried = new Map<number, Carried>();
  const parallel = paralleled(circuit);
  circuit.wires.forEach((wire, index) => {
    if (!whole.has(wire.a)) return;
    const beside = parallel(index);
    const left = reachable(starts, around, beside);
    const cut = nets.filter((l) => l.nets.some((n) => !left.has(n))).map((l) => l.load);
    if (cut.length === 0) return;
    const known = carried.get(wire.run);
    carried.set(wire.run, {
      loads: [...new Set([...(known?.loads ?? []), ...cut])],
      share: Math.max(known?.share ?? 0, shareOf(circuit, index, beside)),
    });
  });
  return carried;
}

/** The wires, itself included, that lie between the same two ends as one of them. */
export function paralleled({ wires }: WiredCircuit): (wire: number) => ReadonlySet<number> {
  const groups = new Map<string, Set<number>>();
  const key = ({ a, b }: WiredCircuit['wires'][number]) => (a < b ? `${a} ${b}` : `${b} ${a}`);
  wires.forEach((w, index) => {
    kept(groups, key(w), () => new Set<number>()).add(index);
  });
  return (wire) => groups.get(key(wires[wire]!))!;
}

/** Of the current of wires side by side what one takes: by its area over its length. */
function shareOf({ wires, plan }: WiredCircuit, wire: number, beside: ReadonlySet<number>): number {
  if (beside.size < 2) return 1;
  const siemens = (index: number) => {
    const { run, metres } = wires[index]!;
    return (plan.runs[run]!.cable?.area ?? 0) / Math.max(metres, 1e-3);
  };
  const all = [...beside].reduce((sum, index) => sum + siemens(index), 0);
  return all > 0 ? siemens(wire) / all : 1;
}

export interface Step {
  readonly to: number;
  /** index of the wire; undefined through a contact */
  readonly wire: number | undefined;
}

export function neighbours(circuit: WiredCircuit): Map<number, Step[]> {
  const around = new Map<number, Step[]>();
  const join = (a: number, b: number, wire: number | undefined) => {
    push(around, a, { to: b, wire });
    push(around, b, { to: a, wire });
  };
  circuit.wires.forEach((w, index) => {
    join(w.a, w.b, index);
  });
  for (const c of circuit.contacts) join(c.a, c.b, undefined);
  return around;
}

/** Nets reached from some, through every contact and every wire but those without which it is asked for. */
export function reachable(
  starts: readonly number[],
  around: ReadonlyMap<number, readonly Step[]>,
  without: number | ReadonlySet<number> | undefined,
): Set<number> {
  const isAway = (wire: number) => (typeof without === 'object' ? without.has(wire) : wire === without);
  const seen = new Set(starts);
  const queue = [...starts];
  for (let net = queue.pop(); net !== undefined; net = queue.pop())
    for (const { to, wire } of around.get(net) ?? []) {
      if ((wire !== undefined && isAway(wire)) || seen.has(to)) continue;
      seen.add(to);
      queue.push(to);
    }
  return seen;
}
