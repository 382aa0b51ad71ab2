import { partOfKey } from '../../plan/terminal-key.ts';
import type { Study } from '../../study/study.ts';
import { listOf } from '../../text/word-list.ts';
import { type Check, extract, type FindingEntry } from '../entry.ts';
import { found } from '../finding.ts';
import type { Finding } from '../report-model.ts';

const entry: FindingEntry = {
  id: 'nothing-wired',
  title: 'there is nothing to prove: no gate, no relay or no feed',
  severity: 'doubt',
  question: 2,
  base: 'dc-chain',
  meaning:
    'A proof over no inputs at all is none, a plan without a relay has nothing that a gate could switch, and a load that nothing feeds neither starts nor stops. A plan that is only begun looks like that. Add the gates, the relay and the runs that are missing; until then nothing is said to work.',
  wrong: '    protector: manual',
  right: extract('    protector: manual', '    plugged-into: X1'),
  basis: 'limit of the method',
  followsFrom: ['intent-missing'],
};

export const nothingWired: Check = { entry, find };

function find(study: Study): Finding[] {
  const lacks = [...startless(study), ...unfed(study)];
  if (lacks.length === 0) return [];
  const parts = [...new Set(lacks.flatMap((l) => l.parts))];
  return [
    found(study.plan, entry, {
      parts,
      message: `there is nothing to prove: ${listOf(lacks.map((l) => l.words))}`,
      why: 'What is not in the plan cannot be tried, and what was not tried is not said to work.',
      fix: 'Add what is missing to the plan.',
      basis: entry.basis,
    }),
  ];
}

interface Lack {
  readonly parts: readonly string[];
  readonly words: string;
}

/** Nothing that could start any load, or nothing that it could pull in. */
function startless({ plan, circuit, verified }: Study): Lack[] {
  const wanted = verified?.intents.wanted ?? [];
  const starters =
    wanted.length === 0 ? circuit.inputs.length : Math.max(...wanted.map((w) => w.entries.length));
  const relayless = circuit.relays.length === 0;
  return [
    ...(starters === 0
      ? [{ parts: [], words: 'the plan has no gate or other switch that starts a load' }]
      : []),
    ...(relayless ? [{ parts: [], words: 'the plan has no relay, timer or board' }] : []),
    ...(plan.runs.length === 0 ? [{ parts: [], words: 'no part is joined to another' }] : []),
  ];
}

/** Loads that no conductor reaches, by themselves or at the outlet that they are plugged into. */
function unfed({ plan, circuit }: Study): Lack[] {
  const landed = new Set([...circuit.landed.keys()].map((key) => partOfKey(key)));
  return [...plan.parts.values()].flatMap((p) => {
    if (p.kind !== 'motor' && p.kind !== 'load') return [];
    return landed.has(p.pluggedInto ?? p.name) ? [] : [{ parts: [p.name], words: `nothing feeds ${p.name}` }];
  });
}
