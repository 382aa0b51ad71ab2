/** The diagram, on as few pages of the printed sheet as keep its words legible. */
import { type Cut, END_ROOM } from '../../draw/cut-sheets.ts';
import { findingMarks } from '../../draw/finding-marks.ts';
import { layOnSheets } from '../../draw/paper.ts';
import type { PaperSize } from '../../draw/paper-sizes.ts';
import { drawingSvg, endSvg, FONT } from '../../draw/svg.ts';
import { paragraph } from '../blocks.ts';
import { asHtml } from '../forms/html.ts';
import type { SheetParts } from './parts.ts';

/** mm of a page that the drawing may take, upright and across, inside the margins of the style. */
export const ROOM: Readonly<Record<PaperSize, { readonly up: Room; readonly across: Room }>> = {
  a4: { up: { width: 186, height: 232 }, across: { width: 273, height: 152 } },
  a3: { up: { width: 273, height: 355 }, across: { width: 396, height: 239 } },
  letter: { up: { width: 191.9, height: 214 }, across: { width: 255.4, height: 156 } },
  tabloid: { up: { width: 255.4, height: 366 }, across: { width: 407.8, height: 219 } },
};
interface Room {
  readonly width: number;
  readonly height: number;
}

const PX_PER_MM = 96 / 25.4;

/** The diagram without its heading. */
export interface Diagram {
  readonly across: boolean;
  /** mm of the page's height that it leaves to something else, made smaller as far as its words allow */
  readonly free: number;
  /** `beside`: mm that something else takes of its page */
  readonly html: (beside: number) => string;
}

/** Upright or across, whichever takes fewer pages. */
export function diagram(parts: SheetParts): Diagram {
  const { report, circuit, sides, size } = parts;
  const marks = findingMarks(report.findings);
  const { across, cuts, scale } = layOnSheets({ circuit, sides, marks }, (way) => {
    const { width, height } = ROOM[size][way ? 'across' : 'up'];
    return { width: width * PX_PER_MM, height: height * PX_PER_MM, below: 0 };
  });
  const room = ROOM[size][across ? 'across' : 'up'];
  const turned = across ? ' It lies across the page, where it fits better.' : '';
  const goesOn =
    cuts.length > 1 ? ' An arrow names the part of the diagram on which its conductor goes on.' : '';
  const below = `Drawn with everything at rest, all gates shut. On a core: number of its run and colour; gauge and length stand in the wire list. Lines join at dots and nowhere else.${turned}${goesOn}`;
  return {
    across,
    // At scale 1 words are 8 points.
    free: cuts.length > 1 ? 0 : room.height - (cuts[0]!.drawing.height * Math.min(1, scale)) / PX_PER_MM,
    html: (beside) =>
      [
        ...cuts.map((cut, i) =>
          page(parts, cut, { scale, most: room.height - beside, of: [i + 1, cuts.length] }),
        ),
        asHtml([paragraph(below)]),
      ].join('\n'),
  };
}

interface Page {
  readonly scale: number;
  /** mm that it may be high */
  readonly most: number;
  /** which it is, and of how many */
  readonly of: readonly [number, number];
}

function page({ plan, shown }: SheetParts, cut: Cut, { scale, most, of: [number, count] }: Page): string {
  const room = count > 1 ? END_ROOM : 0;
  const [top, bottom] = [Math.floor(cut.top - room), Math.ceil(cut.bottom + room)];
  const width = Math.ceil(cut.drawing.width);
  const fit = Math.min(scale, (most * PX_PER_MM) / (bottom - top));
  const style = `width: ${((width * fit) / PX_PER_MM).toFixed(1)}mm`;
  const label = count > 1 ? `Ladder diagram, part ${number} of ${count}` : 'Ladder diagram';
  const ends = cut.ends.map((end) => endSvg(end, `${end.sheet}`)).join('');
  return `<svg class="ladder" role="img" aria-label="${label}" style="${style}" viewBox="0 ${top} ${width} ${bottom - top}" color="#000" ${FONT}>${drawingSvg(cut.drawing, { plan, shown })}${ends}</svg>`;
}
