/** The diagram, as large as a page of the printed sheet lets it be. */
import { type Cut, END_ROOM } from '../../draw/cut-sheets.ts';
import { findingMarks } from '../../draw/finding-marks.ts';
import { layOnSheets } from '../../draw/paper.ts';
import type { PaperSize } from '../../draw/paper-sizes.ts';
import { drawingSvg, endSvg, FONT } from '../../draw/svg.ts';
import { heading, paragraph } from '../blocks.ts';
import { asHtml } from '../forms/html.ts';
import type { Section, SheetParts } from './parts.ts';

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

/** px of a page, less what the heading and the line below the drawing take. */
function roomOf(size: PaperSize, across: boolean) {
  const { width, height } = ROOM[size][across ? 'across' : 'up'];
  return { width: width * PX_PER_MM, height: height * PX_PER_MM - 24, below: 0 };
}

/** Upright or across, on as few pages as keep its words legible. */
export function diagram(parts: SheetParts): Section {
  const { plan, report, circuit, sides, shown, size } = parts;
  const marks = findingMarks(report.findings);
  const { across, cuts, scale } = layOnSheets({ circuit, sides, marks }, (way) => roomOf(size, way));
  const turned = across ? ' It lies across the page, where it comes out larger.' : '';
  const pages = cuts.map((cut, i) => {
    const { width, top, bottom } = pageOf(cut, cuts.length);
    const style = `width:${(width * scale) / PX_PER_MM}mm`;
    const label = cuts.length > 1 ? `Ladder diagram, page ${i + 1} of ${cuts.length}` : 'Ladder diagram';
    return `<svg role="img" aria-label="${label}" style="${style}" viewBox="0 ${top} ${width} ${bottom - top}" color="#000" ${FONT}>${drawingSvg(cut.drawing, { plan, shown })}${cut.ends.map((end) => endSvg(end, `${end.sheet}`)).join('')}</svg>`;
  });
  const below = `Drawn with everything at rest, all gates shut. On a core: number of its run, colour; gauge and length stand in the wire list. Lines join at dots and nowhere else.${turned}${cuts.length > 1 ? ' An arrow names the part of the diagram on which its conductor goes on.' : ''}`;
  return {
    name: `diagram${across ? ' across' : ''}`,
    html: [asHtml([heading(2, 'Diagram')]), ...pages, asHtml([paragraph(below)])].join('\n'),
  };
}

function pageOf({ drawing, top, bottom }: Cut, count: number) {
  const room = count > 1 ? END_ROOM : 0;
  return { width: Math.ceil(drawing.width), top: Math.floor(top - room), bottom: Math.ceil(bottom + room) };
}
