/** The few words on a conductor. */
import type { Core, Run } from '../plan/plan.ts';
import { printable } from '../text/escape.ts';
import { lengthWords } from './caption-words.ts';

/** `3 white 20 AWG 4 m`: run, colour, gauge and length. A link has no gauge. */
export function coreWords(run: Run, core: Core): string {
  if (run.link) return `${run.index + 1} link`;
  const length = run.length === undefined ? '' : lengthWords(run.length);
  return printable(
    [run.index + 1, core.colour, run.cable?.gauge ?? '', length].filter((w) => w !== '').join(' '),
  );
}

/** IEC 60757 letters of core colours. */
const COLOUR_LETTERS: Readonly<Record<string, string>> = {
  black: 'BK',
  brown: 'BN',
  red: 'RD',
  orange: 'OG',
  yellow: 'YE',
  green: 'GN',
  blue: 'BU',
  violet: 'VT',
  purple: 'VT',
  grey: 'GY',
  gray: 'GY',
  white: 'WH',
  pink: 'PK',
  'green-yellow': 'GNYE',
};

/** `3 WH`: run and colour alone, for narrow drawings; letters of IEC 60757 where the colour has some. */
export function coreLetters(run: Run, core: Core): string {
  if (run.link) return `${run.index + 1} link`;
  const letters = Object.hasOwn(COLOUR_LETTERS, core.colour) ? COLOUR_LETTERS[core.colour]! : core.colour;
  const shortened = [...printable(letters)];
  return `${run.index + 1} ${shortened.length > 8 ? `${shortened.slice(0, 7).join('')}~` : shortened.join('')}`;
}
