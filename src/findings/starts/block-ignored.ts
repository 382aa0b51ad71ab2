import { sayMoved } from '../../circuit/input-words.ts';
import type { Study } from '../../study/study.ts';
import { type Check, extract, type FindingEntry } from '../entry.ts';
import { found } from '../finding.ts';
import type { Finding } from '../report-model.ts';
import { fedBy } from './closed-path-words.ts';
import { saySteps, startedThrough } from './departure-words.ts';
import type { DepartureOf } from './departures/departure.ts';
import { departures } from './departures/departures.ts';
import { wrongTabOfOther } from './departures/proved-moves.ts';

const entry: FindingEntry = {
  id: 'block-ignored',
  title: 'the load runs although something ought to stop it',
  severity: 'danger',
  question: 3,
  base: 'ac-contactor',
  meaning:
    'A stop, a bin-full switch or another cut-out is in its blocking position and the load runs all the same. It was put into one branch only, and the other gates go round it. Its break contact belongs in line with the coil, ahead of everything that can start the load.',
  wrong: extract(
    '  - {cable: stat, length: 8 m, cores: {red: [T1.~1, go], white: [bin.NC, bandsaw.COM]}}',
    '  - {cable: stat, length: 5 m, cores: {red: [go, bin.COM], white: [back, bandsaw.NO]}}',
  ),
  right: extract(
    '  - {cable: stat, length: 8 m, cores: {red: [T1.~1, bin.COM], white: [bin.NC, go]}}',
    '  - {cable: stat, length: 5 m, cores: {red: [go, bandsaw.COM], white: [back, bandsaw.NO]}}',
  ),
  basis: 'NEC 430.74; IEC 60204-1 clause 9.2 (from memory); common practice',
  followsFrom: [],
  goneByOneMove: true,
};

export const blockIgnored: Check = { entry, find };

function find(study: Study): Finding[] {
  const all = departures(study).flatMap((d) => {
    if (d.kind === 'runs-blocked') return [atOnce(study, d)];
    return d.kind === 'keeps-on-blocked' ? [onceStarted(study, d)] : [];
  });
  return oncePerBlock(all);
}

/** A block that is ignored at once need not be told again for the states reached later. */
function oncePerBlock(found: readonly Finding[]): Finding[] {
  const seen = new Set<string>();
  return found.filter((f) => {
    const key = f.parts.join();
    return seen.has(key) ? false : seen.add(key);
  });
}

function atOnce(study: Study, { wanted, moved, by }: DepartureOf<'runs-blocked'>): Finding {
  const { target, blockers } = wanted;
  const ref = by ?? blockers[0]!.ref;
  const runs = `It runs with ${sayMoved(study.circuit, moved)}`;
  const usual = { parts: [ref.part, target], basis: entry.basis };
  if (by === undefined)
    return found(study.plan, entry, {
      ...usual,
      message: `${target} runs although it is blocked`,
      why: `${runs}.${startedThrough(wanted)}`,
      fix: 'Wire the blocking contacts in line with the coil, ahead of every gate and override.',
    });
  const tab = wrongTabOfOther(study);
  const ends = tab?.part === ref.part ? [`${tab.part}.${tab.from}`, `${tab.part}.${tab.to}`] : [];
  return found(study.plan, entry, {
    ...usual,
    terminals: ends,
    message: `${target} runs although ${ref.part}${ref.position ? ` at ${ref.position}` : ''} ought to stop it`,
    why: `${runs}${moved.length === 0 ? ` (${ref.part} is off)` : ''}.${fedBy(study, target, moved)}${startedThrough(wanted)}`,
    fix:
      ends.length > 0
        ? `Move the core from ${ends[0]} to ${ends[1]}; that one change was proved to mend it.`
        : `Wire the break contact of ${ref.part} in line with the coil, ahead of every gate and override.`,
    twin: { alike: `at once ${target} ${ends.length > 0}` },
  });
}

function onceStarted(study: Study, { wanted, steps, by }: DepartureOf<'keeps-on-blocked'>): Finding {
  const { target } = wanted;
  return found(study.plan, entry, {
    parts: [by ?? target, target],
    message: `once started, ${target} keeps running although ${by ?? 'an input'} ought to stop it`,
    why: `Steps: ${saySteps(study, steps)}.${startedThrough(wanted)}`,
    fix: `Wire the break contact of ${by ?? 'the stop'} outside the path that the holding contact closes.`,
    basis: 'IEC 60204-1 clause 9.2 (from memory); common practice',
    twin: { alike: `once started ${target}` },
  });
}
