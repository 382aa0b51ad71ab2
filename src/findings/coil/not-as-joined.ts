import type { Relay } from '../../circuit/circuit.ts';
import { follow } from '../../logic/follow.ts';
import type { Deviation, Moved, Verified } from '../../logic/verify.ts';
import { unmetSense } from '../../study/nominal-volts.ts';
import type { Study } from '../../study/study.ts';
import { rounded } from '../../text/numbers.ts';
import { type Check, extract, type FindingEntry } from '../entry.ts';
import { found } from '../finding.ts';
import type { Finding } from '../report-model.ts';
import { movedParts, saySteps } from '../starts/departure-words.ts';

const entry: FindingEntry = {
  id: 'not-as-joined',
  title: 'at nominal volts the load does not do what its wiring says',
  severity: 'fault',
  question: 4,
  base: 'board',
  meaning:
    'By what is joined to what the load would start and stop as meant. Solved with everything as printed, at 20 °C, a coil or an input does not get the volts it needs, or keeps some that it ought to lose, and so the load does otherwise. This is no worst case: it is so on an ordinary day.',
  wrong: extract('    input-current: 4 mA', '    threshold: 1 mV'),
  right: '    input-current: 4 mA',
  basis: 'the network solved with the figures of the plan',
  followsFrom: [
    'coil-too-low',
    'coil-in-series',
    'coil-holds-in',
    'coil-kind',
    'coil-shorted',
    'polarity-reversed',
    'supply-shorted',
    'supply-overloaded',
    'supplies-joined',
    'mains-meets-low-voltage',
    'mains-shorted',
  ],
};

export const notAsJoined: Check = { entry, find };

/** One finding for each load and each way of going wrong that the proof by joins alone does not have. */
function find(study: Study): Finding[] {
  const { verified, nominal } = study;
  if (!verified || !nominal || nominal.verified === verified) return [];
  const known = new Set(verified.deviations.map(sameKind));
  const first = new Map<string, Deviation>();
  for (const d of nominal.verified.deviations)
    if (!known.has(sameKind(d)) && !first.has(sameKind(d))) first.set(sameKind(d), d);
  return [...first.values()].map((d) => report(study, verified, nominal.verified, d));
}

const sameKind = ({ target, expected }: Deviation): string => `${expected} ${target}`;

function report(
  study: Study,
  joined: Verified,
  solved: Verified,
  { target, expected, steps }: Deviation,
): Finding {
  const relay = study.circuit.relays.find(({ part }) => differs(joined, solved, part, steps));
  const does = expected ? 'does not run' : 'runs';
  const ought = expected ? 'it ought to' : 'it ought not to';
  return found(study.plan, entry, {
    parts: [...(relay ? [relay.part] : []), ...movedParts(study, steps), target],
    message: `at nominal volts ${target} ${does} where ${ought}${relay ? `: ${relayWords(study, solved, relay, steps)}` : ''}`,
    why: `Steps: ${saySteps(study, steps)}. What is joined to what would do as meant; the volts do not.`,
    fix: relay
      ? `Give ${relay.part} the volts it needs: thicker or shorter wire, or a supply that suits it.`
      : 'Look at the volts that every coil gets in that position.',
    basis: entry.basis,
  });
}

function differs(joined: Verified, solved: Verified, part: string, steps: readonly Moved[]): boolean {
  return follow(joined, steps).runs(part) !== follow(solved, steps).runs(part);
}

/** `K1 stays out, with 12 V of the 19 V it needs`. */
function relayWords(study: Study, solved: Verified, relay: Relay, steps: readonly Moved[]): string {
  if (follow(solved, steps).runs(relay.part) !== false) return `${relay.part} stays in`;
  const unmet = unmetSense(study, relay, steps);
  if (unmet === undefined) return `${relay.part} stays out`;
  const where = unmet.what === 'input' ? ' at its input' : '';
  return `${relay.part} stays out, with ${rounded(unmet.volts)} V of the ${rounded(unmet.needed)} V it needs${where}`;
}
