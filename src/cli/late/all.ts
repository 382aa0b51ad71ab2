/**
 * What commands need beyond their arguments, loaded when the first of them asks: this folder names it, and must not do
 * anything with it.
 *
 * Here: whatever most commands need, as one piece. `--help` and `--version` do without it, and one file loads faster than
 * forty.
 */
export * from '../../draw/current-shown.ts';
export * from '../../draw/drawn-state.ts';
export * from '../../draw/input.ts';
export * from '../../draw/paper.ts';
export * from '../../draw/runs/characters.ts';
export * from '../../draw/runs/runs-sheet.ts';
export * from '../../draw/sheet.ts';
export * from '../../draw/terminal-window.ts';
export * from '../../edit/apply-edits.ts';
export * from '../../edit/grow.ts';
export * from '../../edit/growth.ts';
export * from '../../edit/text-changes.ts';
export * from '../../edit/unified-diff.ts';
export * from '../../findings/cautions/choose.ts';
export * from '../../findings/cautions/facts.ts';
export * from '../../findings/explanations.ts';
export * from '../../lists/end-methods.ts';
export * from '../../lists/materials.ts';
export * from '../../lists/too-long.ts';
export * from '../../lists/wirelist.ts';
export * from '../../logic/undecided.ts';
export * from '../../machine/read-meter.ts';
export * from '../../meter/meter-sheet.ts';
export * from '../../meter/readings-asked.ts';
export * from '../../page/build.ts';
export * from '../../page/mending.ts';
export * from '../../plan/quantity.ts';
export * from '../../repair/mend.ts';
export * from '../../report/explanation.ts';
export * from '../../report/growth.ts';
export * from '../../report/materials.ts';
export * from '../../report/meter-sheet.ts';
export * from '../../report/reading.ts';
export * from '../../report/repairs.ts';
export * from '../../report/section-notes.ts';
export * from '../../report/sheet/sheet.ts';
export * from '../../report/truth-table.ts';
export * from '../../report/wire-list.ts';
export * from '../../study/folded-table.ts';
export * from '../../study/truth-table.ts';
export * from '../../study/zones.ts';
export * from './check.ts';
export * from './forms.ts';
