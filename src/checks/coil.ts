import type { Source } from '../circuit/circuit.ts';
import { FALSE } from '../logic/bdd.ts';
import type { Verified } from '../logic/verify.ts';
import type { BatteryPart, BoardPart, Coil, RelayPart, SupplyPart, TimerPart } from '../plan/plan.ts';
import { type CoilModel, coilModel } from '../ratings/coil.ts';
import { type SupplyModel, supplyModel } from '../ratings/supply.ts';
import type { CoilFigures, Finding } from '../report/model.ts';
import { everIn, finding, listOf, type Study, sayMoved } from './study.ts';

export type Coiled = RelayPart | TimerPart | BoardPart;

/** A coil with the low-voltage or mains source that can feed it directly. */
export interface FedCoil {
  readonly part: Coiled;
  readonly coil: Coil;
  readonly model: CoilModel;
  readonly source: Source;
  readonly supply: SupplyModel | undefined;
  /** most diodes that some gate's current passes on its way through the coil */
  readonly diodes: number;
}

/** Main poles numbered 1-2, 3-4 are a contactor's (EN 50005). */
function isContactor(part: Coiled): boolean {
  return part.poles.some((p) => p.common === '1');
}

export function coilOf(part: Coiled): Coil | undefined {
  if (part.kind !== 'board') return part.coil;
  return part.coil ?? { rated: part.supply };
}

/** Every coil with each source whose two poles can reach its two ends through contacts. */
export function fedCoils(study: Study): FedCoil[] {
  const { circuit, plan, verified: v } = study;
  if (!v) return [];
  const found: FedCoil[] = [];
  for (const relay of circuit.relays) {
    const part = plan.parts.get(relay.part) as Coiled;
    const coil = coilOf(part);
    const sense = relay.senses[0];
    if (!coil || sense?.by !== 'volts' || sense.a === sense.b) continue;
    for (const source of circuit.sources) {
      const reach = v.model.railReach[source.index]!;
      const through =
        source.mains || source.kind !== 'dc'
          ? []
          : [
              ...v.model.conduction.throughDiodes(source.rails[0]!.net, true).slice(-1),
              ...v.model.conduction.throughDiodes(source.rails[1]!.net, false).slice(-1),
            ];
      const touches = (net: number) => [...reach, ...through].some((r) => (r.get(net) ?? FALSE) !== FALSE);
      if (!touches(sense.a) || !touches(sense.b)) continue;
      const owner = plan.parts.get(source.part) as SupplyPart | BatteryPart;
      found.push({
        part,
        coil,
        model: coilModel(coil, { contactor: isContactor(part) }),
        source,
        supply: source.mains ? undefined : supplyModel(owner, plan.practice),
        diodes: source.kind === 'dc' && !source.mains ? diodesOnTheWay(v, source, sense.a, sense.b) : 0,
      });
      break;
    }
  }
  return found;
}

/** The greatest number of diodes without which some state that feeds the coil would not. */
function diodesOnTheWay(v: Verified, source: Source, a: number, b: number): number {
  const most = (start: number, forward: boolean, net: number) => {
    const levels = v.model.conduction.throughDiodes(start, forward);
    let found = 0;
    levels.forEach((level, n) => {
      if (n > 0 && level.get(net) !== levels[n - 1]!.get(net)) found = n;
    });
    return found;
  };
  const [plus, minus] = source.rails;
  return Math.max(
    most(plus!.net, true, a) + most(minus!.net, false, b),
    most(plus!.net, true, b) + most(minus!.net, false, a),
  );
}

/**
 * Volts at the coil with ideal wires: the source behind its resistance, loaded by this coil. At pull-in a DC coil is
 * judged with the supply low; an AC coil at nominal mains with the armature open, where most of the sag is.
 */
export function coilVolts(fed: FedCoil): { min: number; nominal: number; max: number; atPullIn: number } {
  const { supply, source, model } = fed;
  if (!supply) {
    const v = Math.max(
      ...source.rails.map((p) => Math.max(...source.rails.map((q) => Math.hypot(p.re - q.re, p.im - q.im)))),
    );
    return { min: v * 0.9, nominal: v, max: v * 1.1, atPullIn: v };
  }
  const share = (ohms: number | undefined) => (ohms === undefined ? 1 : ohms / (ohms + supply.sourceOhms));
  const held = share(model.ohms);
  const { nominal, max } = supply.openCircuit;
  // A diode takes about 0.7 V; the most are met at the worst gate, none at the best.
  const drop = 0.7 * fed.diodes;
  const min = supply.openCircuit.min - drop;
  const start = share(model.kind === 'ac' ? (model.inrushOhms ?? model.ohms) : model.ohms);
  return {
    min: min * held,
    nominal: nominal * held,
    max: max * held,
    atPullIn: (model.kind === 'dc' ? min : nominal) * start,
  };
}

const round = (x: number, digits = 3) => Number(x.toPrecision(digits));

export function checkCoils(study: Study): { findings: Finding[]; coils: CoilFigures[]; defaults: string[] } {
  const findings: Finding[] = [];
  const coils: CoilFigures[] = [];
  const defaults: string[] = [];
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
    const volts = coilVolts(fed);
    coils.push({
      relay: part.name,
      gate: null,
      volts: { min: round(volts.min, 4), nominal: round(volts.nominal, 4), max: round(volts.max, 4) },
      pullIn: round(model.pullInVolts, 4),
      dropOut: round(model.dropOutVolts, 4),
      margin: round((volts.min - model.pullInVolts) / model.rated),
      corner: 'supply low, coil at 20 °C, wires without resistance',
    });
    if (volts.atPullIn < model.pullInVolts - 1e-9) findings.push(tooLow(study, fed, volts.atPullIn));
    else findings.push(...tooHigh(study, fed, volts.nominal));
  }
  if (study.verified) findings.push(...inSeries(study, study.verified));
  return { findings, coils, defaults };
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

function tooLow(study: Study, fed: FedCoil, volts: number): Finding {
  const { part, model, source } = fed;
  return finding(study.plan, {
    id: 'coil-too-low',
    severity: 'fault',
    question: 4,
    parts: [part.name, source.part],
    at: part.where.get('coil.rated') ?? part.at,
    message: `${part.name} gets ${round(volts)} V and needs ${round(model.pullInVolts)} V to pull in`,
    why: `Its coil is rated ${model.rated} V ${model.kind.toUpperCase()}; ${source.part} gives that much ${model.kind === 'ac' ? 'while the armature is still open' : fed.diodes > 0 ? 'when it stands low, less what the diodes take' : 'when it stands low'}.`,
    fix: `Use a coil rated for what ${source.part} gives, or a supply of ${model.rated} V${model.kind === 'ac' ? ' with more VA' : ''}.`,
    figures: [
      { name: 'volts at the coil', value: round(volts, 4), unit: 'V' },
      { name: 'pull-in at 20 °C', value: round(model.pullInVolts, 4), unit: 'V' },
    ],
    basis: 'pull-in as printed, or the usual must-operate figure (see defaults)',
  });
}

function tooHigh(study: Study, { part, model, source, coil }: FedCoil, volts: number): Finding[] {
  if (volts <= model.mostVolts + 1e-9) return [];
  // Small relays stand 110 to 130 %; where the plan does not say, only what is above all of them is sure to harm.
  const sure = coil.most !== undefined || volts > 1.3 * model.rated;
  return [
    finding(study.plan, {
      id: 'coil-too-high',
      severity: sure ? 'warning' : 'caution',
      question: 4,
      parts: [part.name, source.part],
      at: part.where.get('coil.rated') ?? part.at,
      message: `${part.name} gets ${round(volts)} V and stands ${round(model.mostVolts)} V for long`,
      why: `Its coil is rated ${model.rated} V; ${source.part} rises above its label when lightly loaded. The coil overheats.`,
      fix:
        model.kind === 'ac'
          ? `Measure it with the coil on and state no-load: of ${source.part}; or use a transformer with less rise, or a coil that states coil: {most: ...}.`
          : `Use a regulated supply of ${model.rated} V, or a coil that states coil: {most: ...} for that voltage.`,
      figures: [
        { name: 'volts at the coil', value: round(volts, 4), unit: 'V' },
        { name: 'most for long', value: round(model.mostVolts, 4), unit: 'V' },
      ],
      basis: 'continuous coil voltage 110 % of rated unless the maker states more (makers’ data)',
    }),
  ];
}

/** A coil that shares the supply's volts with another coil, a lamp or an indicator, and so does not pull in. */
function inSeries(study: Study, v: Verified): Finding[] {
  const { circuit, plan } = study;
  const found: Finding[] = [];
  for (const shared of v.model.shared) {
    const relay = circuit.relays[shared.relay]!;
    const sense = relay.senses[shared.sense]!;
    if (sense.by !== 'volts' || sense.what === 'input' || found.some((f) => f.parts[0] === relay.part))
      continue;
    const seen = Math.abs(shared.volts);
    const full = Math.max(...circuit.sources.filter((s) => !s.mains).map((s) => Math.abs(s.rails[0]!.re)), 0);
    if (seen >= sense.pullIn - 1e-9 || seen > 0.93 * full || seen < 0.02 * full) continue;
    const moved = everIn(v, shared.states);
    if (!moved) continue;
    const others = [
      ...circuit.passives
        .filter((p) => p.part !== relay.part && study.sides.low.has(p.a) && p.what !== 'input')
        .map((p) => p.part),
      ...circuit.diodes.filter((d) => d.load).map((d) => d.part),
    ].filter((name) => name !== relay.part);
    const holds = moved.length === 0 && seen > sense.dropOut;
    found.push(
      finding(plan, {
        id: holds ? 'coil-holds-in' : 'coil-in-series',
        severity: 'fault',
        question: 4,
        parts: [relay.part, ...new Set(others)],
        message: holds
          ? `${relay.part} may stay in: ${round(seen)} V leaks through its coil with all gates shut`
          : `${relay.part} shares the supply with ${listOf([...new Set(others)], 3) || 'another part'} in line and gets only ${round(seen)} V`,
        why: `With ${sayMoved(circuit, moved)} the current to its coil passes through another coil, lamp or indicator.`,
        fix: holds
          ? 'Connect the lamp or indicator across the coil, not across a switch.'
          : 'Connect the other part side by side with the coil, not in line with it.',
        figures: [
          { name: 'volts at the coil', value: round(seen, 4), unit: 'V' },
          {
            name: holds ? 'drop-out' : 'pull-in',
            value: round(holds ? sense.dropOut : sense.pullIn, 4),
            unit: 'V',
          },
        ],
        basis: 'Ohm’s law over the joined parts, ideal wires',
      }),
    );
  }
  return found;
}
