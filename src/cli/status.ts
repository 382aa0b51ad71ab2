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
