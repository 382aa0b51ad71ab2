import { isLanded, netAt } from '../../circuit/terminals.ts';
import { inputVariable } from '../../logic/conduction.ts';
import { runsAt, type Verified } from '../../logic/verify.ts';
import type { Contact, Part, Rating } from '../../plan/plan.ts';
import { defaults } from '../../ratings/defaults.ts';
import { coilOf } from '../../study/coil-models.ts';
import type { CoilState } from '../../study/coil-states.ts';
import type { FedCoil } from '../../study/fed-coils.ts';
import type { Study } from '../../study/study.ts';
import { ampsText } from '../../text/numbers.ts';
import { listOf } from '../../text/word-list.ts';
import { finding } from '../finding.ts';
import type { Finding } from '../report-model.ts';
import { amps, holding, inrush, overloaded } from './supply-load.ts';

/** Question 5: supply, switches, suppression. Coil currents with nominal resistance and ideal wires. */
export function checkLoop(study: Study, states: readonly CoilState[]): Finding[] {
  const coils = study.fedCoils.filter((c) => !c.source.mains && c.source.kind === c.model.kind);
  return [
    ...overloaded(study, coils, states),
    ...switches(study, coils),
    ...unsuppressed(study, coils),
    ...unknownCoils(study, coils),
  ];
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
  const unrated = new Set<string>();
  let unratedKind: 'dc' | 'ac' = 'dc';
  // A selector is judged position by position; what two of them say alike is told once in the end.
  for (const input of circuit.inputs) {
    const part = plan.parts.get(input.part)!;
    if (!('contact' in part)) continue;
    const own = inputVariable(circuit, input.index);
    const carried = carries(study, part.name) ? coils.filter((c) => depends.get(c)!.has(own)) : [];
    if (carried.length === 0) continue;
    const { kind } = carried[0]!.source;
    const volts = Math.max(...carried.map((c) => c.source.rails[0]!.re));
    const held = carried.reduce((sum, c) => sum + (inputAmps(c) ?? holding(c)), 0);
    const start = carried.reduce((sum, c) => sum + inrush(c), 0);
    const serving = servingRatings(part.contact, volts, kind);
    if (serving.length === 0) {
      unrated.add(part.name);
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
          message: `${part.name} is rated ${ampsText(rating)} and has to ${held > rating ? 'carry' : 'make'} ${ampsText(worst)}`,
          why: `That is the ${held > rating ? 'holding' : 'pull-in'} current of ${listOf(carried.map((c) => c.part.name))} at ${volts} V ${kind.toUpperCase()}.`,
          fix: 'Use a switch of a higher rating, or a small relay between the gates and the contactor.',
          figures: [amps('current', worst), amps('rating', rating)],
          basis: 'rating as printed; making up to 1.5 times, IEC 60947-4-1 Table 7, AC-1',
        }),
      );
    } else found.push(...underloaded(study, part, aloneAmps(v, input.index, carried) ?? held, kind));
  }
  if (unrated.size > 0)
    found.push(
      finding(plan, {
        id: 'switch-kind-unrated',
        severity: 'doubt',
        question: 5,
        parts: [...unrated],
        message: `${listOf([...unrated])}: no rating for ${unratedKind.toUpperCase()} at the loop's voltage is stated`,
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
      message: `only ${ampsText(held)} flows through ${part.name}; it needs ${ampsText(needs)} to keep its contacts clean`,
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
