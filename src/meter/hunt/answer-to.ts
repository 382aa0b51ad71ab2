/** A short answer to one question, as typed. */
import type { Hunt } from './hunt.ts';
import type { Answer, Observation } from './observation.ts';
import { fail, LONGEST, type Parsed, reading, TOO_LONG } from './reading-form.ts';

const UNSURE = /^(?:\?|not sure|do not know)$/i;
const YES = /^(?:y|yes|runs|on|lit|live|in)$/i;
const NO = /^(?:n|no|off|none|dark|dead|out|stays off)$/i;
const RESTLESS = /^(?:c|chatters|hums|buzzes)$/i;

/** The answer; undefined in it for one who is not sure. Of several loads the names of those that run, `all` or `none`. */
export function answerTo(hunt: Hunt, o: Observation, text: string): Parsed<Answer | undefined> {
  if (text === '') return fail('nothing was typed; type "?" when you are not sure');
  if (text.length > LONGEST) return fail(TOO_LONG);
  if (UNSURE.test(text)) return { ok: true, value: undefined };
  if (o.kind === 'volts' || o.kind === 'ohms') return readingTo(o, text);
  const restless = o.kind !== 'lit' && o.kind !== 'lamp';
  if (restless && RESTLESS.test(text)) return { ok: true, value: { by: 'chatters' } };
  if ('part' in o) {
    if (!YES.test(text) && !NO.test(text))
      return fail(`found "${text}", expected yes or no${restless ? ', or chatters' : ''}`);
    return { ok: true, value: { by: 'yes', yes: YES.test(text) } };
  }
  const { loads } = hunt.predictor;
  if (YES.test(text) || /^all$/i.test(text))
    return { ok: true, value: { by: 'loads', of: loads, on: loads } };
  if (NO.test(text)) return { ok: true, value: { by: 'loads', of: loads, on: [] } };
  const named = text.split(/\s*,\s*|\s+and\s+|\s+/).filter((w) => w !== '');
  if (named.length === 0 || named.some((name) => !loads.includes(name)))
    return fail(
      `found "${text}", expected yes, no or chatters${loads.length > 1 ? `, or those that run of ${loads.join(', ')}` : ''}`,
    );
  return { ok: true, value: { by: 'loads', of: loads, on: named } };
}

/** A bare number is in the unit that was asked for. */
function readingTo(
  o: Extract<Observation, { kind: 'volts' | 'ohms' }>,
  text: string,
): Parsed<Answer | undefined> {
  const bare = /^[-+]?\d+(?:\.\d+)?$/.test(text) ? `${text} ${o.kind === 'volts' ? 'V' : 'ohm'}` : text;
  const read = reading(bare);
  if (!read.ok) return read;
  const { kind, range, answer } = read.value;
  if (kind !== o.kind)
    return fail(`found "${text}", expected ${o.kind === 'volts' ? 'volts' : 'ohms, OL or beeps'}`);
  if (o.kind === 'volts' && range !== undefined && range !== o.range)
    return fail(`found "${text}", expected what the meter shows on ${o.range.toUpperCase()} volts`);
  return { ok: true, value: answer };
}
