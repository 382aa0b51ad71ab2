/** The least and the most ohms that everything may have: copper in a cold shop and a hot one, contacts, coils. */
import type { Passive } from '../circuit/circuit.ts';
import type { Figures } from '../electric/island.ts';
import type { Plan } from '../plan/plan.ts';
import { copperFactor } from '../ratings/coil.ts';
import { defaults } from '../ratings/defaults.ts';
import { modelOf } from '../study/coil-models.ts';
import { statedOhms } from '../study/contact-ohms.ts';
import { figuresFor } from '../study/corner-figures.ts';
import { ambientOf } from '../study/corners.ts';

/** °C of the coldest shop a sheet is worked through in; common practice, no source. */
const COLDEST = 5;

/** Figures for an ohmmeter at both ends of the tolerances. */
export function ohmLimits(plan: Plan): { readonly least: Figures; readonly most: Figures } {
  const nominal = figuresFor(plan, 'ohmmeter');
  const warm = figuresFor(plan, 'low');
  const cold = Math.min(1, copperFactor(COLDEST));
  const hot = Math.max(1, copperFactor(ambientOf(plan)));
  const coil = (p: Passive): number => {
    const part = plan.parts.get(p.part);
    return p.what === 'coil' && part && 'poles' in part ? modelOf(part).tolerance : 0;
  };
  const scaled = (p: Passive, sign: number, copper: number) => {
    const z = nominal.passive(p, false);
    if (z === undefined) return undefined;
    const factor = p.what === 'coil' ? (1 + sign * coil(p)) * copper : 1;
    return { re: z.re * factor, im: 0 };
  };
  const { low, high } = defaults.contactResistance;
  return {
    least: {
      ...nominal,
      wire: (w) => nominal.wire(w) * cold,
      contact: (c) => statedOhms(plan, c) ?? low ?? 0,
      passive: (p) => scaled(p, -1, cold),
    },
    most: {
      ...nominal,
      wire: (w) => Math.max(warm.wire(w), nominal.wire(w)),
      contact: (c) => Math.max(statedOhms(plan, c) ?? 0, high ?? 0),
      passive: (p) => scaled(p, 1, hot),
    },
  };
}
