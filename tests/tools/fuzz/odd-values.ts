/** What nobody types into a plan: names that objects have already, characters that act, numbers beyond reason. */
import type { Dice } from './dice.ts';

/** Names that every object or array has, and those that JavaScript treats apart. */
export const PROTOTYPE_NAMES: readonly string[] = [
  'constructor',
  '__proto__',
  'prototype',
  'toString',
  'hasOwnProperty',
  'valueOf',
  'isPrototypeOf',
  '__defineGetter__',
  'toJSON',
  'length',
  'then',
  'name',
];

/** Characters that move a cursor, turn a line round, end a string in some form of output, or are no characters. */
export const ACTING: readonly string[] = [
  '\u001b[2J',
  '\u009b31m',
  '\u001b]0;x\u0007',
  '\u202e',
  '\u2066x\u2069',
  '\u200b',
  '\u2028',
  '\u0085',
  '\ufeff',
  '\u00ad',
  '\ud800',
  '\udc00x',
  '\u{e0041}',
  '\u{f0000}',
  '\uffff',
  '\r',
  '\n',
  '\t',
  '\0',
  '\b',
  '\u007f',
  'a\u0301\u0301\u0301\u0301\u0301\u0301\u0301\u0301',
  '<script>alert(1)</script>',
  ']]>',
  '<!--',
  '-->',
  '"\'`',
  'javascript:alert(1)',
  '=cmd|x!A1',
  '+1',
  '-1',
  '@x',
  '| a | b |',
  '**a** _b_ [c](d)',
  '&amp;&lt;&#0;',
  '%',
  '.TH x',
  '\\',
  '$ {x}',
  '../../x',
  '\u{1f600}',
  'ß',
  'İ',
  'ｗｉｄｅ',
  'مرحبا',
];

const NUMBERS: readonly string[] = [
  '0',
  '-0',
  '-1',
  '1e308',
  '1e309',
  '-1e309',
  '5e-324',
  '1e-300',
  '1e300',
  '9007199254740993',
  '0.1',
  '.5',
  '5.',
  '1,5',
  '1_000',
  '0x10',
  '0o17',
  'NaN',
  '.nan',
  '.inf',
  'Infinity',
  '1e3',
  '99999999999999999999999999',
  '1/0',
  '1/2',
  '3/4',
  '٣',
  '²',
];

const UNITS: readonly string[] = [
  '',
  'V',
  'V DC',
  'V AC',
  'V AC 60 Hz',
  'A',
  'mA',
  'ohm',
  'kohm',
  'Ω',
  'm',
  'ft',
  'in',
  'W',
  'hp',
  'kW',
  '%',
  '°C',
  'AWG',
  'mm2',
  's',
  'min',
  'Ah',
  'A 250 V AC',
  'hp 240 V AC',
  'V AC/DC',
];

/** A number with or without a unit. */
export const oddNumber = (dice: Dice): string =>
  `${dice.of(NUMBERS)}${dice.chance(0.7) ? ' ' : ''}${dice.of(UNITS)}`.trim();

/** Any text but a sensible one. */
export function oddText(dice: Dice): string {
  switch (dice.below(8)) {
    case 0:
      return dice.of(PROTOTYPE_NAMES);
    case 1:
    case 2:
      return `${dice.chance(0.5) ? 'a' : ''}${dice.of(ACTING)}${dice.chance(0.5) ? 'b' : ''}`;
    case 3:
    case 4:
      return oddNumber(dice);
    case 5:
      return dice.of(['x', '€', ' ', '\u00a0', 'ab ']).repeat(dice.few(3000));
    case 6:
      return dice.of([
        '',
        '~',
        'null',
        'true',
        'yes',
        'no',
        '!!int',
        '*a',
        '&a',
        '-',
        '?',
        ': ',
        '#',
        '{',
        '[',
      ]);
    default:
      return Array.from({ length: 1 + dice.below(6) }, () => String.fromCharCode(dice.below(0x3000))).join(
        '',
      );
  }
}
