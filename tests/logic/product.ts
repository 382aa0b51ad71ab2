/** Short ways into the product for tests: read, verify, step through moves, and the findings that count. */
import { judge } from '../../src/findings/judge.ts';
import type { Finding, Report } from '../../src/findings/report-model.ts';
import { inputVariable } from '../../src/logic/conduction.ts';
import type { Mode } from '../../src/logic/memory.ts';
import { type Moved, running, type Verified } from '../../src/logic/verify.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { readPlan } from '../../src/plan/read.ts';
import { Study } from '../../src/study/study.ts';

/** Inputs by name, each with the word for its position; what is not named stands at rest. */
export type Words = Readonly<Record<string, string>>;

export function planOf(text: string): Plan {
  const read = readPlan(text, 'test.yaml');
  if (read.ok) return read.plan;
  const errors = read.errors.map((e) => `${e.position.line}:${e.position.column} ${e.message}`);
  throw new Error(`not a plan:\n${errors.join('\n')}\n${text}`);
}

export const studyOf = (text: string): Study => Study.of(planOf(text));
export const reportOf = (text: string): Report => judge(Study.of(planOf(text)));

export function verifiedOf(text: string): Verified {
  const s = studyOf(text);
  if (!s.verified) throw new Error(`undecided: ${s.undecided}\n${text}`);
  return s.verified;
}

const RESTING = new Set(['shut', 'off', 'released', 'normal']);

/** Words to the indices of the inputs that stand away from rest. */
export function movedOf(v: Verified, words: Words): Moved {
  return Object.entries(words).flatMap(([part, word]) => {
    const own = v.circuit.inputs.filter((i) => i.part === part);
    if (own.length === 0) throw new Error(`no input ${part}`);
    if (own[0]!.kind !== 'selector') return RESTING.has(word) ? [] : [own[0]!.index];
    return own.filter((i) => i.position === word).map((i) => i.index);
  });
}

/** The position that relays settle to, moved to this input state from another position; undefined: never at rest. */
export function settled(v: Verified, from: Mode, moved: Moved): Mode | undefined {
  const set = new Set(moved.map((i) => inputVariable(v.circuit, i)));
  for (const [mode, states] of v.settler.settle(from).to)
    if (v.model.bdd.evaluate(states, (x) => set.has(x))) return mode;
  return undefined;
}

/** Whether a relay is in, or a load or outlet fed, in a settled position. */
export function isOn(v: Verified, name: string, mode: Mode, moved: Moved): boolean {
  const set = new Set(moved.map((i) => inputVariable(v.circuit, i)));
  return v.model.bdd.evaluate(v.settler.at(running(v.model, name), mode), (x) => set.has(x));
}

/** What is on after each step from rest; a step names only the inputs that move. */
export function walk(
  v: Verified,
  names: readonly string[],
  steps: readonly Words[],
): Record<string, boolean>[] {
  let mode = v.restMode;
  let at: Words = {};
  return steps.map((step) => {
    at = { ...at, ...step };
    const moved = movedOf(v, at);
    const next = settled(v, mode, moved);
    if (next === undefined) throw new Error(`never at rest with ${JSON.stringify(at)}`);
    mode = next;
    return Object.fromEntries(names.map((n) => [n, isOn(v, n, mode, moved)]));
  });
}

/** What no enumeration of states sees. */
const OF_COLOURS = new Set(['colour-of-earth', 'colour-of-neutral']);

/** Dangers, warnings and faults under questions 1 to 5, but for those of colours. */
export function hardFindings(report: Report): Finding[] {
  return report.findings.filter(
    (f) => f.question <= 5 && !OF_COLOURS.has(f.id) && ['danger', 'warning', 'fault'].includes(f.severity),
  );
}
