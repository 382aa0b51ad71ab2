/** What a list of a plan that does not pass the check begins with. */
import type { Told } from '../findings/verdict-line.ts';
import { type Block, paragraph } from './blocks.ts';

const VERDICTS = { fail: 'this plan fails the check', 'cannot-tell': 'the check cannot tell of this plan' };

const AS_IT_STANDS = 'The lists are of the plan as it stands.';

/** The sentence a list of a plan that does not pass begins with, and `then`; undefined for one that passes. */
export function toldLine({ verdict, finding }: Told, then = AS_IT_STANDS): string | undefined {
  if (verdict === 'pass') return undefined;
  const first = finding === null ? '' : `: ${finding}`;
  return `Note: ${VERDICTS[verdict]}${first}. ${then}`;
}

/** The same as a paragraph, or none. */
export function toldBlocks(told: Told, then?: string): Block[] {
  const text = toldLine(told, then);
  return text === undefined ? [] : [paragraph(text, { close: true })];
}
