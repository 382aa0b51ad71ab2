/** Everyday words for terminals, and the names that a part has for them. */
import type { Errors } from './errors.ts';
import { either } from './quantity-reader.ts';
import type { Terminals } from './terminals.ts';

type Sets = readonly (readonly string[])[];

const LIVE: Sets = [['L'], ['L1', 'L2', 'L3'], ['~1']];
/** Never the minus of a supply: whoever means the earth must not be led to it. */
const EARTH: Sets = [['PE'], ['GND']];
const PLUS: Sets = [['+'], ['VCC']];
const MINUS: Sets = [['-'], ['GND']];

/** The names that a word may stand for; the first set of which a part has any counts. */
const MEANT: readonly (readonly [words: string, sets: Sets])[] = [
  ['hot live line phase active', LIVE],
  ['neutral neut', [['N'], ['~2']]],
  ['ground earth grounding protective', EARTH],
  ['gnd 0v', [['GND'], ['-'], ['PE']]],
  [
    'coil',
    [
      ['A1', 'A2'],
      ['VCC', 'GND'],
    ],
  ],
  ['coil+ coil1 coil-1 coil_1', [['A1'], ['VCC']]],
  ['coil- coil2 coil-2 coil_2', [['A2'], ['GND']]],
  ['common comm pole', [['COM']]],
  ['normally-open normallyopen open make n.o n.o.', [['NO']]],
  ['normally-closed normallyclosed closed break n.c n.c.', [['NC']]],
  ['plus positive pos v+', PLUS],
  ['minus negative neg v- return', MINUS],
  ['anode', [['A']]],
  ['cathode band stripe ring', [['K']]],
  ['input signal trigger', [['IN'], ['T1', 'T2']]],
];
const BY_WORD = new Map(
  MEANT.flatMap(([words, sets]) => words.split(' ').map((word) => [word, sets] as const)),
);

/** The terminals that an everyday word stands for on a part with these; undefined where it is no such word. */
function meantTerminals(word: string, names: readonly string[]): readonly string[] | undefined {
  const sets = BY_WORD.get(word.toLowerCase());
  return (
    sets &&
    (sets.map((set) => set.filter((name) => names.includes(name))).find((set) => set.length > 0) ?? [])
  );
}

/** `; did you mean A1 or A2?` of a mark that a part does not have; `;` where nothing is likely. */
export function terminalHint(errors: Errors, mark: string, own: Terminals): string {
  const meant = meantTerminals(mark, own.names);
  if (meant === undefined) return errors.hint(mark, own.marks(), ';');
  return meant.length === 0 ? ';' : `; did you mean ${either(meant)}?`;
}
