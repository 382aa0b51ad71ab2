import type { LoadPart, MotorPart, OutletPart, PlugPart } from '../../plan/plan.ts';
import { judgeBreaker, judgeCircuit, powerPlausible } from '../../ratings/circuit.ts';
import { motorCurrents, phasesOf } from '../../ratings/motor.ts';
import { judgePlug } from '../../ratings/receptacle.ts';
import type { Study } from '../../study/study.ts';
import { rounded, roundedOrNull } from '../../text/numbers.ts';
import { listOf } from '../../text/word-list.ts';
import { COMMON_PRACTICE, finding } from '../finding.ts';
import type { Finding } from '../report-model.ts';

/** Question 7: circuit, plug, nameplate. */
export function checkMains(study: Study): Finding[] {
  const { plan } = study;
  const parts = [...plan.parts.values()];
  const found: Finding[] = [];
  for (const plug of parts.filter((p): p is PlugPart => p.kind === 'plug')) {
    const loads = loadsBehind(study, plug);
    if (loads.length === 0) continue;
    const judged = [...judgeCircuit({ plug, loads, practice: plan.practice })];
    const breaker = judgeBreaker({ plug, loads, practice: plan.practice });
    if (breaker) judged.push(breaker);
    for (const j of judged) {
      if (j.verdict === 'pass') continue;
      const trips = j.findingId === 'breaker-may-trip';
      if (trips && j.verdict === 'cannot-tell') continue;
      const fails = j.verdict === 'fail';
      found.push(
        finding(plan, {
          id: j.findingId,
          severity: trips ? 'caution' : fails ? 'warning' : 'doubt',
          question: 7,
          parts: [plug.name, ...loads.map((l) => l.name)],
          at: plug.where.get('breaker') ?? plug.at,
          message: fails
            ? `${listOf(loads.map((l) => l.name))} ${trips ? 'starts at' : 'takes'} ${roundedOrNull(j.needed)} A; the circuit of ${plug.name} ${trips ? 'holds' : 'allows'} ${roundedOrNull(j.found)} A`
            : `whether the circuit of ${plug.name} carries ${listOf(loads.map((l) => l.name))} cannot be told: ${j.missing ?? 'a figure'} is missing`,
          why: trips
            ? 'The breaker may trip at the start of the motor.'
            : fails
              ? 'The breaker trips or the socket overheats.'
              : 'A figure that is not stated is never taken as enough.',
          fix: fails
            ? 'Put the motor on a circuit of its own that is big enough.'
            : `State ${j.missing ?? 'the figure'}.`,
          figures: [
            { name: 'needed', value: roundedOrNull(j.needed), unit: 'A' },
            { name: 'allowed', value: roundedOrNull(j.found), unit: 'A' },
          ],
          basis: j.basis,
        }),
      );
    }
    found.push(...plugs(study, plug, loads));
  }
  for (const motor of parts.filter((p): p is MotorPart => p.kind === 'motor'))
    found.push(...motorFindings(study, motor));
  return found;
}

/** Loads that this plug can feed. */
export function loadsBehind(study: Study, plug: PlugPart): (MotorPart | LoadPart)[] {
  const plugs = [...study.plan.parts.values()].filter((p) => p.kind === 'plug');
  const loads = [...study.plan.parts.values()].filter(
    (p): p is MotorPart | LoadPart => p.kind === 'motor' || p.kind === 'load',
  );
  if (plugs.length === 1) return loads;
  const source = study.circuit.sources.find((s) => s.part === plug.name);
  const v = study.verified;
  if (!source || !v) return loads;
  const reach = v.model.railReach[source.index]!;
  return loads.filter((l) =>
    [...(study.circuit.consumers.find((c) => c.part === l.name)?.nets.values() ?? [])].some((n) =>
      reach.some((r) => r.has(n)),
    ),
  );
}

function plugs(study: Study, plug: PlugPart, loads: readonly (MotorPart | LoadPart)[]): Finding[] {
  const { plan } = study;
  const outlets = [...plan.parts.values()].filter((p): p is OutletPart => p.kind === 'outlet');
  const found: Finding[] = [];
  const running = loads.map((l) => motorCurrents(l, plan.practice).running?.amps);
  const total = running.some((r) => r === undefined) ? undefined : running.reduce((a, b) => a! + b!, 0);
  const single = [...plan.parts.values()].filter((p) => p.kind === 'plug').length === 1;
  const seen: string[] = [];
  for (const part of single ? [plug, ...outlets] : [plug]) {
    const phases = loads.some((l) => phasesOf(l) === 3) ? 3 : 1;
    const judged = judgePlug({
      pattern: part.pattern,
      volts: plug.volts.volts,
      phases,
      running: total,
      ...(plug.breaker === undefined ? {} : { breaker: plug.breaker }),
      practice: plan.practice,
    });
    const bad = judged.find((j) => j.verdict === 'fail') ?? judged.find((j) => j.verdict === 'cannot-tell');
    if (!bad) continue;
    // A plug and its outlet of one pattern are one mistake.
    const pair = found.findIndex((f) => f.id === 'plug-mismatch' && seen.includes(`${part.pattern}`));
    seen.push(`${part.pattern}`);
    if (pair >= 0) {
      found[pair] = { ...found[pair]!, parts: [...found[pair]!.parts, part.name] };
      continue;
    }
    const fails = bad.verdict === 'fail';
    found.push(
      finding(plan, {
        id: 'plug-mismatch',
        severity: fails ? 'danger' : 'doubt',
        question: 7,
        parts: [part.name],
        at: part.where.get('pattern') ?? part.at,
        message: fails
          ? `${part.name} (${part.pattern}) does not suit this circuit: ${bad.aspect} needed ${roundedOrNull(bad.needed)} ${bad.unit}, made for ${roundedOrNull(bad.found)} ${bad.unit}`
          : `whether ${part.name} suits the motor cannot be told: ${bad.missing ?? 'its pattern'} is not stated or not known`,
        why: fails
          ? 'A plug or socket below its load overheats; one of another voltage may take the wrong machine.'
          : 'A figure that is not stated is never taken as enough.',
        fix: fails
          ? 'Use a plug and socket made for this voltage and current.'
          : `State pattern: of ${part.name} (such as NEMA 5-20, BS 1363, CEE 7/4, IEC 60309 16 A), or fixed.`,
        figures: [
          { name: 'needed', value: roundedOrNull(bad.needed), unit: bad.unit },
          { name: 'made for', value: roundedOrNull(bad.found), unit: bad.unit },
        ],
        basis: bad.basis,
      }),
    );
  }
  for (const load of loads) {
    if (!voltsSuit(plug, load)) found.push(voltsMismatch(study, plug, load));
  }
  return found;
}

/** Within 15 % above and 20 % below what a load of its kind gets from the plug, whole or between a leg and neutral. */
function voltsSuit(plug: PlugPart, load: MotorPart | LoadPart): boolean {
  const full = plug.volts.volts;
  const single = load.feed === 'single';
  const offers = [
    full,
    ...(single && plug.feed === 'two-leg' ? [full / 2] : []),
    ...(single && plug.feed === 'three-phase' ? [full / Math.sqrt(3)] : []),
  ];
  return offers.some((v) => load.volts.volts <= v * 1.15 && load.volts.volts >= v * 0.8);
}

function voltsMismatch(study: Study, plug: PlugPart, load: MotorPart | LoadPart): Finding {
  return finding(study.plan, {
    id: 'plug-mismatch',
    severity: 'danger',
    question: 7,
    parts: [load.name, plug.name],
    at: load.where.get('volts') ?? load.at,
    message: `${load.name} is made for ${load.volts.volts} V and ${plug.name} gives ${plug.volts.volts} V`,
    why: 'A motor on the wrong voltage overheats or does not start.',
    fix: 'Use a motor and a circuit of one voltage.',
    figures: [
      { name: 'motor', value: load.volts.volts, unit: 'V' },
      { name: 'circuit', value: plug.volts.volts, unit: 'V' },
    ],
    basis: COMMON_PRACTICE,
  });
}

function motorFindings(study: Study, motor: MotorPart): Finding[] {
  const { plan } = study;
  const found: Finding[] = [];
  const power = powerPlausible(motor);
  if (power && !power.plausible)
    found.push(
      finding(plan, {
        id: 'power-implausible',
        severity: 'notice',
        question: 7,
        parts: [motor.name],
        at: motor.where.get('power') ?? motor.at,
        message: `${motor.name}: the power on its label is more than its volts and amperes can give`,
        why: `${motor.volts.volts} V and ${motor.amps} A give ${Math.round(power.input)} VA; the label says ${Math.round(power.output)} W at the shaft. Such labels state a peak.`,
        fix: `Go by the amperes: about ${rounded(power.bestHorsepower, 2)} hp at best.`,
        figures: [
          { name: 'label', value: Math.round(power.output), unit: 'W' },
          { name: 'volts times amperes', value: Math.round(power.input), unit: 'VA' },
        ],
        basis: power.basis,
      }),
    );
  return found;
}
