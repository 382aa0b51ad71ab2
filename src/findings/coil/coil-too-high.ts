import { extract, type FindingEntry } from '../entry.ts';

export const coilTooHigh: FindingEntry = {
  id: 'coil-too-high',
  title: 'more volts than the coil stands for long',
  severity: 'warning',
  question: 4,
  base: 'battery',
  meaning:
    'The coil works, and cooks: it gets more volts than its maker allows for long, and its winding fails in time. Unregulated adapters and small transformers give well above their label when lightly loaded. Where the plan states the most the coil stands, the greatest volts count; where it does not, above 110 % of rated is a caution and above 130 % a warning.',
  wrong: extract('      rated: 6 V DC', '      resistance: 40 ohm'),
  right: extract('      rated: 12 V DC', '      resistance: 160 ohm'),
  basis: 'continuous coil voltage 110 % of rated unless the maker states more (makers’ data)',
  followsFrom: [],
};
