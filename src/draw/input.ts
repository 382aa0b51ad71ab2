/** What a drawing of a plan is made from, in one position of its gates and switches. */
import { judge } from '../findings/judge.ts';
import { movedWords } from '../machine/named.ts';
import type { Study } from '../study/study.ts';
import { shownState } from './current-shown.ts';
import { drawnState } from './drawn-state.ts';
import type { SheetInput } from './sheet.ts';

/** `moved`: inputs by number that stand away from rest. Undefined where no position was asked for: then nothing is drawn heavier, whatever is live at rest. */
export function drawingInput(study: Study, moved?: readonly number[]): Omit<SheetInput, 'date'> {
  const { plan, circuit, sides } = study;
  const state = drawnState(study, moved ?? []);
  return {
    plan,
    report: judge(study),
    circuit,
    sides,
    shown: shownState(circuit, moved === undefined ? { made: state.made } : state),
    state: moved === undefined ? [] : movedWords(plan, moved),
  };
}
