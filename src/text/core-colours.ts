/** What the name of a core says of its colour, and the letters that a colour has. */

/** IEC 60757 letters of core colours, in the order of that table. */
const COLOUR_LETTERS = {
  black: 'BK',
  brown: 'BN',
  red: 'RD',
  orange: 'OG',
  yellow: 'YE',
  green: 'GN',
  blue: 'BU',
  violet: 'VT',
  grey: 'GY',
  white: 'WH',
  pink: 'PK',
  turquoise: 'TQ',
  'green-yellow': 'GNYE',
} as const;

/** A colour of IEC 60757 by its one name here, or no insulation at all. */
export type CoreColour = keyof typeof COLOUR_LETTERS | 'bare';

export interface Coloured {
  /** colour of the insulation */
  readonly colour: CoreColour;
  /** colour of stripes on it; green and yellow together are one colour */
  readonly stripe?: CoreColour;
}

const SAME: Readonly<Record<string, CoreColour>> = {
  gray: 'grey',
  purple: 'violet',
  uninsulated: 'bare',
};
/** Words that say nothing against a colour beside them: shades, how stripes are written, what a core is. */
const BESIDE: ReadonlySet<string> = new Set([
  'light',
  'dark',
  'pale',
  'sky',
  'navy',
  'natural',
  'with',
  'and',
  'stripe',
  'stripes',
  'striped',
  'tracer',
  'core',
  'wire',
  'copper',
]);

const BY_WORD: ReadonlyMap<string, CoreColour> = new Map([
  ...Object.entries(COLOUR_LETTERS).flatMap(([name, letters]): [string, CoreColour][] => [
    [name, name as CoreColour],
    [letters.toLowerCase(), name as CoreColour],
  ]),
  ['bare', 'bare'],
  ...Object.entries(SAME),
]);

/** A word with a number behind it (`black2`) and letters joined as in IEC 60757 (`WHBU`) included. */
function coloursOf(word: string): readonly CoreColour[] | undefined {
  const bare = word.replace(/\d+$/, '');
  const one = BY_WORD.get(bare);
  if (one !== undefined) return [one];
  if (bare === '' || BESIDE.has(bare)) return [];
  const [first, second] = [BY_WORD.get(bare.slice(0, 2)), BY_WORD.get(bare.slice(2))];
  return bare.length === 4 && first !== undefined && second !== undefined ? [first, second] : undefined;
}

/**
 * The colour that a core is called by: `white`, `gray`, `light blue`, `green/yellow`, `white with red stripe`, `BK`,
 * `black 2`. Undefined for a number, and for a name that has a word in it which is no colour.
 */
export function colourOf(name: string): Coloured | undefined {
  const lower = name.toLowerCase();
  // One plain word, as most are; classes of Unicode take longer to make ready than all the colours of a plan.
  const words = /^[a-z]+$/.test(lower) ? [lower] : lower.split(/[^\p{L}\p{N}]+/u).filter((w) => w !== '');
  const found: CoreColour[] = [];
  for (const word of words) {
    const colours = coloursOf(word);
    if (colours === undefined) return undefined;
    found.push(...colours);
  }
  if (found.includes('green') && found.includes('yellow'))
    return found.length === 2 ? { colour: 'green-yellow' } : undefined;
  const [colour, stripe, ...more] = found;
  if (colour === undefined || more.length > 0) return undefined;
  return stripe === undefined ? { colour } : { colour, stripe };
}

/** The letters of a colour where it has some: those of its base and its stripe. A name with a number in it has none. */
export function lettersOf(name: string): string | undefined {
  const known = /\d/.test(name) ? undefined : colourOf(name);
  if (known === undefined) return undefined;
  const letters = [known.colour, known.stripe].flatMap((c) =>
    c === undefined || c === 'bare' ? [] : [COLOUR_LETTERS[c]],
  );
  return letters.length === 0 ? undefined : letters.join('');
}
