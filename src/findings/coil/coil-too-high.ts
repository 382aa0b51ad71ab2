import { printedVolts } from '../../ratings/coil.ts';
import { coilOf } from '../../study/coil-models.ts';
import type { CoilState } from '../../study/coil-states.ts';
import { figuresFor } from '../../study/corner-figures.ts';
import type { Study } from '../../study/study.ts';
import { rounded } from '../../text/numbers.ts';
import { type Check, extract, type FindingEntry } from '../entry.ts';
import { found } from '../finding.ts';
import type { Finding } from '../report-model.ts';
import { lowCoils } from './low-volts.ts';

const entry: FindingEntry = {
  id: 'coil-too-high',
  title: 'more volts than the coil stands for long',
  severity: 'warning',
  question: 4,
  base: 'battery',
  meaning:
    'The coil works, and cooks: it gets more volts than its maker allows for long, and its winding fails in time. Unregulated adapters and small transformers give well above their label when lightly loaded. Where the plan states the most the coil stands, the greatest volts count; where it does not, above 110 % of rated is a caution and above 130 % a warning.',
  wrong: extract('      rated: 6 V DC', '      resistance: 40 ohm'),
  right: extract('      rated: 12 V DC', '      resistance: 160 ohm'),
  basis: 'continuous coil voltage 110 % of rated unless the maker states more (makers’ data)',
  followsFrom: ['supply-input'],
};

export const coilTooHigh: Check = { entry, find };

/** A coil that may not even pull in is not told to get too much. */
function find(study: Study): Finding[] {
  const failing = new Set(lowCoils(study).flatMap((low) => (low.fails ? [low.state] : [])));
  return study.coilStates.filter((state) => !failing.has(state)).flatMap((state) => tooHigh(study, state));
}

/** Share by which the line-to-neutral volts of three phases lie above what they are called: 400/√3 V is 230 V by IEC 60038. */
const ROUNDED = 0.005;

/**
 * Too many volts for long. Where the plan states what the coil stands, the greatest volts are held to that; where it
 * does not, 110 % of rated with the mains at nominal, and only what is above all common coils is sure to harm.
 */
function tooHigh(study: Study, { fed, rows }: CoilState): Finding[] {
  const { part, model, source, supply } = fed;
  const stated = coilOf(part).most !== undefined;
  const scale = (corner: 'nominal' | 'high') => figuresFor(study.plan, corner).source(source).scale;
  const nominal = scale('nominal') / scale('high');
  const most = Math.max(...rows.map((r) => r.most)) * (stated ? 1 : nominal);
  const threePhase = source.mains && source.rails.filter((r) => r.live).length === 3;
  if (most <= model.mostVolts * (threePhase ? 1 + ROUNDED : 1) + 1e-9) return [];
  const owner = study.plan.parts.get(source.part);
  const taken =
    owner?.kind === 'supply' && supply !== undefined && supply.sourceOhms > 0 && owner.noLoad === undefined;
  const sure = stated || most > 1.3 * model.rated;
  return [
    found(study.plan, entry, {
      severity: sure ? 'warning' : 'caution',
      parts: [part.name, source.part],
      at: part.where.get('coil.rated') ?? part.at,
      message: `${part.name} gets ${rounded(most)} V${stated ? '' : ' with the mains at nominal'} and stands ${rounded(model.mostVolts)} V for long`,
      why: `Its coil is rated ${model.electronic ? printedVolts(coilOf(part)) : `${model.rated} V`}; ${source.part} ${supply && supply.sourceOhms > 0 ? 'rises above its label when lightly loaded' : 'may stand that high'}. The coil overheats.`,
      fix: `${part.name} gets ${rounded(most - model.mostVolts)} V more than it stands${taken ? `; measure the volts with the coil on, and state no-load: of ${source.part}` : ''}.`,
      figures: [
        { name: 'volts at the coil', value: rounded(most, 4), unit: 'V' },
        { name: 'most for long', value: rounded(model.mostVolts, 4), unit: 'V' },
      ],
      basis: stated
        ? 'highest continuous voltage as printed on the relay'
        : 'continuous coil voltage 110 % of rated unless the maker states more (makers’ data)',
      twin: { alike: source.part, badness: most / model.mostVolts },
    }),
  ];
}
