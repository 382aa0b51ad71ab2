import type { BoxPart, PlugPart, Run } from '../plan/plan.ts';
import type { Finding } from '../report/model.ts';
import { finding, listOf, netAt, type Study } from './study.ts';

/** Mains and low voltage in one box or one cable, and cable insulation against the voltage it works at. */
export function checkSharing(study: Study): Finding[] {
  const { plan } = study;
  const mains = mainsVolts(study);
  const found: Finding[] = [];
  for (const part of plan.parts.values())
    if (part.kind === 'box') found.push(...sharedBox(study, part, mains));
  for (const run of plan.runs)
    found.push(...sharedCable(study, run, mains), ...insulation(study, run, mains));
  return found;
}

function mainsVolts(study: Study): number {
  return Math.max(
    0,
    ...[...study.plan.parts.values()]
      .filter((p): p is PlugPart => p.kind === 'plug')
      .map((p) => p.volts.volts),
  );
}

function sideOf(study: Study, run: Run): { mains: boolean; low: boolean } {
  const nets = run.cores.map((c) => netAt(study.circuit, c.a.part, c.a.terminal) ?? -1);
  return { mains: nets.some((n) => study.sides.mains.has(n)), low: nets.some((n) => study.sides.low.has(n)) };
}

function sharedBox(study: Study, box: BoxPart, mains: number): Finding[] {
  const { plan, circuit, sides } = study;
  const holds = new Set(box.holds);
  const nets = [...circuit.netOf]
    .filter(([key]) => holds.has(key.split('.')[0]!) && circuit.landed.has(key))
    .map(([, n]) => n);
  const hasMains = nets.some((n) => sides.mains.has(n));
  const hasLow = nets.some((n) => sides.low.has(n));
  if (!hasMains || !hasLow || box.divider) return [];
  const entering = plan.runs.filter(
    (r) => !r.link && sideOf(study, r).low && r.cores.some((c) => holds.has(c.a.part) || holds.has(c.b.part)),
  );
  const unknown = entering.filter((r) => r.cable?.insulation === undefined);
  const thin = entering.filter((r) => (r.cable?.insulation ?? mains) < mains);
  if (plan.practice === 'iec' && thin.length === 0 && unknown.length === 0) return [];
  const doubt = plan.practice === 'iec' && thin.length === 0;
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
            : `The low-voltage cable is insulated for less than ${mains} V.`,
      fix: `Fit a fixed barrier (divider: true)${plan.practice === 'iec' ? `, or use loop cable insulated for ${mains} V or more inside the box` : ' and keep the two at least 6 mm (1/4 in) apart'}.`,
      basis:
        plan.practice === 'nec'
          ? 'NEC 725.136(A), (B), (D)'
          : 'IEC 60364-4-41 clause 414.4.2; IEC 60364-5-52 clause 528.1 (from memory)',
    }),
  ];
}

function sharedCable(study: Study, run: Run, mains: number): Finding[] {
  const side = sideOf(study, run);
  if (run.link || !side.mains || !side.low || mains === 0) return [];
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

function insulation(study: Study, run: Run, mains: number): Finding[] {
  const { plan, circuit } = study;
  if (run.link || run.cable === undefined) return [];
  const side = sideOf(study, run);
  const low = Math.max(0, ...circuit.sources.filter((s) => !s.mains).map((s) => s.rails[0]!.re));
  const works = side.mains ? mains : side.low ? low : 0;
  const has = run.cable.insulation;
  if (works === 0 || (has !== undefined && has >= works)) return [];
  if (has === undefined && !side.mains) return [];
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
