/** What came and what went between two checks of a plan. */
import { behindVerdict, type Finding, type Report, verdictOf } from './report-model.ts';

export interface Compared {
  readonly came: readonly Finding[];
  readonly went: readonly Finding[];
  /** found both times, told otherwise now */
  readonly changed: readonly Finding[];
}

type Findings = Pick<Report, 'findings'>;

/**
 * The findings of `after` against those of `before`. A finding is the same where id, severity and parts are; the part named
 * `leave` does not count, so that a list of parts that it joined or left is no other finding.
 */
export function compare(before: Findings, after: Findings, leave?: string): Compared {
  const key = ({ id, severity, parts }: Finding) =>
    JSON.stringify([id, severity, parts.filter((part) => part !== leave).sort()]);
  const old = new Map<string, Finding[]>();
  for (const f of before.findings) old.set(key(f), [...(old.get(key(f)) ?? []), f]);
  const came: Finding[] = [];
  const changed: Finding[] = [];
  for (const f of after.findings) {
    const same = old.get(key(f))?.shift();
    if (same === undefined) came.push(f);
    else if (same.message !== f.message) changed.push(f);
  }
  return { came, went: [...old.values()].flat(), changed };
}

const BADNESS = { pass: 0, 'cannot-tell': 1, fail: 2 } as const;

/** Whether a change makes a plan worse: by its verdict, or by a finding that alone makes a plan fail. */
export function isWorse(before: Report, after: Report, { came }: Compared): boolean {
  return (
    BADNESS[after.verdict] > BADNESS[before.verdict] ||
    behindVerdict({ verdict: verdictOf(came), findings: came }).some((f) => f.severity !== 'doubt')
  );
}
