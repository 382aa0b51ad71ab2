import { netAt } from '../../circuit/terminals.ts';
import type { BoxPart, Run } from '../../plan/plan.ts';
import { partOfKey } from '../../plan/terminal-key.ts';
import type { Study } from '../../study/study.ts';
import { type WorkingVolts, workingVolts } from '../../study/working-volts.ts';
import { listOf } from '../../text/word-list.ts';
import { finding } from '../finding.ts';
import type { Finding } from '../report-model.ts';

/** V of each side that reaches the cores of a cable; 0 for none. */
interface Works {
  readonly mains: number;
  readonly low: number;
}

/** Mains and low voltage in one box or one cable, and cable insulation against the voltage it works at. */
export function checkSharing(study: Study): Finding[] {
  const { plan } = study;
  const volts = workingVolts(study);
  const found: Finding[] = [];
  for (const part of plan.parts.values())
    if (part.kind === 'box') found.push(...sharedBox(study, part, volts));
  for (const run of plan.runs) {
    if (run.link) continue;
    const works = worksAt(study, run, volts);
    found.push(...sharedCable(study, run, works), ...insulation(study, run, works));
  }
  return found;
}

function worksAt({ circuit }: Study, run: Run, volts: WorkingVolts): Works {
  const nets = run.cores.map((c) => netAt(circuit, c.a.part, c.a.terminal));
  return {
    mains: Math.max(0, ...nets.map((n) => volts.mains(n))),
    low: Math.max(0, ...nets.map((n) => volts.low(n))),
  };
}

function sharedBox(study: Study, box: BoxPart, volts: WorkingVolts): Finding[] {
  const { plan, circuit } = study;
  const holds = new Set(box.holds);
  const nets = [...circuit.netOf]
    .filter(([key]) => holds.has(partOfKey(key)) && circuit.landed.has(key))
    .map(([, n]) => n);
  const mains = Math.max(0, ...nets.map((n) => volts.mains(n)));
  if (mains === 0 || !nets.some((n) => volts.low(n) > 0) || box.divider) return [];
  const loop = plan.runs.filter((r) => worksAt(study, r, volts).low > 0);
  const entering = loop.filter(
    (r) => !r.link && r.cores.some((c) => holds.has(c.a.part) || holds.has(c.b.part)),
  );
  const bare = loop.some((r) => r.link && r.cores.every((c) => holds.has(c.a.part) && holds.has(c.b.part)));
  const unknown = entering.some((r) => r.cable?.insulation === undefined);
  const thin = entering.some((r) => (r.cable?.insulation ?? mains) < mains);
  if (plan.practice === 'iec' && !thin && !bare && !unknown) return [];
  const doubt = plan.practice === 'iec' && !thin && !bare;
  return [
    finding(plan, {
      id: 'sides-share-box',
      severity: doubt ? 'doubt' : 'danger',
      question: 1,
      parts: [box.name, ...box.holds],
      at: box.where.get('divider') ?? box.at,
      message: `${box.name} holds mains and low voltage with no divider between them`,
      why:
        plan.practice === 'nec'
          ? 'Thicker insulation alone does not part Class 2 wiring from mains.'
          : doubt
            ? 'Whether the low-voltage cable is insulated for the mains voltage is not stated.'
            : thin
              ? `The low-voltage cable is insulated for less than ${mains} V.`
              : 'A bare link of the low-voltage loop lies in it.',
      fix: `Fit a fixed barrier (divider: true)${plan.practice === 'iec' ? `, or use loop cable insulated for ${mains} V or more inside the box` : ' and keep the two at least 6 mm (1/4 in) apart'}.`,
      basis:
        plan.practice === 'nec'
          ? 'NEC 725.136(A), (B), (D)'
          : 'IEC 60364-4-41 clause 414.4.2; IEC 60364-5-52 clause 528.1 (from memory)',
    }),
  ];
}

function sharedCable(study: Study, run: Run, { mains, low }: Works): Finding[] {
  if (mains === 0 || low === 0) return [];
  const enough = study.plan.practice === 'iec' && (run.cable?.insulation ?? 0) >= mains;
  if (enough) return [];
  const ends = [...new Set(run.cores.flatMap((c) => [c.a.part, c.b.part]))];
  return [
    finding(study.plan, {
      id: 'sides-share-cable',
      severity: 'danger',
      question: 1,
      parts: ends,
      at: run.at,
      message: `one cable carries mains and the loop between ${listOf(ends)}`,
      why: 'If its insulation fails, every gate switch can become live.',
      fix: 'Give the loop a cable of its own.',
      basis: 'NEC 725.136(A), 300.3(C)(1); BS 7671 clause 528.1 (partly from memory)',
    }),
  ];
}

function insulation({ plan }: Study, run: Run, { mains, low }: Works): Finding[] {
  if (run.cable === undefined) return [];
  const works = Math.max(mains, low);
  const has = run.cable.insulation;
  if (works === 0 || (has !== undefined && has >= works)) return [];
  if (has === undefined && mains === 0) return [];
  const core = run.cores[0];
  const ends = core ? [core.a.part, core.b.part] : [];
  return [
    finding(plan, {
      id: 'insulation-too-low',
      severity: has === undefined ? 'doubt' : 'danger',
      question: 1,
      parts: ends,
      at: run.at,
      message:
        has === undefined
          ? `the insulation of the mains cable between ${listOf(ends)} is not stated`
          : `the cable between ${listOf(ends)} is insulated for ${has} V and works at ${works} V`,
      why:
        has === undefined
          ? 'A rating that is not stated is never taken as enough.'
          : 'Its insulation may break down.',
      fix:
        has === undefined
          ? `State insulation: of the cable, as printed on its sheath.`
          : 'Use cable insulated for at least that voltage.',
      figures: [
        { name: 'insulation', value: has ?? null, unit: 'V' },
        { name: 'works at', value: works, unit: 'V' },
      ],
      basis: 'NEC 310.10 (from memory); IEC 60364-5-52 (from memory)',
    }),
  ];
}
