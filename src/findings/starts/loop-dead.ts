import { sayMoved } from '../../circuit/input-words.ts';
import type { Study } from '../../study/study.ts';
import type { Check, FindingEntry } from '../entry.ts';
import { found } from '../finding.ts';
import type { Finding } from '../report-model.ts';
import { deadLoopWords } from './dead-loop-words.ts';
import { startedThrough } from './departure-words.ts';
import { departuresOf } from './departures/departures.ts';

const entry: FindingEntry = {
  id: 'loop-dead',
  title: 'no gate starts the load',
  severity: 'fault',
  question: 2,
  base: 'dc-chain',
  meaning:
    'Whatever is opened, the load stays off. One thing that all gates share is missing: the supply is not fed, or is fed through the very contact it has to close; a coil end or a fuse is loose. The message names that one thing.',
  wrong: '{cable: bell, length: 2 m, cores: {red: [PS1.+, feed]}}',
  right: '{cable: bell, length: 2 m, cores: {red: [PS1.+, feed], white: [PS1.-, K1.A2]}}',
  basis: 'common practice',
  followsFrom: [
    'toggle-needs-button',
    'trigger-fed',
    'set-and-reset',
    'supply-shorted',
    'diode-backwards',
    'polarity-reversed',
    'coil-shorted',
    'coil-too-low',
    'coil-in-series',
    'chatters',
    'mains-shorted',
    'mains-meets-low-voltage',
    'supplies-joined',
    'earth-as-return',
    'two-feeds',
  ],
  goneByOneMove: true,
};

export const loopDead: Check = { entry, find };

function find(study: Study): Finding[] {
  return departuresOf(study, 'nothing-starts').map(({ wanted, everything, cause }) => {
    const { target } = wanted;
    const { what, why, fix, parts, terminals } = deadLoopWords(
      cause,
      target,
      sayMoved(study.circuit, everything),
    );
    return found(study.plan, entry, {
      parts: [...parts, target],
      terminals,
      message: `no gate starts ${target}: ${what}`,
      why: `${why}${startedThrough(wanted)}`,
      fix,
      basis: entry.basis,
      twin: { name: target, alike: cause.kind },
    });
  });
}
