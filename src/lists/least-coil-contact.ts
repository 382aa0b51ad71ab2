/** The least contact before the coil of another relay. */

import type { Contact } from '../plan/device-figures.ts';
import { PILOTS, placeText } from '../repair/remedies/contact-sizes.ts';
import { sizesWith } from '../repair/remedies/ladder.ts';
import { COIL_AMPS } from '../repair/remedies/series.ts';
import type { Study } from '../study/study.ts';
import { rounded } from '../text/numbers.ts';
import { Collected, type Duty, leastContact, ownContacts } from './contact-ladder.ts';
import type { LeastRatings } from './materials-model.ts';

/** Pilot-duty code, and AC-15 or DC-13, of a contact before another relay's coil. */
export function leastCoilContact(study: Study, duty: Duty): LeastRatings {
  const coils = duty.loads.flatMap((p) =>
    'coil' in p && p.coil ? [p.coil.rated] : 'supply' in p ? [p.supply] : [],
  );
  if (coils.length === 0) return { least: [], untold: [] };
  const { volts, kind } = coils.reduce((a, b) => (b.volts > a.volts ? b : a));
  const found = new Collected();
  const rated = (amps: number): Contact => ({ ratings: [{ amps, volts, kind }], motor: [] });
  found.add(
    leastContact(study, duty, PILOTS[kind], (pilot) => ({ ratings: [], motor: [], pilot })),
    {
      ...{ what: 'pilot duty', unit: '', value: () => null },
      words: (pilot) => `pilot duty ${pilot} (for the coil)`,
    },
  );
  const own = ownContacts(study, duty.names, duty.poles).map((c) => (kind === 'ac' ? c.ac15 : c.dc13));
  const category = kind === 'ac' ? 'AC-15' : 'DC-13';
  found.add(
    leastContact(study, duty, sizesWith(COIL_AMPS, own), (amps) => ({
      ...rated(amps),
      ...(kind === 'ac' ? { ac15: amps } : { dc13: amps }),
    })),
    {
      ...{ what: category, unit: 'A', value: (amps) => amps },
      words: (amps) => `${category} ${rounded(amps, 4)} A at ${placeText({ volts, kind })} (for the coil)`,
    },
  );
  return found.done();
}
