/** Exit statuses, and the way a command says that what it was given will not do. */
import pkg from '../../package.json' with { type: 'json' };
import type { Verdict } from '../findings/report-words.ts';
import { printable, printableLines } from '../text/escape.ts';

/** The last two are what a shell gives a command that such a signal ends: 128 and its number. */
export const STATUS = {
  pass: 0,
  fail: 1,
  unreadable: 2,
  cannotTell: 3,
  internal: 70,
  interrupted: 130,
  ended: 143,
} as const;

const BY_VERDICT: Readonly<Record<Verdict, number>> = {
  pass: STATUS.pass,
  fail: STATUS.fail,
  'cannot-tell': STATUS.cannotTell,
};

/** The exit status a verdict stands for. */
export function statusOf(verdict: Verdict): number {
  return BY_VERDICT[verdict];
}

type StatusName = keyof typeof STATUS;

/** What each means, whatever the command; a command says it in words of its own. */
export const MEANINGS: Readonly<Record<StatusName, string>> = {
  pass: 'done; of a check, nothing failed',
  fail: 'something of the plan failed, or nothing was made because of it',
  unreadable: 'the plan or the command line cannot be read, or a file cannot be written',
  cannotTell: 'cannot tell: the plan leaves too much unsaid, or its circuit is too involved',
  internal: 'a mistake in pullin',
  interrupted: 'cut short by Ctrl-C',
  ended: 'cut short by a signal to end',
};

/** What a command can end with besides a mistake of its own, which any can. */
export type Statuses = Readonly<Partial<Record<Exclude<StatusName, 'internal'>, string>>> & {
  readonly unreadable: string;
};

/** Number and words of each status a command can end with, by number. */
export function statusesOf(statuses: Statuses): (readonly [number, string])[] {
  const names = Object.keys(STATUS) as StatusName[];
  const told: Partial<Record<StatusName, string>> = { ...statuses, internal: MEANINGS.internal };
  return names.flatMap((name) => {
    const words = told[name];
    return words === undefined ? [] : [[STATUS[name], words] as const];
  });
}

/** `0 listed; 2 the plan cannot be read; 70 a mistake in pullin` */
export function statusList(statuses: Statuses): string {
  return statusesOf(statuses)
    .map(([number, words]) => `${number} ${words}`)
    .join('; ');
}

/** Least bad first. */
const ORDER: readonly number[] = [
  STATUS.pass,
  STATUS.cannotTell,
  STATUS.fail,
  STATUS.unreadable,
  STATUS.internal,
  STATUS.interrupted,
  STATUS.ended,
];

/** The worse of two exit statuses: one of a run that was cut short, then 70, 2, 1, 3, 0. */
export function worse(a: number, b: number): number {
  return ORDER.indexOf(b) > ORDER.indexOf(a) ? b : a;
}

/** Why a command cannot do what it was asked; exit status 2 unless another is given. */
export class Problem extends Error {
  readonly status: number;

  constructor(message: string, status: number = STATUS.unreadable) {
    super(message);
    this.status = status;
  }
}

/** What is told of a mistake of pullin's own; the trace on request alone. */
export function ownMistake(error: unknown, env: Readonly<Record<string, string | undefined>>): string {
  const what = error instanceof Error ? error.message : String(error);
  const trace =
    env.PULLIN_DEBUG === '1' && error instanceof Error ? `${printableLines(error.stack ?? '')}\n` : '';
  return (
    `pullin stopped because of a mistake of its own, not of your plan's: ${printable(what)}. Please report it to ` +
    'whoever you have pullin from, with the plan, the command as you typed it, and the versions: ' +
    `pullin ${pkg.version}, Node ${process.versions.node}. With PULLIN_DEBUG=1 set it also prints where it stopped.\n${trace}`
  );
}
