/** What `faults` and `hunt` need beyond what every command does. */
export * from '../../meter/faults/fault-table.ts';
export * from '../../meter/hunt/answer-to.ts';
export * from '../../meter/hunt/hunt.ts';
export * from '../../meter/hunt/plain-form.ts';
export * from '../../meter/hunt/tell.ts';
export { firstDanger } from '../../meter/meter-sheet.ts';
export * from '../../report/faults.ts';
export * from '../../report/hunt.ts';
