import type { Study } from '../../study/study.ts';
import { zonesOf } from '../../study/zones.ts';
import { coresOf } from '../../text/core-names.ts';
import { listOf } from '../../text/word-list.ts';
import { type Check, extract, type FindingEntry } from '../entry.ts';
import { type Found, found } from '../finding.ts';
import { zonesOnWrongTab } from './departures/proved-moves.ts';
import type { TabMove } from './departures/tab-moves.ts';

const entry: FindingEntry = {
  id: 'zone-on-wrong-tab',
  title: 'the relay of one zone calls on through the wrong contact',
  severity: 'fault',
  question: 2,
  base: 'zones',
  meaning:
    'Each zone of gates has a relay, and the contacts of these relays lie side by side and call the starter. At one of them the call sits on the other contact than at the rest: with that zone idle its break contact calls at once, and opening one of its gates is what stops calling. That moving the call mends the plan is proved by solving the circuit with it moved.',
  wrong: extract('  - {link: [K2.NC, call]}'),
  right: extract('  - {link: [K2.NO, call]}'),
  basis: 'common practice',
  followsFrom: [],
};

export const zoneOnWrongTab: Check = { entry, find };

function find(study: Study): Found[] {
  const { moves, alone } = zonesOnWrongTab(study);
  return moves.map((move) => report(study, move, alone));
}

function report(study: Study, move: TabMove, alone: boolean): Found {
  const { part, from, to, ends } = move;
  const zone = zonesOf(study).find((z) => z.relay === part)!;
  const [first] = ends;
  const terminals = [`${part}.${from}`, `${part}.${to}`];
  const cores = coresOf(ends.map((e) => e.core.colour));
  const calls =
    from === 'NC'
      ? 'calls while all its gates are shut, and stops calling when one opens'
      : 'calls when one of its gates opens, where the others call until one opens';
  const change = alone ? 'that one change' : 'this change and the like ones named beside it';
  return found(study.plan, entry, {
    parts: [part, ...zone.gates],
    terminals,
    at: first!.core[first!.end].at,
    message: `the zone of ${part} calls through its ${from === 'NC' ? 'break' : 'make'} contact (${from}), the others through ${to}`,
    why: `${part} (${listOf(zone.gates, 3)}) ${calls}. With ${change} every load does what is meant in all states.`,
    fix: `Move the ${cores} from ${part}.${from} to ${part}.${to}.`,
    basis: `${entry.basis}; repair proved by solving the circuit with the core moved`,
    cause: { what: 'tab', terminals },
    twin: {
      alike: from,
      several: (names) => ({
        message: `the zones of ${listOf(names)} call through ${from}, the others through ${to}`,
      }),
    },
  });
}
