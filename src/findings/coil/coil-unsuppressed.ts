import type { FindingEntry } from '../entry.ts';

export const coilUnsuppressed: FindingEntry = {
  id: 'coil-unsuppressed',
  title: 'nothing quenches the coil when the switch opens',
  severity: 'caution',
  question: 4,
  base: 'battery',
  meaning:
    'A DC coil kicks back when its current is cut, and the last gate switch to open takes the arc. It works for months; then a switch sticks or stops conducting. A diode at the coil, band to the + side, takes the kick.',
  wrong: 'suppressor: none',
  right: 'suppressor: diode',
  basis: 'relay makers’ application guidance, several agree',
  followsFrom: [],
};
