import type { Study } from '../../study/study.ts';
import { listOf } from '../../text/word-list.ts';
import { type Check, extract, type FindingEntry } from '../entry.ts';
import { found } from '../finding.ts';
import type { Finding } from '../report-model.ts';
import { type EarthJoin, neutralToEarth } from './earth-joins.ts';

const entry: FindingEntry = {
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

export const neutralEarthed: Check = { entry, find };

/** Wires, or contacts in some position, join a neutral pin to earth. One finding for the plan. */
function find(study: Study): Finding[] {
  const join = neutralToEarth(study);
  if (!join) return [];
  const { source, way } = join;
  return [
    found(study.plan, entry, {
      parts: [...way.map((c) => c.part), source.part],
      terminals: [`${source.part}.N`, `${source.part}.PE`],
      message: `neutral and earth are joined after ${source.part}`,
      why: `Working current then flows in the earth wire and in every metal part joined to it.${sayWay(way)}`,
      fix: 'Take neutral and earth apart everywhere after the plug.',
      basis: entry.basis,
    }),
  ];
}

function sayWay(way: EarthJoin['way']): string {
  const parts = [...new Set(way.map((c) => c.part))];
  return parts.length < 2 ? '' : ` They meet through ${listOf(parts)}.`;
}
