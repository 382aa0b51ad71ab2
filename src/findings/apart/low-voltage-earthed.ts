import { extract, type FindingEntry } from '../entry.ts';

export const lowVoltageEarthed: FindingEntry = {
  id: 'low-voltage-earthed',
  title: 'one side of the loop is earthed',
  severity: 'notice',
  question: 1,
  base: 'battery',
  meaning:
    'One pole of the supply is joined to the protective earth. That is common on machines and only noted, as long as the coil sits straight on the earthed pole. With the gate switches between the coil and the earthed pole it is a warning: the bare tab of a switch touching a metal duct then starts the motor.',
  wrong: extract('  - {link: [minus, earth]}', '  - {link: [minus, K1.A2]}'),
  right: '  - {link: [minus, K1.A2]}',
  basis: 'NEC 430.74; IEC 60204-1 clause 9.4.3; NFPA 79 clause 9.1.4',
  followsFrom: ['mains-meets-low-voltage'],
};
