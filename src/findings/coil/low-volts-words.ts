/** What is told alike of a coil with too few volts and of one with few to spare. */

import type { Plan } from '../../plan/plan.ts';
import { copperFactor } from '../../ratings/coil.ts';
import { warmCelsius } from '../../study/coil-models.ts';
import type { CoilState } from '../../study/coil-states.ts';
import { ambientOf } from '../../study/corners.ts';
import type { Study } from '../../study/study.ts';
import { zonesOf } from '../../study/zones.ts';
import { rounded } from '../../text/numbers.ts';
import type { FindingInput } from '../finding.ts';
import { type LowCoil, THIN } from './low-volts.ts';

/** Whether the coil needs more when it is warm than is printed on it. */
export function needsMoreWarm({ fed: { model } }: CoilState): boolean {
  return model.kind === 'dc' && model.pullInVolts < model.warmFrom;
}

/** All of a finding on a coil with too few volts but its message and why. */
export function lowVolts(
  study: Study,
  low: LowCoil,
): Omit<FindingInput, 'id' | 'severity' | 'question' | 'message' | 'why'> {
  const { state, row } = low;
  const { part, model, source } = state.fed;
  const moved = row.gate === undefined ? [] : row.moved.map((i) => study.circuit.inputs[i]!.part);
  return {
    parts: [part.name, source.part, ...moved],
    at: part.where.get('coil.rated') ?? part.at,
    fix: short(low),
    figures: [
      { name: 'least volts at the coil', value: rounded(row.least, 4), unit: 'V' },
      { name: 'volts at the coil as printed', value: rounded(row.nominal, 4), unit: 'V' },
      { name: 'pull-in of the warm coil', value: rounded(state.pullIn, 4), unit: 'V' },
      { name: 'margin', value: rounded(row.least - state.pullIn), unit: 'V' },
    ],
    basis: model.electronic
      ? 'an electronic input works from what is printed on, warm or cold (data of timers and wide-range relays); wire by ASTM B258 or IEC 60228'
      : model.kind === 'dc'
        ? 'pull-in rises with the copper as (234.5 + T)/254.5, relay makers’ data; wire by ASTM B258 or IEC 60228'
        : 'drop worked out at the current with the armature open, relay and contactor makers’ data',
    twin: { alike: source.part, badness: (state.pullIn - row.least) / model.rated },
  };
}

/** By how much it is short of what it needs, or of room to spare. */
function short({ state, row, fails }: LowCoil): string {
  const { part, model } = state.fed;
  if (fails) return `${part.name} is ${rounded(state.pullIn - row.least)} V short.`;
  const wanted = THIN * model.rated - (row.least - state.pullIn);
  return `${part.name} is ${rounded(wanted)} V short of the ${rounded(THIN * model.rated)} V that it ought to have to spare.`;
}

/** Gates by name, but those of a zone all of whose gates are among them (or `told` already) by their relay. */
export function gatesByZone(study: Study, gates: readonly string[], told?: string): string[] {
  const among = new Set(gates);
  const whole = zonesOf(study).filter((z) => z.gates.every((g) => among.has(g) || g === told));
  const covered = new Set(whole.flatMap((z) => z.gates));
  const zones = whole.map(
    (z) => `every ${told !== undefined && z.gates.includes(told) ? 'other ' : ''}gate of ${z.relay}`,
  );
  return [...zones, ...gates.filter((g) => !covered.has(g))];
}

/** What the least volts come from, and what the coil needs against them. */
export function whyLow({ plan }: Study, { state, row }: LowCoil): string {
  const { model, supply, source } = state.fed;
  const start = supply
    ? `${source.part} may stand at ${rounded(supply.openCircuit.min)} V`
    : `the mains may stand low`;
  const lost = supply ? supply.openCircuit.min - row.least : 0;
  const inside =
    supply && supply.sourceOhms > 0
      ? 'the supply itself, the wire and the contacts'
      : 'the wire and the contacts';
  const way = `${rounded(lost, 2)} V stay in ${inside}${model.kind === 'ac' ? ' while the armature is still open' : ''}`;
  return `${start}, and ${way}. ${needs(plan, state)}`;
}

function needs(plan: Plan, state: CoilState): string {
  const { model } = state.fed;
  if (!needsMoreWarm(state))
    return `It needs ${rounded((state.pullIn / model.rated) * 100)} % of its ${model.rated} V.`;
  const warm = warmCelsius(plan, model);
  return `In air of ${rounded(ambientOf(plan))} °C a coil that has been on is at ${rounded(warm)} °C and needs ${rounded(copperFactor(warm))} times its ${rounded(model.pullInVolts)} V.`;
}
