/** Every plan among the examples, right and wrong. */
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Plan } from '../../src/plan/plan.ts';
import { planOf } from './plan-of.ts';

const folder = fileURLToPath(new URL('../../examples', import.meta.url));

/** Names of the plans in a folder of examples, without their ending. */
export function exampleNames(under: '' | 'wrong' = ''): string[] {
  return readdirSync(`${folder}/${under}`)
    .filter((name) => name.endsWith('.yaml'))
    .map((name) => (under === '' ? '' : `${under}/`) + name.replace(/\.yaml$/, ''));
}

/** All right plans and two of three wrong ones, most of which have what is drawn or listed of a right one. */
export const mostExamples = (): string[] => [
  ...exampleNames(),
  ...exampleNames('wrong').filter((_, i) => i % 3 !== 0),
];

export function examplePath(name: string): string {
  return `${folder}/${name}.yaml`;
}

export function example(name: string): Plan {
  return planOf(readFileSync(examplePath(name), 'utf8'), `${name}.yaml`);
}

/**
 * Whether a plan has a part that the enumerating oracles do not know: they keep no time, no relay that stays put, no lamp with an intent, no taps and no
 * load for direct current. `oracles/clock.ts` and the tests of such loads judge those.
 */
export function beyondEnumeration(text: string): boolean {
  return /bistable:|kind: timer|returns-through:|pulse:|taps:|lit-when:/.test(text);
}
