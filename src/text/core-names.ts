/** What a core is called, in running text and on a drawing. */
import { lettersOf } from './core-colours.ts';
import { printable } from './escape.ts';

/** A core by its colour; a bare jumper is called a link whatever its colour. */
export interface NamedCore {
  readonly colour: string;
  readonly link?: boolean;
}

/** The same with its two ends as the plan writes them. */
export interface EndedCore extends NamedCore {
  readonly a: string;
  readonly b: string;
}

/** `the red core` or `the link`. */
export function theCore({ colour, link }: NamedCore): string {
  return link ? 'the link' : `the ${colour} core`;
}

/** `the red core from bandsaw.COM to planer.COM`. */
export function coreFromTo(core: EndedCore): string {
  return `${theCore(core)} from ${core.a} to ${core.b}`;
}

/** `the red core between bandsaw.COM and planer.COM (run 3, line 12)`: where to find it in the file as well. */
export function coreBetween(core: EndedCore, run: string, line: number): string {
  return `${theCore(core)} between ${core.a} and ${core.b} (${run}, line ${line})`;
}

/** `the red and the white core`, of one cable. */
export function bothCores(first: string, second: string): string {
  return `the ${first} and the ${second} core`;
}

/** `red core`, `red and white cores`; the colours each once. */
export function coresOf(colours: readonly string[]): string {
  return `${[...new Set(colours)].join(' and ')} ${colours.length === 1 ? 'core' : 'cores'}`;
}

/** `1 core`, `4 cores`. */
export function countedCores(cores: number): string {
  return cores === 1 ? '1 core' : `${cores} cores`;
}

/** A core on a drawing: the mark of its run (`3`, `3.2`) and its colour. */
export interface CoreOnDrawing extends NamedCore {
  readonly run: string;
}

/** `3 white`. */
export function drawnInWords({ run, colour, link }: CoreOnDrawing): string {
  return link ? `${run} link` : printable(`${run} ${colour}`);
}

/** `3 WH`, for narrow drawings: letters of IEC 60757 where the colour has some, else the colour, cut when long. */
export function drawnInLetters({ run, colour, link }: CoreOnDrawing): string {
  if (link) return `${run} link`;
  const letters = lettersOf(colour) ?? colour;
  const shortened = [...printable(letters)];
  return `${run} ${shortened.length > 8 ? `${shortened.slice(0, 7).join('')}~` : shortened.join('')}`;
}
