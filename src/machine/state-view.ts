/** One settled state as plain data: coils with their volts, loads, supplies, lamps, live conductors. */

import { isOwn } from '../circuit/positions.ts';
import type { Plan } from '../plan/plan.ts';
import { joinedByMetal } from './joined-nets.ts';
import { lampsLit } from './lit-lamps.ts';
import { liveCores, running } from './live-conductors.ts';
import type { MachineState } from './machine.ts';
import { madeContacts } from './made-contacts.ts';
import { type SolvedState, solveState } from './solved-state.ts';

/** One condition for a relay to pull in: volts across two terminals, or for a dry trigger that they are joined. */
export interface SenseView {
  readonly what: 'coil' | 'supply' | 'input' | 'trigger';
  /** V, negative where they come the wrong way round for a polarised coil; 0 where nothing comes, null for a trigger */
  readonly volts: number | null;
  /** V to pull in, and at which it has let go; null for a trigger */
  readonly needs: number | null;
  readonly letsGo: number | null;
  /** whether it would pull in by this one */
  readonly met: boolean;
}

export interface RelayView {
  readonly part: string;
  readonly in: boolean;
  /** V and V needed of the sense that decides: the first that is not met, else the first */
  readonly volts: number | null;
  readonly needs: number | null;
  readonly senses: readonly SenseView[];
}

export interface LoadView {
  readonly part: string;
  readonly runs: boolean;
  /** what the plan intends: null where it allows both, or speaks of no such load */
  readonly wanted: boolean | null;
}

export interface SupplyView {
  readonly part: string;
  readonly on: boolean;
  /** shorted, so that its breaker is taken to have opened */
  readonly tripped: boolean;
  /** gives no more than its limit, and its volts sag */
  readonly limited: boolean;
}

export interface StateView {
  readonly relays: readonly RelayView[];
  readonly loads: readonly LoadView[];
  readonly supplies: readonly SupplyView[];
  readonly lamps: readonly { readonly part: string; readonly lit: boolean }[];
  /** `RUN/CORE`, both from 0 */
  readonly live: ReadonlySet<string>;
  /** whether the contact between two terminals `PART.TERMINAL` is made */
  made(common: string, other: string): boolean;
  /** false where relays chatter, so that what is shown is one moment of it */
  readonly settled: boolean;
  /** whether the arithmetic holds; false where AC and DC meet or sources clash */
  readonly told: boolean;
}

/** `targets` are the loads, outlets or relays to tell of, each with what is wanted of it now. */
export function stateView(
  plan: Plan,
  state: MachineState,
  targets: ReadonlyMap<string, boolean | null>,
): StateView {
  const solved = solveState(plan, state);
  const on = running(state, solved);
  const relays = relayViews(state, solved);
  const isIn = new Map(relays.map((r) => [r.part, r.in]));
  return {
    relays,
    loads: [...targets].map(([part, wanted]) => ({
      part,
      runs: isIn.get(part) ?? on.has(part),
      wanted,
    })),
    supplies: supplyViews(state, solved),
    lamps: lampsLit(plan, state, solved),
    live: liveCores(plan, state, solved),
    made: madeContacts(state),
    settled: state.settled,
    told: solved.islands.every((i) => i.notWorkedOut === undefined),
  };
}

function supplyViews(state: MachineState, { islands }: SolvedState): SupplyView[] {
  return state.circuit.sources.map((s) => {
    const tripped = islands.some((i) => i.tripped.includes(s));
    return {
      part: s.part,
      on: state.situation.alive(s) && !tripped,
      tripped,
      limited: islands.some((i) => i.atLimit.includes(s)),
    };
  });
}

function relayViews(state: MachineState, { byNet }: SolvedState): RelayView[] {
  const joined = joinedByMetal(state.circuit, state.situation);
  return state.circuit.relays.filter(isOwn).map((relay) => {
    const senses = relay.senses.map((sense): SenseView => {
      if (sense.by === 'joined') {
        const met = joined(sense.a, sense.b);
        return { what: 'trigger', volts: null, needs: null, letsGo: null, met };
      }
      const island = byNet.get(sense.a);
      const v = island?.flows.volts(sense.a, sense.b);
      const size = v === undefined ? 0 : Math.hypot(v.re, v.im);
      const volts = v !== undefined && !island?.ac && sense.polarised ? v.re : size;
      return {
        what: sense.what,
        volts,
        needs: sense.pullIn,
        letsGo: sense.dropOut,
        met: volts >= sense.pullIn - 1e-9,
      };
    });
    const told = senses.find((s) => !s.met && s.what !== 'trigger') ?? senses[0]!;
    return {
      part: relay.part,
      in: state.relays[relay.index] === true,
      volts: told.volts,
      needs: told.needs,
      senses,
    };
  });
}
