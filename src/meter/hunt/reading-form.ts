/** What a meter showed, as a person types it. Knows no plan. */
import { numberText, rounded } from '../../text/numbers.ts';
import type { Answer } from './observation.ts';

export type Parsed<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly problem: string };

/** Characters of a line that is read. */
export const LONGEST = 1000;
export const TOO_LONG = `the line is longer than ${LONGEST} characters`;

export const fail = (problem: string): { ok: false; problem: string } => ({ ok: false, problem });

/** What a meter showed, and on volts where its dial stood if that was said. */
interface Shown {
  readonly kind: 'volts' | 'ohms';
  readonly range?: 'dc' | 'ac';
  readonly answer: Answer | undefined;
}

const shown = (value: Shown): Parsed<Shown> => ({ ok: true, value });

/** `11.8 V`, `24 V AC`, `155 ohm`, `1.2 k`, `OL`, `beeps`; `? V` and `? ohm` for one who is not sure. */
export function reading(text: string): Parsed<Shown> {
  if (text.length > LONGEST) return fail(TOO_LONG);
  if (/^(?:OL|over range|open|no way through|silent)$/i.test(text))
    return shown({ kind: 'ohms', answer: { by: 'ohms', ohms: Number.POSITIVE_INFINITY } });
  if (/^beeps?$/i.test(text)) return shown({ kind: 'ohms', answer: { by: 'beeps' } });
  const match =
    /^(\?|[-+]?\d+(?:\.\d+)?(?:e[-+]?\d+)?)\s*(mV|V|volts?|kohm|k|Mohm|ohms?|Ω|kΩ|MΩ)\s*(AC|DC)?$/i.exec(
      text,
    );
  if (/\d,\d/.test(text)) return fail(`found "${text}", expected a decimal point, such as 23.9 V`);
  if (match === null)
    return fail(`found "${text}", expected volts, ohms, OL or beeps, such as 11.8 V, 155 ohm, OL`);
  const [, number, unit, range] = match as unknown as [string, string, string, string | undefined];
  // With as many digits as a line of the log has, so that what is read back is what was taken in.
  const value = rounded(Number(number) * (SCALE[unit[0]!] ?? 1));
  if (number !== '?' && !Number.isFinite(value)) return fail(`found "${text}", which is no reading`);
  const sure = number !== '?';
  if (/^(?:m?V|volts?)$/i.test(unit))
    return shown({
      kind: 'volts',
      ...(range === undefined ? {} : { range: range.toLowerCase() as 'dc' | 'ac' }),
      answer: sure ? { by: 'volts', volts: value } : undefined,
    });
  return shown({ kind: 'ohms', answer: sure ? { by: 'ohms', ohms: value } : undefined });
}

/** What the first letter of a unit stands for, where it is a prefix. */
const SCALE: Readonly<Record<string, number>> = { m: 1e-3, k: 1e3, K: 1e3, M: 1e6 };

/** `range` on volts, undefined on ohms. */
export function readingText(range: 'dc' | 'ac' | undefined, answer: Answer | undefined): string {
  if (range !== undefined)
    return `${answer?.by === 'volts' ? numberText(answer.volts) : '?'} V ${range.toUpperCase()}`;
  if (answer?.by === 'beeps') return 'beeps';
  if (answer?.by !== 'ohms') return '? ohm';
  return answer.ohms === Number.POSITIVE_INFINITY ? 'OL' : `${numberText(answer.ohms)} ohm`;
}
