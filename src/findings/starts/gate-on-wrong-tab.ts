import type { Plan } from '../../plan/plan.ts';
import type { Study } from '../../study/study.ts';
import { coresOf } from '../../text/core-names.ts';
import { kindAndNames, listOf } from '../../text/word-list.ts';
import type { Check, FindingEntry } from '../entry.ts';
import { type Found, found } from '../finding.ts';
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

/** Gates whose cores are told one by one; the rest are counted, and named in the list of parts. */
const MOST_TOLD = 12;

export const gateOnWrongTab: Check = { entry, find };

function find(study: Study): Found[] {
  const { moves, alone } = gatesOnWrongTab(study);
  return moves.map((move) => report(study, move, { moves, alone }));
}

/** The tabs, and when they are joined: gates that have these in common are told together. */
function alike({ plan }: Study, { part, from, to }: TabMove): string {
  return `${from} ${to} ${whenClosed(plan, part, from)}`;
}

function report(study: Study, move: TabMove, all: ReturnType<typeof gatesOnWrongTab>): Found {
  const { plan } = study;
  const { part: name, from, to, ends } = move;
  const [sit, belong] = ends.length > 1 ? ['sit', 'belong'] : ['sits', 'belongs'];
  const first = ends[0]!;
  const terminals = [`${name}.${from}`, `${name}.${to}`];
  const mended = all.alone
    ? 'With that one change every load does what is meant in all states'
    : 'With this change and the like ones named beside it every load does what is meant';
  const joined = (gate: string) =>
    `${from} is joined to COM while ${gate} is ${whenClosed(plan, name, from)}`;
  return found(plan, entry, {
    parts: [name],
    terminals,
    at: first.core[first.end].at,
    message: `${kindAndNames('gate', [name])}: the ${coresOfMove(move)} ${sit} on ${from} and ${belong} on ${to}`,
    why: `${mended}; ${joined('this gate')}.`,
    fix: `Move ${moveWords(move)}.`,
    basis: `${entry.basis}; repair proved by solving the circuit with the core moved`,
    cause: { what: 'tab', terminals },
    twin: {
      alike: alike(study, move),
      several: (names) => {
        const theirs = all.moves.filter((m) => names.includes(m.part));
        const others = theirs.length < all.moves.length ? ' and those named beside them' : '';
        return {
          message: `${kindAndNames('gate', names)}: cores sit on ${from} and belong on ${to}`,
          why: `With these changes${others} every load does what is meant in all states; ${joined('such a gate')}.`,
          fix: `Move ${listOf(theirs.map(moveWords), MOST_TOLD)}.`,
        };
      },
    },
  });
}

const coresOfMove = ({ ends }: TabMove): string => coresOf(ends.map((e) => e.core.colour));

function moveWords(move: TabMove): string {
  return `the ${coresOfMove(move)} from ${move.part}.${move.from} to ${move.part}.${move.to}`;
}

function whenClosed(plan: Plan, gate: string, tab: TabMove['from']): 'open' | 'shut' {
  const part = plan.parts.get(gate);
  const pressedOpen = part?.kind === 'gate' && part.pressedWhen === 'open';
  return (tab === 'NO') === pressedOpen ? 'open' : 'shut';
}
