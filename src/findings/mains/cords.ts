/** The cables between plug and load: what they carry, and what is lost in them when the motor starts. */
import type { Source } from '../../circuit/circuit.ts';
import type { Figures } from '../../electric/island.ts';
import { kept } from '../../plan/map-entries.ts';
import type { Cable, LoadPart, MotorPart, PlugPart, Run } from '../../plan/plan.ts';
import { motorCurrents } from '../../ratings/motor.ts';
import { tables } from '../../ratings/tables.ts';
import { gaugeWithin, thickerSizes } from '../../ratings/wire.ts';
import { figuresFor } from '../../study/corners.ts';
import type { Electrics } from '../../study/electrics.ts';
import { loadVolts, runningState, runningStates, solveMains } from '../../study/mains-flows.ts';
import type { Study } from '../../study/study.ts';
import { rounded } from '../../text/numbers.ts';
import { listOf } from '../../text/word-list.ts';
import { finding } from '../finding.ts';
import type { Finding } from '../report-model.ts';

/** Share of the mains that may be lost on the way to a starting motor. */
const MOST_LOST = 0.15;
/** A that count as a current at all. */
const LEAST_AMPS = 0.001;

type Load = MotorPart | LoadPart;

/**
 * `cord-too-thin`: the current in every mains core with all loads running, against the ampacity of its cable; and the
 * volts that reach a starting motor. nec: cord by Table 400.5(A)(1), column B for two current-carrying conductors, A
 * for three; building wire by the 60 °C column of Table 310.16. iec: BS 7671 Table 4F3A.
 */
export function checkCords(study: Study, own: Electrics | undefined): Finding[] {
  if (!own) return [];
  const found: Finding[] = [];
  for (const source of own.circuit.sources) {
    const plug = study.plan.parts.get(source.part);
    if (!source.mains || plug?.kind !== 'plug') continue;
    const thin = overloaded(study, own, source);
    found.push(...thin, ...(thin.length > 0 ? [] : lossAtStart(study, own, source, plug)));
  }
  return found;
}

function loadsOf(study: Study): Load[] {
  return [...study.plan.parts.values()].filter((p): p is Load => p.kind === 'motor' || p.kind === 'load');
}

function runningAmps(study: Study): Map<string, number> {
  const known = loadsOf(study).flatMap((l) => {
    const amps = motorCurrents(l, study.plan.practice).running?.amps;
    return amps === undefined ? [] : [[l.name, amps] as const];
  });
  return new Map(known);
}

/** The greatest current of each run over the states in which loads run. */
function runAmps(study: Study, own: Electrics, source: Source): Map<number, number> {
  const most = new Map<number, number>();
  const figures = figuresFor(study.plan, 'nominal');
  const amps = runningAmps(study);
  for (const moved of runningStates(own)) {
    const standing = own.situations.at(moved);
    if (!standing?.alive[source.index]) continue;
    const flows = solveMains(own, source, standing.situation, amps, figures);
    for (const w of flows.island.wires) {
      const i = flows.amps(w);
      const size = i ? Math.hypot(i.re, i.im) : 0;
      if (size > (most.get(w.run) ?? 0)) most.set(w.run, size);
    }
  }
  return most;
}

function overloaded(study: Study, own: Electrics, source: Source): Finding[] {
  const { plan } = study;
  const threePhase = source.rails.filter((r) => r.live).length === 3;
  const worst = new Map<string, { run: Run; cable: Cable; amps: number; limit: Ampacity }>();
  for (const [index, amps] of runAmps(study, own, source)) {
    const run = plan.runs[index]!;
    const limit = run.cable && ampacity(run.cable, plan.practice, threePhase);
    // A core thinner than any table is no mains wire, whatever little it carries.
    if (!run.cable || !limit || amps <= Math.max(limit.amps, LEAST_AMPS) * (1 + 2e-3)) continue;
    const known = kept(worst, run.cable.gauge, () => ({ run, cable: run.cable!, amps, limit }));
    if (amps > known.amps) worst.set(run.cable.gauge, { run, cable: run.cable, amps, limit });
  }
  const loads = loadsOf(study).map((l) => l.name);
  return [...worst.values()].map((w) => tooThin(study, w.run, w.cable, loads, w.amps, w.limit, threePhase));
}

function tooThin(
  study: Study,
  run: Run,
  cable: Cable,
  loads: readonly string[],
  amps: number,
  limit: Ampacity,
  threePhase: boolean,
): Finding {
  const ends = [...new Set(run.cores.flatMap((c) => [c.a.part, c.b.part]))];
  const serves = thickerSizes(cable).find(
    (c) => (ampacity(c, study.plan.practice, threePhase)?.amps ?? 0) >= amps * (1 - 2e-3),
  );
  return finding(study.plan, {
    id: 'cord-too-thin',
    severity: 'warning',
    question: 7,
    parts: ends,
    at: run.at,
    message:
      limit.amps > 0
        ? `the ${cable.gauge} cable at ${listOf(ends)} carries ${limit.amps} A and ${listOf(loads)} takes ${rounded(amps)} A`
        : `the ${cable.gauge} cable at ${listOf(ends)} is too thin for any mains load; ${listOf(loads)} takes ${rounded(amps)} A`,
    why: 'The cable overheats, and the motor starts slowly on what volts are left.',
    fix: `Use ${serves ? `${serves.gauge} instead of ${cable.gauge}` : 'a thicker cable'} for every length between plug and motor.`,
    figures: [
      { name: 'running', value: rounded(amps), unit: 'A' },
      { name: 'cable', value: limit.amps, unit: 'A' },
    ],
    basis: limit.basis,
  });
}

/** What the cables of the plan take from the motor while it draws its starting current. */
function lossAtStart(study: Study, own: Electrics, source: Source, plug: PlugPart): Finding[] {
  const { plan } = study;
  const amps = runningAmps(study);
  for (const motor of loadsOf(study)) {
    const starting = motorCurrents(motor, plan.practice).starting?.amps;
    const consumer = own.circuit.consumers.find((c) => c.part === motor.name);
    const moved = runningState(own, motor.name);
    const standing = moved && own.situations.at(moved);
    if (motor.kind !== 'motor' || starting === undefined || !consumer || !standing) continue;
    const drawn = new Map([...amps, [motor.name, starting]]);
    const lost = (figures: Figures): number => {
      const flows = solveMains(own, source, standing.situation, drawn, figures);
      const full = loadVolts(solveMains(own, source, standing.situation, new Map(), figures), consumer);
      const volts = loadVolts(flows, consumer);
      return volts === undefined || !full ? 0 : 1 - volts / full;
    };
    const share = lost(figuresFor(plan, 'low'));
    if (share <= MOST_LOST + 1e-9) continue;
    const cables = [
      ...new Set(
        solveMains(own, source, standing.situation, drawn, figuresFor(plan, 'low')).island.wires.map(
          (w) => w.run,
        ),
      ),
    ]
      .map((r) => plan.runs[r]!.cable)
      .filter((c): c is Cable => c !== undefined);
    const thinnest = cables.reduce((x, y) => (y.area < x.area ? y : x));
    const better = thickerSizes(thinnest).find((c) => {
      const cableOf = (run: number) => ((plan.runs[run]!.cable?.area ?? 0) < c.area ? c : undefined);
      return lost(figuresFor(plan, 'low', { cableOf })) <= MOST_LOST;
    });
    return [
      finding(plan, {
        id: 'cord-too-thin',
        severity: 'warning',
        question: 7,
        parts: [motor.name, plug.name],
        at: motor.where.get('amps') ?? motor.at,
        message: `${rounded(share * 100)} % of the mains stay in the cable when ${motor.name} starts at ${rounded(starting)} A`,
        why: 'On so few volts the motor is slow to start or stalls, and the start lasts while contact and cable carry it.',
        fix: better
          ? `Use ${better.gauge} instead of ${thinnest.gauge}, or shorter cable.`
          : 'Use thicker and shorter cable.',
        figures: [
          { name: 'lost at start', value: rounded(share * 100), unit: '%' },
          { name: 'most', value: MOST_LOST * 100, unit: '%' },
        ],
        basis: 'ASTM B258 or IEC 60228 resistance; 15 % at start is common practice',
      }),
    ];
  }
  return [];
}

interface Ampacity {
  readonly amps: number;
  readonly basis: string;
}

function ampacity(cable: Cable, practice: 'nec' | 'iec', threePhase: boolean): Ampacity | undefined {
  const column = threePhase ? 'threePhase' : 'singlePhase';
  if (practice === 'nec' && cable.awg !== undefined) {
    const basis = cable.flexible
      ? `NEC Table 400.5(A)(1), column ${threePhase ? 'A' : 'B'}`
      : 'NEC Table 310.16, 60 °C column';
    const rows = (cable.flexible ? tables.cordAmpacityNec() : tables.conductorAmpacityNec()).rows;
    const awg = gaugeWithin(
      cable,
      rows.map((r) => r.awg),
    );
    if (awg === 'thicker') return undefined;
    if (awg === 'thinner') return { amps: 0, basis: `${basis}: begins at 18 AWG` };
    const wire = tables.conductorAmpacityNec().rows.find((r) => r.awg === awg);
    // 18 and 16 AWG stand in 240.4(D) only.
    const amps = cable.flexible
      ? tables.cordAmpacityNec().rows.find((r) => r.awg === awg)?.[column]
      : (wire?.at60 ?? wire?.mostBreaker);
    return amps == null ? undefined : { amps, basis };
  }
  const area = cable.area * 1e6;
  const row = [...tables.cordAmpacityIec().rows].reverse().find((r) => r.area <= area * 1.001);
  if (!row) return { amps: 0, basis: 'BS 7671 Table 4F3A: begins at 0.5 mm2' };
  const amps = row[column];
  return amps == null ? undefined : { amps, basis: 'BS 7671 Table 4F3A' };
}
