import type { FindingEntry } from '../entry.ts';

export const coilCurrentUnknown: FindingEntry = {
  id: 'coil-current-unknown',
  title: 'how much the coil draws is not stated',
  severity: 'doubt',
  question: 5,
  base: 'three-phase',
  meaning:
    'Without the current or power of the coil neither the supply nor the switches can be judged. The resistance of an AC coil does not give it: that is only its copper, and the iron does most of the holding back. The VA are printed on the coil or in its sheet.',
  wrong: 'coil: {rated: 24 V AC, resistance: 12 ohm, pull-in: 17 V, drop-out: 6 V, most: 30 V}',
  right:
    'coil: {rated: 24 V AC, power: 7 VA, power-factor: 0.3, inrush: 45 VA, pull-in: 17 V, drop-out: 6 V, most: 30 V}',
  basis: 'a missing figure is never a pass',
  followsFrom: [],
};
