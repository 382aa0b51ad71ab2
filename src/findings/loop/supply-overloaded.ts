import type { FindingEntry } from '../entry.ts';

export const supplyOverloaded: FindingEntry = {
  id: 'supply-overloaded',
  title: 'the coils draw more than the supply gives',
  severity: 'fault',
  question: 5,
  base: 'ac-contactor',
  meaning:
    'Everything that can be in at once, lamps and boards with it, draws more than the supply is made for. It sags, and the contactor hums without closing, or it overheats. AC coils count with what they draw at pull-in. Above 80 % of the limit it is a caution; so it is where a transformer is over its rating for the moment of pull-in only, and its sag still leaves every coil enough.',
  wrong: 'limit: 10 VA',
  right: 'limit: 40 VA',
  basis: 'common practice',
  followsFrom: [],
};
