/** The room of the drawing: as many columns as stand beside the controls, and among those the lowest drawing. */
import type { Drawing } from '../draw/drawing.ts';
import { type LayoutInput, layOut } from '../draw/layout/layout.ts';
import { PIXELS } from '../draw/layout/measures.ts';

/** px beside the controls in a window of 1400; a drawing a tenth wider is shown smaller, with every word still read. */
const BESIDE = 1000 * 1.1;
/** Symbols below each other that are seen in one window. */
const BANK = 8;
const COLUMNS = [2, 3, 4, 5, 6];
/** Parts from which on a layout takes time that a person notices; fewer rooms are tried. */
const MANY = 120;

/** The drawing of a circuit as a page has it; the narrowest where none fits beside the controls. */
export function drawingBeside(input: LayoutInput): Drawing {
  const many = input.circuit.plan.parts.size > MANY;
  const drawings = (many ? COLUMNS.slice(0, 2) : COLUMNS).map((columns) =>
    layOut(input, PIXELS, { columns, bank: BANK }),
  );
  const fitting = drawings.filter((d) => d.width <= BESIDE);
  if (fitting.length > 0) return fitting.reduce((least, d) => (d.height < least.height ? d : least));
  return drawings.reduce((least, d) => (d.width < least.width ? d : least));
}
