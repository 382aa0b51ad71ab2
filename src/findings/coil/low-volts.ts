import type { CoilRow } from '../../study/coil-row.ts';
import { type CoilState, worstRow } from '../../study/coil-states.ts';
import { perStudy } from '../../study/per-study.ts';

/** Share of rated volts by which the least may lie above pull-in before the margin counts as thin. */
export const THIN = 0.05;

const EPSILON = 1e-9;

/** A coil that gets too few volts in the worst case, or only just enough. */
export interface LowCoil {
  readonly state: CoilState;
  /** the way of feeding it with the least volts */
  readonly row: CoilRow;
  /** whether it may fail to pull in; else its margin is thin */
  readonly fails: boolean;
}

/** Whether a way of feeding a coil may leave it out. */
export function isShort({ pullIn }: CoilState, row: CoilRow): boolean {
  return row.least < pullIn - EPSILON;
}

export const lowCoils = perStudy((study): readonly LowCoil[] =>
  study.coilStates.flatMap((state) => {
    const { part, model } = state.fed;
    const ample = state.pullIn + THIN * model.rated - EPSILON;
    if ((state.floor('low') ?? 0) >= ample) return [];
    const row = worstRow(state);
    const fails = isShort(state, row);
    if (!fails && row.least >= ample) return [];
    // How much is to spare is not known while the current of the coil is not; that is a doubt of its own.
    if (!fails && model.ohms === undefined && part.kind !== 'board') return [];
    return [{ state, row, fails }];
  }),
);
