/**
 * A figure left out of a plan that fails makes no plan that passes: each finding of questions 4 to 7 in its own example, of which one
 * figure after another is left out. The ends of `tables/defaults.json` come from the sources named there.
 */
import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { explanations } from '../../../src/findings/explanations.ts';
import { cases } from '../../helpers/cases.ts';
import { sampled, WHOLE } from '../../helpers/share.ts';
import { leavingOut, turned } from './left-out.ts';

const base = (name: string) => readFileSync(new URL(`../bases/${name}.yaml`, import.meta.url), 'utf8');

/** Figures of examples that lie further out than such parts usually do: 7.6 times its amperes, where six are taken. */
const UNUSUAL = ['parts.extractor.locked-rotor: '];

const figured = explanations.filter((e) => e.question > 3).map((e, i) => [e.id, e, i] as const);

it.each(sampled(figured, 3))('%s: its example without a figure does not pass', (_, e, nth) => {
  const wrong = base(e.base).replace(e.right, () => e.wrong);
  // What the example itself has wrong is no figure of a right part, and a whole item of the stock is no figure.
  const all = leavingOut(wrong).filter(
    ({ path }) => !e.wrong.includes(`${path.split('.').at(-1)}:`) && path.split('.').length > 2,
  );
  // Two of three, each example beginning with another: findings of one base share most of its figures.
  const some = all.filter((_, i) => (WHOLE ? (i + nth) % 3 !== 0 : i === (nth * 7) % all.length));
  cases(some.length);
  expect(turned(wrong, some).filter((told) => !UNUSUAL.some((path) => told.startsWith(path)))).toEqual([]);
});
