/** The verdict and the proof of the logic as plain sentences. */
import type { Also, Counterexample, Finding, LogicProof, Report } from './report-model.ts';
import { SEVERITIES, type Severity } from './report-words.ts';

const PLURAL: Readonly<Record<Severity, string>> = {
  danger: 'dangers',
  warning: 'warnings',
  fault: 'faults',
  caution: 'cautions',
  doubt: 'doubts',
  notice: 'notices',
};

/** `1 danger, 2 faults and 1 notice`; empty when there is nothing to count. */
function tally(findings: readonly Finding[]): string {
  const counts = SEVERITIES.flatMap((severity) => {
    const n = findings.filter((f) => f.severity === severity).length;
    return n === 0 ? [] : [`${n} ${n === 1 ? severity : PLURAL[severity]}`];
  });
  const last = counts.pop();
  if (last === undefined) return '';
  return counts.length === 0 ? last : `${counts.join(', ')} and ${last}`;
}

/** The verdict in one plain sentence or two. */
export function verdictLine(report: Report): string {
  const found = tally(report.findings);
  if (report.verdict === 'fail') {
    return found === ''
      ? 'Do not build this plan as it stands.'
      : `Do not build this plan as it stands: ${found}.`;
  }
  if (report.verdict === 'cannot-tell') {
    return `This check cannot tell: the plan leaves something out that it needs.${found === '' ? '' : ` It found ${found}.`}`;
  }
  return `Nothing in this check failed.${found === '' ? '' : ` It found ${found}.`}`;
}

/** From where it is known which tables apply. */
const PRACTICE_FROM = {
  plan: '',
  patterns: ', by the patterns of its plugs and outlets',
  taken: ', which neither the plan nor its plugs tell',
} as const;

/** Whose tables a plan is judged by, and how that is known where the plan does not say it. */
export function tablesOf({
  practice,
  practiceFrom,
}: Pick<Report['plan'], 'practice' | 'practiceFrom'>): string {
  return `${practice === 'nec' ? 'North American tables' : 'IEC tables'}${PRACTICE_FROM[practiceFrom]}`;
}

/** Over what the plan leaves out. */
export const TAKEN = 'Taken where the plan does not say; figures count at both ends of what is usual';

function number(n: number | string): string {
  return typeof n === 'string' ? n : String(n).replace(/\B(?=(\d{3})+$)/g, ',');
}

function steps(example: Counterexample): string {
  const told = example.steps.map((step, i) => {
    const moved = Object.entries(step.moved).map(([input, position]) => `${input} ${position}`);
    if (moved.length > 0) return moved.join(' and ');
    return i === 0 ? 'everything' : 'everything back';
  });
  if (told.length === 0 || (told.length === 1 && told[0] === 'everything')) return 'with everything at rest';
  return `from rest, ${told.map((t) => (t.startsWith('everything') ? `${t} at rest` : t)).join(', then ')}`;
}

/** What was proved about the starts and stops, in a sentence or two. */
export function logicSentence(logic: LogicProof): string {
  const inputs = logic.inputs === 1 ? '1 input' : `${logic.inputs} inputs`;
  const one = logic.combinations === 1;
  const all = one ? 'the one position' : `all ${number(logic.combinations)} combinations`;
  if (logic.holdsAtNominalVolts === true) {
    return `Proved for ${all} of ${inputs}, none left out: everything runs when the plan says so, and only then. ${restWords(logic)}`;
  }
  if (logic.holdsAtNominalVolts === null)
    return `Starting and stopping could not be decided for ${all} of ${inputs}.`;
  const some = `Not every one of the ${number(logic.combinations)} combinations of ${inputs} does what the plan says.`;
  const example = logic.counterexample;
  if (example === null) return some;
  const joined = logic.holds === true ? ' By what is joined it would; at nominal volts it does not.' : '';
  const found = example.found ? 'runs' : 'does not run';
  const expected = example.expected ? 'but ought to' : 'but ought not to';
  return `${some} Shortest case, ${steps(example)}: ${example.target} ${found}, ${expected}.${joined}`;
}

/** What the proof rests on, in a sentence. */
function restWords({ restsOn }: LogicProof): string {
  switch (restsOn) {
    case 'volts':
      return 'It rests on what is joined, and on the volts of the coils, solved at nominal supply in every state.';
    case 'some volts':
      return 'It rests on what is joined; the volts of the coils were solved in the states of the table alone.';
    case 'no volts':
      return 'It rests on what is joined alone, as if every coil that is fed had the volts it needs.';
    default:
      return 'It rests on what is joined; at nominal volts no coil that is fed gets too few.';
  }
}

/** What follows from a finding, with its id unless it is the same fault of another part. */
export function alsoLine(finding: Pick<Finding, 'id'>, also: Also): string {
  return also.id === finding.id ? also.message : `${also.message} [${also.id}]`;
}
