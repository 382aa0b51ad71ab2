/** The seven questions answered, each with the one figure or fact that decides it. */

import { FALSE } from '../logic/bdd.ts';
import type { Verified } from '../logic/verify.ts';
import { deviceAhead, judgeCircuit } from '../ratings/circuit.ts';
import type { Study } from '../study/study.ts';
import { rounded } from '../text/numbers.ts';
import { bySpare } from './coil/by-spare.ts';
import { leastToSpare } from './contacts/contact-figures.ts';
import { draws } from './loop/supply-draws.ts';
import { fedPlugs, type Load, plugsOf } from './mains/plug-loads.ts';
import { startsInTurn } from './mains/starts-in-turn.ts';
import { entryOf } from './register.ts';
import type { CoilFigures, Finding, Question, Report } from './report-model.ts';
import { QUESTIONS, type QuestionNumber, type Severity, SHORTEST_CASE } from './report-words.ts';

/** Severities that make a plan fail. */
const GRAVE: ReadonlySet<Severity> = new Set(['danger', 'warning', 'fault']);

/** Whether what was folded under a finding says of one of these questions that the plan fails it. */
function foldsFailureOf(finding: Finding, ...questions: readonly QuestionNumber[]): boolean {
  return finding.also.some(({ id }) => {
    const entry = entryOf(id);
    return questions.includes(entry.question) && GRAVE.has(entry.severity);
  });
}

export function answer(
  s: Study,
  number: QuestionNumber,
  findings: readonly Finding[],
  coils: Report['coils'],
  contacts: Report['contacts'],
): Question {
  const own = findings.filter((f) => f.question === number);
  const bad = own.find((f) => GRAVE.has(f.severity));
  const doubt =
    own.find((f) => f.severity === 'doubt') ?? (number === 3 ? findings.find(isOfBoth) : undefined);
  const question = QUESTIONS[number - 1]!;
  if (bad) return { number, question, answer: 'no', figure: bad.message };
  if (doubt) return { number, question, answer: 'cannot tell', figure: doubt.message };
  if ((number === 2 || number === 3) && refuted(s, number)) {
    const cause = findings.find((f) => foldsFailureOf(f, 2, 3)) ?? findings.find(isOfVolts);
    // Volts that turn on a figure left out leave it open whatever else is wrong; what is joined is then as it should be.
    const fails = findings.some((f) => GRAVE.has(f.severity));
    const byVolts = !failsBy(s.verified, number);
    const open = findings.find((f) => f.id === 'value-unsaid' && (!fails || (byVolts && f.question === 4)));
    if (cause === undefined && open !== undefined)
      return { number, question, answer: 'cannot tell', figure: open.message };
    return { number, question, answer: 'no', figure: cause?.message ?? SHORTEST_CASE };
  }
  // A dead loop leaves the later questions open only where it hides them; a switch on the wrong tab answers 2 and 3.
  const moved = findings.find((f) => f.id === 'gate-on-wrong-tab');
  if (number === 3 && moved && foldsFailureOf(moved, 3))
    return { number, question, answer: 'no', figure: moved.message };
  if (!s.verified && (number === 4 || number === 5) && s.circuit.relays.length > 0)
    return { number, question, answer: 'cannot tell', figure: 'which states feed the coil was not decided' };
  const unknown = number === 4 ? findings.find((f) => f.id === 'coil-current-unknown') : undefined;
  if (unknown) return { number, question, answer: 'cannot tell', figure: unknown.message };
  if (number === 3 && !s.verified && s.circuit.inputs.length > 0)
    return { number, question, answer: 'cannot tell', figure: 'what runs in which position was not decided' };
  const figure = goodFigure(s, number, coils, contacts);
  return figure === undefined
    ? { number, question, answer: 'not applicable', figure: nothing(number) }
    : { number, question, answer: 'yes', figure };
}

/** A doubt of question 2 that leaves question 3 open as well. */
function isOfBoth({ id, question }: Finding): boolean {
  return question === 2 && (id === 'value-unsaid' || id === 'nothing-wired');
}

/** Whether the load does otherwise at nominal volts than its wiring says, by this finding or what follows from it. */
function isOfVolts({ id, also }: Finding): boolean {
  return [id, ...also.map((a) => a.id)].includes('not-as-joined');
}

/** Whether the proof fails one of these questions, by what is joined or at nominal volts. */
function refuted({ verified, nominal }: Study, number: 2 | 3): boolean {
  return failsBy(verified, number) || failsBy(nominal?.verified, number);
}

function failsBy(v: Verified | undefined, number: 2 | 3): boolean {
  if (v === undefined) return false;
  return v.chatter !== FALSE || v.deviations.some((d) => (number === 2 ? d.expected : !d.expected));
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
      return s.nominal
        ? `proved for ${proofWords(s)}${number === 3 && s.plan.lampIntents ? ', lamps too' : ''}`
        : undefined;
    case 4: {
      const worst = bySpare(coils)[0];
      return worst
        ? `${worst.relay} needs ${worst.pullIn} V, gets at least ${worst.volts.min} V${fedFrom(worst)}`
        : undefined;
    }
    case 5:
      return circuit.sources.some((x) => !x.mains) ? loopFigure(s) : undefined;
    case 6:
      return contacts.length > 0 ? leastToSpare(s) : undefined;
    default:
      return circuitFigure(s);
  }
}

/** The circuit with the least to spare, with what runs on it together. */
function circuitFigure(s: Study): string | undefined {
  const { practice } = s.plan;
  const circuits = fedPlugs(s).map((fed) => {
    const { needed: amps, neededBy } = judgeCircuit({ ...fed, practice });
    return { fed, amps, neededBy };
  });
  const share = ({ fed, amps }: (typeof circuits)[number]) =>
    (amps ?? 0) / (deviceAhead(fed.plug) ?? Infinity);
  const worst = circuits.reduce<(typeof circuits)[number] | undefined>(
    (a, b) => (a === undefined || share(b) > share(a) ? b : a),
    undefined,
  );
  const plug = worst?.fed.plug ?? plugsOf(s.plan)[0];
  if (plug === undefined) return undefined;
  const running =
    worst?.amps === undefined
      ? 'the load'
      : `${rounded(worst.amps)} A running${notByPlates(worst.fed.loads, worst.amps, worst.neededBy)}`;
  return `${running} on a circuit of ${deviceAhead(plug) ?? '?'} A${worst ? turnWords(s, worst.fed.loads) : ''}`;
}

/** Where amperes that are not those of the plates come from: the standard sizes the circuit of a wired-in motor by a table. */
function notByPlates(loads: readonly Load[], amps: number, by: string | undefined): string {
  const plates = loads.map((l) => l.amps);
  if (by === undefined || !plates.every((a) => a !== undefined)) return '';
  const sum = plates.reduce((all, a) => all + a, 0);
  return Math.abs(amps - sum) <= 0.01 * sum ? '' : ` by ${by} (plate: ${rounded(sum)} A)`;
}

/** Motors that timers hold apart: what their starts come to, with and without. */
function turnWords(s: Study, loads: readonly Load[]): string {
  const motors = loads.filter((l) => l.kind === 'motor');
  const { starts, most, together } = startsInTurn(s, motors);
  if (starts.length < 2 || most === undefined || together === undefined) return '';
  return `; starts in turn take ${rounded(most.amps)} A at most, together ${rounded(together.amps)} A`;
}

/** By which gate a coil gets its volts, where that matters. */
function fedFrom({ gate, atRest }: CoilFigures): string {
  if (atRest === true) return ' with every gate shut';
  return gate === null ? '' : ` (${gate})`;
}

/** What the supply gives and what is drawn at most; the length of the loop stands with the volts at the coil. */
function loopFigure(s: Study): string {
  const [draw] = draws(s);
  return draw
    ? `${draw.supply} gives ${draw.limit}, at most ${draw.drawn} is drawn`
    : 'switches and wire carry it';
}

function proofWords(s: Study): string {
  const n = s.nominal?.verified?.combinations ?? 1n;
  if (n <= 1_000_000n) return `all ${n} combinations of ${s.circuit.inputs.length} inputs`;
  const bits = s.circuit.inputs.length;
  return n === 1n << BigInt(bits) ? `all 2^${bits} combinations` : `all ${n} combinations`;
}
