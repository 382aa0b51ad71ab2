/** How the answers of several plans are written one after the other: what goes out first, with each, and last. */
import pkg from '../../../package.json' with { type: 'json' };
import type { Caution } from '../../findings/report-model.ts';
import { wrap } from '../../text/wrap.ts';
import type { CheckStages } from '../check-stages.ts';
import { type Session, widthFor } from '../io.ts';
import { BETWEEN, jsonText } from '../print.ts';
import type { Asked, Checked, Fate, Named } from './checked.ts';

/** How a run of several plans ended. */
export interface End {
  /** what became of each plan that was checked, in the order named */
  readonly fates: readonly Fate[];
  readonly named: readonly Named[];
  /** the exit status */
  readonly status: number;
  /** the signal that cut it short */
  readonly signal: 'SIGINT' | 'SIGTERM' | undefined;
}

/** The pieces of standard output; an empty one is nothing. */
export interface Writer {
  first(): string;
  of(answer: Checked, named: Named): string;
  last(end: End): string;
}

const WORDS: readonly [Fate, (count: number) => string][] = [
  ['pass', (n) => `in ${n} nothing in this check failed`],
  ['fail', (n) => `in ${n} something failed`],
  ['cannot-tell', (n) => `of ${n} it cannot tell`],
  ['unreadable', (n) => `${n} could not be read`],
  ['mistake', (n) => `at ${n} pullin made a mistake of its own`],
];

/** How many plans had which end, as a sentence. */
export function summary({ fates, named }: Pick<End, 'fates' | 'named'>): string {
  const told = WORDS.map(([fate, words]): [number, (n: number) => string] => [
    fates.filter((f) => f === fate).length,
    words,
  ]).filter(([count]) => count > 0);
  const cut = fates.length === named.length ? '' : `Cut short after ${fates.length} of `;
  const plans = `${cut}${named.length} ${named.length === 1 ? 'plan' : 'plans'}`;
  return told.length === 0
    ? `${plans}.`
    : `${plans}: ${told.map(([count, words]) => words(count)).join(', ')}.`;
}

/** Reports as text, a line between two; the last word is how many had which end. */
function textWriter({ width }: Asked, { io }: Session<unknown>): Writer {
  let count = 0;
  return {
    first: () => '',
    of: ({ out }) => (out === '' ? '' : `${count++ > 0 ? BETWEEN : ''}${out}`),
    last: (end) =>
      `${count > 0 ? BETWEEN : ''}${wrap(summary(end), widthFor(width, io.stdout)).join('\n')}\n`,
  };
}

const quietWriter: Writer = { first: () => '', of: ({ out }) => out, last: () => '' };

/** JSON text as it stands so many columns further in. */
const inwards = (json: string, columns: number) => json.replaceAll('\n', `\n${' '.repeat(columns)}`);

/** The bytes that one array of all answers would be. */
function jsonWriter(): Writer {
  let count = 0;
  return {
    first: () => '[',
    of: ({ out }) => `${count++ > 0 ? ',' : ''}\n  ${inwards(out, 2)}`,
    last: () => (count > 0 ? '\n]\n' : ']\n'),
  };
}

/** One run, its results as they come and all else after them. */
async function sarifWriter(): Promise<Writer> {
  const { sarifLog, sarifEnd } = await import('../late/sarif.ts');
  const log = jsonText(sarifLog(pkg.version));
  const cut = log.lastIndexOf('[]');
  let count = 0;
  const notifications: object[] = [];
  const cautions = new Map<string, { caution: Caution; of: Set<number> }>();
  return {
    first: () => log.slice(0, cut + 1),
    of: ({ sarif }, { artifact: { index } }) => {
      if (sarif === undefined) return '';
      notifications.push(...sarif.notifications);
      for (const caution of sarif.cautions) {
        const key = `${caution.id} ${caution.text}`;
        const known = cautions.get(key) ?? { caution, of: new Set<number>() };
        cautions.set(key, known);
        known.of.add(index);
      }
      return sarif.results
        .map((result) => `${count++ > 0 ? ',' : ''}\n        ${inwards(jsonText(result), 8)}`)
        .join('');
    },
    last: ({ fates, named, status, signal }) => {
      const tail = sarifEnd({
        plans: fates.map((fate, at) => ({ artifact: named[at]!.artifact, fate })),
        named: named.length,
        notifications,
        cautions: [...cautions.values()].map(({ caution, of }) => ({ caution, of: [...of] })),
        exitCode: status,
        exitCodeDescription: summary({ fates, named }),
        whole: fates.every((fate) => fate !== 'unreadable' && fate !== 'mistake'),
        signal,
      });
      const rest = Object.entries(tail).map(
        ([name, value]) => `,\n      "${name}": ${inwards(jsonText(value), 6)}`,
      );
      return `${count > 0 ? '\n      ' : ''}]${rest.join('')}${log.slice(cut + 2)}\n`;
    },
  };
}

export async function writerFor(asked: Asked, session: Session<CheckStages>): Promise<Writer> {
  if (asked.form === 'sarif') return sarifWriter();
  if (asked.form === 'json') return jsonWriter();
  return asked.form === 'quiet' ? quietWriter : textWriter(asked, session);
}
