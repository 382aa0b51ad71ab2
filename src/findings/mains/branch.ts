/** Circuits whose machine is wired in: the breaker, the conductors and the kind of cable. */
import type { Source } from '../../circuit/circuit.ts';
import { isFixedFeed } from '../../plan/fixed-feed.ts';
import type { Cable, LoadPart, MotorPart, PlugPart, Run } from '../../plan/plan.ts';
import { conductorAmps, largestDevice } from '../../ratings/branch.ts';
import { type Figure, motorCurrents } from '../../ratings/motor.ts';
import { branchRule, tables } from '../../ratings/tables.ts';
import { gaugeWithin, thickerSizes } from '../../ratings/wire.ts';
import { carriedBy } from '../../study/motor-path.ts';
import type { Study } from '../../study/study.ts';
import { rounded } from '../../text/numbers.ts';
import { listOf } from '../../text/word-list.ts';
import { finding } from '../finding.ts';
import type { Finding } from '../report-model.ts';
import { cordsAsWiring } from './fixed-cord.ts';
import { loadsBehind } from './mains.ts';

const SLACK = 1 + 1e-9;

/** `breaker-too-large`, `cord-too-thin` by the motor rule, and `cord-as-fixed-wiring`. */
export function checkBranch(study: Study): Finding[] {
  const fixed = [...study.plan.parts.values()].filter(
    (p): p is PlugPart => p.kind === 'plug' && isFixedFeed(p),
  );
  const nec = study.plan.practice === 'nec';
  return fixed.flatMap((plug) => [
    ...(nec ? [...breakerTooLarge(study, plug), ...conductorsTooThin(study, plug)] : []),
    ...cordsAsWiring(study, plug),
  ]);
}

type Load = MotorPart | LoadPart;
interface Demand {
  readonly load: Load;
  readonly fullLoad: Figure;
}

/** A machine behind a socket goes by its marked amperes and by that socket, not by Article 430. */
function wiredIn(study: Study, plug: PlugPart): Load[] {
  return loadsBehind(study, plug).filter((l) => l.pluggedInto === undefined);
}

/** NEC 430.6(A)(1): table current of the horsepower; a motor marked in amperes alone goes by those. */
function demandOf(load: Load): Demand | undefined {
  const currents = motorCurrents(load, 'nec');
  const fullLoad = (load.kind === 'motor' ? currents.tableRunning : undefined) ?? currents.running;
  return fullLoad === undefined ? undefined : { load, fullLoad };
}

function largestMotor(demands: readonly Demand[]): Demand | undefined {
  return demands
    .filter((d) => d.load.kind === 'motor' && d.load.volts.kind === 'ac')
    .reduce<Demand | undefined>((a, b) => (a && a.fullLoad.amps >= b.fullLoad.amps ? a : b), undefined);
}

function breakerTooLarge(study: Study, plug: PlugPart): Finding[] {
  const loads = wiredIn(study, plug);
  const demands = loads.map(demandOf).filter((d) => d !== undefined);
  const motor = largestMotor(demands);
  // A current that is not known is asked for by circuit-overloaded.
  if (!motor || plug.breaker === undefined || demands.length < loads.length) return [];
  const flc = motor.fullLoad.amps;
  const others = demands.filter((d) => d !== motor).reduce((sum, d) => sum + d.fullLoad.amps, 0);
  const device = largestDevice(flc, 'breaker');
  const most = (device.rating ?? device.exact) + others;
  if (plug.breaker <= most * SLACK) return [];
  const toStart = branchRule('breaker-to-start');
  const group = others > 0 ? ', 430.53(C)(4) (from memory)' : '';
  return [
    finding(study.plan, {
      id: 'breaker-too-large',
      severity: 'warning',
      question: 7,
      parts: [plug.name, ...demands.map((d) => d.load.name)],
      at: plug.where.get('breaker') ?? plug.at,
      message: `the ${plug.breaker} A breaker of ${plug.name} is too large for ${listOf(demands.map((d) => d.load.name))}: ${rounded(most, 4)} A at most`,
      why: `250 % of ${rounded(flc, 4)} A is ${rounded(device.exact, 4)} A${device.rating === undefined ? '' : `, the next standard size ${device.rating} A`}${others > 0 ? `, and ${rounded(others, 4)} A for what else is on it` : ''}. A larger breaker lets a fault burn on in the motor and its wires.`,
      fix: `Fit a breaker of ${rounded(most, 4)} A or less. Only where that size cannot carry the start may it go up to ${rounded(toStart.value * flc + others, 4)} A (${toStart.value * 100} %, ${toStart.clause}).`,
      figures: [
        { name: 'breaker', value: plug.breaker, unit: 'A' },
        { name: 'most', value: rounded(most, 4), unit: 'A' },
      ],
      basis: `NEC 430.52(C)(1) with Exception 1, 240.6(A) (from memory)${group}; ${motor.fullLoad.basis}`,
    }),
  ];
}

function conductorsTooThin(study: Study, plug: PlugPart): Finding[] {
  const circuit = study.wired;
  const source = circuit.sources.find((s) => s.part === plug.name);
  if (!source) return [];
  const loads = wiredIn(study, plug);
  const seen = new Set<string>();
  return [...carriedBy(circuit, source, loads)].flatMap(([index, carried]) => {
    const run = study.plan.runs[index]!;
    if (run.cable === undefined || seen.has(run.cable.gauge)) return [];
    const found = thinConductor(study, run, run.cable, source, carried);
    if (found.length > 0) seen.add(run.cable.gauge);
    return found;
  });
}

function thinConductor(
  study: Study,
  run: Run,
  cable: Cable,
  source: Source,
  carried: readonly Load[],
): Finding[] {
  const demands = carried.map(demandOf).filter((d) => d !== undefined);
  const motor = largestMotor(demands);
  const threePhase = source.rails.filter((r) => r.live).length === 3;
  const limit = ampacityNec(cable, threePhase);
  if (!motor || limit === undefined || demands.length < carried.length) return [];
  const others = demands.filter((d) => d !== motor).reduce((sum, d) => sum + d.fullLoad.amps, 0);
  const needed = conductorAmps(motor.fullLoad.amps) + others;
  const running = carried.reduce((sum, l) => sum + (motorCurrents(l, 'nec').running?.amps ?? 0), 0);
  // A gauge that fails by its running current already is told by that; metric sizes are judged by another table there.
  const told = cable.awg !== undefined && running > limit.amps * (1 + 2e-3);
  if (needed <= limit.amps * SLACK || told) return [];
  const ends = [...new Set(run.cores.flatMap((c) => [c.a.part, c.b.part]))];
  const serves = thickerSizes(cable).find((c) => (ampacityNec(c, threePhase)?.amps ?? 0) * SLACK >= needed);
  return [
    finding(study.plan, {
      id: 'cord-too-thin',
      severity: 'warning',
      question: 7,
      parts: ends,
      at: run.at,
      message: `the ${cable.gauge} conductors at ${listOf(ends)} carry ${limit.amps} A; wired to ${listOf(carried.map((l) => l.name))} they have to carry ${rounded(needed, 4)} A`,
      why: `125 % of the table current of the motor, ${rounded(motor.fullLoad.amps, 4)} A${others > 0 ? `, and ${rounded(others, 4)} A for the rest` : ''}: a motor under load draws more than its label for a while, and its breaker lets it.`,
      fix: `Use ${serves ? `${serves.gauge} instead of ${cable.gauge}` : 'thicker conductors'} from the panel to the motor.`,
      figures: [
        { name: 'needed', value: rounded(needed, 4), unit: 'A' },
        { name: 'conductors', value: limit.amps, unit: 'A' },
      ],
      basis: `NEC ${others > 0 ? '430.24' : '430.22'}; ${motor.fullLoad.basis}; ${limit.basis}`,
    }),
  ];
}

/** A that a conductor may carry; a size that no table lists goes by the listed gauge that is no thicker. */
function ampacityNec(cable: Cable, threePhase: boolean): { amps: number; basis: string } | undefined {
  const awg = gaugeWithin(
    cable,
    (cable.flexible ? tables.cordAmpacityNec() : tables.conductorAmpacityNec()).rows.map((r) => r.awg),
  );
  if (awg === 'thicker') return undefined;
  if (awg === 'thinner') return { amps: 0, basis: 'NEC Tables 310.16 and 400.5(A)(1) begin at 18 AWG' };
  if (cable.flexible) {
    const row = tables.cordAmpacityNec().rows.find((r) => r.awg === awg);
    const amps = row?.[threePhase ? 'threePhase' : 'singlePhase'];
    return amps == null
      ? undefined
      : { amps, basis: `NEC Table 400.5(A)(1), column ${threePhase ? 'A' : 'B'}` };
  }
  const row = tables.conductorAmpacityNec().rows.find((r) => r.awg === awg);
  const amps = row?.at60 ?? row?.mostBreaker;
  return amps == null ? undefined : { amps, basis: 'NEC Table 310.16, 60 °C column' };
}
