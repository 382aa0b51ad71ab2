import { extract, type FindingEntry } from '../entry.ts';

export const ringHidesBreak: FindingEntry = {
  id: 'ring-hides-break',
  title: 'a break in a ring goes unnoticed',
  severity: 'notice',
  question: 2,
  base: 'dc-chain',
  meaning:
    'A loop closed into a ring works from both ends, so one break in it changes nothing that anybody sees. A second break then takes out every gate between the two. Leave a link that can be opened, and measure each core all the way round from there.',
  wrong: extract(
    '  - {cable: bell, length: 20 cm, cores: {white: [call, K1.A1]}}',
    '  - {cable: bell, length: 6 m, cores: {red: [router.COM, feed], white: [router.NO, call]}}',
  ),
  right: '  - {cable: bell, length: 20 cm, cores: {white: [call, K1.A1]}}',
  basis: 'common practice of ring-wired alarm loops',
  followsFrom: [],
};
