import type { FindingEntry } from '../entry.ts';

export const earthBroken: FindingEntry = {
  id: 'earth-broken',
  title: 'no unbroken earth from the plug to the metal',
  severity: 'danger',
  question: 1,
  base: 'dc-chain',
  meaning:
    'The green core does not run through from the plug to the outlet, motor or metal box, or it passes a contact or fuse. Everything works as before, so nobody notices; but when a live wire touches the metal, nothing trips and the machine is live. See it with a continuity tester between the earth pin and bare metal, plug out.',
  wrong: '{cable: cord, length: 60 cm, cores: {white: [neutral, X1.N]}}',
  right: '{cable: cord, length: 60 cm, cores: {white: [neutral, X1.N], green: [B1.PE, X1.PE]}}',
  basis: 'NEC 250.110, 250.114, 250.124, 250.148; BS 7671 clause 411.3.1 (partly from memory)',
  followsFrom: [],
};
