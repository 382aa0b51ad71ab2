/** A divider that stands in the plan is believed: neither the finding nor the caution on a shared box is printed. */
import { readdirSync, readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { reportOf } from '../contact-plans.ts';

const folder = new URL('../bases/', import.meta.url);
const plans = readdirSync(folder).map((name) => [name, readFileSync(new URL(name, folder), 'utf8')] as const);
const shared = (text: string) => {
  const { findings, cautions } = reportOf(text);
  return [
    ...findings.flatMap((f) => [f.id, ...f.also.map((a) => a.id)]),
    ...cautions.map((c) => c.id),
  ].filter((id) => ['sides-share-box', 'C-SHAREDBOX'].includes(id));
};

it.each(plans.filter(([, text]) => text.includes('divider: true')))('%s', (_, text) => {
  expect(shared(text)).toEqual([]);
  for (const practice of ['nec', 'iec'])
    expect(shared(text.replace(/practice: \w+/, `practice: ${practice}`))).toEqual([]);
});
