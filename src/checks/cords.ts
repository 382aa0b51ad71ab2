import type { Cable, LoadPart, MotorPart, PlugPart, Run } from '../plan/plan.ts';
import { motorCurrents } from '../ratings/motor.ts';
import { tables } from '../ratings/tables.ts';
import type { Finding } from '../report/model.ts';
import { loadsBehind } from './mains.ts';
import { finding, listOf, netAt, type Study } from './study.ts';

/**
 * `cord-too-thin`: the running current of all mains loads against the cord's ampacity. nec: Table 400.5(A)(1), column B
 * for two current-carrying conductors, A for three; iec: BS 7671 Table 4F3A. Building wire and sizes outside the
 * tables are left to the electrician.
 */
export function checkCords(study: Study): Finding[] {
  const { plan } = study;
  const loads = [...plan.parts.values()].filter(
    (p): p is MotorPart | LoadPart => p.kind === 'motor' || p.kind === 'load',
  );
  const plugs = [...plan.parts.values()].filter((p): p is PlugPart => p.kind === 'plug');
  // Several feeds: which cord carries which load is not followed here.
  if (loads.length === 0 || plugs.filter((p) => loadsBehind(study, p).length > 0).length !== 1) return [];
  const amps = loads.map((l) => motorCurrents(l, plan.practice).running?.amps);
  if (amps.some((a) => a === undefined)) return [];
  const total = amps.reduce<number>((sum, a) => sum + a!, 0);
  const threePhase = loads.some((l) => l.feed === 'three-phase');
  const seen = new Set<string>();
  return plan.runs.flatMap((run) => {
    const limit =
      run.cable && carriesLoad(study, run) ? ampacity(run.cable, plan.practice, threePhase) : undefined;
    if (limit === undefined || total <= limit.amps + 1e-9 || seen.has(run.cable!.gauge)) return [];
    seen.add(run.cable!.gauge);
    const ends = [...new Set(run.cores.flatMap((c) => [c.a.part, c.b.part]))];
    return [
      finding(plan, {
        id: 'cord-too-thin',
        severity: 'warning',
        question: 7,
        parts: ends,
        at: run.at,
        message: `the ${run.cable!.gauge} cord at ${listOf(ends)} carries ${limit.amps} A and ${listOf(loads.map((l) => l.name))} takes ${Number(total.toPrecision(3))} A`,
        why: 'The cord overheats, and the motor starts slowly on what volts are left.',
        fix: 'Use a thicker cord for every length between plug and motor.',
        figures: [
          { name: 'running', value: Number(total.toPrecision(3)), unit: 'A' },
          { name: 'cord', value: limit.amps, unit: 'A' },
        ],
        basis: limit.basis,
      }),
    ];
  });
}

/**
 * Some mains core of the run lands on a plug, outlet, motor or load and at its other end on a part that passes the
 * load's current. Joints and fuses may lead on to coils alone, so a core that ends there decides nothing.
 */
function carriesLoad(study: Study, run: Run): boolean {
  const kindOf = (end: { part: string }) => study.plan.parts.get(end.part)?.kind ?? '';
  const passes = new Set(['plug', 'outlet', 'motor', 'load', 'relay', 'timer', 'board']);
  return run.cores.some(
    (c) =>
      study.sides.mains.has(netAt(study.circuit, c.a.part, c.a.terminal) ?? -1) &&
      [c.a, c.b].every((end) => passes.has(kindOf(end)) && end.terminal !== 'A1' && end.terminal !== 'A2') &&
      [c.a, c.b].some((end) => ['plug', 'outlet', 'motor', 'load'].includes(kindOf(end))),
  );
}

function ampacity(
  cable: Cable,
  practice: 'nec' | 'iec',
  threePhase: boolean,
): { amps: number; basis: string } | undefined {
  if (!cable.flexible) return undefined;
  if (practice === 'nec') {
    const row = tables.cordAmpacityNec().rows.find((r) => r.awg === cable.awg);
    const amps = threePhase ? row?.threePhase : row?.singlePhase;
    return amps == null
      ? undefined
      : { amps, basis: `NEC Table 400.5(A)(1), column ${threePhase ? 'A' : 'B'}` };
  }
  const area = cable.area * 1e6;
  const row = [...tables.cordAmpacityIec().rows].reverse().find((r) => r.area <= area + 1e-6);
  const amps = threePhase ? row?.threePhase : row?.singlePhase;
  return amps == null ? undefined : { amps, basis: 'BS 7671 Table 4F3A' };
}
