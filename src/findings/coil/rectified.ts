import { widestVolts } from '../../circuit/rail-volts.ts';
import { SILICON_DROP } from '../../circuit/thresholds.ts';
import { type Rectified, rectifiedParts } from '../../logic/rectified.ts';
import type { Study } from '../../study/study.ts';
import { rounded } from '../../text/numbers.ts';
import { listOf } from '../../text/word-list.ts';
import type { Check, FindingEntry } from '../entry.ts';
import { found } from '../finding.ts';
import type { Finding } from '../report-model.ts';

const entry: FindingEntry = {
  id: 'rectified',
  title: 'alternating current is rectified by diodes, which is not worked out',
  severity: 'doubt',
  question: 4,
  base: 'bell-and-adapter',
  meaning:
    'A coil or a load hangs on an AC supply behind diodes. What it gets is no steady voltage: half waves, both half waves, or something near their crest where a capacitor stands behind the diodes, which a plan cannot say. A coil may hum, stay out or burn, so nothing of what hangs on it is proved here. A DC supply of the coil\u2019s own volts settles it.',
  wrong: '  - {cable: bell, length: 2 m, cores: {red: [T1.~1, D1.A], white: [T1.~2, K1.A2]}}',
  right: '  - {cable: bell, length: 2 m, cores: {red: [PS1.+, D1.A], white: [PS1.-, K1.A2]}}',
  basis:
    'mean of a rectified sine wave, 2\u221a2/\u03c0 of its effective value for both half waves; common practice',
  followsFrom: [],
};

export const rectified: Check = { entry, find };

/** Mean over effective value of both half waves of a sine. */
const MEAN = (2 * Math.SQRT2) / Math.PI;

function find(study: Study): Finding[] {
  return rectifiedParts(study.circuit).map((one) => told(study, one));
}

function told(study: Study, { part, source, diodes, bridge }: Rectified): Finding {
  const { plan } = study;
  const volts = widestVolts(source);
  const drops = (bridge ? 2 : 1) * SILICON_DROP;
  const mean = Math.max(0, volts * MEAN * (bridge ? 1 : 0.5) - drops);
  const crest = Math.max(0, volts * Math.SQRT2 - drops);
  const [low, high] = [rounded(mean), rounded(crest)];
  const waves = bridge ? 'both half waves' : 'one half wave in two';
  return found(plan, entry, {
    parts: [part, source.part, ...diodes],
    message: `${part} gets AC of ${source.part} through ${listOf([...new Set(diodes)])}, which is not worked out`,
    why: `${rounded(volts)} V AC give ${waves}: about ${low} V in the mean without a capacitor, up to ${high} V with one, by the label; which of them the coil or load answers to cannot be told from the plan.`,
    fix: `Feed ${part} from a supply for V DC, with the volts that are printed on ${part}.`,
    figures: [
      { name: 'mean', value: low, unit: 'V' },
      { name: 'crest', value: high, unit: 'V' },
    ],
    basis: entry.basis,
    twin: { name: part, alike: `${source.part} ${waves}` },
  });
}
