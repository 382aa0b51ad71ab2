import type { Study } from '../../study/study.ts';
import { listOf } from '../../text/word-list.ts';
import { type Check, extract, type FindingEntry } from '../entry.ts';
import { found } from '../finding.ts';
import type { Finding } from '../report-model.ts';
import { runVolts } from './run-volts.ts';

const entry: FindingEntry = {
  id: 'sides-share-cable',
  title: 'mains and loop share one cable',
  severity: 'danger',
  question: 1,
  base: 'dc-chain',
  meaning:
    'A spare core of the mains cord was used for the loop. When that cord is crushed or chafed, its line core touches the loop core and all the gate switches go live. Give the loop a cable of its own.',
  wrong: '  - {cable: cord, length: 60 cm, cores: {black: [K1.NO, X1.L], white: [call, K1.A1]}}',
  right: extract(
    '  - {cable: wire, length: 60 cm, cores: {black: [K1.NO, X1.L]}}',
    '  - {cable: bell, length: 20 cm, cores: {white: [call, K1.A1]}}',
  ),
  basis: 'NEC 725.136(A), 300.3(C)(1); BS 7671 clause 528.1 (partly from memory)',
  followsFrom: ['mains-meets-low-voltage'],
};

export const sidesShareCable: Check = { entry, find };

function find(study: Study): Finding[] {
  const { plan } = study;
  return runVolts(study).flatMap(({ run, mains, low }) => {
    if (run.link || mains === 0 || low === 0) return [];
    const enough = plan.practice === 'iec' && (run.cable?.insulation ?? 0) >= mains;
    if (enough) return [];
    const ends = [...new Set(run.cores.flatMap((c) => [c.a.part, c.b.part]))];
    return [
      found(plan, entry, {
        parts: ends,
        at: run.at,
        message: `one cable carries mains and the loop between ${listOf(ends)}`,
        why: 'If its insulation fails, every gate switch can become live.',
        fix: 'Give the loop a cable of its own.',
        basis: entry.basis,
        twin: { name: `that between ${listOf(ends)}` },
      }),
    ];
  });
}
