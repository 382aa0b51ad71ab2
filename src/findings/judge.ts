import { FALSE } from '../logic/bdd.ts';
import { Undecided } from '../logic/undecided.ts';
import { isFixedFeed } from '../plan/fixed-feed.ts';
import { kept } from '../plan/map-entries.ts';
import type { BoxPart, MotorPart, Plan, PlugPart, SupplyPart } from '../plan/plan.ts';
import { motorCurrents } from '../ratings/motor.ts';
import type { Study } from '../study/study.ts';
import { rounded } from '../text/numbers.ts';
import { listOf } from '../text/word-list.ts';
import { type CautionFacts, chooseCautions } from './cautions.ts';
import { checkCoils } from './coil/coil.ts';
import { checkContacts, contactFigure } from './contacts/contacts.ts';
import type { FindingId } from './finding-ids.ts';
import { arrange } from './fold.ts';
import { draws } from './loop/supply-load.ts';
import { boxFillDefaults } from './mains/box-fill.ts';
import { REGISTER } from './register.ts';
import { type Finding, type Question, type Report, verdictOf } from './report-model.ts';
import { proofOf } from './report-proof.ts';
import { QUESTIONS, type QuestionNumber } from './report-words.ts';

const judged = new WeakMap<Study, Report>();

/** The report of every check over a plan, without repairs. Pure, and worked out once a Study. */
export function judge(study: Study): Report {
  return kept(judged, study, () => {
    try {
      return report(study);
    } catch (error) {
      // A check can need more of the diagrams than the proof did; then the whole question is left undecided.
      if (!(error instanceof Undecided) || study.verified === undefined) throw error;
      return report(study.givenUp(error.message));
    }
  });
}

function report(s: Study): Report {
  const coils = checkCoils(s);
  const contacts = checkContacts(s);
  const findings = arrange(REGISTER.flatMap((check) => check.find(s)));
  const { plan } = s;
  return {
    format: 1,
    plan: { file: plan.file, title: plan.title, practice: plan.practice },
    verdict: verdictOf(findings),
    questions: QUESTIONS.map((_, i) =>
      answer(s, (i + 1) as QuestionNumber, findings, coils.coils, contacts.contacts),
    ),
    findings,
    logic: proofOf(s),
    coils: coils.coils,
    contacts: contacts.contacts,
    cautions: chooseCautions(facts(s, findings)),
    defaults: [
      ...new Set([
        ...plan.defaults,
        ...coils.defaults,
        ...boxFillDefaults(s),
        ...unsaid(plan),
        ...(plan.ambient === undefined ? ['ambient taken as 40 °C (warm shop, common practice)'] : []),
      ]),
    ],
  };
}

/** What the plan leaves to the rules of reading, where that bears on the answer. */
function unsaid(plan: Plan): string[] {
  const gates = [...plan.parts.values()].filter((p) => p.kind === 'gate' && !p.where.has('pressed-when'));
  return [
    ...(plan.intents === undefined ? ['intent: every load runs when any gate is open, and only then'] : []),
    ...(gates.length > 0
      ? [`pressed-when of ${listOf(gates.map((g) => g.name))} taken as open: the open gate presses the lever`]
      : []),
  ];
}

/** Findings that say of questions 2 and 3 that they fail. */
const LOGIC: ReadonlySet<FindingId> = new Set([
  'loop-dead',
  'gate-dead',
  'gates-in-series',
  'runs-with-all-shut',
  'runs-without-cause',
  'runs-on-dead-supply',
  'stops-without-cause',
  'gate-stops-load',
  'block-ignored',
  'stays-on',
  'chatters',
  'depends-on-order',
]);
/** Those of them by which something runs that ought not to. */
const RUNNING: ReadonlySet<FindingId> = new Set([
  'runs-with-all-shut',
  'runs-without-cause',
  'runs-on-dead-supply',
  'stays-on',
  'block-ignored',
]);

function answer(
  s: Study,
  number: QuestionNumber,
  findings: readonly Finding[],
  coils: Report['coils'],
  contacts: Report['contacts'],
): Question {
  const own = findings.filter((f) => f.question === number);
  const bad = own.find((f) => ['danger', 'warning', 'fault'].includes(f.severity));
  const doubt = own.find((f) => f.severity === 'doubt');
  const question = QUESTIONS[number - 1]!;
  if (bad) return { number, question, answer: 'no', figure: bad.message };
  if (doubt) return { number, question, answer: 'cannot tell', figure: doubt.message };
  const v = s.verified;
  const fails = v?.deviations.some((d) => (number === 2 ? d.expected : !d.expected));
  if (v && (number === 2 || number === 3) && (fails || v.chatter !== FALSE)) {
    const cause = findings.find((f) => f.also.some((a) => LOGIC.has(a.id)));
    return { number, question, answer: 'no', figure: cause?.message ?? 'see the shortest case below' };
  }
  // A dead loop leaves the later questions open only where it hides them; a switch on the wrong tab answers 2 and 3.
  const moved = findings.find((f) => f.id === 'gate-on-wrong-tab');
  if (number === 3 && moved && moved.also.some((a) => RUNNING.has(a.id)))
    return { number, question, answer: 'no', figure: moved.message };
  if (!v && (number === 4 || number === 5) && s.circuit.relays.length > 0)
    return { number, question, answer: 'cannot tell', figure: 'which states feed the coil was not decided' };
  const unknown = number === 4 ? findings.find((f) => f.id === 'coil-current-unknown') : undefined;
  if (unknown) return { number, question, answer: 'cannot tell', figure: unknown.message };
  const figure = goodFigure(s, number, coils, contacts);
  return figure === undefined
    ? { number, question, answer: 'not applicable', figure: nothing(number) }
    : { number, question, answer: 'yes', figure };
}

function nothing(number: QuestionNumber): string {
  return number === 4
    ? 'no coil is fed in this plan'
    : number < 4
      ? 'the plan has no mains part'
      : 'nothing of the kind is in the plan';
}

function goodFigure(
  s: Study,
  number: QuestionNumber,
  coils: Report['coils'],
  contacts: Report['contacts'],
): string | undefined {
  const { circuit } = s;
  switch (number) {
    case 1:
      return circuit.sources.some((x) => x.mains) || s.sides.mains.size > 0
        ? 'no contact joins the two, in any position'
        : undefined;
    case 2:
    case 3:
      return s.verified ? `proved for ${proofWords(s)}` : undefined;
    case 4: {
      const worst = [...coils].sort((a, b) => (a.margin ?? 0) - (b.margin ?? 0))[0];
      return worst
        ? `${worst.relay} gets ${worst.volts.min} V at least${worst.gate === null ? '' : ` (${worst.gate})`} and needs ${worst.pullIn} V`
        : undefined;
    }
    case 5:
      return circuit.sources.some((x) => !x.mains) ? loopFigure(s, coils) : undefined;
    case 6:
      return contacts.length > 0 ? contactFigure(s) : undefined;
    default: {
      const plug = [...s.plan.parts.values()].find((p): p is PlugPart => p.kind === 'plug');
      const motor = [...s.plan.parts.values()].find((p): p is MotorPart => p.kind === 'motor');
      if (!plug) return undefined;
      const amps = motor ? motorCurrents(motor, s.plan.practice).running?.amps : undefined;
      return `${amps === undefined ? 'the load' : `${rounded(amps)} A running`} on a circuit of ${plug.breaker ?? '?'} A`;
    }
  }
}

/** What the supply gives, what is drawn at most, and the longest way. */
function loopFigure(s: Study, coils: Report['coils']): string {
  const far = coils.reduce<Report['coils'][number] | undefined>(
    (x, y) => ((y.ohms ?? 0) > (x?.ohms ?? 0) ? y : x),
    undefined,
  );
  const [draw] = draws(s);
  const drawn = draw
    ? `${draw.supply} gives ${draw.limit}, at most ${draw.drawn} is drawn`
    : 'switches and wire carry it';
  return far?.ohms ? `${drawn}; the farthest loop has ${rounded(far.ohms)} ohm` : drawn;
}

export function proofWords(s: Study): string {
  const n = s.verified?.combinations ?? 1n;
  if (n <= 1_000_000n) return `all ${n} combinations of ${s.circuit.inputs.length} inputs`;
  const bits = s.circuit.inputs.length;
  return n === 1n << BigInt(bits) ? `all 2^${bits} combinations` : `all ${n} combinations`;
}

/** What the choice of cautions needs to know. */
function facts(s: Study, findings: readonly Finding[]): CautionFacts {
  const parts = [...s.plan.parts.values()];
  const has = (id: FindingId) => findings.some((f) => f.id === id);
  const motor = parts.find((p): p is MotorPart => p.kind === 'motor');
  const plug = parts.find((p): p is PlugPart => p.kind === 'plug');
  const supplies = parts.filter((p): p is SupplyPart => p.kind === 'supply');
  const batteries = parts.filter((p) => p.kind === 'battery');
  const relays = parts.filter((p) => p.kind === 'relay' || p.kind === 'timer');
  const boxes = parts.filter((p): p is BoxPart => p.kind === 'box');
  const dcCoil = relays.some((r) => 'coil' in r && r.coil?.rated.kind === 'dc');
  return {
    practice: s.plan.practice,
    hasMains: parts.some((p) => ['plug', 'outlet', 'motor', 'load'].includes(p.kind)),
    mainsConnection: plug === undefined ? undefined : isFixedFeed(plug) ? 'fixed' : 'cord',
    legs: plug?.feed === 'three-phase' ? 3 : plug?.feed === 'two-leg' ? 2 : 1,
    neutralSwitched: has('line-not-switched'),
    earthBroken: has('earth-broken'),
    breaker: plug?.breaker,
    motorAmps: motor ? motorCurrents(motor, s.plan.practice).running?.amps : undefined,
    motorHorsepower: motor?.power?.horsepower ?? (motor?.power ? motor.power.watts / 745.7 : undefined),
    hasMotor: motor !== undefined,
    motorType: motor?.type,
    protector: motor?.protector ?? (motor && !has('motor-unprotected') ? 'manual' : undefined),
    frequentStarts: has('starts-per-hour'),
    restartsAfterPowerCut: s.plan.intents?.some((i) => i.staysOnAfter.length > 0) ? false : undefined,
    supplyKinds: [
      ...supplies.map((x) => x.regulation ?? (x.output.kind === 'ac' ? 'transformer' : 'regulated')),
      ...batteries.map(() => 'battery' as const),
    ],
    class2: supplies.length === 0 ? undefined : supplies.every((x) => x.class2 === true),
    loopKind: supplies[0]?.output.kind ?? (batteries.length > 0 ? 'dc' : undefined),
    suppliesJoined: has('supplies-joined'),
    earthedAtSwitch: findings.some((f) => f.id === 'low-voltage-earthed' && f.severity === 'warning'),
    coilMismatch: findings.some(
      (f) => f.id === 'coil-kind' || (f.id === 'coil-too-high' && f.severity === 'warning'),
    ),
    suppressor: has('diode-backwards') ? 'wrong' : has('coil-unsuppressed') ? 'none' : 'fitted',
    dcCoil,
    hasRelay: relays.length > 0,
    solidState: parts.some((p) => 'technology' in p && p.technology === 'solid-state'),
    board: parts.some((p) => p.kind === 'board'),
    motorRated: !(
      ['contact-not-motor-rated', 'contact-horsepower', 'contact-starting', 'contact-running'] as const
    ).some(has),
    boxed: boxes.length > 0,
    sharedBox: boxes.some((b) => b.holds.length > 0) && relays.length > 0,
    sharedCable: has('sides-share-cable'),
    gateWires: parts.some((p) => p.kind === 'gate'),
  };
}
