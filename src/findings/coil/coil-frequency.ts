import type { Plan } from '../../plan/plan.ts';
import { takesKind } from '../../ratings/coil.ts';
import { coilOf } from '../../study/coil-models.ts';
import type { FedCoil } from '../../study/fed-coils.ts';
import type { Study } from '../../study/study.ts';
import type { Check, FindingEntry } from '../entry.ts';
import { found } from '../finding.ts';
import type { Finding } from '../report-model.ts';

const entry: FindingEntry = {
  id: 'coil-frequency',
  title: 'the coil is made for another frequency',
  severity: 'caution',
  question: 4,
  base: 'ac-contactor',
  meaning:
    'The current of an AC coil is set by its reactance, and that goes with the frequency. A 60 Hz coil on 50 Hz draws a fifth more and runs hot; a 50 Hz coil on 60 Hz draws less and may not lift its armature. Take a coil marked 50/60 Hz.',
  wrong: '      rated: 24 V AC 50 Hz',
  right: '      rated: 24 V AC',
  basis: 'reactance 2πfL; derived',
  followsFrom: [],
};

export const coilFrequency: Check = { entry, find };

function find(study: Study): Finding[] {
  return study.fedCoils.filter((c) => takesKind(c.model, c.source.kind)).flatMap((c) => otherHertz(study, c));
}

/** An AC coil made for another frequency: its reactance, and so its current, goes with the frequency. */
function otherHertz(study: Study, { part, model, source }: FedCoil): Finding[] {
  const made = coilOf(part).frequency;
  if (model.kind !== 'ac' || made === undefined) return [];
  const { hertz, stated } = hertzOf(study.plan, source.part);
  if (hertz === made) return [];
  const share = Math.round((made / hertz) * 100);
  const hot = made > hertz;
  return [
    found(study.plan, entry, {
      parts: [part.name, source.part],
      at: part.where.get('coil.frequency') ?? part.where.get('coil.rated') ?? part.at,
      message: hot
        ? `${part.name} is made for ${made} Hz; on ${hertz} Hz its coil runs hot`
        : `${part.name} is made for ${made} Hz; on ${hertz} Hz it may not pull in`,
      why: `Its current goes with 1/frequency: about ${share} % of what it is made for${stated ? '' : ` (${hertz} Hz taken from the practice)`}.`,
      fix: `Use a coil marked ${hertz} Hz or 50/60 Hz.`,
      figures: [
        { name: 'coil frequency', value: made, unit: 'Hz' },
        { name: 'supply frequency', value: hertz, unit: 'Hz' },
      ],
      basis: entry.basis,
    }),
  ];
}

/** Hz of a source: as stated on it or on the plug it hangs from, else what is usual for the practice. */
function hertzOf(plan: Plan, source: string): { readonly hertz: number; readonly stated: boolean } {
  const part = plan.parts.get(source);
  if (part && 'frequency' in part && part.frequency !== undefined)
    return { hertz: part.frequency, stated: true };
  for (const plug of plan.parts.values())
    if (plug.kind === 'plug' && plug.frequency !== undefined) return { hertz: plug.frequency, stated: true };
  return { hertz: plan.practice === 'nec' ? 60 : 50, stated: false };
}
