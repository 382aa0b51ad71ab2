/** One plan in many states, as the commands tell them: `table`, `read`, the page and the proof must say the same. */
import { judge } from '../../src/findings/judge.ts';
import { proofOf } from '../../src/findings/report-proof.ts';
import { relaysAt } from '../../src/logic/verify.ts';
import { isArming } from '../../src/machine/intended-state.ts';
import { readMeter } from '../../src/machine/read-meter.ts';
import { Walk } from '../../src/machine/walk.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { Study } from '../../src/study/study.ts';
import { cell } from '../../src/study/table-cells.ts';
import type { TableRow } from '../../src/study/table-model.ts';
import { everyStep, type TableState, tableSteps } from '../../src/study/table-states.ts';
import { WHOLE } from '../helpers/share.ts';

export interface Agreement {
  states: number;
  /** states in which AC meets DC or relays chatter, so that the volts say nothing */
  untold: number;
  /** states in which a relay is not where joins alone have it */
  otherThanJoined: number;
  /** every disagreement, in words */
  wrong: string[];
}

/** Most inputs of which every combination is looked at; of more, the table's own states. */
const MOST_INPUTS = WHOLE ? 7 : 5;
/** States of a plan in which `read` is asked as well, which tabulates every core. */
const READ = 8;

export function nothingYet(): Agreement {
  return { states: 0, untold: 0, otherThanJoined: 0, wrong: [] };
}

export function compareStates(plan: Plan, sum: Agreement, name = plan.title): Agreement {
  const study = Study.of(plan);
  const { nominal, verified } = study;
  if (!nominal || !verified) return sum;
  const all = study.circuit.inputs.length <= MOST_INPUTS && nominal.rests !== 'some';
  const table = study.truthTable({ all });
  const steps = all ? everyStep(study, nominal.verified) : tableSteps(study, nominal.verified);
  const walk = new Walk(study, isArming(verified));
  const say = (text: string) => sum.wrong.push(`${name}: ${text}`);
  const deviating = { true: false, false: false };
  table.rows.forEach((row, i) => {
    const state = steps[i]!;
    walkTo(walk, state);
    const view = walk.view();
    if (!view.told || !view.settled) {
      sum.untold++;
      return;
    }
    sum.states++;
    for (const r of view.relays) {
      const told = row.relays[r.part];
      if (told !== 'chatters' && told !== (r.in ? 'in' : 'out'))
        say(`${row.label}: table has ${r.part} ${told}, the page ${r.in ? 'in' : 'out'}`);
    }
    for (const l of view.loads) {
      const told = row.loads[l.part];
      if (told !== undefined && told !== 'chatters' && told !== (l.runs ? 'runs' : 'off'))
        say(`${row.label}: in the table ${l.part} ${told}, on the page ${l.runs}`);
    }
    if (state.steps.length === 1 && i < READ) compareReading(study, row, state, say);
    if (state.steps.length === 1) {
      const joined = relaysAt(verified, state.steps[0]!);
      if (view.relays.some((r, k) => r.in !== joined[k])) sum.otherThanJoined++;
    }
    for (const [target, want] of Object.entries(row.expected))
      if (cell(row, target) !== want) deviating[want === 'runs' || want === 'in' ? 'true' : 'false'] = true;
  });
  compareAnswers(study, deviating, say);
  return sum;
}

/** The machine of the page, powered up at rest, after the moves of a row. */
function walkTo(walk: Walk, { steps }: TableState): void {
  walk.moveTo([]);
  walk.repower();
  for (const moved of steps) walk.moveTo(moved);
}

function compareReading(
  study: Study,
  row: TableRow,
  { steps }: TableState,
  say: (text: string) => void,
): void {
  const read = readMeter(study, { moved: [...steps[0]!], dead: false }).state.relays;
  for (const [part, at] of Object.entries(row.relays))
    if (at !== 'chatters' && read[part] !== at)
      say(`${row.label}: table has ${part} ${at}, read ${read[part]}`);
}

/** A row against the intent refutes the proof, and the question that it is about. */
function compareAnswers(
  study: Study,
  deviating: Readonly<Record<'true' | 'false', boolean>>,
  say: (text: string) => void,
): void {
  const { holdsAtNominalVolts: holds } = proofOf(study);
  if ((deviating.true || deviating.false) && holds !== false)
    say(`a row is not as intended, and holds is ${holds}`);
  if (!deviating.true && !deviating.false && holds !== false) return;
  const { questions, verdict, findings } = judge(study);
  // Where figures are left out, what is seen with those taken may be otherwise with others.
  const isNo = (answer: string) =>
    answer === 'no' || (answer === 'cannot tell' && findings.some((f) => f.id === 'value-unsaid'));
  if (deviating.true && !isNo(questions[1]!.answer))
    say(`a load stays off, question 2: ${questions[1]!.answer}`);
  if (deviating.false && !isNo(questions[2]!.answer))
    say(`a load runs on, question 3: ${questions[2]!.answer}`);
  if (holds === false && verdict !== 'fail' && !findings.some((f) => f.id === 'value-unsaid'))
    say(`the proof fails, and the verdict is ${verdict}`);
}
