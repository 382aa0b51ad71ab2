import { netAt } from '../../circuit/terminals.ts';
import { UnionFind } from '../../circuit/union-find.ts';
import { kept } from '../../plan/map-entries.ts';
import type { Core } from '../../plan/plan.ts';
import { terminalKey } from '../../plan/terminal-key.ts';
import type { Study } from '../../study/study.ts';
import { listOf } from '../../text/word-list.ts';
import { type Check, extract, type FindingEntry } from '../entry.ts';
import { found } from '../finding.ts';
import type { Finding } from '../report-model.ts';
import { worksAsMeant } from './works-as-meant.ts';

const entry: FindingEntry = {
  id: 'ring-hides-break',
  title: 'a break in a ring goes unnoticed',
  severity: 'notice',
  question: 2,
  base: 'dc-chain',
  meaning:
    'A loop closed into a ring works from both ends, so one break in it changes nothing that anybody sees. A second break then takes out every gate between the two. Leave a link that can be opened, and measure each core all the way round from there.',
  wrong: extract(
    '  - {cable: bell, length: 20 cm, cores: {white: [call, K1.A1]}}',
    '  - {cable: bell, length: 6 m, cores: {red: [router.COM, feed], white: [router.NO, call]}}',
  ),
  right: '  - {cable: bell, length: 20 cm, cores: {white: [call, K1.A1]}}',
  basis: 'common practice of ring-wired alarm loops',
  followsFrom: [],
};

export const ringHidesBreak: Check = { entry, find };

/** Cores of the loop that close a ring: one break in it goes unnoticed until a second one takes out a group of gates. */
function find(study: Study): Finding[] {
  if (!worksAsMeant(study)) return [];
  const closing = closingCores(study);
  if (closing.length === 0) return [];
  const ends = closing.map((core) => `${core.a.written} to ${core.b.written}`);
  return [
    found(study.plan, entry, {
      parts: [],
      at: closing[0]!.at,
      message: `the loop is a ring (${listOf(ends, 2)} closes it): one break in it goes unnoticed`,
      why: 'An open ring still works from both ends; a second break then takes out the gates between.',
      fix: 'Leave a link at one point that can be opened, and test from there that each core reads closed all the way round.',
      basis: entry.basis,
    }),
  ];
}

/** Cores of the low-voltage side whose two ends other cores join already; links are no wire that breaks. */
function closingCores({ plan, circuit, sides }: Study): Core[] {
  const ids = new Map<string, number>();
  const sets = new UnionFind();
  const id = ({ part, terminal }: Core['a']) => kept(ids, terminalKey(part, terminal), () => sets.add());
  return plan.runs
    .filter((run) => !run.link)
    .flatMap((run) =>
      run.cores.filter(
        ({ a, b }) => sides.low.has(netAt(circuit, a.part, a.terminal) ?? -1) && !sets.union(id(a), id(b)),
      ),
    );
}
