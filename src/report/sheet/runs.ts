/** The map of the runs on the printed sheet: below the diagram where both go on one page, else where the page has room. */
import { RUNS_NOTE } from '../../draw/runs/runs-sheet.ts';
import { type RunsPicture, runsPicture } from '../../draw/runs/runs-svg.ts';
import { FONT } from '../../draw/svg.ts';
import { paragraph } from '../blocks.ts';
import { asHtml } from '../forms/html.ts';
import { ROOM } from './diagram.ts';
import type { SheetParts } from './parts.ts';

const PX = 96 / 25.4;
/** mm of a page that one piece of the map may take. */
const MOST = 200;
/** mm that the heading and the sentence below it take. */
const WORDS = 20;

/** The map as HTML without its heading, and the mm that it takes; undefined where no run leads anywhere. */
export function runsMap(
  { plan, circuit, sides, size }: Pick<SheetParts, 'plan' | 'circuit' | 'sides' | 'size'>,
  across: boolean,
): { readonly html: string; readonly height: number } | undefined {
  const width = ROOM[size][across ? 'across' : 'up'].width * PX;
  const map = runsPicture({ plan, circuit, sides }, { width, boxes: true });
  if (map === undefined) return undefined;
  const html = [...pieces(map).map(([from, to]) => pieceSvg(map, from, to)), asHtml([paragraph(RUNS_NOTE)])];
  return { html: html.join('\n'), height: map.height / PX + WORDS };
}

/** Stretches between breaks that go on a page; most maps are one. */
function pieces({ breaks }: RunsPicture): [number, number][] {
  const found: [number, number][] = [];
  let from = 0;
  let last = 0;
  for (const y of breaks) {
    if (y - from > MOST * PX && last > from) {
      found.push([from, last]);
      from = last;
    }
    last = y;
  }
  return [...found, [from, last]];
}

function pieceSvg({ svg, width }: RunsPicture, from: number, to: number): string {
  const mm = (px: number) => `${(px / PX).toFixed(2)}mm`;
  return `<svg class="map" role="img" aria-label="Map of the runs" width="${mm(width)}" height="${mm(to - from)}" viewBox="0 ${from} ${width} ${to - from}" color="#000" ${FONT}>${svg}</svg>`;
}
