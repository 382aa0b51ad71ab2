import { extract, type FindingEntry } from '../entry.ts';

export const startsPerHour: FindingEntry = {
  id: 'starts-per-hour',
  title: 'the motor starts more often than it stands',
  severity: 'caution',
  question: 6,
  base: 'dc-chain',
  meaning:
    'Each start heats the winding as much as minutes of running, and a short rest does not let that heat out. The table says how many starts an hour a motor of this size stands and how long it has to rest. Let the collector run on between short cuts with an off-delay timer. With the power of the motor not stated it is a doubt.',
  wrong: extract('    protector: manual', '    starts-per-hour: 30'),
  right: '    protector: manual',
  basis: 'NEMA MG 10-2001 Table 2-3; start capacitor data, 20 an hour on one phase',
  followsFrom: [],
};
