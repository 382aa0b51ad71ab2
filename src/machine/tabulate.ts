/** Every net's volts and every core's current in one state. */

import type { Wire } from '../circuit/nets.ts';
import type { Core, Plan } from '../plan/plan.ts';
import { highestVolts } from '../study/indicators.ts';
import type { BenchState } from './machine.ts';
import type { CoreReading, NetReading } from './reading.ts';
import { clean, limitNotes } from './reading-notes.ts';
import { solveState } from './solved-state.ts';
import type { Held } from './supply-limits.ts';

export interface Tables {
  readonly nets: readonly NetReading[];
  readonly cores: readonly CoreReading[];
  readonly notes: readonly string[];
}

export function tabulate(plan: Plan, state: BenchState): Tables {
  const { solved, islands } = solveState(plan, state);
  const notes = new Set<string>();
  for (const held of islands) {
    for (const note of limitNotes(plan, held)) notes.add(note);
    if (held.untold !== undefined) notes.add(held.untold);
  }
  const scale = highestVolts(plan);
  const nets = state.circuit.terminals.flatMap((terminals, net): NetReading[] =>
    terminals.length === 0
      ? []
      : [{ terminals: [...terminals], ...against(state, solved.get(net), net, scale) }],
  );
  const cores = state.circuit.wires.map((w) => coreReading(plan, w, solved.get(w.a)));
  return { nets, cores, notes: [...notes] };
}

/** Volts against the last pole of a live source in the same piece of circuit: minus, neutral, the second wire. */
function against(
  state: BenchState,
  held: Held | undefined,
  net: number,
  scale: number,
): Omit<NetReading, 'terminals'> {
  const nothing = { volts: null, kind: null, against: null };
  if (held?.untold !== undefined || !held) return nothing;
  for (const s of held.flows.island.sources) {
    if (!state.situation.alive(s) || held.tripped.includes(s)) continue;
    const pole = s.rails.find((r) => !r.live) ?? s.rails.at(-1)!;
    const v = held.flows.volts(net, pole.net);
    if (!v) continue;
    const value = held.ac ? Math.hypot(v.re, v.im) : v.re;
    return {
      volts: clean(value, Math.max(scale, 1)),
      kind: held.ac ? 'ac' : 'dc',
      against: `${s.part}.${pole.terminal}`,
    };
  }
  return nothing;
}

function coreReading(plan: Plan, wire: Wire, held: Held | undefined): CoreReading {
  const run = plan.runs[wire.run]!;
  const core: Core = run.cores[wire.core]!;
  const i = held && held.untold === undefined ? held.flows.amps(wire) : undefined;
  const amps = i === undefined ? null : held!.ac ? Math.hypot(i.re, i.im) : i.re;
  return {
    run: wire.run + 1,
    name: run.name ?? null,
    colour: core.colour,
    from: core.a.written,
    to: core.b.written,
    amps: held === undefined ? 0 : amps === null ? null : clean(amps, 1),
  };
}
