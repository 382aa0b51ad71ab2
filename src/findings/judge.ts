/**
 * The report of a plan: this folder knows what can be wrong with a circuit, how grave that is and how it is told, and must
 * not work out states, volts or ratings, which it asks of the study and the tables.
 */
import { effort } from '../circuit/effort.ts';
import { Undecided } from '../logic/undecided.ts';
import { lengthUnit } from '../plan/length-unit.ts';
import { kept } from '../plan/map-entries.ts';
import type { Plan } from '../plan/plan.ts';
import type { Study } from '../study/study.ts';
import { listOf } from '../text/word-list.ts';
import { answer } from './answers.ts';
import { chooseCautions } from './cautions/choose.ts';
import { cautionFacts } from './cautions/facts.ts';
import { coilDefaults, coilFigures } from './coil/coil-figures.ts';
import { contactFigures } from './contacts/contact-figures.ts';
import { arrange } from './fold.ts';
import { boxFillDefaults } from './mains/box-fill-defaults.ts';
import { everydayPatterns } from './mains/everyday-patterns.ts';
import { REGISTER } from './register.ts';
import { type Finding, type Report, verdictOf } from './report-model.ts';
import { proofOf } from './report-proof.ts';
import { QUESTIONS, type QuestionNumber } from './report-words.ts';
import { asUsual } from './unsaid/usual.ts';
import { type Taken, weigh } from './unsaid/weigh.ts';

const judged = new WeakMap<Study, Report>();
const judgedAsTaken = new WeakMap<Study, Report>();

/** The report of every check over a plan, without repairs. Pure, and worked out once a Study. */
export function judge(study: Study): Report {
  return kept(judged, study, () => {
    const before = effort();
    const made = decided(study, weigh);
    efforts.set(study, effort() - before);
    return made;
  });
}

const efforts = new WeakMap<Study, number>();

/** Steps of the solvers that judging this study took; what asks for it again and again can tell whether that is worth it. */
export function effortOf(study: Study): number {
  judge(study);
  return efforts.get(study) ?? 0;
}

/** As `judge`, with what the plan leaves out at its usual value alone: what wiring and its repairs go by. */
export function judgeAsTaken(study: Study): Report {
  return kept(judgedAsTaken, study, () => decided(study, (_, taken) => taken.flatMap((t) => t.findings)));
}

const found = new WeakMap<Study, readonly Finding[]>();

/** The findings of that report alone, without what is told around them. */
export function findingsOf(study: Study): readonly Finding[] {
  return kept(found, study, () => attempted(study, (s) => arranged(s, weigh)));
}

type Weigh = (study: Study, taken: readonly Taken[]) => readonly Finding[];

function decided(study: Study, weighed: Weigh): Report {
  return attempted(study, (s) => report(s, weighed));
}

function attempted<T>(study: Study, make: (study: Study) => T): T {
  try {
    return make(study);
  } catch (error) {
    // A check can need more of the diagrams than the proof did; then the whole question is left undecided.
    if (!(error instanceof Undecided) || study.verified === undefined) throw error;
    return make(study.givenUp(error.message));
  }
}

function arranged(s: Study, weighed: Weigh): Finding[] {
  return arrange(
    weighed(
      s,
      REGISTER.map((check) => ({ check, findings: check.find(s) })),
    ),
  );
}

function report(s: Study, weighed: Weigh): Report {
  const { study: told, lines } = asUsual(s);
  const coils = coilFigures(told);
  const contacts = contactFigures(s);
  // Who asks for the findings alone and who asks for the report are answered by one weighing.
  const findings = weighed === weigh ? kept(found, s, () => arranged(s, weigh)) : arranged(s, weighed);
  const { plan } = s;
  return {
    format: 1,
    plan: {
      file: plan.file,
      title: plan.title,
      practice: plan.practice,
      practiceFrom: plan.practiceFrom,
      lengths: lengthUnit(plan),
    },
    verdict: verdictOf(findings),
    questions: QUESTIONS.map((_, i) => {
      const number = (i + 1) as QuestionNumber;
      return answer(number === 4 || number === 5 ? told : s, number, findings, coils, contacts);
    }),
    findings,
    logic: proofOf(s),
    coils,
    contacts,
    cautions: chooseCautions(cautionFacts(s, findings, 'none')),
    defaults: [
      ...new Set([
        ...plan.defaults,
        ...lines,
        ...coilDefaults(told),
        ...boxFillDefaults(s),
        ...unsaid(plan),
        ...everydayPatterns(plan),
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
