import { extract, type FindingEntry } from '../entry.ts';

export const coilInSeries: FindingEntry = {
  id: 'coil-in-series',
  title: 'the coil shares the supply with another part in line',
  severity: 'fault',
  question: 4,
  ofWiring: true,
  base: 'dc-chain',
  meaning:
    'A lamp or another coil lies in the wire to this coil, and each gets part of the volts. The lamp glows faintly and the relay does not pull in. Put the two side by side.',
  wrong: extract(
    '  - {cable: bell, length: 20 cm, cores: {white: [call, pilot.1]}}',
    '  - {link: [pilot.2, K1.A1]}',
  ),
  right: extract(
    '  - {cable: bell, length: 20 cm, cores: {white: [call, K1.A1]}}',
    '  - {link: [pilot.1, K1.A1]}',
    '  - {link: [pilot.2, K1.A2]}',
  ),
  basis: 'Ohm’s law over the joined parts, ideal wires',
  followsFrom: [],
  goneByOneMove: true,
};
