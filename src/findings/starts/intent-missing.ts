import { extract, type FindingEntry } from '../entry.ts';

export const intentMissing: FindingEntry = {
  id: 'intent-missing',
  title: 'the plan does not say what a load is meant to do',
  severity: 'doubt',
  question: 2,
  base: 'two-collectors',
  meaning:
    'The intent speaks of some loads and leaves this one out, or there is nothing to start at all. Whether it does right cannot be told. Add a line for it.',
  wrong: '  chips: {runs-on: [rip-saw, wide-belt]}',
  right: extract('  chips: {runs-on: [rip-saw, wide-belt]}', '  fines: {runs-on: [edge-sander, wide-belt]}'),
  basis: 'limit of the method',
  followsFrom: [],
};
