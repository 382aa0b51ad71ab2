import { isLanded } from '../../circuit/terminals.ts';
import type { Part } from '../../plan/part-types.ts';
import { partOfKey } from '../../plan/terminal-key.ts';
import type { Study } from '../../study/study.ts';
import { listOf } from '../../text/word-list.ts';
import { type Check, extract, type FindingEntry } from '../entry.ts';
import { found } from '../finding.ts';
import type { Finding } from '../report-model.ts';
import { neededTerminals } from './needed-terminals.ts';

const entry: FindingEntry = {
  id: 'loose-end',
  title: 'a terminal or a part is joined to nothing',
  severity: 'caution',
  question: 2,
  base: 'dc-chain',
  meaning:
    'A terminal that the part cannot do without has no core on it, or a part of the plan is wired to nothing. The rest may well work without it, as here, where the diode hangs on one leg and quenches nothing.',
  wrong: '  - {link: [D1.K, K1.A1]}',
  right: extract('  - {link: [D1.K, K1.A1]}', '  - {link: [D1.A, K1.A2]}'),
  basis: 'common practice',
  followsBeside: {},
  followsFrom: ['loop-dead', 'gate-dead', 'earth-broken', 'mains-meets-low-voltage'],
  goneByOneMove: true,
};

export const looseEnd: Check = { entry, find };

function find(study: Study): Finding[] {
  const { plan, circuit } = study;
  const landed = new Set([...circuit.landed.keys()].map((k) => partOfKey(k)));
  const feeders = new Set(
    [...plan.parts.values()].flatMap((p) => ('fedFrom' in p && p.fedFrom ? [p.fedFrom] : [])),
  );
  return [...plan.parts.values()].flatMap((part) => {
    if (part.kind === 'box' || ('pluggedInto' in part && part.pluggedInto !== undefined)) return [];
    if (!landed.has(part.name))
      return part.kind === 'plug' && feeders.has(part.name) ? missing(study, part) : [unjoined(study, part)];
    return missing(study, part);
  });
}

function unjoined({ plan }: Study, { name }: Part): Finding {
  const named = plan.intents?.some((i) =>
    [...i.runsOn.flat(), ...i.blockedBy, ...i.stoppedBy].some((r) => r.part === name),
  );
  return found(plan, entry, {
    parts: [name],
    message: `${name} is joined to nothing`,
    why: `No run lands on ${name}${named ? ', though the intent speaks of it' : ''}.`,
    fix: `Wire ${name} in, or take it out of the plan.`,
    basis: entry.basis,
    twin: {
      alike: 'unjoined',
      several: (names) => ({
        message: `${listOf(names)} are joined to nothing`,
        why: `No run lands on ${listOf(names)}.`,
        fix: `Wire ${listOf(names)} in, or take them out of the plan.`,
      }),
    },
  });
}

/** Whether a switch works by its break contact: one that stops or blocks, or a gate whose shut slide presses its lever. */
function breaks({ plan }: Study, part: Part): boolean {
  const stops = (plan.intents ?? []).some((i) =>
    [...i.blockedBy, ...i.stoppedBy].some((r) => r.part === part.name),
  );
  return part.kind === 'gate' ? part.pressedWhen === 'shut' : part.kind === 'button' && stops;
}

/** Terminals that the part cannot do without and that nothing lands on. */
function missing(study: Study, part: Part): Finding[] {
  const { circuit } = study;
  const empty = neededTerminals(study, part).filter((t) => !isLanded(circuit, part, t));
  const isThrown = 'throws' in part && part.throws !== undefined;
  const isSwitch = ['gate', 'switch', 'button'].includes(part.kind) && !isThrown;
  if (isSwitch && !isLanded(circuit, part, 'NO') && !isLanded(circuit, part, 'NC'))
    empty.push(breaks(study, part) ? 'NC' : 'NO');
  if (empty.length === 0) return [];
  const names = empty.map((t) => `${part.name}.${t}`);
  const [have, these] =
    names.length > 1 ? ['have nothing on them', 'these terminals'] : ['has nothing on it', 'this terminal'];
  return [
    found(study.plan, entry, {
      parts: [part.name],
      at: part.at,
      terminals: names,
      message: `${listOf(names)} ${have}`,
      why: `${part.name} cannot do its work without ${these}.`,
      fix: `Land the missing core, or take ${part.name} out of the plan.`,
      basis: entry.basis,
      twin: {
        alike: empty.join(),
        several: (parts) => ({
          message: `${listOf(empty)} of ${listOf(parts)} ${have}`,
          why: `They cannot do their work without ${these}.`,
          fix: `Land the missing cores, or take ${listOf(parts)} out of the plan.`,
        }),
      },
    }),
  ];
}
