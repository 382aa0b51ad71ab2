import type { FindingEntry } from '../entry.ts';

export const stopsWithoutCause: FindingEntry = {
  id: 'stops-without-cause',
  title: 'something not meant to stop the load stops it',
  severity: 'fault',
  question: 2,
  base: 'ac-contactor',
  meaning:
    'A switch or cut-out that the intent does not name keeps the load from running. Either it was wired in by mistake, or it is wanted and the intent forgot it: then name it under blocked-by.',
  wrong: 'collector: {runs-on: [lathe, bandsaw]}',
  right: 'collector: {runs-on: [lathe, bandsaw], blocked-by: [bin]}',
  basis: 'common practice',
  followsFrom: ['supply-shorted', 'mains-shorted', 'polarity-reversed'],
  goneByOneMove: true,
};
