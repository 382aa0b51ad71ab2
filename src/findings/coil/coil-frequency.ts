import type { FindingEntry } from '../entry.ts';

export const coilFrequency: FindingEntry = {
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
