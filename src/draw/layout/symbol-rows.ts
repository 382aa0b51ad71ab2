/** Which rows of a symbol take a band of the sheet each, so that what they lead to stands level with them. */
import type { Figure } from '../drawing.ts';
import type { SymbolSpec } from './symbol-specs.ts';

/** Figures whose rows are drawn close together: one contact with its make and its break. */
const CLOSE: ReadonlySet<Figure> = new Set(['gate', 'switch', 'button', 'pole', 'static-pole', 'joint']);

function rowCount(spec: SymbolSpec): number {
  return Math.max(1, ...spec.terminals.map((t) => t.row + 1));
}

/** A cut-out drawn as a snap switch has one common terminal. */
function isClose(spec: SymbolSpec): boolean {
  return CLOSE.has(spec.figure) || (spec.figure === 'cutout' && spec.terminals.some((t) => t.name === 'COM'));
}

/** Bands that a symbol takes. */
export function bandedRows(spec: SymbolSpec): number {
  return isClose(spec) ? 1 : rowCount(spec);
}

/** The band of a row among those of its symbol, and its place within that band. */
export function bandOfRow(spec: SymbolSpec, row: number): { readonly band: number; readonly inner: number } {
  return isClose(spec) ? { band: 0, inner: row } : { band: row, inner: 0 };
}
