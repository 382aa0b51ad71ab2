import type { Run } from '../../plan/plan.ts';
import type { Study } from '../../study/study.ts';
import { listOf } from '../../text/word-list.ts';
import type { Check, FindingEntry } from '../entry.ts';
import { found } from '../finding.ts';
import type { Figure, Finding } from '../report-model.ts';
import { runVolts } from './run-volts.ts';

const entry: FindingEntry = {
  id: 'insulation-too-low',
  title: 'the cable is insulated for less than it works at',
  severity: 'danger',
  question: 1,
  ofWiring: false,
  base: 'dc-chain',
  meaning:
    'The voltage printed on the sheath is below the voltage the cable carries. The insulation may break down, first where it is bent or warm. Where a mains cable states no figure at all, it is a doubt: read it off the sheath.',
  wrong: 'cord: {kind: cable, gauge: 8 AWG, cores: 3, insulation: 60 V, flexible: true}',
  right: 'cord: {kind: cable, gauge: 8 AWG, cores: 3, insulation: 600 V, flexible: true}',
  basis: 'NEC 310.10 (from memory); IEC 60364-5-52 (from memory)',
  followsFrom: ['mains-through-gate', 'mains-meets-low-voltage', 'sides-share-cable'],
};

export const insulationTooLow: Check = { entry, find };

function find(study: Study): Finding[] {
  return runVolts(study).flatMap(({ run, mains, low }) => {
    if (run.link || run.cable === undefined) return [];
    const works = Math.max(mains, low);
    const { insulation } = run.cable;
    if (insulation === undefined) return mains > 0 ? [unstated(study, run, works)] : [];
    return insulation < works ? [tooLow(study, run, insulation, works)] : [];
  });
}

/** The parts that the first core of a cable joins. */
function endsOf({ cores: [core] }: Run): string[] {
  return core ? [core.a.part, core.b.part] : [];
}

function unstated({ plan }: Study, run: Run, works: number): Finding {
  const ends = endsOf(run);
  return found(plan, entry, {
    severity: 'doubt',
    parts: ends,
    at: run.at,
    message: `the insulation of the mains cable between ${listOf(ends)} is not stated`,
    why: 'A rating that is not stated is never taken as enough.',
    fix: `State insulation: of the cable, as printed on its sheath.`,
    figures: figures(null, works),
    basis: entry.basis,
    twin: { name: `that between ${listOf(ends)}` },
  });
}

function tooLow({ plan }: Study, run: Run, has: number, works: number): Finding {
  const ends = endsOf(run);
  return found(plan, entry, {
    parts: ends,
    at: run.at,
    message: `the cable between ${listOf(ends)} is insulated for ${has} V and works at ${works} V`,
    why: 'Its insulation may break down.',
    fix: 'Use cable insulated for at least that voltage.',
    figures: figures(has, works),
    basis: entry.basis,
    twin: { name: `that between ${listOf(ends)}`, badness: works / has },
  });
}

function figures(insulation: number | null, works: number): Figure[] {
  return [
    { name: 'insulation', value: insulation, unit: 'V' },
    { name: 'works at', value: works, unit: 'V' },
  ];
}
