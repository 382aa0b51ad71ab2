/** Exit statuses, and the way a command says that what it was given will not do. */
import type { Verdict } from '../findings/report-words.ts';

export const STATUS = { pass: 0, fail: 1, unreadable: 2, cannotTell: 3, internal: 70 } as const;

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
];

/** The worse of two exit statuses: 70, then 2, 1, 3, 0. */
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
