/** A short answer to one question, as typed. */
import type { Hunt } from './hunt.ts';
import type { Answer, Observation } from './observation.ts';
import { type Parsed, reading } from './plain-form.ts';

const UNSURE = /^(?:\?|not sure|do not know)$/i;
const YES = /^(?:y|yes|runs|on|lit|live|in)$/i;
const NO = /^(?:n|no|off|none|dark|dead|out|stays off)$/i;
const RESTLESS = /^(?:c|chatters|hums|buzzes)$/i;

/** The answer; undefined in it for one who is not sure. Of several loads the names of those that run, `all` or `none`. */
export function answerTo(hunt: Hunt, o: Observation, text: string): Parsed<Answer | undefined> {
  if (UNSURE.test(text)) return { ok: true, value: undefined };
  if (o.kind === 'volts' || o.kind === 'ohms') return readingTo(o.kind, text);
  if (RESTLESS.test(text)) return { ok: true, value: { by: 'chatters' } };
  if ('part' in o) {
    if (!YES.test(text) && !NO.test(text))
      return { ok: false, problem: `found "${text}", expected yes or no` };
    return { ok: true, value: { by: 'yes', yes: YES.test(text) } };
  }
  const { loads } = hunt.predictor;
  if (YES.test(text) || /^all$/i.test(text))
    return { ok: true, value: { by: 'loads', of: loads, on: loads } };
  if (NO.test(text)) return { ok: true, value: { by: 'loads', of: loads, on: [] } };
  const named = text.split(/\s*(?:,|\band\b)\s*|\s+/).filter((w) => w !== '');
  const unknown = named.find((name) => !loads.includes(name));
  if (unknown !== undefined)
    return {
      ok: false,
      problem: `found "${text}", expected yes, no or chatters${loads.length > 1 ? `, or those that run of ${loads.join(', ')}` : ''}`,
    };
  return { ok: true, value: { by: 'loads', of: loads, on: named } };
}

/** A bare number is in the unit that was asked for. */
function readingTo(kind: 'volts' | 'ohms', text: string): Parsed<Answer | undefined> {
  const bare = /^-?\d+(?:\.\d+)?$/.test(text) ? `${text} ${kind === 'volts' ? 'V' : 'ohm'}` : text;
  const read = reading(bare);
  if (!read.ok) return read;
  if (read.value.kind !== kind)
    return {
      ok: false,
      problem: `found "${text}", expected ${kind === 'volts' ? 'volts' : 'ohms, OL or beeps'}`,
    };
  return { ok: true, value: read.value.answer };
}
