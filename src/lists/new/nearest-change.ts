/** The least change of answers with which a plan passes, where they cannot pass as they are: each is tried in whole. */
import { answersOf } from './answering.ts';
import { choose } from './choose.ts';
import type { Design } from './design.ts';
import type { Key } from './questions.ts';
import type { Trials, Tried } from './trials.ts';

/** One answer to give otherwise. */
interface Otherwise {
  readonly key: Key;
  readonly from: string;
  readonly to: string;
  /** what was found where the answer is to choose: `NEMA 5-20, 20 A` */
  readonly found?: string;
}

/** Answers to give otherwise; with them the plan passes. */
export type Change = readonly Otherwise[];

/** What was chosen for a question that names a part. */
function foundFor(key: Key, { supply, switching, circuit }: Design): string | undefined {
  const { row } = switching;
  if (key === 'supply') return `${supply.volts} V ${supply.kind.toUpperCase()}, ${supply.limit}`;
  if (key === 'circuit') return `${circuit.pattern}, ${circuit.breaker}`;
  if (key !== 'relay' || row === undefined) return undefined;
  return [`${row.style} of ${row.amps} A`, row.ac3 === null ? [] : `AC-3 ${row.ac3} A`, row.motor]
    .flat()
    .join(', ');
}

/** Answers that bear on each question of the check, the likeliest first. */
const BEARING: Readonly<Record<number, readonly Key[]>> = {
  1: ['supply', 'relay', 'circuit'],
  4: ['supply', 'relay', 'layout', 'run-on'],
  5: ['supply', 'relay', 'layout', 'run-on'],
  6: ['relay', 'supply', 'circuit'],
  7: ['circuit', 'relay'],
};

/** Other answers to one question, the nearest to what was answered first. */
function others(key: Key, text: string): readonly string[] {
  switch (key) {
    case 'supply':
      return isLeftOpen(text) ? [] : [...withMarks(text), 'choose'];
    case 'relay':
      return isLeftOpen(text) ? [] : ['choose'];
    case 'circuit':
      return isLeftOpen(text) ? ['fixed'] : ['choose', 'fixed'];
    case 'layout':
      return ['chain', 'ring'].filter((layout) => layout !== text.trim());
    case 'run-on':
      return ['none'];
    default:
      return [];
  }
}

const isLeftOpen = (text: string): boolean => /^choose/i.test(text.trim());

/** A DC supply with the marks that better ones carry: one that its label may have and the answer left out. */
function withMarks(text: string): readonly string[] {
  if (!/\bDC\b/i.test(text) || /regulated/i.test(text) || !/\d\s*m?[AW]\b/i.test(text)) return [];
  return [`${text.trim()} regulated`];
}

/** Changes to try: of one answer, and at the end of all that name parts. */
function changes(texts: ReadonlyMap<Key, string>, against: Tried['against']): Change[] {
  const bearing = against.flatMap((f) => BEARING[f.question] ?? []);
  const keys = [...new Set<Key>([...bearing, 'supply', 'relay', 'circuit', 'layout', 'run-on'])];
  const one = (key: Key, to: string): Otherwise => ({ key, from: texts.get(key) ?? '', to });
  const single = keys.flatMap((key) => others(key, texts.get(key) ?? '').map((to) => [one(key, to)]));
  const named = (['supply', 'relay', 'circuit'] as const).filter(
    (key) => !isLeftOpen(texts.get(key) ?? 'choose'),
  );
  return named.length < 2 ? single : [...single, named.map((key) => one(key, 'choose'))];
}

/** The first change that passes; undefined where none of those tried does. `texts` has every answer. */
export function nearestChange(
  texts: ReadonlyMap<Key, string>,
  { against }: Tried,
  trials: Trials,
): Change | undefined {
  for (const change of changes(texts, against)) {
    const changed = new Map(texts);
    for (const { key, to } of change) changed.set(key, to);
    // Only a ring has a way back.
    if (changed.get('layout') !== 'ring') changed.delete('return');
    const answered = answersOf(changed);
    if (answered.problems !== undefined) continue;
    const tried = choose(answered.answers, trials);
    if (tried.against.length > 0) continue;
    return change.map((one) => {
      const found = isLeftOpen(one.to) ? foundFor(one.key, tried.design) : undefined;
      return found === undefined ? one : { ...one, found };
    });
  }
  return undefined;
}
