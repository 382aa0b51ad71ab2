/** Sizes a drawing is laid out with: pixels for SVG, columns and lines for a terminal. */
import { columns } from '../../text/wrap.ts';
import type { Figure, Label } from '../drawing.ts';
import { traitsOf } from '../figure-traits.ts';

export interface Measures {
  /** width of a line of text */
  width(text: string, what: Label['what']): number;
  height(what: Label['what']): number;
  /** thickness that a line takes: 1 cell of a terminal, nothing on paper */
  readonly unit: number;
  /** captions cut to what a person at the bench must see, on one line with the name */
  readonly brief: boolean;
  /** letters of a line of a caption that stands below the name */
  readonly captionLine: number;
  /** marks and the labels of lanes lie in the line, instead of above it */
  readonly inLine: boolean;
  /** what a figure needs between its marks, above its first line and below its last */
  figure(figure: Figure): { readonly width: number; readonly head: number; readonly foot: number };
  /** size of the figure of a plugged-in part, without its words */
  readonly plugged: { readonly width: number; readonly height: number };
  /** between the lines of two terminals of a symbol, at least */
  readonly rowGap: number;
  /** the same between the make and the break of one contact */
  readonly closeGap: number;
  /** the name of a contact with make and break stands below its common lead, where there is nothing else */
  readonly besideNames: boolean;
  /** between two lines of one terminal, at least */
  readonly portGap: number;
  /** between a line and a label above or below it */
  readonly labelGap: number;
  /** by which lines that would meet in a channel are put apart */
  readonly step: number;
  /** shortest line beside a symbol, and what a label needs beside its own width */
  readonly stub: number;
  readonly labelPad: number;
  readonly trackGap: number;
  readonly channelEdge: number;
  /** least distance of two conductors on one track */
  readonly trackClear: number;
  /** from the band above to the first lane, and from the last lane to the band below */
  readonly laneEdge: number;
  /** from lane to lane, at least */
  readonly laneGap: number;
  readonly bandGap: number;
  /** room kept round the words above and below the barrier */
  readonly barrierGap: number;
  readonly margin: number;
  /** words on a core: in full, or run and colour letters */
  readonly coreText: 'words' | 'letters';
}

/** px of type of 8 and of 10 points, 96 px to the inch: the least that is read at arm's length, and what stands out. */
export const SMALL_TYPE = 32 / 3;
export const LARGE_TYPE = 40 / 3;

const small = { font: SMALL_TYPE, height: 13 };
const large = { font: LARGE_TYPE, height: 16 };

const SIZE: Readonly<Record<Label['what'], { readonly font: number; readonly height: number }>> = {
  name: large,
  caption: small,
  mark: small,
  core: small,
  finding: large,
  section: small,
  barrier: small,
};

/** px of the letters of each kind of label. */
export function fontSize(what: Label['what']): number {
  return SIZE[what].font;
}

/** Advance of a letter as a share of the font size; monospaced faces have 0.6, and some room is kept. */
const ADVANCE = 0.615;

export const PIXELS: Measures = {
  width: (text, what) => columns(text) * SIZE[what].font * ADVANCE + 2,
  height: (what) => SIZE[what].height,
  unit: 0,
  brief: false,
  captionLine: 16,
  inLine: false,
  figure: (figure) => ({
    width: figure === 'joint' ? 10 : 48,
    head: figure === 'joint' ? 8 : traitsOf(figure).contacts ? 15 : 18,
    foot: traitsOf(figure).tall ? 18 : figure === 'joint' || traitsOf(figure).contacts ? 8 : 12,
  }),
  plugged: { width: 44, height: 44 },
  rowGap: 20,
  closeGap: 17,
  besideNames: true,
  portGap: 16,
  labelGap: 2,
  step: 14,
  stub: 10,
  labelPad: 8,
  trackGap: 11,
  channelEdge: 9,
  trackClear: 8,
  laneEdge: 6,
  laneGap: 17,
  bandGap: 6,
  barrierGap: 8,
  margin: 8,
  coreText: 'words',
};

export const CHARACTERS: Measures = {
  width: (text) => columns(text),
  height: () => 1,
  unit: 1,
  brief: true,
  captionLine: 200,
  inLine: true,
  figure: (figure) => ({ width: figure === 'joint' ? 1 : 7, head: 0.5, foot: 0.5 }),
  plugged: { width: 0, height: 0 },
  rowGap: 1,
  closeGap: 1,
  besideNames: false,
  portGap: 1,
  labelGap: 0.5,
  step: 1,
  stub: 1,
  labelPad: 2,
  trackGap: 2,
  channelEdge: 0,
  trackClear: 1.5,
  laneEdge: 0,
  laneGap: 1,
  bandGap: 0,
  barrierGap: 0,
  margin: 0,
  coreText: 'letters',
};
