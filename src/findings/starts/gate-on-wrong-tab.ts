import type { Plan } from '../../plan/plan.ts';
import type { Study } from '../../study/study.ts';
import { coresOf } from '../../text/core-names.ts';
import type { Check, FindingEntry } from '../entry.ts';
import { found } from '../finding.ts';
import type { Finding } from '../report-model.ts';
import { gatesOnWrongTab } from './departures/proved-moves.ts';
import type { TabMove } from './departures/tab-moves.ts';

const entry: FindingEntry = {
  id: 'gate-on-wrong-tab',
  title: 'a core sits on NC and belongs on NO, or the reverse',
  severity: 'fault',
  question: 2,
  base: 'dc-chain',
  meaning:
    'Moving one core from one tab to the other mends every fault in starting and stopping, which the check proves by solving the circuit with the core moved. With this gate shut the load runs at once, and opening it is what stops it. On most switches the tabs read COM, NO, NC in small print; the order differs from maker to maker.',
  wrong: '{red: [planer.COM, router.COM], white: [planer.NO, router.NC]}',
  right: '{red: [planer.COM, router.COM], white: [planer.NO, router.NO]}',
  basis: 'common practice',
  followsFrom: [],
};

export const gateOnWrongTab: Check = { entry, find };

function find(study: Study): Finding[] {
  const { moves, alone } = gatesOnWrongTab(study);
  return moves.map((move) => report(study, move, alone));
}

function report({ plan }: Study, { part: name, from, to, ends }: TabMove, alone: boolean): Finding {
  const cores = coresOf(ends.map((e) => e.core.colour));
  const [sit, belong] = ends.length > 1 ? ['sit', 'belong'] : ['sits', 'belongs'];
  const first = ends[0]!;
  const terminals = [`${name}.${from}`, `${name}.${to}`];
  const mended = alone
    ? 'With that one change every load does what is meant in all states'
    : 'With this change and the like ones named beside it every load does what is meant';
  return found(plan, entry, {
    parts: [name],
    terminals,
    at: first.core[first.end].at,
    message: `gate ${name}: the ${cores} ${sit} on ${from} and ${belong} on ${to}`,
    why: `${mended}; ${closedWhile(plan, name, from)}.`,
    fix: `Move the ${cores} from ${terminals[0]} to ${terminals[1]}.`,
    basis: `${entry.basis}; repair proved by solving the circuit with the core moved`,
    cause: { what: 'tab', terminals },
  });
}

function closedWhile(plan: Plan, gate: string, tab: TabMove['from']): string {
  const part = plan.parts.get(gate);
  const pressedOpen = part?.kind === 'gate' && part.pressedWhen === 'open';
  return `${tab} is joined to COM while this gate is ${(tab === 'NO') === pressedOpen ? 'open' : 'shut'}`;
}
