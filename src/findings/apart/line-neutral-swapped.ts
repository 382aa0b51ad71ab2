import type { FindingEntry } from '../entry.ts';

export const lineNeutralSwapped: FindingEntry = {
  id: 'line-neutral-swapped',
  title: 'line and neutral change places',
  severity: 'danger',
  question: 1,
  base: 'battery',
  meaning:
    'The outlet has the line where the neutral belongs. The motor runs just as well, but the switch and fuse in whatever is plugged in then sit in the neutral, and the shell of a lamp holder is live. A plug-in socket tester shows it as reversed.',
  wrong: '{brown: [K1.14, X1.N], blue: [K1.24, X1.L], green-yellow: [earth, X1.PE]}',
  right: '{brown: [K1.14, X1.L], blue: [K1.24, X1.N], green-yellow: [earth, X1.PE]}',
  basis: 'NEC 200.11; IEC 60364-6 polarity test (from memory)',
  followsFrom: [],
};
