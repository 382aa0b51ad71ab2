/** The head of a new plan: what it is, what to do with it, and the answers it was made from. */
import { spell } from '../../edit/yaml-scalar.ts';
import { wrap } from '../../text/wrap.ts';
import type { Taken } from './answering.ts';
import type { Key } from './questions.ts';

/** What the head tells beside the design. */
export interface Head {
  /** where an editor finds the schema of plans */
  readonly schema: string | undefined;
  readonly answers: ReadonlyMap<Key, string>;
  readonly taken: readonly Taken[];
}

const WIDTH = 110;

export const commented = (lines: readonly string[], indent = ''): string[] =>
  lines.flatMap((line) => wrap(line, WIDTH).map((part) => `${indent}# ${part}`));

const ADVICE = [
  'A plan for a shop that is not built yet, made from the answers below. The figures of parts are those of ordinary ones: buy what the comments say to look for, then copy what is printed on it in the place of these figures, measure each cable, and run "pullin check" again. Lengths that nobody gave are guesses.',
  'Mains can kill. Your local code and the person who enforces it have the last word; leave the mains side to someone licensed where the law, your lease or your insurance asks for it.',
];

/** The answers, which are an answers file again once the mark of each line is taken off. */
function answerLines({ answers }: Head): string[] {
  return [...answers].flatMap(([key, text]) => {
    const [first = '', ...more] = wrap(`${key}: ${spell(text, false)}`, WIDTH - 4);
    return [`#   ${first}`, ...more.map((line) => `#     ${line.trim()}`)];
  });
}

export function headLines(head: Head): string[] {
  const { schema, taken } = head;
  const because = taken.map(({ key, text, because: why }) => `${key}: ${text}, since ${why}.`);
  return [
    ...(schema === undefined ? [] : [`# yaml-language-server: $schema=${schema}`]),
    ...commented(ADVICE),
    '#',
    '# Answers:',
    ...answerLines(head),
    ...(because.length === 0
      ? []
      : ['#', ...commented([`Nobody answered these, so the usual was taken. ${because.join(' ')}`])]),
    '',
  ];
}
