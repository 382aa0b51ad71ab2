/** `explain`: what a finding or a caution means, told at length. */

import type { Explanation } from '../findings/explanations.ts';
import type { Caution } from '../findings/report-model.ts';
import { QUESTIONS } from '../findings/report-words.ts';
import { printable, printableLines } from '../text/escape.ts';
import { columns, wrap } from '../text/wrap.ts';

/** Prose is filled; text of several lines is an extract of a plan and stays as it is. */
function block(heading: string, text: string, width: number): string[] {
  if (text === '') return [];
  const shown = printableLines(text).replace(/\n+$/, '');
  const body = shown.includes('\n')
    ? shown.split('\n').map((l) => `  ${l}`.trimEnd())
    : wrap(shown, width, '  ');
  return ['', heading, ...body];
}

export function renderExplanation(e: Explanation, width: number): string {
  const question = QUESTIONS[e.question - 1] ?? '';
  return `${[
    ...wrap(printable(`${e.id}: ${e.title}`), width),
    ...wrap(printable(`${e.severity}, under question ${e.question}: ${question}`), width),
    ...block('What it means', e.meaning, width),
    ...block('Wrong', e.wrong, width),
    ...block('Right', e.right, width),
    ...block('Basis', e.basis, width),
  ].join('\n')}\n`;
}

export function renderCaution(c: Caution, width: number): string {
  return `${[`${c.id}: a caution, level ${c.level}`, ...block('Text', c.text, width), ...block('Basis', c.basis, width)].join('\n')}\n`;
}

/** All findings by question, then the cautions, one line or two each. */
export function renderIndex(
  explanations: readonly Explanation[],
  cautions: readonly Caution[],
  width: number,
): string {
  const longest = Math.max(0, ...[...explanations, ...cautions].map((e) => columns(e.id)));
  const line = (id: string, text: string) => wrap(printable(text), width, `  ${id.padEnd(longest)}  `);
  const parts = QUESTIONS.map((question, i) => {
    const own = explanations.filter((e) => e.question === i + 1);
    return own.length === 0
      ? []
      : [
          ...wrap(question, width, `${i + 1}. `),
          ...own.flatMap((e) => line(e.id, `${e.title} (${e.severity})`)),
          '',
        ];
  });
  const tail = cautions.length === 0 ? [] : ['Cautions', ...cautions.flatMap((c) => line(c.id, c.text))];
  return `${[...parts.flat(), ...tail].join('\n').trimEnd()}\n`;
}
