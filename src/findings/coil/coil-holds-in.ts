import { extract, type FindingEntry } from '../entry.ts';

export const coilHoldsIn: FindingEntry = {
  id: 'coil-holds-in',
  title: 'leakage keeps the relay in',
  severity: 'fault',
  question: 4,
  ofWiring: true,
  base: 'dc-chain',
  meaning:
    'With all gates shut some current still passes through the coil: by a lamp across a switch, through a solid-state output that is off, or from core to core along a long cable at mains voltage. It is too little to pull the relay in and can be enough to keep it in, so the load does not stop. Put the lamp across the coil, a resistor beside the coil of a leaky output, and keep long cables at 24 V.',
  wrong: extract('  - {link: [pilot.1, feed]}', '  - {link: [pilot.2, call]}'),
  right: extract('  - {link: [pilot.1, K1.A1]}', '  - {link: [pilot.2, K1.A2]}'),
  basis: 'drop-out as printed, or the usual must-release figure; long cable from 90 m, common practice',
  followsFrom: ['coil-in-series', 'polarity-reversed', 'diode-backwards'],
  goneByOneMove: true,
};
