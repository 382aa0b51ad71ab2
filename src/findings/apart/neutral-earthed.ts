import { extract, type FindingEntry } from '../entry.ts';

export const neutralEarthed: FindingEntry = {
  id: 'neutral-earthed',
  title: 'neutral and earth are joined after the plug',
  severity: 'danger',
  question: 1,
  base: 'dc-chain',
  meaning:
    'The neutral touches the earth wire or the metal box. Part of the motor current then goes home by the earth wire and by every metal part joined to it, and a residual-current or ground-fault breaker trips. The one joint between the two belongs at the service, not in the shop.',
  wrong: extract(
    '  - {link: [neutral, B1.PE]}',
    '  - {cable: cord, length: 60 cm, cores: {white: [neutral, X1.N], green: [B1.PE, X1.PE]}}',
  ),
  right: '  - {cable: cord, length: 60 cm, cores: {white: [neutral, X1.N], green: [B1.PE, X1.PE]}}',
  basis: 'NEC 250.24(A)(5), 250.142(B) (from memory); BS 7671 section 411 (from memory)',
  followsFrom: [],
};
