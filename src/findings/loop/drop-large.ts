import type { FindingEntry } from '../entry.ts';

export const dropLarge: FindingEntry = {
  id: 'drop-large',
  title: 'over a tenth of the volts stay in the wire',
  severity: 'caution',
  question: 5,
  base: 'ac-contactor',
  meaning:
    'At the farthest gate the wire and its contacts take more than 10 % of the supply while the coil pulls in. It still works, but the wire is thin for its length and little is left for a weak supply or a tarnished contact. Use the next thicker wire, or a relay that draws less.',
  wrong: 'gauge: 24 AWG',
  right: 'gauge: 18 AWG',
  basis: 'ASTM B258 or IEC 60228 resistance; 10 % is common practice',
  followsFrom: ['coil-too-low', 'coil-thin-margin'],
};
