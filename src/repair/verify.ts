/** The whole check decides which candidates are repairs: nothing grave is left of the wiring, and nothing else is worse. */
import { effort, SOME_EFFORT } from '../circuit/effort.ts';
import { type Edit, isSaying } from '../edit/edits.ts';
import type { FindingId } from '../findings/finding-ids.ts';
import { judgeAsTaken } from '../findings/judge.ts';
import type { Finding, Report } from '../findings/report-model.ts';
import { SEVERITIES } from '../findings/report-words.ts';
import { kept } from '../plan/map-entries.ts';
import type { Plan } from '../plan/plan.ts';
import { partOfKey } from '../plan/terminal-key.ts';
import { Study } from '../study/study.ts';
import { failsByWiring, GRAVE, grave } from './grave.ts';
import { darkLamps, keepsLamps, keepsLampsAlive } from './lamps-kept.ts';
import type { Ranked, Ranking } from './ranking.ts';
import type { Candidate } from './rewired.ts';

/** How many candidates are checked in whole, and how many that pass are wanted. */
export interface Bounds {
  readonly checked: number;
  readonly passed: number;
  /** one candidate of those that make the same circuit is enough, and which they are is told by this text */
  readonly circuitOf?: (t: Candidate) => string;
}

/** Cost by which a repair may lie behind the best and still be of interest. */
const FAR_BEHIND = 1.1;

export interface Passed {
  readonly t: Candidate;
  readonly after: Study;
  /** the smaller, the likelier it undoes what happened */
  readonly cost: number;
  /** findings and cautions that the plan had not before, each with its place among the severities, the gravest first */
  readonly fresh: ReadonlyMap<string, number>;
  /** whether all that is fresh may be what a coil that nothing called kept to itself, or a caution to the person */
  readonly bringsNothing: boolean;
  /** findings of any severity that it leaves, cautions to the person among them */
  readonly left: number;
  /** those of them that make the plan fail */
  readonly failing: number;
  /** whether every lamp goes on telling what it told */
  readonly lamps: boolean;
  /** lamps that give light in no position tried */
  readonly dark: readonly string[];
  /** what the mistake hid and every repair brings to light, as messages */
  readonly uncovers: readonly string[];
}

/** Findings of figures on the mains side that show only once something goes through the part. */
const FIGURES_OF_WHAT_RUNS: ReadonlySet<string> = new Set<FindingId>(['fuse-too-small', 'overload-setting']);

/**
 * A coil, a supply or a fuse through which nothing went shows what it lacks once something does; a new core may lack it by
 * itself.
 */
function couldBeHidden({ question, id }: Finding, edits: readonly Edit[]): boolean {
  return (
    (question === 4 || question === 5 || FIGURES_OF_WHAT_RUNS.has(id)) && edits.every((e) => e.do !== 'add')
  );
}

export class Verifier {
  /** candidates checked in whole so far */
  checked = 0;
  private readonly until = effort() + SOME_EFFORT;
  /** parts of which each finding of figures spoke before */
  private readonly others = new Map<string, Set<string>>();
  private readonly before: ReadonlyMap<string, number>;

  constructor(
    private readonly study: Study,
    report: Report,
    private readonly ranking: Ranking,
    private readonly bounds: Bounds,
  ) {
    for (const f of grave(report.findings, false))
      for (const part of f.parts) kept(this.others, f.id, () => new Set<string>()).add(part);
    this.before = idsOf(report);
  }

  /** Whether a finding of figures was there before, of one of its parts at least. */
  private stood({ id, parts }: Finding): boolean {
    const known = this.others.get(id);
    return known !== undefined && parts.some((part) => known.has(part));
  }

  get isSpent(): boolean {
    return this.checked >= this.bounds.checked || effort() > this.until;
  }

  /** Whether a change that is not enough brings at least no grave finding of its own. */
  isNoWorse({ after }: Ranked): boolean {
    const { findings } = judgeAsTaken(Study.of(after));
    return findings.every(
      (f) => !GRAVE.has(f.severity) || [...this.before.keys()].some((id) => id.startsWith(`${f.id} `)),
    );
  }

  /** Those of the candidates that are repairs, likeliest first. */
  verified(tries: readonly Candidate[]): Passed[] {
    const passed: Passed[] = [];
    const known = new Set<string>();
    const made = new Set<string>();
    for (const { t, after: plan, cost } of this.ranking.ranked(tries)) {
      if (passed.length >= this.bounds.passed || this.isSpent) break;
      // One that leaves a lamp dark is none to measure others by, while another may be found.
      const best = passed.find((p) => p.dark.length === 0);
      if (best && cost > best.cost + FAR_BEHIND) break;
      if (passed[0] && cost > passed[0].cost + 2 * FAR_BEHIND) break;
      const key = sameWhicheverOrder(t.edits);
      if (known.has(key)) continue;
      known.add(key);
      const circuit = this.bounds.circuitOf?.(t);
      if (circuit !== undefined && made.has(circuit)) continue;
      if (this.ranking.idlesAnInput(t)) continue;
      this.checked++;
      const after = Study.of(plan);
      if (failsByWiring(after)) continue;
      const told = judgeAsTaken(after);
      const { findings, logic } = told;
      if (grave(findings, true).length > 0 || logic.holds !== true) continue;
      const uncovered = grave(findings, false).filter((f) => !this.stood(f));
      if (uncovered.some((f) => !couldBeHidden(f, t.edits))) continue;
      const lamps = touchesLamps(this.study.plan, t.edits) || keepsLamps(this.study, after);
      if (!lamps && !(t.edits.length === 1 && keepsLampsAlive(this.study, after))) continue;
      const ids = idsOf(told);
      const fresh = new Map([...ids].filter(([id]) => !this.before.has(id)));
      const shown = idsOf({ ...told, findings: findings.filter((f) => couldBeHidden(f, t.edits)) });
      if (circuit !== undefined) made.add(circuit);
      passed.push({
        t,
        after,
        cost,
        fresh,
        bringsNothing: [...fresh.keys()].every((id) => shown.has(id)),
        left: ids.size,
        failing: findings.filter((f) => GRAVE.has(f.severity)).length,
        lamps,
        dark: darkLamps(after),
        uncovers: uncovered.map((f) => f.message),
      });
    }
    // What every repair brings was hidden by the mistake; what only some bring, they bring themselves.
    // A lamp may have told something else by the mistake, but only where no repair leaves it what it told.
    const dark = Math.min(...passed.map((p) => p.dark.length));
    const alight = passed.filter((p) => p.dark.length === dark);
    const lit = alight.filter((p) => p.cost <= alight[0]!.cost + FAR_BEHIND);
    const lamps = lit.some((p) => p.lamps) ? lit.filter((p) => p.lamps) : lit;
    // What one repair does away with besides was of the same mistake, and another only goes round it.
    const fewest = Math.min(...lamps.map((p) => p.failing));
    const telling = lamps.filter((p) => p.failing === fewest);
    const hidden = [...(telling[0]?.fresh.keys() ?? [])].filter((id) =>
      telling.every((p) => p.fresh.has(id)),
    );
    const clean = telling.filter((p) => p.fresh.size === hidden.length);
    // Where each brings something that another does without, those are told that bring notices alone, else those that bring nothing
    // which the mistake may not have hidden.
    const lesser = telling.filter((p) => gravestFresh(p) === NOTICE);
    const kept =
      [clean, lesser, telling.filter((p) => p.bringsNothing)].find((list) => list.length > 0) ?? [];
    const least = Math.min(...kept.map((p) => p.left));
    return kept.filter((p) => p.left === least);
  }
}

/** Whether a core is changed that ends at a lamp: then the lamp itself was wired wrongly. */
function touchesLamps(plan: Plan, edits: readonly Edit[]): boolean {
  const shows = (part: string) => ['lamp', 'led'].includes(plan.parts.get(part)?.kind ?? '');
  return [...reachedBy(plan, edits)].some(shows);
}

/** Parts at which the cores end that are changed. */
export function reachedBy(plan: Plan, edits: readonly Edit[]): ReadonlySet<string> {
  const ends = (at: { readonly run: number; readonly core: number }) => {
    const { a, b } = plan.runs[at.run]!.cores[at.core]!;
    return [a.part, b.part];
  };
  return new Set(
    edits.flatMap((e) => {
      if (isSaying(e)) return [];
      if (e.do === 'add') return [partOfKey(e.from), partOfKey(e.to)];
      return e.do === 'swap' ? [...ends(e.first), ...ends(e.second)] : ends(e);
    }),
  );
}

const NOTICE = SEVERITIES.indexOf('notice');

/** The place of the gravest thing that a repair brings among the severities. */
const gravestFresh = ({ fresh }: Passed): number => Math.min(...fresh.values());

/** Every finding with the part that it is about, what is folded under it, and every caution, each with its place among the severities. */
function idsOf({ findings, cautions }: Report): ReadonlyMap<string, number> {
  const caution = SEVERITIES.indexOf('caution');
  return new Map([
    ...cautions.map((c) => [c.id, caution] as const),
    ...findings.flatMap(({ id, parts, also, severity }) => {
      const place = SEVERITIES.indexOf(severity);
      const own = [`${id} ${parts[0] ?? ''}`, place] as const;
      return [...also.map((a) => [a.id, place] as const), own];
    }),
  ]);
}

/** Two changes are one repair, whichever comes first, and so is a new core whatever cable it is taken from. */
function sameWhicheverOrder(edits: readonly Edit[]): string {
  return edits
    .map((e) => (e.do === 'add' ? [e.from, e.to].sort().join(' ') : JSON.stringify(e)))
    .sort()
    .join();
}
