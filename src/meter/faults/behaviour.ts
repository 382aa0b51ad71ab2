/** What a person at the machine sees, hears and can try with a lamp, in one position of gates and switches. */
import { isOwn } from '../../circuit/positions.ts';
import { lampsLit } from '../../machine/lit-lamps.ts';
import { running } from '../../machine/live-conductors.ts';
import type { MachineState } from '../../machine/machine.ts';
import type { SolvedState } from '../../machine/solved-state.ts';
import type { Plan } from '../../plan/plan.ts';
import { terminalKey } from '../../plan/terminal-key.ts';
import type { SolvedIsland } from '../../study/supply-limits.ts';

export interface Behaviour {
  /** motors and loads that turn or work */
  readonly runs: ReadonlySet<string>;
  /** outlets that have mains, and plugs whose socket has, as a lamp or plug-in tester there shows */
  readonly fed: ReadonlySet<string>;
  /** relays that are in */
  readonly into: ReadonlySet<string>;
  readonly lit: ReadonlySet<string>;
  /** supplies that are shorted or held at their limit, which nobody sees but the supply feels */
  readonly strained: ReadonlySet<string>;
  /** false where relays find no rest and chatter */
  readonly settled: boolean;
}

/** `still` are loads that do not turn although they are fed. */
export function behaviourOf(plan: Plan, state: MachineState, still: ReadonlySet<string>): Behaviour {
  const solved = solvedOf(state);
  const { circuit } = state;
  const on = running(state, solved);
  const kind = (part: string) => plan.parts.get(part)?.kind;
  return {
    runs: new Set([...on].filter((part) => kind(part) !== 'outlet' && !still.has(part))),
    fed: new Set([...socketsLive(plan, state, solved), ...[...on].filter((part) => kind(part) === 'outlet')]),
    into: new Set(circuit.relays.filter((r) => isOwn(r) && state.relays[r.index]).map((r) => r.part)),
    lit: new Set(lampsLit(plan, state, solved).flatMap((l) => (l.lit ? [l.part] : []))),
    strained: new Set(solved.islands.flatMap((i) => [...i.tripped, ...i.atLimit].map((s) => s.part))),
    settled: state.settled,
  };
}

/** The islands that have power as the machine solved them already. */
function solvedOf(state: MachineState): SolvedState {
  const islands = state.machine.solved(state.situation);
  const byNet = new Map<number, SolvedIsland>();
  for (const solved of islands) for (const net of solved.flows.island.nets) byNet.set(net, solved);
  return { islands, byNet };
}

/** A plug that was pulled leaves a live socket; what no mains comes in at, or what shorts its breaker out, a dead one. */
function socketsLive(plan: Plan, { circuit, situation }: MachineState, { islands }: SolvedState): string[] {
  return [...plan.parts.values()].flatMap((part) => {
    if (part.kind !== 'plug') return [];
    const source = circuit.sources.find((s) => s.part === part.name);
    if (source === undefined) return [part.name];
    const whole = source.rails.every((r) => circuit.netOf.get(terminalKey(part.name, r.terminal)) === r.net);
    const tripped = islands.some((i) => i.tripped.includes(source));
    return whole && situation.alive(source) && !tripped ? [part.name] : [];
  });
}

/** The same text for behaviours that look the same. */
export function lookOf({ runs, fed, into, lit, settled }: Behaviour): string {
  const all = [runs, fed, into, lit].map((set) => [...set].sort().join());
  return `${settled ? '' : 'chatters '}${all.join('/')}`;
}
