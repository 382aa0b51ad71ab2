import { warmCelsius } from '../../study/coil-models.ts';
import type { CoilRow } from '../../study/coil-rows.ts';
import type { CoilState } from '../../study/coil-states.ts';
import { figuresFor } from '../../study/corner-figures.ts';
import type { Electrics } from '../../study/electrics.ts';
import type { FedCoil } from '../../study/fed-coils.ts';
import { loopOf } from '../../study/loop-path.ts';
import type { Study } from '../../study/study.ts';
import { rounded } from '../../text/numbers.ts';
import { finding } from '../finding.ts';
import type { CoilFigures, Finding } from '../report-model.ts';
import { checkFrequency } from './coil-frequency-found.ts';
import { checkHolding } from './coil-holding.ts';
import { checkSag } from './coil-sag.ts';
import { inSeries } from './coil-series.ts';
import { tooHigh, tooLow } from './coil-volts.ts';

export interface CoilChecks {
  readonly findings: readonly Finding[];
  readonly coils: readonly CoilFigures[];
  readonly defaults: readonly string[];
  readonly states: readonly CoilState[];
}

/** Question 4: every coil with the least and the greatest volts it can see, gate by gate. */
export function checkCoils(study: Study): CoilChecks {
  const findings: Finding[] = [];
  const coils: CoilFigures[] = [];
  const defaults: string[] = [];
  const { electrics } = study;
  for (const fed of study.fedCoils) {
    const { model, part, source } = fed;
    defaults.push(
      ...model.defaults.map((d) => (d.startsWith(part.name) ? d : `${part.name}: ${d}`)),
      ...(fed.supply?.defaults ?? []),
    );
    if (source.kind !== model.kind) {
      findings.push(coilKind(study, fed));
      continue;
    }
    findings.push(...checkFrequency(study, fed));
    const state = study.coilStates.find((x) => x.fed === fed);
    if (!electrics || !state) continue;
    const { rows } = state;
    coils.push(...rows.map((row) => figures(study, electrics, state, row)));
    const low = tooLow(study, electrics, state);
    findings.push(...checkSag(study, electrics, state));
    findings.push(...low, ...(low.some((f) => f.id === 'coil-too-low') ? [] : tooHigh(study, state)));
  }
  if (study.verified && electrics) {
    findings.push(...checkHolding(study, electrics));
    findings.push(...inSeries(study, study.verified));
  }
  return { findings, coils, defaults, states: study.coilStates };
}

function figures(study: Study, own: Electrics, state: CoilState, row: CoilRow): CoilFigures {
  const { model, part } = state.fed;
  const loop = loopOf(own, state, row);
  const known = model.ohms !== undefined || part.kind === 'board';
  const volts = (x: number) => (known ? rounded(x, 4) : null);
  return {
    relay: part.name,
    gate: row.gate ?? null,
    metres: loop.metres === undefined ? null : rounded(loop.metres, 4),
    ohms: loop.ohms === undefined ? null : rounded(loop.ohms, 4),
    volts: { min: volts(row.least), nominal: volts(row.nominal), max: volts(row.most) },
    pullIn: rounded(state.pullIn, 4),
    dropOut: rounded(model.dropOutVolts, 4),
    margin: known ? rounded((row.least - state.pullIn) / model.rated, 3) : null,
    corner: cornerWords(study, state, row),
  };
}

/** Which supply, temperatures and positions give the least volts. */
function cornerWords(study: Study, { fed }: CoilState, row: CoilRow): string {
  const { source: fedSource } = fed;
  const { model, supply } = fed;
  const { plan, circuit } = study;
  const coil =
    model.kind === 'dc'
      ? `coil at ${rounded(warmCelsius(plan, model), 3)} °C and ${rounded(model.tolerance * 100, 2)} % low`
      : 'armature open';
  const source = supply
    ? `supply at ${rounded(supply.openCircuit.min, 4)} V`
    : `mains at ${rounded(figuresFor(plan, 'low').source(fedSource).scale * 100, 3)} %`;
  const others = row.leastIn.moved.filter((i) => !row.moved.includes(i)).map((i) => circuit.inputs[i]!.part);
  const with_ = others.length === 0 ? '' : `, with ${others.join(', ')} as well`;
  return `${source}, ${coil}, wires at ${rounded(plan.ambient ?? 40, 3)} °C${with_}${row.proved ? '' : ' (searched, not every combination tried)'}`;
}

function coilKind(study: Study, { part, model, source }: FedCoil): Finding {
  const dcCoil = model.kind === 'dc';
  return finding(study.plan, {
    id: 'coil-kind',
    severity: 'warning',
    question: 4,
    parts: [part.name, source.part],
    at: part.where.get('coil.rated') ?? part.where.get('supply'),
    message: `${part.name} has ${dcCoil ? 'a DC' : 'an AC'} coil and ${source.part} gives ${source.kind.toUpperCase()}`,
    why: dcCoil
      ? 'A DC coil on AC buzzes; its contacts chatter and weld.'
      : 'An AC coil on DC is limited by its copper alone: it draws several times its current and burns.',
    fix: `Use a ${model.kind.toUpperCase()} supply of ${model.rated} V, or a relay with a ${source.kind.toUpperCase()} coil.`,
    basis: 'relay makers’ application guidance, several agree',
  });
}
