/** Every net's volts and every core's current in one state. */

import type { Wire } from '../circuit/nets.ts';
import type { Core, Plan } from '../plan/plan.ts';
import { highestVolts } from '../study/indicators.ts';
import { isOn, limitNotes, type SolvedIsland } from '../study/supply-limits.ts';
import { runMark } from '../text/run-names.ts';
import { EarthVolts } from './earth-volts.ts';
import type { MachineState } from './machine.ts';
import type { CoreReading, NetReading } from './reading.ts';
import { solveState } from './solved-state.ts';
import { withoutRounding } from './voltmeter.ts';

export interface Tables {
  readonly nets: readonly NetReading[];
  readonly cores: readonly CoreReading[];
  readonly notes: readonly string[];
}

export function tabulate(plan: Plan, state: MachineState): Tables {
  const { byNet, islands } = solveState(plan, state);
  const notes = new Set<string>();
  for (const island of islands) {
    for (const note of limitNotes(plan, island)) notes.add(note);
    if (island.notWorkedOut !== undefined) notes.add(island.notWorkedOut);
  }
  const scale = highestVolts(plan);
  const earth = new EarthVolts(state, state.figures, () => islands);
  const nets = state.circuit.terminals.flatMap((terminals, net): NetReading[] =>
    terminals.length === 0
      ? []
      : [{ terminals: [...terminals], ...against(state, earth, byNet.get(net), net, scale) }],
  );
  const cores = state.circuit.wires.map((w) => coreReading(plan, w, byNet.get(w.a)));
  return { nets, cores, notes: [...notes] };
}

/**
 * Volts against the last pole of a live source in the same piece of circuit: minus, neutral, the second wire; against its
 * earth where its two legs have an earthed middle.
 */
function against(
  state: MachineState,
  earth: EarthVolts,
  island: SolvedIsland | undefined,
  net: number,
  scale: number,
): Omit<NetReading, 'terminals'> {
  const nothing = { volts: null, kind: null, against: null };
  const earthOf = earth.plugOf(net);
  if (earthOf) return { volts: 0, kind: 'ac', against: `${earthOf.part}.PE` };
  if (island?.notWorkedOut !== undefined || !island) return nothing;
  for (const s of island.flows.island.sources) {
    if (!isOn(island, state.situation, s)) continue;
    const toEarth = s.earthed && earth.potential(island, s, net);
    if (toEarth !== undefined && earth.plugs(s))
      return { volts: withoutRounding(toEarth, Math.max(scale, 1)), kind: 'ac', against: `${s.part}.PE` };
    const pole = s.rails.find((r) => !r.live) ?? s.rails.at(-1)!;
    const v = island.flows.volts(net, pole.net);
    if (!v) continue;
    const value = island.ac ? Math.hypot(v.re, v.im) : v.re;
    return {
      volts: withoutRounding(value, Math.max(scale, 1)),
      kind: island.ac ? 'ac' : 'dc',
      against: `${s.part}.${pole.terminal}`,
    };
  }
  return nothing;
}

function coreReading(plan: Plan, wire: Wire, island: SolvedIsland | undefined): CoreReading {
  const run = plan.runs[wire.run]!;
  const core: Core = run.cores[wire.core]!;
  const i = island && island.notWorkedOut === undefined ? island.flows.amps(wire) : undefined;
  const amps = i === undefined ? null : island!.ac ? Math.hypot(i.re, i.im) : i.re;
  return {
    run: wire.run + 1,
    mark: runMark(run),
    name: run.name ?? null,
    colour: core.colour,
    from: core.a.written,
    to: core.b.written,
    amps: island === undefined ? 0 : amps === null ? null : withoutRounding(amps, 1),
  };
}
