/** Which conductors carry volts, and which loads have all they need, in one state. */
import type { Source } from '../circuit/circuit.ts';
import { fedVolts } from '../logic/model.ts';
import { difference } from '../logic/sense.ts';
import type { Plan } from '../plan/plan.ts';
import { terminalKey } from '../plan/terminal-key.ts';
import { type BenchState, joinedIn } from './machine.ts';
import type { Solved } from './solved-state.ts';
import type { Held } from './supply-limits.ts';

/** Share of its source's volts from which a conductor counts as live; below it are stray volts and volts lost in wire. */
const LIVE = 0.1;

/** Whether a net is live; false where no supply reaches it. */
export function liveNets(state: BenchState, { solved }: Solved): (net: number) => boolean {
  const joined = joinedIn(state.circuit, state.situation);
  return (net) => {
    const held = solved.get(net);
    if (held === undefined) return false;
    const sources = held.flows.island.sources.filter((s) => hasPower(state, held, s));
    // Where the arithmetic does not hold, what metal alone ties to a live pole is still known.
    if (held.untold !== undefined)
      return sources.some((s) => s.rails.some((r) => r.live && joined(r.net, net)));
    for (const s of sources) {
      const volts = potential(state, held, s, net);
      if (volts !== undefined) return volts >= LIVE * Math.max(...s.rails.map((r) => Math.hypot(r.re, r.im)));
    }
    return false;
  };
}

/** V (RMS) against the source's reference: minus, neutral, or the middle of two legs and of three phases. */
function potential(state: BenchState, held: Held, s: Source, net: number): number | undefined {
  const pole = s.rails.find((r) => !r.live) ?? s.rails[0]!;
  const v = held.flows.volts(net, pole.net);
  if (v === undefined) return undefined;
  const { scale } = state.figures.source(s);
  return Math.hypot(v.re + scale * pole.re, v.im + scale * pole.im);
}

function hasPower(state: BenchState, held: Held, s: Source): boolean {
  return state.situation.alive(s) && !held.tripped.includes(s);
}

/** `RUN/CORE`, both from 0, of each core and link that is live at either end. */
export function liveCores(plan: Plan, state: BenchState, solved: Solved): Set<string> {
  const live = liveNets(state, solved);
  const found = new Set<string>();
  for (const run of plan.runs)
    run.cores.forEach((core, i) => {
      const nets = [core.a, core.b].map((end) =>
        state.circuit.netOf.get(terminalKey(end.part, end.terminal)),
      );
      if (nets.some((net) => net !== undefined && live(net))) found.add(`${run.index}/${i}`);
    });
  return found;
}

/**
 * Loads and outlets all of whose conductors are joined, by metal alone, to poles of one live mains supply with enough
 * volts between them, as in the proof of starts and stops.
 */
export function running(state: BenchState, { solved }: Solved): Set<string> {
  const joined = joinedIn(state.circuit, state.situation);
  const found = new Set<string>();
  for (const c of state.circuit.consumers) {
    const nets = [...c.nets.values()];
    const fed = state.circuit.sources.some((s) => {
      const held = solved.get(s.rails[0]!.net);
      if (!s.mains || held === undefined || !hasPower(state, held, s)) return false;
      const least = fedVolts(c, s);
      const rails = nets.map((net) => s.rails.filter((r) => joined(r.net, net)));
      const fits = (at: number, taken: readonly Source['rails'][number][]): boolean =>
        at === nets.length ||
        rails[at]!.some((r) => taken.every((t) => difference(r, t) >= least) && fits(at + 1, [...taken, r]));
      return fits(0, []);
    });
    if (fed) found.add(c.part);
  }
  return found;
}
