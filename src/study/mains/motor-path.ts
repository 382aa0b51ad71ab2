/** Which cables carry the current of which wired-in load. */
import type { WiredCircuit } from '../../circuit/build.ts';
import type { Source } from '../../circuit/circuit.ts';
import { push } from '../../plan/map-entries.ts';
import type { LoadPart, MotorPart } from '../../plan/part-types.ts';

type Load = MotorPart | LoadPart;

/**
 * Runs by index with the loads that lose a conductor when one core of the run is taken away, whatever position the
 * contacts are in. A core with another beside it carries a share only and is left out.
 */
export function carriedBy(
  circuit: WiredCircuit,
  source: Source,
  loads: readonly Load[],
): Map<number, readonly Load[]> {
  const around = neighbours(circuit);
  const starts = source.rails.map((r) => r.net);
  const whole = reachable(starts, around, undefined);
  const nets = loads.map((load) => ({
    load,
    nets: [...(circuit.consumers.find((c) => c.part === load.name)?.nets.values() ?? [])].filter((n) =>
      whole.has(n),
    ),
  }));
  const carried = new Map<number, readonly Load[]>();
  circuit.wires.forEach((wire, index) => {
    if (!whole.has(wire.a)) return;
    const left = reachable(starts, around, index);
    const cut = nets.filter((l) => l.nets.some((n) => !left.has(n))).map((l) => l.load);
    if (cut.length === 0) return;
    carried.set(wire.run, [...new Set([...(carried.get(wire.run) ?? []), ...cut])]);
  });
  return carried;
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

/** Nets reached from some, through every wire but one and every contact. */
export function reachable(
  starts: readonly number[],
  around: ReadonlyMap<number, readonly Step[]>,
  without: number | undefined,
): Set<number> {
  const seen = new Set(starts);
  const queue = [...starts];
  for (let net = queue.pop(); net !== undefined; net = queue.pop())
    for (const { to, wire } of around.get(net) ?? []) {
      if ((wire !== undefined && wire === without) || seen.has(to)) continue;
      seen.add(to);
      queue.push(to);
    }
  return seen;
}
