import type { Study } from '../../study/study.ts';
import type { Check, FindingEntry } from '../entry.ts';
import type { Finding } from '../report-model.ts';
import { type MiscolouredCore, miscoloured, miscolouredCores } from './coloured-cores.ts';

const entry: FindingEntry = {
  id: 'colour-of-earth',
  title: 'the colour of the earth on something else, or the earth in another',
  severity: 'danger',
  question: 1,
  ofWiring: false,
  base: 'battery',
  meaning:
    'Green-and-yellow, green and bare copper are for the earth alone. Whoever meets a green core takes hold of it as harmless or joins it to the metal; if it is a line, the metal is live. An earth in another colour is one day joined to a line or cut. No sleeve makes another core of a green-and-yellow one.',
  wrong: '{brown: [P1.L, K1.13], blue: [P1.N, K1.23], grey: [P1.PE, earth]}',
  right: '{brown: [P1.L, K1.13], blue: [P1.N, K1.23], green-yellow: [P1.PE, earth]}',
  basis: 'NEC 250.119; IEC 60445; BS 7671 514.4.2',
  followsBeside: { but: ['mains-meets-low-voltage', 'mains-through-gate'] },
  followsFrom: [
    'mains-meets-low-voltage',
    'mains-through-gate',
    'earth-broken',
    'earth-as-return',
    'mains-shorted',
    'neutral-earthed',
  ],
};

export const colourOfEarth: Check = { entry, find };

function find(study: Study): Finding[] {
  return miscolouredCores(study)
    .filter(({ fault }) => fault.of === 'earth')
    .map((core) => miscoloured(study, entry, core, isOldGreen(core) ? 'warning' : 'danger'));
}

/** An earth in green alone, as it was once laid where green-and-yellow is asked for now. */
function isOldGreen({ role, fault }: MiscolouredCore): boolean {
  return role.use === 'earth' && fault.colour === 'green';
}
