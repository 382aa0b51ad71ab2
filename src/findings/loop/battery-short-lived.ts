import type { FindingEntry } from '../entry.ts';

export const batteryShortLived: FindingEntry = {
  id: 'battery-short-lived',
  title: 'the battery does not last a week',
  severity: 'caution',
  question: 5,
  base: 'battery',
  meaning:
    'What can be used of its capacity does not cover a week: forty hours with a gate open and the rest with all gates shut. A lamp that sits before the gates draws day and night, and empties it over a weekend. Use a bigger battery, a relay that draws less, or a plug-in supply.',
  wrong: 'capacity: 2 Ah',
  right: 'capacity: 17 Ah',
  basis: 'capacity over current; 60 % usable and a week of 40 h are common practice, no source',
  followsFrom: [],
};
