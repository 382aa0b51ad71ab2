import type { Study } from '../../study/study.ts';
import { listOf, withArticle } from '../../text/word-list.ts';
import type { Check, FindingEntry } from '../entry.ts';
import { found } from '../finding.ts';
import type { Finding } from '../report-model.ts';
import { type SwitchCurrents, switchCurrents } from './switch-currents.ts';

const entry: FindingEntry = {
  id: 'switch-kind-unrated',
  title: 'no rating for this kind of current is stated',
  severity: 'doubt',
  question: 5,
  base: 'dc-chain',
  meaning:
    'The switch states only AC ratings and the loop is DC, or the reverse. DC does not quench its own arc, so a switch good for 5 A AC may be good for far less DC. Read the other rating off the switch or its sheet and put it in.',
  wrong: 'contact: {ratings: [5 A 250 V AC], least: 10 mA 5 V DC}',
  right: 'contact: {ratings: [5 A 250 V AC, 3 A 30 V DC], least: 10 mA 5 V DC}',
  basis: 'switch makers’ data: DC and AC ratings differ',
  followsFrom: [],
};

export const switchKindUnrated: Check = { entry, find };

/** What two positions of a selector, or two switches, say alike is told once. */
function find(study: Study): Finding[] {
  const unrated = switchCurrents(study).filter((s) => s.rating === undefined);
  const last = unrated.at(-1);
  if (!last) return [];
  const names = [...new Set(unrated.map((s) => s.part.name))];
  const kind = last.kind.toUpperCase();
  const article = withArticle(last.kind);
  return [
    found(study.plan, entry, {
      parts: names,
      message: `${listOf(names)}: no rating for ${kind} at the loop's voltage is stated`,
      why: whyUnrated(unrated),
      fix: `State contact: {ratings: [...]} with ${article} rating, or ${last.kind === 'ac' ? 'ac-15' : 'dc-13'}, as printed on the switch.`,
      basis: entry.basis,
    }),
  ];
}

/** What the switches state says why that does not count. */
function whyUnrated(unrated: readonly SwitchCurrents[]): string {
  const stated = unrated.flatMap(({ part: { contact }, kind }) =>
    [...contact.ratings, ...contact.motor].map((r) => r.kind === kind),
  );
  const other = unrated.some(
    ({ part: { contact } }) => contact.ac15 ?? contact.dc13 ?? contact.ac3 ?? contact.pilot,
  );
  if (stated.includes(true)) return 'A rating for fewer volts says nothing of more.';
  return stated.length > 0 || other
    ? 'A rating for the other kind of current says nothing of this one.'
    : 'A rating that is not stated is never taken as enough.';
}
