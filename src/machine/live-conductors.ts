/** Which conductors carry volts, and which loads have all they need, in one state. */
import type { Consumer, Source } from '../circuit/circuit.ts';
import { difference } from '../circuit/rail-volts.ts';
import { SILICON_DROP } from '../circuit/thresholds.ts';
import { fedVolts } from '../logic/model.ts';
import type { Plan } from '../plan/plan.ts';
import { terminalKey } from '../plan/terminal-key.ts';
import { isOn, type SolvedIsland } from '../study/supply-limits.ts';
import { joinedByMetal } from './joined-nets.ts';
import type { MachineState } from './machine.ts';
import type { SolvedState } from './solved-state.ts';

/** Share of its source's volts from which a conductor counts as live; below it are stray volts and volts lost in wire. */
const LIVE = 0.1;

/** Whether a net is live; false where no supply reaches it. */
function liveNets(state: MachineState, { byNet }: SolvedState): (net: number) => boolean {
  const joined = joinedByMetal(state.circuit, state.situation);
  return (net) => {
    const island = byNet.get(net);
    if (island === undefined) return false;
    const sources = island.flows.island.sources.filter((s) => isOn(island, state.situation, s));
    // Where the arithmetic does not hold, what metal alone ties to a live pole is still known.
    if (island.notWorkedOut !== undefined)
      return sources.some((s) => s.rails.some((r) => r.live && joined(r.net, net)));
    for (const s of sources) {
      const volts = potential(state, island, s, net);
      if (volts !== undefined) return volts >= LIVE * Math.max(...s.rails.map((r) => Math.hypot(r.re, r.im)));
    }
    return false;
  };
}

/** V (RMS) against the source's reference: minus, neutral, or the middle of two legs and of three phases. */
function potential(state: MachineState, island: SolvedIsland, s: Source, net: number): number | undefined {
  const pole = s.rails.find((r) => !r.live) ?? s.rails[0]!;
  const v = island.flows.volts(net, pole.net);
  if (v === undefined) return undefined;
  const { scale } = state.figures.source(s);
  return Math.hypot(v.re + scale * pole.re, v.im + scale * pole.im);
}

/** `RUN/CORE`, both from 0, of each core and link that is live at either end. */
export function liveCores(plan: Plan, state: MachineState, solved: SolvedState): Set<string> {
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
export function running(state: MachineState, { byNet }: SolvedState): Set<string> {
  const joined = joinedByMetal(state.circuit, state.situation);
  const found = new Set<string>();
  for (const c of state.circuit.consumers) {
    const nets = [...c.nets.values()];
    if (c.dc) {
      if (runsOnDc(state, c, joined, (s) => isPowered(state, byNet, s))) found.add(c.part);
      continue;
    }
    const fed = state.circuit.sources.some((s) => {
      if (!s.mains || !isPowered(state, byNet, s)) return false;
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

function isPowered(state: MachineState, byNet: SolvedState['byNet'], s: Source): boolean {
  const island = byNet.get(s.rails[0]!.net);
  return island !== undefined && isOn(island, state.situation, s);
}

/** Both its ends on the poles of a DC supply, either way round, by metal and through diodes with the volts to spare. */
function runsOnDc(
  state: MachineState,
  consumer: Consumer,
  joined: (a: number, b: number) => boolean,
  isPowered: (s: Source) => boolean,
): boolean {
  const { circuit } = state;
  const [plus, minus] = [...consumer.nets.values()] as [number, number];
  if (joined(plus, minus)) return false;
  const diodes = circuit.diodes.filter((d) => !d.load);
  /** diodes on the way from a net to another, as few as there are; undefined where there is none */
  const between = (from: number, to: number): number | undefined => {
    let reached = [from];
    for (let n = 0; n <= diodes.length; n++) {
      if (reached.some((net) => joined(net, to))) return n;
      const next = diodes.filter((d) => reached.some((net) => joined(net, d.anode))).map((d) => d.cathode);
      if (next.length === 0) return undefined;
      reached = [...new Set([...reached, ...next])];
    }
    return undefined;
  };
  return circuit.sources.some((s) => {
    if (s.mains || s.kind !== 'dc' || !isPowered(s)) return false;
    const spare = s.rails[0]!.re - fedVolts(consumer, s);
    const fits = (x: number, y: number) => {
      const [out, back] = [between(s.rails[0]!.net, x), between(y, s.rails[1]!.net)];
      return out !== undefined && back !== undefined && (out + back) * SILICON_DROP <= spare + 1e-9;
    };
    return fits(plus, minus) || fits(minus, plus);
  });
}
