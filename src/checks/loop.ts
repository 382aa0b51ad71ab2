import { inputVariable } from '../logic/conduction.ts';
import { ohmsOf } from '../logic/ohms.ts';
import type { BatteryPart, Contact, Rating, SupplyPart } from '../plan/plan.ts';
import type { Figure, Finding } from '../report/model.ts';
import { type FedCoil, fedCoils } from './coil.ts';
import { coilOf } from './figures.ts';
import { COMMON_PRACTICE, finding, isLanded, listOf, netAt, type Study } from './study.ts';

const amps = (name: string, value: number): Figure => ({
  name,
  value: Number(value.toPrecision(3)),
  unit: 'A',
});
const say = (a: number) =>
  a < 1 ? `${Number((a * 1000).toPrecision(3))} mA` : `${Number(a.toPrecision(3))} A`;

/** Question 5: supply, switches, suppression. Coil currents with nominal resistance and ideal wires. */
export function checkLoop(study: Study): Finding[] {
  const coils = fedCoils(study).filter((c) => !c.source.mains && c.source.kind === c.model.kind);
  return [
    ...overloaded(study, coils),
    ...switches(study, coils),
    ...unsuppressed(study, coils),
    ...unknownCoils(study, coils),
  ];
}

function holding(c: FedCoil): number {
  return c.model.ohms === undefined ? 0 : c.model.rated / c.model.ohms;
}
function inrush(c: FedCoil): number {
  const ohms = c.model.kind === 'ac' ? (c.model.inrushOhms ?? c.model.ohms) : c.model.ohms;
  return ohms === undefined ? 0 : c.model.rated / ohms;
}

function overloaded(study: Study, coils: readonly FedCoil[]): Finding[] {
  const { plan, circuit } = study;
  const found: Finding[] = [];
  for (const source of circuit.sources.filter((s) => !s.mains)) {
    const part = plan.parts.get(source.part) as SupplyPart | BatteryPart;
    if (part.kind !== 'supply') continue;
    const own = coils.filter((c) => c.source === source);
    const volts = part.output.volts;
    const others = circuit.passives
      .filter((p) => (p.what === 'lamp' || p.what === 'resistor') && study.sides.low.has(p.a))
      .map((p) => volts / ohmsOf(plan, p));
    const leds = circuit.diodes.filter((d) => d.load).map((d) => d.amps ?? 0.02);
    const boards = circuit.passives.filter((p) => p.what === 'input').map((p) => volts / ohmsOf(plan, p));
    const extra =
      circuit.sources.filter((s) => !s.mains).length === 1
        ? [...others, ...leds, ...boards].reduce((a, b) => a + b, 0)
        : 0;
    const draw = own.reduce((sum, c) => sum + inrush(c), 0) + extra;
    const limit = part.limit.amps;
    if (draw <= 0.8 * limit + 1e-9) continue;
    const over = draw > limit + 1e-9;
    found.push(
      finding(plan, {
        id: 'supply-overloaded',
        severity: over ? 'fault' : 'caution',
        question: 5,
        parts: [source.part, ...own.map((c) => c.part.name)],
        at: part.where.get('limit') ?? part.at,
        message: `${source.part} gives ${say(limit)}; ${listOf(own.map((c) => c.part.name)) || 'the loop'} can draw ${say(draw)}${source.kind === 'ac' ? ' at pull-in' : ''}`,
        why: over
          ? 'The supply sags, cuts out or overheats when everything is in at once.'
          : 'That is more than 80 % of what it can give.',
        fix: `Use a supply for at least ${say(draw / 0.8)}${source.kind === 'ac' ? ` (${Math.ceil((draw / 0.8) * volts)} VA)` : ''}.`,
        figures: [amps('draw', draw), amps('limit', limit)],
        basis: COMMON_PRACTICE,
      }),
    );
  }
  return found;
}

/** Ratings that serve a DC or AC circuit of some voltage. */
export function servingRatings(contact: Contact, volts: number, kind: 'dc' | 'ac'): Rating[] {
  return contact.ratings.filter((r) => r.kind === kind && r.volts >= volts - 1e-9);
}

function switches(study: Study, coils: readonly FedCoil[]): Finding[] {
  const { plan, circuit, verified: v } = study;
  if (!v) return [];
  const depends = new Map(
    coils.map((c) => {
      const relay = circuit.relays.find((r) => r.part === c.part.name)!;
      return [c, v.model.bdd.support(v.model.pull[relay.index]!)] as const;
    }),
  );
  const found: Finding[] = [];
  const unrated: string[] = [];
  const judged = new Set<string>();
  let unratedKind: 'dc' | 'ac' = 'dc';
  for (const input of circuit.inputs) {
    const part = plan.parts.get(input.part)!;
    if (!('contact' in part) || judged.has(part.name)) continue;
    judged.add(part.name);
    const own = inputVariable(circuit, input.index);
    const carried = carries(study, part.name) ? coils.filter((c) => depends.get(c)!.has(own)) : [];
    if (carried.length === 0) continue;
    const { kind } = carried[0]!.source;
    const volts = Math.max(...carried.map((c) => c.source.rails[0]!.re));
    const held = carried.reduce((sum, c) => sum + holding(c), 0);
    const start = carried.reduce((sum, c) => sum + inrush(c), 0);
    const serving = servingRatings(part.contact, volts, kind);
    if (serving.length === 0) {
      unrated.push(part.name);
      unratedKind = kind;
      continue;
    }
    const rating = Math.max(...serving.map((r) => r.amps));
    if (held > rating + 1e-9 || start > 1.5 * rating + 1e-9) {
      const worst = held > rating ? held : start;
      found.push(
        finding(plan, {
          id: 'switch-overloaded',
          severity: 'fault',
          question: 5,
          parts: [part.name, ...carried.map((c) => c.part.name)],
          message: `${part.name} is rated ${say(rating)} and has to ${held > rating ? 'carry' : 'make'} ${say(worst)}`,
          why: `That is the ${held > rating ? 'holding' : 'pull-in'} current of ${listOf(carried.map((c) => c.part.name))} at ${volts} V ${kind.toUpperCase()}.`,
          fix: 'Use a switch of a higher rating, or a small relay between the gates and the contactor.',
          figures: [amps('current', worst), amps('rating', rating)],
          basis: 'rating as printed; making up to 1.5 times, IEC 60947-4-1 Table 7, AC-1',
        }),
      );
    } else if (
      part.contact.least !== undefined &&
      held > 0 &&
      part.contact.least.kind === kind &&
      held < part.contact.least.amps - 1e-12
    ) {
      found.push(
        finding(plan, {
          id: 'switch-underloaded',
          severity: 'caution',
          question: 5,
          parts: [part.name],
          message: `only ${say(held)} flows through ${part.name}; it needs ${say(part.contact.least.amps)} to keep its contacts clean`,
          why: 'Silver contacts that switch too little grow a film and become unreliable.',
          fix: 'Use switches with gold contacts, or a relay that draws more.',
          figures: [amps('current', held), amps('least', part.contact.least.amps)],
          basis: 'least current as printed on the switch',
        }),
      );
    }
  }
  if (unrated.length > 0)
    found.push(
      finding(plan, {
        id: 'switch-kind-unrated',
        severity: 'doubt',
        question: 5,
        parts: unrated,
        message: `${listOf(unrated)}: no rating for ${unratedKind.toUpperCase()} at the loop's voltage is stated`,
        why: 'A rating for the other kind of current says nothing of this one.',
        fix: `State contact: {ratings: [...]} with a ${unratedKind.toUpperCase()} rating, as printed on the switch.`,
        basis: 'switch makers’ data: DC and AC ratings differ',
      }),
    );
  return found;
}

/** Some tab of the switch lies on the low-voltage side. */
function carries(study: Study, name: string): boolean {
  return ['COM', 'NO', 'NC', '95', '96', '97', '98'].some((t) => {
    const net = netAt(study.circuit, name, t);
    return (
      net !== undefined &&
      isLanded(study.circuit, name, t) &&
      study.sides.low.has(net) &&
      !study.sides.mains.has(net)
    );
  });
}

function unsuppressed(study: Study, coils: readonly FedCoil[]): Finding[] {
  const { circuit, plan } = study;
  return coils.flatMap(({ part, model }) => {
    const coil = coilOf(part);
    if (
      model.kind !== 'dc' ||
      part.kind === 'board' ||
      (coil.suppressor !== undefined && coil.suppressor !== 'none')
    )
      return [];
    const sense = circuit.relays.find((r) => r.part === part.name)!.senses[0]!;
    if (
      circuit.diodes.some((d) => !d.load && [d.anode, d.cathode].every((n) => n === sense.a || n === sense.b))
    )
      return [];
    return [
      finding(plan, {
        id: 'coil-unsuppressed',
        severity: 'caution',
        question: 4,
        parts: [part.name],
        message: `nothing quenches the coil of ${part.name} when a gate switch opens`,
        why: 'Each stop then draws an arc that wears the last switch to open.',
        fix: `Fit a diode at the coil, its band to the + side, or a relay with one built in.`,
        basis: 'relay makers’ application guidance, several agree',
      }),
    ];
  });
}

function unknownCoils(study: Study, coils: readonly FedCoil[]): Finding[] {
  return coils
    .filter((c) => c.model.ohms === undefined && c.part.kind !== 'board')
    .map((c) =>
      finding(study.plan, {
        id: 'coil-current-unknown',
        severity: 'doubt',
        question: 5,
        parts: [c.part.name],
        at: c.part.where.get('coil.rated') ?? c.part.at,
        message: `how much current ${c.part.name} draws is not stated`,
        why: 'Without it neither the supply nor the gate switches can be judged.',
        fix: `State coil: {resistance: ...}, {current: ...} or {power: ...} of ${c.part.name}.`,
        basis: 'a missing figure is never a pass',
      }),
    );
}
