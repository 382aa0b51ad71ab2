import { extract, type FindingEntry } from '../entry.ts';

export const staysOn: FindingEntry = {
  id: 'stays-on',
  title: 'once started, it does not stop',
  severity: 'fault',
  question: 3,
  base: 'seal-in',
  meaning:
    'A relay holds itself in, and shutting the gates does not break its holding path. Here the holding contact was taken from the contactor, which any gate pulls in: after the first gate the fan runs on until STOP. Take it from the relay that START works.',
  wrong: extract('  - {link: [armed, Q1.13]}', '  - {link: [Q1.14, CR.A1]}'),
  right: extract('  - {link: [armed, CR.11]}', '  - {link: [CR.14, CR.A1]}'),
  basis: 'common practice',
  followsFrom: ['coil-holds-in'],
  goneByOneMove: true,
};
