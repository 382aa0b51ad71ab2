import type { Cable, Run } from '../plan/plan.ts';
import { motorCurrents } from '../ratings/motor.ts';
import { tables } from '../ratings/tables.ts';
import type { Finding } from '../report/model.ts';
import { loadsBehind } from './mains.ts';
import { finding, listOf, netAt, type Study } from './study.ts';

/**
 * `cord-too-thin`: the running current of the loads behind each plug against the ampacity of the cable that carries
 * it. nec: cord by Table 400.5(A)(1), column B for two current-carrying conductors, A for three; building wire by the
 * 60 °C column of Table 310.16. iec: BS 7671 Table 4F3A. Anything thinner than the tables begin carries no load.
 */
export function checkCords(study: Study): Finding[] {
  const { plan, circuit, verified: v } = study;
  if (!v) return [];
  const found: Finding[] = [];
  for (const plug of plan.parts.values()) {
    const source = circuit.sources.find((s) => s.part === plug.name);
    if (plug.kind !== 'plug' || !source) continue;
    const loads = loadsBehind(study, plug);
    const amps = loads.map((l) => motorCurrents(l, plan.practice).running?.amps);
    if (loads.length === 0 || amps.some((a) => a === undefined)) continue;
    const total = amps.reduce<number>((sum, a) => sum + a!, 0);
    const threePhase = loads.some((l) => l.feed === 'three-phase');
    const reach = v.model.railReach[source.index]!;
    const seen = new Set<string>();
    for (const run of plan.runs) {
      const own = run.cores.some((c) =>
        reach.some((r) => r.has(netAt(circuit, c.a.part, c.a.terminal) ?? -1)),
      );
      if (!run.cable || !own || !carriesLoad(study, run) || seen.has(run.cable.gauge)) continue;
      const limit = ampacity(run.cable, plan.practice, threePhase);
      if (limit === undefined || total <= limit.amps + 1e-9) continue;
      seen.add(run.cable.gauge);
      found.push(
        tooThin(
          study,
          run,
          loads.map((l) => l.name),
          total,
          limit,
        ),
      );
    }
  }
  return found;
}

function tooThin(study: Study, run: Run, loads: readonly string[], total: number, limit: Ampacity): Finding {
  const ends = [...new Set(run.cores.flatMap((c) => [c.a.part, c.b.part]))];
  const gauge = run.cable!.gauge;
  return finding(study.plan, {
    id: 'cord-too-thin',
    severity: 'warning',
    question: 7,
    parts: ends,
    at: run.at,
    message:
      limit.amps > 0
        ? `the ${gauge} cable at ${listOf(ends)} carries ${limit.amps} A and ${listOf(loads)} takes ${Number(total.toPrecision(3))} A`
        : `the ${gauge} cable at ${listOf(ends)} is too thin for any mains load; ${listOf(loads)} takes ${Number(total.toPrecision(3))} A`,
    why: 'The cable overheats, and the motor starts slowly on what volts are left.',
    fix: 'Use a thicker cable for every length between plug and motor.',
    figures: [
      { name: 'running', value: Number(total.toPrecision(3)), unit: 'A' },
      { name: 'cable', value: limit.amps, unit: 'A' },
    ],
    basis: limit.basis,
  });
}

interface Ampacity {
  readonly amps: number;
  readonly basis: string;
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

function ampacity(cable: Cable, practice: 'nec' | 'iec', threePhase: boolean): Ampacity | undefined {
  const column = threePhase ? 'threePhase' : 'singlePhase';
  if (practice === 'nec' && cable.awg !== undefined) {
    const basis = cable.flexible
      ? `NEC Table 400.5(A)(1), column ${threePhase ? 'A' : 'B'}`
      : 'NEC Table 310.16, 60 °C column';
    if (cable.awg > 18) return { amps: 0, basis: `${basis}: begins at 18 AWG` };
    const wire = tables.conductorAmpacityNec().rows.find((r) => r.awg === cable.awg);
    // 18 and 16 AWG stand in 240.4(D) only.
    const amps = cable.flexible
      ? tables.cordAmpacityNec().rows.find((r) => r.awg === cable.awg)?.[column]
      : (wire?.at60 ?? wire?.mostBreaker);
    return amps == null ? undefined : { amps, basis };
  }
  const area = cable.area * 1e6;
  const row = [...tables.cordAmpacityIec().rows].reverse().find((r) => r.area <= area * 1.001);
  if (!row) return { amps: 0, basis: 'BS 7671 Table 4F3A: begins at 0.5 mm2' };
  const amps = row[column];
  return amps == null ? undefined : { amps, basis: 'BS 7671 Table 4F3A' };
}
