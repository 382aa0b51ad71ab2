/** Tries plans one after the other in a thread of its own, which can be ended when one of them has no end. */
import { parentPort, workerData } from 'node:worker_threads';
import type { Call } from './commands.ts';
import { Coverage } from './coverage.ts';
import { judgedFinding } from './judged.ts';
import { type Finding, tryPlan } from './trial.ts';

export interface Task {
  readonly text: string;
  readonly calls: readonly Call[];
  /** a right plan with so many mistakes for the oracles, in place of a text */
  readonly judged?: { readonly file: string; readonly seed: number };
}

export type Answer =
  | { readonly begun: Call }
  | {
      readonly findings: readonly Finding[];
      readonly readable: boolean;
      readonly news: number;
      readonly functions: number;
    };

const port = parentPort!;
const { cwd, guided } = workerData as { cwd: string; guided: boolean };
const coverage = guided ? new Coverage() : undefined;
const rejected: Finding[] = [];
process.on('unhandledRejection', (error) => {
  rejected.push({
    kind: 'rejection',
    where: String(error).slice(0, 80),
    call: [],
    told: String((error as Error)?.stack ?? error),
  });
});

const stackOf = (error: unknown) => String((error as Error)?.stack ?? error);

async function tried({ text, calls, judged }: Task, begun: (call: Call) => void) {
  if (judged) return { findings: judgedFinding(judged.file, judged.seed), readable: true };
  return tryPlan(text, calls, cwd, { before: begun });
}

port.on('message', async ({ text, calls, judged }: Task) => {
  const say = (answer: Answer) => port.postMessage(answer);
  const begun = (call: Call) => say({ begun: call });
  const done = await tried({ text, calls, ...(judged && { judged }) }, begun).catch((error: unknown) => ({
    findings: [{ kind: 'throws', where: `${error}`.slice(0, 80), call: [], told: stackOf(error) }],
    readable: false,
  }));
  // What the library does aside is told on the next turn.
  await new Promise((next) => setImmediate(next));
  say({
    ...done,
    findings: [...done.findings, ...rejected.splice(0)],
    news: coverage?.news() ?? 0,
    functions: coverage?.functions ?? 0,
  });
});
port.postMessage('ready');
