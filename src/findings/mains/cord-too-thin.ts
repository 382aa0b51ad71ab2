import { isFixedFeed } from '../../plan/fixed-feed.ts';
import type { PlugPart } from '../../plan/part-types.ts';
import type { Run } from '../../plan/plan.ts';
import type { Study } from '../../study/study.ts';
import { rounded } from '../../text/numbers.ts';
import { listOf } from '../../text/word-list.ts';
import type { Check, FindingEntry } from '../entry.ts';
import { found } from '../finding.ts';
import type { Finding } from '../report-model.ts';
import { type OverloadedCable, overloadedCables } from './cord-duties.ts';
import { loadsOf } from './plug-loads.ts';
import { lossAtStart, MOST_LOST, type StartLoss } from './start-loss.ts';
import { type ThinConductor, thinConductors } from './thin-conductors.ts';

const entry: FindingEntry = {
  id: 'cord-too-thin',
  title: 'the cord is too thin for the motor',
  severity: 'warning',
  question: 7,
  base: 'dc-chain',
  meaning:
    'The motor draws more than a cord of this size may carry. It gets warm along its whole length and hot where it lies coiled, and the motor starts slowly on what volts are left. An extension lead counts like any other length.',
  wrong: 'cord: {kind: cable, gauge: 18 AWG, cores: 3, insulation: 600 V, flexible: true}',
  right: 'cord: {kind: cable, gauge: 8 AWG, cores: 3, insulation: 600 V, flexible: true}',
  basis: 'NEC 430.22 with Tables 400.5(A)(1) and 310.16; BS 7671 Table 4F3A',
  followsFrom: [],
};

export const cordTooThin: Check = { entry, find };

/** By the rule for wired-in motors, by what the loads draw while they run, and by what is lost while one starts. */
function find(study: Study): Finding[] {
  const conductors = study.plan.practice === 'nec' ? thinConductors(study) : [];
  return [...conductors.map((c) => thinForMotor(study, c)), ...thinForLoads(study)];
}

/** What is lost at the start is told only where the cables carry the load. */
function thinForLoads(study: Study): Finding[] {
  const { electrics: own, plan } = study;
  if (!own) return [];
  return own.circuit.sources.flatMap((source) => {
    const plug = plan.parts.get(source.part);
    if (!source.mains || plug?.kind !== 'plug') return [];
    const cables = overloadedCables(study, own, source);
    if (cables.length > 0) return cables.map((c) => overloaded(study, c));
    const loss = lossAtStart(study, own, source);
    return loss ? [losesAtStart(study, plug, loss)] : [];
  });
}

const partsAt = (run: Run) => [...new Set(run.cores.flatMap((c) => [c.a.part, c.b.part]))];

function thinForMotor(
  { plan }: Study,
  { plug, run, cable, loads, demand, limit, needed, isOpen }: ThinConductor,
): Finding {
  const ends = partsAt(run);
  const which = `the ${cable.gauge} conductors at ${listOf(ends)}`;
  const whose = cable.stock ?? 'this cable';
  const { motor, others } = demand;
  const rest = others > 0 ? `, and ${rounded(others, 4)} A for the rest` : '';
  return found(plan, entry, {
    parts: ends,
    at: run.at,
    ...(isOpen && { severity: 'doubt' as const }),
    message: isOpen
      ? `whether ${which} carry ${rounded(needed, 4)} A for ${listOf(loads.map((l) => l.name))} cannot be told: rated is not stated; with insulation of 60 °C they carry ${rounded(limit.amps)} A`
      : `${which} carry ${rounded(limit.amps)} A; wired to ${listOf(loads.map((l) => l.name))} they have to carry ${rounded(needed, 4)} A`,
    why: `125 % of the ${isFixedFeed(plug) ? 'table' : 'marked'} current of the motor, ${rounded(motor.amps, 4)} A${rest}: a motor under load draws more than its label for a while, and its breaker lets it.`,
    fix: isOpen
      ? `State rated: of ${whose}, the °C printed on it.`
      : `The ${cable.gauge} conductors are ${rounded(needed - limit.amps)} A short.`,
    figures: [
      { name: 'needed', value: rounded(needed, 4), unit: 'A' },
      { name: 'conductors', value: rounded(limit.amps), unit: 'A' },
    ],
    basis: `NEC ${others > 0 ? '430.24' : '430.22'}; ${motor.basis}; ${limit.basis}`,
    twin: { name: `those at ${listOf(ends)}`, badness: needed / limit.amps },
  });
}

function overloaded({ plan }: Study, { run, cable, amps, limit }: OverloadedCable): Finding {
  const ends = partsAt(run);
  const names = loadsOf(plan).map((l) => l.name);
  const takes = `${listOf(names)} ${names.length > 1 ? 'take' : 'takes'} ${rounded(amps)} A`;
  return found(plan, entry, {
    parts: ends,
    at: run.at,
    message:
      limit.amps > 0
        ? `the ${cable.gauge} cable at ${listOf(ends)} carries ${rounded(limit.amps)} A and ${takes}`
        : `the ${cable.gauge} cable at ${listOf(ends)} is too thin for any mains load; ${takes}`,
    why: 'The cable overheats, and the motor starts slowly on what volts are left.',
    fix: `The ${cable.gauge} cable is ${rounded(amps - limit.amps)} A short.`,
    figures: [
      { name: 'running', value: rounded(amps), unit: 'A' },
      { name: 'cable', value: rounded(limit.amps), unit: 'A' },
    ],
    basis: limit.basis,
    twin: { name: `that at ${listOf(ends)}`, badness: limit.amps > 0 ? amps / limit.amps : amps },
  });
}

function losesAtStart({ plan }: Study, plug: PlugPart, { motor, starting, share }: StartLoss): Finding {
  const percent = rounded(share * 100);
  return found(plan, entry, {
    parts: [motor.name, plug.name],
    at: motor.where.get('amps') ?? motor.at,
    message: `${percent} % of the mains stay in the cable when ${motor.name} starts at ${rounded(starting)} A`,
    why: 'On so few volts the motor is slow to start or stalls, and the start lasts while contact and cable carry it.',
    fix: `The cable takes ${rounded((share - MOST_LOST) * 100)} % of the mains more than it may.`,
    figures: [
      { name: 'lost at start', value: percent, unit: '%' },
      { name: 'most', value: MOST_LOST * 100, unit: '%' },
    ],
    basis: 'ASTM B258 or IEC 60228 resistance; 15 % at start is common practice',
  });
}
