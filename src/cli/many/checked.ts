/**
 * `check` over many plans: this folder knows in what order they are told, how many are checked at once and how that is
 * written, and must not know how anything is found or worded.
 *
 * Here: one plan checked, as what is to be written of it.
 */
import type { Unreadable } from '../../findings/report-model.ts';
import type { Verdict } from '../../findings/report-words.ts';
import type { SarifOfPlan } from '../../report/sarif/plan.ts';
import type { Artifact } from '../../report/sarif/words.ts';
import { printable } from '../../text/escape.ts';
import type { CheckStages } from '../check-stages.ts';
import { loadPlanFile, studyOf } from '../input.ts';
import { Output, type Session } from '../io.ts';
import { jsonText, type LookOptions, textOf } from '../print.ts';
import { ownMistake, STATUS, statusOf } from '../status.ts';

export type CheckForm = 'text' | 'quiet' | 'json' | 'sarif';

/** What is to be told of each plan. */
export interface Asked extends LookOptions {
  readonly form: CheckForm;
  readonly all?: boolean;
}

/** A plan as it was named, and where it stands in a SARIF run. */
export interface Named {
  readonly file: string;
  readonly artifact: Artifact;
}

/** What became of a plan. */
export type Fate = Verdict | 'unreadable' | 'mistake';

/** One plan as it is written; plain data, which goes from a worker to the command. */
export interface Checked {
  readonly fate: Fate;
  readonly out: string;
  readonly err: string;
  readonly sarif?: SarifOfPlan;
}

/** The exit status of a plan. */
export function statusOfFate(fate: Fate): number {
  if (fate === 'unreadable') return STATUS.unreadable;
  return fate === 'mistake' ? STATUS.internal : statusOf(fate);
}

/** An answer that holds no report. */
async function withoutReport(
  why: Unreadable,
  fate: Fate,
  err: string,
  { artifact }: Named,
  { form }: Asked,
): Promise<Checked> {
  if (form !== 'sarif') return { fate, out: form === 'json' ? jsonText(why) : '', err };
  const { sarifOfUnreadable } = await import('../late/sarif.ts');
  return { fate, out: '', err, sarif: sarifOfUnreadable(why, artifact) };
}

/** Reads and checks one plan. A plan that cannot be read is an answer; a mistake of pullin's own is thrown. */
export async function checked(named: Named, asked: Asked, session: Session<CheckStages>): Promise<Checked> {
  const { file, artifact } = named;
  let err = '';
  let why: Unreadable | undefined;
  const apart: Session<CheckStages> = {
    ...session,
    err: new Output(() => ({ write: (text) => (err += text) }), true),
    exit: () => undefined,
  };
  const read = await loadPlanFile(file, apart, undefined, (unreadable) => (why = unreadable));
  if (read === undefined) return withoutReport(why!, 'unreadable', err, named, asked);
  const report = await session.stages.check(await studyOf(read.plan));
  const fate = report.verdict;
  if (asked.form === 'json') return { fate, out: jsonText(report), err };
  if (asked.form === 'sarif') {
    const { sarifOf } = await import('../late/sarif.ts');
    return { fate, out: '', err, sarif: sarifOf(report, read.plan, read.bytes, artifact) };
  }
  const { checkDocument, quietDocument } = await import('../late/check.ts');
  const out =
    asked.form === 'quiet'
      ? await textOf(quietDocument(report), {}, session)
      : await textOf(checkDocument(report, asked), asked, session);
  return { fate, out, err };
}

/** What is told of a plan at which pullin itself failed: of several the others are checked all the same. */
export async function mistaken(
  named: Named,
  error: unknown,
  asked: Asked,
  env: Session['io']['env'],
): Promise<Checked> {
  const { file } = named;
  const what = error instanceof Error ? error.message : String(error);
  const message = `pullin stopped because of a mistake of its own, not of the plan's: ${printable(what)}`;
  const why: Unreadable = {
    format: 1,
    file,
    errors: [{ line: null, column: null, message }],
    ownMistake: true,
  };
  const name = printable(file === '-' ? 'standard input' : file);
  return withoutReport(why, 'mistake', `${name}: ${ownMistake(error, env)}`, named, asked);
}

/** As `checked`, but a mistake of pullin's own is an answer too. */
export async function checkedAnyhow(
  named: Named,
  asked: Asked,
  session: Session<CheckStages>,
): Promise<Checked> {
  try {
    return await checked(named, asked, session);
  } catch (error) {
    return mistaken(named, error, asked, session.io.env);
  }
}
