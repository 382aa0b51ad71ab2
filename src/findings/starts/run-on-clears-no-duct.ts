import type { Study } from '../../study/study.ts';
import { shortRunOns } from '../../study/timers/run-on.ts';
import { listOf } from '../../text/word-list.ts';
import type { Check, FindingEntry } from '../entry.ts';
import { COMMON_PRACTICE, found } from '../finding.ts';
import type { Finding } from '../report-model.ts';
import { worksAsMeant } from './works-as-meant.ts';

const entry: FindingEntry = {
  id: 'run-on-clears-no-duct',
  title: 'run-on with every gate shut moves no air through the duct',
  severity: 'notice',
  question: 3,
  base: 'timer',
  meaning:
    'The load runs on after the last gate is shut, and then no air comes in: chips that are still in the pipe stay there. Such a run-on lets the filter or cyclone settle and no more. Leave the gate open for some seconds after the machine stops, or let a bleed gate open at the far end; some pipe caves in with every gate shut.',
  wrong: '  extractor: {runs-on: [planer, saw, lathe], blocked-by: [bin], run-on: 20 s}',
  right: '  extractor: {runs-on: [planer, saw, lathe], blocked-by: [bin]}',
  basis:
    'the air stands still with every gate shut (derived); time to clear = length over 0.6 times the air speed, times 3 (common practice)',
  followsFrom: [],
};

export const runOnClearsNoDuct: Check = { entry, find };

/** Told where the run-on works: where it does not, that is the greater worry. */
function find(study: Study): Finding[] {
  const asked = worksAsMeant(study)?.intents.wanted.filter((w) => w.runOn > 0) ?? [];
  const short = new Set(shortRunOns(study).map((s) => s.wanted.target));
  const works = asked.map((w) => w.target).filter((t) => !short.has(t));
  if (works.length === 0) return [];
  return [
    found(study.plan, entry, {
      parts: works,
      message: `while ${listOf(works)} runs on with every gate shut, no air moves through the duct`,
      why: 'Chips that lie in the pipe when the last gate shuts stay there; only the filter is shaken out.',
      fix: 'Shut the gate some seconds after the machine has stopped: 20 m of pipe take about 5 s at 20 m/s. Or fit a bleed gate.',
      basis: COMMON_PRACTICE,
    }),
  ];
}
