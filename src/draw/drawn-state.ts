/** A settled state as a drawing shows it. */
import { liveCores } from '../machine/live-conductors.ts';
import { madeContacts } from '../machine/made-contacts.ts';
import { settledState } from '../machine/power.ts';
import { solveState } from '../machine/solved-state.ts';
import type { Basis } from '../study/basis.ts';
import type { DrawnState } from './current-shown.ts';

/** Contacts and live conductors once the inputs with these numbers have been moved from rest. */
export function drawnState(study: Basis, moved: readonly number[]): DrawnState {
  const state = settledState(study, moved, 'on');
  const { plan } = study;
  const live = liveCores(plan, state, solveState(plan, state));
  return { made: madeContacts(state), live: (run, core) => live.has(`${run}/${core}`) };
}
