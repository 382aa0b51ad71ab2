/** The diagram, as large as a page of the printed sheet lets it be. */
import type { Drawing } from '../../draw/drawing.ts';
import { findingMarks } from '../../draw/finding-marks.ts';
import { layOnPaper, type PaperSize } from '../../draw/paper.ts';
import { drawingSvg, FONT } from '../../draw/svg.ts';
import { paragraph } from '../blocks.ts';
import { asHtml } from '../forms/html.ts';
import type { SheetParts } from './parts.ts';

/** mm of a page that the drawing may take, upright and across, inside the margins of the style. */
export const ROOM: Readonly<Record<PaperSize, { readonly up: Room; readonly across: Room }>> = {
  a4: { up: { width: 186, height: 232 }, across: { width: 273, height: 152 } },
  letter: { up: { width: 191.9, height: 214 }, across: { width: 255.4, height: 156 } },
};
interface Room {
  readonly width: number;
  readonly height: number;
}

/** px of the smallest words on a drawing, those on conductors, and points below which they are hard to read in print. */
const SMALLEST = 9.5;
const LEAST_POINTS = 6.5;
const POINTS_PER_MM = 72 / 25.4;

/** The size in print of the smallest words of a drawing that fills the room, in points. */
function points({ width, height }: Drawing, room: Room): number {
  return SMALLEST * Math.min(room.width / width, room.height / height) * POINTS_PER_MM;
}

/** Points that no word goes below where something else is to stand on the page beside the drawing. */
const PRINT_POINTS = 8;

/** The diagram without its heading. */
export interface Diagram {
  readonly across: boolean;
  /** mm of the page's height that it leaves to something else, made smaller as far as its words allow */
  readonly free: number;
  /** `beside`: mm that something else takes of its page */
  readonly html: (beside: number) => string;
}

/** Upright or across, whichever is larger. */
export function diagram(parts: SheetParts): Diagram {
  const { plan, report, circuit, sides, shown, size } = parts;
  const marks = findingMarks(report.findings);
  // The heading and the line below it take about as much as this of a page.
  const { drawing, ...laid } = layOnPaper({ circuit, sides, marks }, size, () => 90, false);
  const across = laid.width > laid.height;
  const smallest = points(drawing, ROOM[size][across ? 'across' : 'up']);
  const turned = across ? ' It lies across the page, where it comes out larger.' : '';
  const small =
    smallest >= LEAST_POINTS
      ? ''
      : ` It fills the page, and its smallest words still come out at ${smallest.toFixed(1)} points; pullin draw -o makes a larger sheet of it.`;
  const below = `Drawn with everything at rest, all gates shut. On a core: number of its run, colour, gauge, length. Lines join at dots and nowhere else.${turned}${small}`;
  const room = ROOM[size][across ? 'across' : 'up'];
  const tall = Math.min(room.height, (drawing.height / drawing.width) * room.width);
  const least = tall * Math.min(1, PRINT_POINTS / smallest);
  const svg = (beside: number) => {
    const most = room.height - beside;
    const style = most < tall ? ` style="max-height: ${most.toFixed(1)}mm"` : '';
    return `<svg class="ladder" role="img" aria-label="Ladder diagram"${style} viewBox="0 0 ${Math.ceil(drawing.width)} ${Math.ceil(drawing.height)}" color="#000" ${FONT}>${drawingSvg(drawing, { plan, shown })}</svg>`;
  };
  return {
    across,
    free: room.height - least,
    html: (beside) => `${svg(beside)}\n${asHtml([paragraph(below)])}`,
  };
}
