/** What SARIF tells of one plan: its findings as results, or why there are none as notifications. */
import { applyEdits } from '../../edit/apply-edits.ts';
import { lineReplacements } from '../../edit/line-replacements.ts';
import { tokenEnds } from '../../edit/token-ends.ts';
import type { Caution, Finding, FindingRepair, Report, Unreadable } from '../../findings/report-model.ts';
import type { Position } from '../../plan/device-figures.ts';
import type { Plan } from '../../plan/plan.ts';
import { terminalKey } from '../../plan/terminal-key.ts';
import { descriptorOf, type NotificationId, ruleIndex } from './tool.ts';
import { type Artifact, artifactLocation, levelOf, message } from './words.ts';

/** Places told beside that of the finding; all its parts and terminals stand in its properties. */
const MOST_PLACES = 20;
/** Errors of one unreadable plan that are told with their lines. */
const MOST_ERRORS = 100;

/** Plain data, of which the run is put together. */
export interface SarifOfPlan {
  readonly results: readonly object[];
  readonly notifications: readonly object[];
  readonly cautions: readonly Caution[];
}

/** A plan with the text of its file. */
export interface SarifSource {
  readonly plan: Plan;
  readonly text: string;
  readonly artifact: Artifact;
  /** a short name of a long text, the same in every run */
  readonly digest: (text: string) => string;
}

const MARK = /^\ufeff/;

/** Results (3.27), one a finding, in the order of the report. */
export function sarifOfReport({ findings, cautions }: Report, source: SarifSource): SarifOfPlan {
  const { plan, text, artifact, digest } = source;
  const places = findings.map((finding) => placesOf(finding, plan));
  const end = tokenEnds(
    text.replace(MARK, ''),
    places.flat().map(([at]) => at),
  );
  const location = (at: Position) => ({
    artifactLocation: artifactLocation(artifact),
    // The columns of a line count from one and the end is not in it (3.30.6, 3.30.8).
    region: { startLine: at.line, startColumn: at.column, endColumn: end(at) },
  });
  const fixes = new Map<string, object[]>();
  const seen = new Map<string, number>();
  const results = findings.map((finding, index) => {
    const { id, severity, question, parts, terminals, basis, also } = finding;
    const [[first], ...others] = places[index]!;
    const name = JSON.stringify([id, parts, terminals]);
    const count = (seen.get(name) ?? 0) + 1;
    seen.set(name, count);
    return {
      ruleId: id,
      ruleIndex: ruleIndex(id),
      level: levelOf(severity),
      message: message(toldOf(finding)),
      locations: [{ physicalLocation: location(first) }],
      relatedLocations: others.map(([at, what], number) => ({
        id: number + 1,
        physicalLocation: location(at),
        message: message(what),
      })),
      // Of what is meant, not of where it stands (3.27.17), so that lines put in above change nothing.
      partialFingerprints: { 'finding/v1': digest(`${name}${count}`) },
      ...fixesOf(finding.repair, source, fixes),
      properties: { severity, question, parts, terminals, basis, also },
    };
  });
  return { results, notifications: [], cautions };
}

const sentence = (text: string) => (/[.!?:]$/.test(text) ? text : `${text}.`);

const toldOf = ({ message: what, why, fix }: Finding) =>
  [what, why, fix === '' ? '' : `To do: ${fix}`]
    .filter((text) => text !== '')
    .map(sentence)
    .join(' ');

/** The place of the finding, then where else its terminals and parts stand, each with a name. */
function placesOf(finding: Finding, plan: Plan): [[Position, string], ...[Position, string][]] {
  const { line, column, parts, terminals } = finding;
  const wanted = new Set(terminals);
  const cores = plan.runs.flatMap(({ cores }) =>
    cores.flatMap(({ a, b }) =>
      [a, b].flatMap((end): [Position, string][] => {
        const key = terminalKey(end.part, end.terminal);
        return wanted.has(key) ? [[end.at, key]] : [];
      }),
    ),
  );
  const named = parts.flatMap((name): [Position, string][] => {
    const at = plan.parts.get(name)?.at;
    return at === undefined ? [] : [[at, name]];
  });
  const first: [Position, string] = [{ line, column }, parts[0] ?? ''];
  const seen = new Set([`${line}:${column}`]);
  const others = [...cores, ...named].filter(([at]) => {
    const key = `${at.line}:${at.column}`;
    return !seen.has(key) && seen.add(key);
  });
  return [first, ...others.slice(0, MOST_PLACES)];
}

/** A repair that was tried and passed, as `mend --write` writes it (3.55); none where the file cannot take it. */
function fixesOf(repair: FindingRepair | null, source: SarifSource, made: Map<string, object[]>) {
  if (repair === null) return {};
  const key = JSON.stringify(repair.edits);
  const fixes = made.get(key) ?? fixesFor(repair, source);
  made.set(key, fixes);
  return fixes.length === 0 ? {} : { fixes };
}

function fixesFor({ words, edits }: FindingRepair, { plan, text, artifact }: SarifSource): object[] {
  const applied = applyEdits(text, plan, edits);
  if ('refused' in applied) return [];
  const replacements = lineReplacements(text.replace(MARK, ''), applied.text.replace(MARK, ''));
  return [
    {
      description: message(`${words.join(' ')} The plan is to say what is wired: change both.`),
      artifactChanges: [
        {
          artifactLocation: artifactLocation(artifact),
          replacements: replacements.map(({ text: comes, ...deletedRegion }) => ({
            deletedRegion,
            insertedContent: { text: comes },
          })),
        },
      ],
    },
  ];
}

/** Notifications (3.58), one an error with its line; `file` is how the plan was named. */
export function sarifOfUnreadable({ file, errors, ownMistake }: Unreadable, artifact: Artifact): SarifOfPlan {
  const id: NotificationId = ownMistake ? 'own-mistake' : 'plan-unreadable';
  const told = errors.slice(0, MOST_ERRORS).map(({ line, column, message: text }) => ({
    descriptor: descriptorOf(id),
    level: 'error' as const,
    message: message(line === null ? text : `${file === '-' ? 'standard input' : file}: ${text}`),
    locations: [
      {
        physicalLocation: {
          artifactLocation: artifactLocation(artifact),
          ...(line === null ? {} : { region: { startLine: line, startColumn: column ?? 1 } }),
        },
      },
    ],
  }));
  const left = errors.length - told.length;
  if (left > 0)
    told.push({ ...told.at(-1)!, message: message(`and ${left} more from here on; mend those above first`) });
  return { results: [], notifications: told, cautions: [] };
}
