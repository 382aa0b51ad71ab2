import type { FindingEntry } from '../entry.ts';

export const powerImplausible: FindingEntry = {
  id: 'power-implausible',
  title: 'the label claims more power than its amperes give',
  severity: 'notice',
  question: 7,
  base: 'dc-chain',
  meaning:
    'Volts times amperes is less than the power on the label, and a motor cannot give more than it takes. Such labels state a peak. Go by the amperes when choosing relay and circuit.',
  wrong: '    power: 3 hp',
  right: '    power: 1.5 hp',
  basis: 'output cannot exceed volts times amperes',
  followsFrom: [],
};
