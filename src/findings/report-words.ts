/** The words of a report that other programs may count on. */

/** The seven questions in the order a report answers them. Each is put so that `yes` is the good answer. */
export const QUESTIONS = [
  'Is mains kept apart from the low-voltage side?',
  'Does every gate start its load?',
  'Does the load stop when all gates are shut?',
  'Will the coil pull in, and let go?',
  'Will the supply, the switches and the wire carry the loop?',
  'Will the contacts survive the motor?',
  'Will the mains side carry the motor?',
] as const;

/** Worst first; signal words of ISO 3864-2 and ANSI Z535, with `fault` and `doubt` for a plan that harms nobody. */
export const SEVERITIES = ['danger', 'warning', 'fault', 'caution', 'doubt', 'notice'] as const;

/** Signal words of a caution, worst first (ISO 3864-2, ANSI Z535). */
export const LEVELS = ['danger', 'warning', 'caution', 'notice'] as const;
export const ANSWERS = ['yes', 'no', 'cannot tell', 'not applicable'] as const;
export const VERDICTS = ['pass', 'fail', 'cannot-tell'] as const;

/** How bad a finding is, worst first. */
export type Severity = (typeof SEVERITIES)[number];

/** Signal word of a caution, worst first. */
export type Level = (typeof LEVELS)[number];

/** Answer to one of the seven questions. */
export type Answer = (typeof ANSWERS)[number];

/** What a check comes to; `cannot-tell` is no pass. */
export type Verdict = (typeof VERDICTS)[number];

/** Which of the seven questions. */
export type QuestionNumber = 1 | 2 | 3 | 4 | 5 | 6 | 7;

/** The figure of an answer that only the counterexample of the proof explains. */
export const SHORTEST_CASE = 'see the shortest case below';
