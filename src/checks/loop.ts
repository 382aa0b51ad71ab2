import type { Source } from '../circuit/circuit.ts';
import { inputVariable } from '../logic/conduction.ts';
import { ohmsOf } from '../logic/ohms.ts';
import { runsAt, type Verified } from '../logic/verify.ts';
import type { Contact, Part, Rating, SupplyPart } from '../plan/plan.ts';
import { defaults } from '../ratings/defaults.ts';
import type { Figure, Finding } from '../report/model.ts';
import { type FedCoil, fedCoils } from './coil.ts';
import type { CoilState } from './coil-volts.ts';
import { coilOf } from './figures.ts';
import { COMMON_PRACTICE, finding, isLanded, listOf, netAt, type Study } from './study.ts';
import { mostTogether } from './together.ts';

const amps = (name: string, value: number): Figure => ({
  name,
  value: Number(value.toPrecision(3)),
  unit: 'A',
});
const say = (a: number) =>
  a < 1 ? `${Number((a * 1000).toPrecision(3))} mA` : `${Number(a.toPrecision(3))} A`;

/** Question 5: supply, switches, suppression. Coil currents with nominal resistance and ideal wires. */
export function checkLoop(study: Study, states: readonly CoilState[]): Finding[] {
  const coils = fedCoils(study).filter((c) => !c.source.mains && c.source.kind === c.model.kind);
  return [
    ...overloaded(study, coils, states),
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

interface Draw {
  readonly source: Source;
  readonly part: SupplyPart;
  readonly coils: readonly FedCoil[];
  /** A while coils pull in */
  readonly amps: number;
  /** A with all of them in */
  readonly settled: number;
}

/** The most that each supply has to give at one time: coils that can be in together, lamps and indicators. */
function drawOf(study: Study, coils: readonly FedCoil[], source: Source): Draw | undefined {
  const { plan, circuit } = study;
  const part = plan.parts.get(source.part);
  if (part?.kind !== 'supply') return undefined;
  const volts = part.output.volts;
  const reach = study.verified?.model.railReach[source.index] ?? [];
  const near = (net: number): boolean => reach.some((r) => r.has(net));
  const elements = circuit.passives.filter(
    (p) => p.what !== 'coil' && p.what !== 'load' && p.what !== 'primary',
  );
  const others = elements.filter((p) => near(p.a) || near(p.b)).map((p) => volts / ohmsOf(plan, p));
  const leds = circuit.diodes
    .filter((d) => d.load && (near(d.anode) || near(d.cathode)))
    .map((d) => d.amps ?? 0.02);
  const extra = [...others, ...leds].reduce((a, b) => a + b, 0);
  const own = coils.filter((c) => c.source === source);
  const before = holdingThemselves(study);
  const settled = mostTogether(study, own, holding).amps + extra;
  // A relay that holds itself in has pulled in before the others do.
  const rest = mostTogether(study, own, (c) => (before.has(c.part.name) ? holding(c) : inrush(c)));
  const first = mostTogether(
    study,
    own.filter((c) => before.has(c.part.name)),
    inrush,
  );
  const most = first.amps > rest.amps ? first : rest;
  return { source, part, coils: most.coils, amps: most.amps + extra, settled };
}

/** Relays with a contact in the way of their own coil. */
function holdingThemselves(study: Study): ReadonlySet<string> {
  const relays = study.verified?.settler.memory.relays ?? [];
  return new Set(relays.map((k) => study.circuit.relays[k]!.part));
}

/** For the answer to question 5: supply, its limit and the most that is drawn, in words. */
export function draws(study: Study): { supply: string; limit: string; drawn: string }[] {
  const coils = fedCoils(study);
  return study.circuit.sources.flatMap((source) => {
    const d = source.mains ? undefined : drawOf(study, coils, source);
    return d ? [{ supply: source.part, limit: say(d.part.limit.amps), drawn: say(d.amps) }] : [];
  });
}

/** Times its limit that a transformer may give for the moment of pull-in, if its own sag leaves every coil enough. */
const MOMENT = 2;

/**
 * More than a supply gives. A transformer gives more than its rating for the moment in which armatures close, at the cost
 * of its volts; while those still serve every coil at worst, that is a caution and no fault.
 */
function overloaded(study: Study, coils: readonly FedCoil[], states: readonly CoilState[]): Finding[] {
  const { plan, circuit } = study;
  const found: Finding[] = [];
  for (const source of circuit.sources.filter((s) => !s.mains)) {
    const d = drawOf(study, coils, source);
    if (!d) continue;
    const { part, amps: draw } = d;
    const volts = part.output.volts;
    const limit = part.limit.amps;
    if (draw <= 0.8 * limit + 1e-9) continue;
    const serves = states
      .filter((x) => x.fed.source.part === source.part)
      .every((x) => x.rows.every((row) => row.least >= x.pullIn - 1e-9));
    const moment = source.kind === 'ac' && d.settled <= limit + 1e-9 && draw <= MOMENT * limit && serves;
    const over = draw > limit + 1e-9 && !moment;
    found.push(
      finding(plan, {
        id: 'supply-overloaded',
        severity: over ? 'fault' : 'caution',
        question: 5,
        parts: [source.part, ...d.coils.map((c) => c.part.name)],
        at: part.where.get('limit') ?? part.at,
        message: `${source.part} gives ${say(limit)}; ${listOf(d.coils.map((c) => c.part.name)) || 'the loop'} can draw ${say(draw)}${source.kind === 'ac' ? ' at pull-in' : ''}`,
        why: over
          ? 'The supply sags, cuts out or overheats when everything is in at once.'
          : draw > limit
            ? 'Only while the armatures close; its volts then sag, and with that counted every coil still pulls in.'
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
    const held = carried.reduce((sum, c) => sum + (inputAmps(c) ?? holding(c)), 0);
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
    } else found.push(...underloaded(study, part, aloneAmps(v, input.index, carried) ?? held, kind));
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

/** A that a switch carries when it alone is moved; undefined where that starts nothing. */
function aloneAmps(v: Verified, input: number, carried: readonly FedCoil[]): number | undefined {
  const fed = carried.filter((c) => runsAt(v, c.part.name, [input]) === true);
  return fed.length === 0 ? undefined : fed.reduce((sum, c) => sum + (inputAmps(c) ?? holding(c)), 0);
}

/** A a gate in front of a board's input carries; the coil behind it is fed otherwise. */
function inputAmps(c: FedCoil): number | undefined {
  return c.part.kind === 'board' ? (c.part.inputCurrent ?? BOARD_INPUT) : undefined;
}

/** A that a board's input passes where its data do not say; common practice, no source. */
const BOARD_INPUT = 0.005;
/** A below which a switch of unknown metal, taken as silver, grows unreliable. */
const SILVER_LEAST = 0.01;

/** Too little current to keep the contacts clean; a switch that says nothing is taken as silver. */
function underloaded(
  study: Study,
  part: Part & { readonly contact: Contact },
  held: number,
  kind: 'dc' | 'ac',
): Finding[] {
  const { least, metal } = part.contact;
  const stated = least?.kind === kind;
  if (least && !stated) return [];
  const needs = least?.amps ?? (metal === 'gold' ? defaults.goldLeastAmps.value : SILVER_LEAST);
  if (held <= 0 || held >= needs - 1e-12) return [];
  return [
    finding(study.plan, {
      id: 'switch-underloaded',
      severity: 'caution',
      question: 5,
      parts: [part.name],
      message: `only ${say(held)} flows through ${part.name}; it needs ${say(needs)} to keep its contacts clean`,
      why: stated
        ? 'Silver contacts that switch too little grow a film and become unreliable.'
        : `Its metal is not stated${metal === 'gold' ? '' : ' and taken as silver'}; silver that switches too little grows a film.`,
      fix: 'Use switches with gold contacts, or a relay that draws more.',
      figures: [amps('current', held), amps('least', needs)],
      basis: stated
        ? 'least current as printed on the switch'
        : 'common practice; silver power switches ask for 100 mA at 5 to 12 V (maker’s data)',
    }),
  ];
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
