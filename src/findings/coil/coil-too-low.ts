import { extract, type FindingEntry } from '../entry.ts';

export const coilTooLow: FindingEntry = {
  id: 'coil-too-low',
  title: 'too few volts for the coil to pull in',
  severity: 'fault',
  question: 4,
  base: 'battery',
  meaning:
    'The least the coil can get is below what it needs to pull in: supply low, and volts lost in the wire both ways and in the contacts. A DC coil that has been on all day is warm, and needs about a fifth more than is printed on it. An AC coil counts with its armature open: it then draws several times its holding current, and a small transformer sags just then. So the relay pulls in from the near gate or in the morning, and not from the far one or in July.',
  wrong: extract('      rated: 24 V DC', '      resistance: 640 ohm'),
  right: extract('      rated: 12 V DC', '      resistance: 160 ohm'),
  basis:
    'pull-in as printed, or the usual must-operate figure; copper by (234.5 + T)/254.5; wire by ASTM B258 or IEC 60228',
  followsFrom: ['coil-in-series', 'supply-shorted', 'coil-shorted', 'supplies-joined'],
};
