import type { FindingEntry } from '../entry.ts';

export const plugMismatch: FindingEntry = {
  id: 'plug-mismatch',
  title: 'plug, outlet, motor and circuit do not belong together',
  severity: 'danger',
  question: 7,
  base: 'dc-chain',
  meaning:
    'A plug or outlet is made for less current or another voltage than this circuit, or the motor for another voltage. It overheats, or takes a machine that does not belong there. A pattern that is not stated or not known is a doubt.',
  wrong: '    pattern: NEMA 5-15',
  right: '    pattern: NEMA L5-30',
  basis: 'NEMA WD 6, CEE 7, BS 1363, IEC 60309, AS/NZS 3112',
  followsFrom: [],
};
