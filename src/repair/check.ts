/** The check with its repairs. */

import type { Edit } from '../edit/edits.ts';
import { planAfter } from '../edit/expected-plan.ts';
import { crossing } from '../findings/apart/mains-meets-low-voltage.ts';
import { crossingCore } from '../findings/apart/side-crossing.ts';
import type { FindingId } from '../findings/finding-ids.ts';
import { findingsOf, judge } from '../findings/judge.ts';
import { entryOf } from '../findings/register.ts';
import type { Finding, Remedy, Report } from '../findings/report-model.ts';
import { isSame } from '../findings/unsaid/settle.ts';
import { push } from '../plan/map-entries.ts';
import type { Plan } from '../plan/plan.ts';
import { partOfKey } from '../plan/terminal-key.ts';
import { Study } from '../study/study.ts';
import { GRAVE, isWiring } from './grave.ts';
import { mend } from './mend.ts';
import type { Repair } from './mended.ts';
import { isTried, remediesOf } from './remedies/remedies.ts';
import { darkText } from './repair-words.ts';

/** Terminals of a plan up to which a repair is sought as part of the check; beyond, `mend` is asked for by name. */
const MOST_TERMINALS = 3_000;
/** Terminals up to which it is sought as thoroughly as `mend` does. */
const FEW_TERMINALS = 250;

/**
 * The report of a plan, each grave finding of questions 1 to 3 with the first verified repair that does away with it: what
 * to do is that repair, here as in `mend`.
 * Where one change does away with all of them, the first finding names the parts that the change touches.
 */
export function check(study: Study): Report {
  return withWhatToDo(study, judge(study));
}

/** A report with what to do about each of its findings. */
export function withWhatToDo(study: Study, report: Report): Report {
  return withRemedies(study, withoutCrossing(study, withRepair(study, report)));
}

/**
 * What is gone once the core that puts mains on the loop is off asks for that and nothing else: a gate switch or bell wire
 * made for mains would only hide it.
 */
function withoutCrossing(study: Study, report: Report): Report {
  const crossing = report.findings.find((f) => f.id === 'mains-meets-low-voltage' && f.repair === null);
  const at = crossing && crossingCore(study);
  if (crossing === undefined || at === undefined) return report;
  const edits: Edit[] = [{ do: 'remove', run: at.run, core: study.plan.runs[at.run]!.cores.indexOf(at) }];
  const others = report.findings.filter((f) => f !== crossing && GRAVE.has(f.severity) && f.repair === null);
  const gone = goneWith(study.plan, [{ edits }], others);
  const findings = report.findings.map((f) =>
    gone.has(f) ? { ...f, fix: crossing.fix, remedies: NO_REMEDIES } : f,
  );
  return { ...report, findings };
}

/** Of a finding for which none is to be sought. */
const NO_REMEDIES: readonly Remedy[] = [];

/** What to do for a finding of questions 4 to 7 is what was tried; where nothing helped, it is told what is short. */
function withRemedies(study: Study, report: Report): Report {
  const open = report.findings.filter((f) => f.repair === null && f.remedies !== NO_REMEDIES && isTried(f));
  if (open.length === 0) return report;
  const found = remediesOf(study, open);
  const findings = report.findings.map((f) => {
    const remedies = found.get(f);
    return remedies === undefined ? f : { ...f, remedies, fix: whatToDo(f, remedies) };
  });
  return { ...report, findings };
}

/** What is missing of a plan is asked for first. */
function whatToDo({ severity, question, fix }: Finding, remedies: readonly Remedy[]): string {
  const text = remedies.map((r) => r.words).join('; or ');
  if (severity === 'doubt') return text === '' ? fix : `${fix} If that cannot be told, ${text}.`;
  if (text === '' && question < 4) return fix;
  return text === ''
    ? `${fix} No size that was tried mends it.`
    : `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;
}

function withRepair(study: Study, report: Report): Report {
  const { plan } = study;
  const terminals = [...plan.terminals.values()].reduce((sum, t) => sum + t.names.length, 0);
  const wrong = report.findings.filter(isWiring);
  if (terminals > MOST_TERMINALS) return report;
  if (wrong.length === 0) return terminals > FEW_TERMINALS ? report : withMovedEnd(study, report);
  const [first, ...others] = mend(study, { thorough: terminals <= FEW_TERMINALS, quick: true }).repairs;
  if (!first)
    return { ...report, findings: report.findings.map((f) => (wrong.includes(f) ? unproved(f) : f)) };
  const likely = [first, ...others.filter((r) => r.asLikely)];
  const fix = toDo(first, likely[1]);
  const parts = isOneChange(first) ? touched(plan, first.edits) : [];
  const renamed = new Map<string, string>();
  const repair = { words: first.words, edits: first.edits };
  const besides = report.findings.filter((f) => f.severity !== 'notice' && !wrong.includes(f));
  const gone = goneWith(plan, likely, besides);
  const cause = causeOf(wrong, parts);
  // What the mistake brings with it goes with it: what would do against it alone, such as another colour, might hide the mistake.
  const under = (f: Finding) =>
    (gone.has(f) || (isOneChange(first) && isEffectOf(f, cause))) &&
    (f.severity !== 'danger' || cause.severity === 'danger');
  const findings = report.findings.flatMap((f) => {
    if (under(f)) return [];
    if (gone.has(f)) return [{ ...f, fix, repair }];
    if (!wrong.includes(f)) return [f];
    const told = likely.some((r) => isSameChange(f, r)) ? crossedBy(plan, f, first) : symptomOf(f);
    renamed.set(f.message, told.message);
    const silent = f === wrong[0] && !f.parts.some((p) => parts.includes(p));
    const also = f === cause ? [...told.also, ...alsoOf(report.findings.filter(under))] : told.also;
    return [{ ...told, also, parts: silent ? [...told.parts, ...parts] : told.parts, fix, repair }];
  });
  for (const f of report.findings.filter(under))
    renamed.set(f.message, renamed.get(cause.message) ?? cause.message);
  const questions = report.questions.map((q) => ({ ...q, figure: renamed.get(q.figure) ?? q.figure }));
  return { ...report, findings, questions };
}

/** What a gate that is dead, or all of them, does besides. */
const EFFECTS: ReadonlySet<string> = new Set<FindingId>([
  'gate-stops-load',
  'stops-without-cause',
  'runs-without-cause',
]);

/** Of what one change puts right the finding that tells most of it: a dead gate before what it does to others. */
function causeOf(wrong: readonly Finding[], touched: readonly string[]): Finding {
  const [first] = wrong;
  const dead = wrong.filter(({ id }) => id === 'gate-dead' || id === 'loop-dead');
  if (first!.severity !== 'fault' || touched.length === 0 || dead.length === 0) return first!;
  // Of several the one that speaks most of where the change is.
  const near = ({ parts }: Finding) => parts.filter((p) => touched.includes(p)).length / parts.length;
  return dead.reduce((a, b) => (near(b) > near(a) ? b : a));
}

/** Another finding of the wiring that one change puts right together with what it comes from. */
function isEffectOf(f: Finding, cause: Finding): boolean {
  if (f === cause || !isWiring(f)) return false;
  if (f.question > 3) return cause.question <= 3;
  return (cause.id === 'gate-dead' || cause.id === 'loop-dead') && (f.id === cause.id || EFFECTS.has(f.id));
}

/** What is told under another finding: of several of one kind the first. */
function alsoOf(findings: readonly Finding[]): Finding['also'] {
  const all = findings.flatMap(({ id, message, also }) => [{ id, message }, ...also]);
  const kinds = new Map<string, typeof all>();
  for (const a of all) push(kinds, a.id, a);
  return [...kinds.values()].map(([first, ...more]) =>
    more.length === 0 ? first! : { ...first!, message: `${first!.message}, and ${more.length} more like it` },
  );
}

function toDo(first: Repair, other: Repair | undefined): string {
  const then = first.uncovers.length > 0 ? ` Then this shows: ${first.uncovers.join('; ')}.` : '';
  const dark = first.dark.length > 0 ? ` ${darkText(first.dark)}` : '';
  return first.words.join(' ') + (other ? ` Or, as likely: ${other.words.join(' ')}` : '') + then + dark;
}

/** A plan that does what is meant and fails by its figures: where one end on another terminal does away with it, that is to do. */
function withMovedEnd(study: Study, report: Report): Report {
  const failing = report.findings.filter((f) => GRAVE.has(f.severity));
  if (failing.length === 0) return report;
  const [first, ...others] = mend(study, { thorough: true, quick: true }).repairs;
  if (!first) return report;
  const likely = [first, ...others.filter((r) => r.asLikely)];
  const gone = goneWith(study.plan, likely, failing);
  const repair = { words: first.words, edits: first.edits };
  // Where one thing alone fails, the part may as well be the wrong one.
  const [only, ...more] = failing;
  const remedies = more.length === 0 && isTried(only!) ? (remediesOf(study, failing).get(only!) ?? []) : [];
  const other = remedies.map((r) => ` Or ${r.words}.`).join('');
  const fix = `${toDo(first, likely[1])}${other}`;
  return {
    ...report,
    findings: report.findings.map((f) => (gone.has(f) ? { ...f, fix, repair, remedies } : f)),
  };
}

/** Those of some findings that are there no more in any of the plans mended. */
function goneWith(
  plan: Plan,
  repairs: readonly Pick<Repair, 'edits'>[],
  others: readonly Finding[],
): ReadonlySet<Finding> {
  if (others.length === 0) return new Set();
  const left = repairs.flatMap(({ edits }) => {
    const after = planAfter(plan, edits);
    return after === undefined
      ? others
      : findingsOf(Study.of(after)).flatMap((f) => [f, ...f.also.map(({ id }) => ({ ...f, id }))]);
  });
  return new Set(others.filter((f) => !left.some((g) => isSame(f, g))));
}

/** A finding that blames a change which, tried in the plan, does not put it right, blames none. */
function unproved(f: Finding): Finding {
  if (f.cause === null) return f;
  const fix =
    'No change that was tried puts this right and harms nothing: compare the wiring with the drawing core by core.';
  return { ...symptomOf(f), fix };
}

/** Whether the change that a finding names, where it names one, is the one that the repair makes. */
function isSameChange({ cause }: Finding, { edits }: Repair): boolean {
  return (
    cause === null ||
    edits.every(
      (e) => e.do === 'swap' || (e.do === 'move' && cause.terminals.includes(e.to)) || e.do === 'say',
    )
  );
}

/** Of several cores on the way from the mains to the loop the one is named that the repair changes. */
function crossedBy(plan: Plan, f: Finding, { edits }: Repair): Finding {
  const [edit, ...more] = edits;
  if (f.id !== 'mains-meets-low-voltage' || more.length > 0) return f;
  if (edit?.do !== 'move' && edit?.do !== 'remove') return f;
  const core = plan.runs[edit.run]!.cores[edit.core]!;
  return { ...f, ...crossing(core), line: core.at.line, column: core.at.column };
}

/** A finding that blames another change than the likeliest is told as what happens, which is what was folded under it. */
function symptomOf(f: Finding): Finding {
  const [first, ...rest] = f.also;
  if (first === undefined) return { ...f, cause: null };
  const { severity, question } = entryOf(first.id);
  return { ...f, id: first.id, severity, question, message: first.message, also: rest, cause: null };
}

/** One end, one pair, one core; or all the ends on one tab. */
function isOneChange({ edits }: Repair): boolean {
  if (edits.length === 1) return true;
  const tabs = new Set(edits.map((e) => (e.do === 'move' ? e.to : '')));
  return edits.every((e) => e.do === 'move') && tabs.size === 1;
}

/** Parts at which the edits put on or take off an end. */
function touched(plan: Plan, edits: readonly Edit[]): string[] {
  const at = (e: { run: number; core: number }) => plan.runs[e.run]!.cores[e.core]!;
  const part = (terminal: string) => partOfKey(terminal);
  return [
    ...new Set(
      edits.flatMap((e) => {
        if (e.do === 'say') return [e.part];
        if (e.do === 'intend') return [part(e.input), e.load];
        if (e.do === 'add') return [part(e.from), part(e.to)];
        if (e.do === 'move') return [part(e.to), at(e)[e.end].part];
        if (e.do === 'remove') return [at(e).a.part, at(e).b.part];
        return [at(e.first)[e.first.end].part, at(e.second)[e.second.end].part];
      }),
    ),
  ];
}
