import { extract, type FindingEntry } from '../entry.ts';

export const contactLeakage: FindingEntry = {
  id: 'contact-leakage',
  title: 'a solid-state output is never quite off',
  severity: 'warning',
  question: 6,
  base: 'battery',
  meaning:
    'A solid-state relay leaks a few milliamperes while off, so the motor lead tingles and reads live on a meter; and it makes 1 to 1.5 W of heat for each ampere. When it fails, it mostly fails in the on state. Use a contactor, or put one in line as the means of stopping.',
  wrong: extract('    kind: relay', '    technology: solid-state'),
  right: '    kind: relay',
  basis: 'relay makers’ application guidance, several agree; 29 CFR 1910.147(b)',
  followsFrom: [],
};
