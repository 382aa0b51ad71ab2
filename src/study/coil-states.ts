/** Every coil with what it gets in the worst case and what it needs. */
import type { Relay } from '../circuit/circuit.ts';
import type { Plan } from '../plan/plan.ts';
import { pullInAt, takesKind } from '../ratings/coil.ts';
import { warmCelsius } from './coil-models.ts';
import type { CoilRow } from './coil-row.ts';
import { coilFloor, coilRows, statesFeeding } from './coil-rows.ts';
import type { Electrics } from './electrics.ts';
import type { FedCoil } from './fed-coils.ts';
import type { FloorCorner } from './worst/worst-rows.ts';

/** A coil with its rows and the volts that it needs when warm. */
export interface CoilState {
  readonly fed: FedCoil;
  readonly relay: Relay;
  readonly rows: readonly CoilRow[];
  /** V to pull in at the end of a long run in the warmest air */
  readonly pullIn: number;
  /** V that no row goes below, told before the rows are worked out; undefined where no bound tells it */
  floor(corner: FloorCorner): number | undefined;
}

/** The row with the least to spare. */
export function worstRow(state: CoilState): CoilRow {
  return state.rows.reduce((x, y) => (y.least < x.least ? y : x));
}

/** The coils whose kind of current suits their supply, with a row for each way of feeding them; none without solvers. */
export function coilStates(
  plan: Plan,
  coils: readonly FedCoil[],
  electrics: Electrics | undefined,
): CoilState[] {
  if (!electrics) return [];
  return coils.flatMap((fed) => {
    const { model, source } = fed;
    if (!takesKind(model, source.kind)) return [];
    const relay = electrics.v.circuit.relays[fed.relay.index]!;
    if (statesFeeding(electrics, relay).length === 0) return [];
    let rows: readonly CoilRow[] | undefined;
    return {
      fed,
      relay,
      get rows() {
        rows ??= coilRows(electrics, relay);
        return rows;
      },
      pullIn: pullInAt(model, warmCelsius(plan, model)),
      floor: (corner) => (rows === undefined ? coilFloor(electrics, relay, corner) : undefined),
    };
  });
}
