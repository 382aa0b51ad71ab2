/**
 * Pictures of a circuit: a plan laid out as symbols, conductors and words at their places, and written as SVG or as
 * characters. Nothing here judges a circuit or works out what it does.
 *
 * A drawing is plain data. Lengths are in units of the measures it was laid out with: px, or columns and lines of a
 * terminal. y grows downwards.
 */

export interface Point {
  readonly x: number;
  readonly y: number;
}

export interface Box extends Point {
  readonly width: number;
  readonly height: number;
}

/** What a symbol stands for; a writer has one figure for each. */
export type Figure =
  | 'source'
  | 'primary'
  | 'gate'
  | 'switch'
  | 'button'
  | 'cutout'
  | 'selector'
  | 'pole'
  | 'static-pole'
  | 'coil'
  | 'timer'
  | 'board'
  | 'diode'
  | 'led'
  | 'resistor'
  | 'lamp'
  | 'fuse'
  | 'joint'
  | 'plug'
  | 'outlet'
  | 'motor'
  | 'load'
  | 'box';

export type Side = 'left' | 'right';

/** Words in a box of their own, on one line. `x`, `y` is the top left corner. */
export interface Label extends Box {
  readonly text: string;
  readonly what: 'name' | 'caption' | 'mark' | 'core' | 'finding' | 'section' | 'barrier';
  /** part, terminal (`PART.TERMINAL`) or core (`RUN/CORE`) it belongs to; empty for the sheet */
  readonly of: string;
}

/** One terminal of a symbol. `at` is where its conductors begin, on the edge of the symbol. */
export interface DrawnTerminal {
  /** `PART.TERMINAL`, a joint is its bare name */
  readonly key: string;
  readonly mark: string;
  readonly side: Side;
  /** one point for each line that leaves it; the first is the terminal's own */
  readonly ports: readonly Point[];
}

export interface DrawnSymbol {
  /** part, with what it is of it where a part has several symbols: `K1`, `K1/1` */
  readonly id: string;
  readonly part: string;
  readonly figure: Figure;
  /** the figure with its marks, without its name; no foreign conductor or label enters it */
  readonly box: Box;
  /** true where the figure is drawn mirrored: what stands left by habit stands right */
  readonly mirrored: boolean;
  readonly terminals: readonly DrawnTerminal[];
  /** parts plugged into it and drawn inside it, with the box of each */
  readonly plugged: readonly { readonly part: string; readonly figure: Figure; readonly box: Box }[];
}

/** One core, or a link, from terminal to terminal: a path of horizontal and vertical pieces. */
export interface DrawnCore {
  /** `RUN/CORE`, both from 0 */
  readonly id: string;
  readonly run: number;
  readonly core: number;
  readonly link: boolean;
  readonly from: string;
  readonly to: string;
  readonly path: readonly Point[];
}

export interface Drawing {
  readonly width: number;
  readonly height: number;
  readonly symbols: readonly DrawnSymbol[];
  readonly cores: readonly DrawnCore[];
  readonly labels: readonly Label[];
  /** where more than two conductors meet; a crossing without a dot joins nothing */
  readonly dots: readonly Point[];
  /** y of the line between low voltage (above) and mains (below); undefined where a plan has one side only */
  readonly barrier?: number;
}
