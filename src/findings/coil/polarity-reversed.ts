import { extract, type FindingEntry } from '../entry.ts';

export const polarityReversed: FindingEntry = {
  id: 'polarity-reversed',
  title: 'a part with + and - is fed the wrong way round',
  severity: 'fault',
  question: 4,
  ofWiring: true,
  base: 'battery',
  meaning:
    'A coil with a built-in diode, a board or an indicator gets + where - belongs. A coil with a diode is a short circuit that way: the fuse blows or the adapter cuts out as soon as a gate opens. Most such relays want + on A1.',
  wrong: extract('  - {link: [barB, K1.A2]}', '  - {link: [minus, K1.A1]}'),
  right: extract('  - {link: [barB, K1.A1]}', '  - {link: [minus, K1.A2]}'),
  basis: 'common practice',
  followsFrom: [],
};
