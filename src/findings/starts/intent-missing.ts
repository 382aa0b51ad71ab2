import type { Study } from '../../study/study.ts';
import { type Check, extract, type FindingEntry } from '../entry.ts';
import { found } from '../finding.ts';
import type { Finding } from '../report-model.ts';

const entry: FindingEntry = {
  id: 'intent-missing',
  title: 'the plan does not say what a load is meant to do',
  severity: 'doubt',
  question: 2,
  base: 'two-collectors',
  meaning:
    'The intent speaks of some loads and leaves this one out, or there is nothing to start at all. Whether it does right cannot be told. Add a line for it.',
  wrong: '  chips: {runs-on: [rip-saw, wide-belt]}',
  right: extract('  chips: {runs-on: [rip-saw, wide-belt]}', '  fines: {runs-on: [edge-sander, wide-belt]}'),
  basis: 'limit of the method',
  followsFrom: [],
};

export const intentMissing: Check = { entry, find };

function find({ plan, verified }: Study): Finding[] {
  if (!verified) return [];
  const { wanted, unspoken } = verified.intents;
  if (wanted.length === 0 && unspoken.length === 0)
    return [
      found(plan, entry, {
        parts: [],
        message: 'the plan has no load, outlet or intent, so there is nothing to start',
        why: 'Whether a gate starts its load can only be decided when the plan has a load.',
        fix: 'Add the motor (kind: motor) or the outlet it plugs into, or an intent that names a relay.',
        basis: entry.basis,
      }),
    ];
  return unspoken.map((name) =>
    found(plan, entry, {
      parts: [name],
      message: `the plan does not say what ${name} is meant to do`,
      why: `${name} is switched by contacts, and intent names other loads only.`,
      fix: `Add intent: ${name}: {runs-on: [...]}.`,
      basis: entry.basis,
      twin: { alike: 'unspoken' },
    }),
  );
}
