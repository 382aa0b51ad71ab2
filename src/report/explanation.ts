/** What a finding or a caution means, told at length. */
import type { Explanation } from '../findings/explanations.ts';
import type { Caution } from '../findings/report-model.ts';
import { QUESTIONS } from '../findings/report-words.ts';
import { type Block, heading, line, paragraph, terms } from './blocks.ts';

export function explanationDocument(e: Explanation): Block[] {
  const question = QUESTIONS[e.question - 1] ?? '';
  return [
    heading(1, `${e.id}: ${e.title}`),
    paragraph(`${e.severity}, under question ${e.question}: ${question}`, { close: true }),
    ...told('What it means', e.meaning),
    ...told('Wrong', e.wrong),
    ...told('Right', e.right),
    ...told('Basis', e.basis),
  ];
}

export function cautionDocument(c: Caution): Block[] {
  return [line(`${c.id}: a caution, level ${c.level}`), ...told('Text', c.text), ...told('Basis', c.basis)];
}

/** Prose is filled; text of several lines is an extract of a plan and stays as it is. */
function told(title: string, text: string): Block[] {
  if (text === '') return [];
  const whole = text.replace(/\r?\n/g, '\n').replace(/\n+$/, '');
  return [
    heading(2, title),
    whole.includes('\n') ? { kind: 'extract', text: whole, indent: 2 } : paragraph(whole, { indent: 2 }),
  ];
}

/** All findings by question, then the cautions, one line or two each. */
export function indexDocument(explanations: readonly Explanation[], cautions: readonly Caution[]): Block[] {
  const column = 2 + Math.max(0, ...[...explanations, ...cautions].map((e) => e.id.length));
  const named = (e: { readonly id: string }, text: string) => ({ term: e.id, text });
  const questions = QUESTIONS.flatMap((question, i) => {
    const own = explanations.filter((e) => e.question === i + 1);
    if (own.length === 0) return [];
    const items = own.map((e) => named(e, `${e.title} (${e.severity})`));
    return [heading(2, question, { number: i + 1 }), terms(column, items, { indent: 2 })];
  });
  if (cautions.length === 0) return questions;
  const items = cautions.map((c) => named(c, c.text));
  return [...questions, heading(2, 'Cautions'), terms(column, items, { indent: 2 })];
}
