import type { FindingEntry } from '../entry.ts';

export const cordAsFixedWiring: FindingEntry = {
  id: 'cord-as-fixed-wiring',
  title: 'flexible cord used as fixed wiring',
  severity: 'warning',
  question: 7,
  base: 'fixed-motor',
  meaning:
    'Cord is made for what is plugged in and moved. Fixed along a wall or through it, it chafes, dries out and is struck by what leans there. Use building wire in conduit, or put a plug on the cord. Where practice is iec it is a notice: cord has to be protected along its way.',
  wrong: 'insulation: 600 V, flexible: true',
  right: 'insulation: 600 V, flexible: false',
  basis: 'NEC 400.12 (400.8 before 2017), IEC 60364-5-52 (both from memory)',
  followsFrom: [],
};
