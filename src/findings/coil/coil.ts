import type { Source } from '../../circuit/circuit.ts';
import { FALSE } from '../../logic/bdd.ts';
import type { Verified } from '../../logic/verify.ts';
import type { BatteryPart, SupplyPart } from '../../plan/plan.ts';
import { type CoilModel, pullInAt } from '../../ratings/coil.ts';
import { type SupplyModel, supplyModel } from '../../ratings/supply.ts';
import type { CoilRow } from '../../study/coil-rows.ts';
import { type Coiled, figuresFor, modelOf, warmCelsius } from '../../study/corners.ts';
import { Electrics } from '../../study/electrics.ts';
import { loopOf } from '../../study/loop-path.ts';
import { finding, type Study } from '../../study/study.ts';
import { rounded } from '../../text/numbers.ts';
import type { CoilFigures, Finding } from '../report-model.ts';
import { checkFrequency } from './coil-frequency.ts';
import { checkHolding } from './coil-holding.ts';
import { checkSag } from './coil-sag.ts';
import { inSeries } from './coil-series.ts';
import { type CoilState, tooHigh, tooLow } from './coil-volts.ts';

/** A coil with the low-voltage or mains source that can feed it directly. */
export interface FedCoil {
  readonly part: Coiled;
  readonly model: CoilModel;
  readonly source: Source;
  readonly supply: SupplyModel | undefined;
}

/** Every coil with each source whose two poles can reach its two ends through contacts and diodes. */
export function fedCoils(study: Study): FedCoil[] {
  const { circuit, plan, verified: v } = study;
  if (!v) return [];
  const found: FedCoil[] = [];
  for (const relay of circuit.relays) {
    const part = plan.parts.get(relay.part) as Coiled;
    const sense = relay.senses[0];
    if (sense?.by !== 'volts' || sense.a === sense.b) continue;
    for (const source of circuit.sources) {
      if (!reaches(v, source, sense.a) || !reaches(v, source, sense.b)) continue;
      const owner = plan.parts.get(source.part) as SupplyPart | BatteryPart;
      const supply = source.mains ? undefined : supplyModel(owner, plan.practice);
      found.push({ part, model: modelOf(part), source, supply });
      break;
    }
  }
  return found;
}

function reaches(v: Verified, source: Source, net: number): boolean {
  const reach = [...v.model.railReach[source.index]!];
  if (!source.mains && source.kind === 'dc')
    reach.push(
      ...v.model.conduction.throughDiodes(source.rails[0]!.net, true).slice(-1),
      ...v.model.conduction.throughDiodes(source.rails[1]!.net, false).slice(-1),
    );
  return reach.some((r) => (r.get(net) ?? FALSE) !== FALSE);
}

export interface CoilChecks {
  readonly findings: readonly Finding[];
  readonly coils: readonly CoilFigures[];
  readonly defaults: readonly string[];
  readonly states: readonly CoilState[];
}

/** Question 4: every coil with the least and the greatest volts it can see, gate by gate. */
export function checkCoils(study: Study, electrics: Electrics | undefined): CoilChecks {
  const findings: Finding[] = [];
  const coils: CoilFigures[] = [];
  const defaults: string[] = [];
  const states: CoilState[] = [];
  for (const fed of fedCoils(study)) {
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
    const relay = study.circuit.relays.find((r) => r.part === part.name)!;
    const rows = electrics?.rows(relay) ?? [];
    if (!electrics || rows.length === 0) continue;
    const state: CoilState = { fed, relay, rows, pullIn: pullInAt(model, warmCelsius(study.plan, model)) };
    states.push(state);
    coils.push(...rows.map((row) => figures(study, electrics, state, row)));
    const low = tooLow(study, electrics, state);
    findings.push(...checkSag(study, electrics, state));
    findings.push(...low, ...(low.some((f) => f.id === 'coil-too-low') ? [] : tooHigh(study, state)));
  }
  if (study.verified && electrics) {
    findings.push(...checkHolding(study, electrics));
    findings.push(...inSeries(study, study.verified));
  }
  return { findings, coils, defaults, states };
}

/** The electrical side of a study; none where the logic was not decided. */
export function electricsOf(study: Study): Electrics | undefined {
  return study.verified ? new Electrics(study, study.verified) : undefined;
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
