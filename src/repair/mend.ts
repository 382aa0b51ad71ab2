/**
 * The smallest changes of wiring after which questions 1 to 3 hold, each verified by the whole check: nothing here says
 * what is right.
 */

import type { Edit } from '../edit/edits.ts';
import { judge } from '../findings/judge.ts';
import { entryOf } from '../findings/register.ts';
import type { Finding, Report } from '../findings/report-model.ts';
import type { Plan } from '../plan/plan.ts';
import { partOfKey } from '../plan/terminal-key.ts';
import { Study } from '../study/study.ts';
import { keepsLamps } from './lamps-kept.ts';
import type { Mended, Repair } from './mended.ts';
import { type Cores, NumberedCircuit } from './numbered-circuit.ts';
import { countWrong } from './quick-faults.ts';
import { QuickLook } from './quick-look.ts';
import { Ranking } from './ranking.ts';
import { instructionsFor } from './repair-words.ts';
import { type RequiredState, requiredStates } from './required-states.ts';
import { Rewirings } from './rewire.ts';
import { type Candidate, rewired } from './rewired.ts';
import { linesOf } from './state-lines.ts';

/** Rewirings looked at before the search gives up, and those of them checked in whole. */
const MOST_LOOKED = 400_000;
const MOST_CHECKED = 40;
const FEW_CHECKED = 12;
/** Rewirings looked at once one has passed: the suspicious ends come first. */
const MOST_MORE = 30_000;
/** Repairs told, and terminals of a plan that is too large to tell of so many. */
const MOST_REPAIRS = 12;
const FEW_REPAIRS = 4;
const LARGE = 600;
/** First halves that a search for two changes starts from, and cost by which a repair may lie behind the best. */
const MOST_HALVES = 24;
const FAR_BEHIND = 1.5;
/** Conductors between which new cores are tried. */
const MOST_CONDUCTORS = 60;

const GRAVE: ReadonlySet<string> = new Set(['danger', 'warning', 'fault']);

/** Something grave that a change of wiring could mend: of questions 1 to 3, and what is said of its entry to be so. */
export function isWiring(f: Finding): boolean {
  return GRAVE.has(f.severity) && (f.question <= 3 || entryOf(f.id).ofWiring === true);
}

const grave = (list: readonly Finding[], wiring: boolean) =>
  list.filter((f) => GRAVE.has(f.severity) && isWiring(f) === wiring);

/**
 * Never throws for a plan that was read. `thorough: false` looks for one change only and checks few candidates.
 */
export function mend(study: Study, options = { thorough: true }): Mended {
  const { plan } = study;
  const report = judge(study);
  const none = { format: 1 as const, repairs: [], tried: 0 };
  if (grave(report.findings, true).length === 0) {
    const other = grave(report.findings, false)[0];
    const why = other && `The plan fails all the same: ${other.message}. No change of wiring cures that.`;
    return { ...none, needed: false, why: why ?? null };
  }
  const unnamed = gateOutsideIntent(plan, report);
  if (unnamed) return { ...none, needed: true, why: unnamed };
  if (!study.verified)
    return {
      ...none,
      needed: true,
      why: `The circuit could not be decided (${study.undecided}), so no repair can be verified.`,
    };
  return new Search(study, report, requiredStates(study.verified), options.thorough).run();
}

/** A change after which less is wrong than before: perhaps the first of two. */
interface FirstHalf {
  readonly half: Candidate;
  readonly left: number;
}

class Search {
  private readonly plan: Plan;
  private readonly circuit: NumberedCircuit;
  private readonly quick: QuickLook;
  private readonly ranking: Ranking;
  private readonly now: number;
  private readonly few: boolean;
  private looked = 0;
  private checked = 0;

  constructor(
    private readonly study: Study,
    private readonly report: Report,
    private readonly states: readonly RequiredState[],
    private readonly thorough: boolean,
  ) {
    this.plan = study.plan;
    this.circuit = new NumberedCircuit(study);
    this.quick = new QuickLook(this.circuit);
    this.ranking = new Ranking(study.plan, this.quick);
    this.few = !thorough || this.circuit.names.length > LARGE;
    const wiring = this.quick.wiring(this.circuit.cores);
    this.now = countWrong(this.quick, wiring, states, Number.POSITIVE_INFINITY);
  }

  run(): Mended {
    const nothing: Candidate = { edits: [], ends: 0, added: 0, oddness: 0 };
    let repairs = this.verify(this.passing(this.circuit.cores, nothing));
    if (repairs.length === 0 && this.thorough) {
      const halves: FirstHalf[] = [];
      this.passing(this.circuit.cores, nothing, (half, left) => {
        if (left < this.now) halves.push({ half, left });
      });
      repairs = this.verify(this.doubles(halves));
    }
    return {
      format: 1,
      needed: true,
      repairs,
      tried: this.looked,
      why: repairs.length > 0 ? null : this.why(),
    };
  }

  private why(): string {
    const gaveUp = this.looked >= MOST_LOOKED || this.checked >= MOST_CHECKED;
    return gaveUp
      ? `The search gave up after ${this.looked} rewirings; a repair of one or two changes may still exist.`
      : 'No change of one or two ends, cores or diodes makes every load do what is meant.';
  }

  /** Rewirings after which nothing is wrong at a quick look, likeliest first. */
  private passing(
    cores: Cores,
    before: Candidate,
    failed?: (half: Candidate, left: number) => void,
  ): Candidate[] {
    const options = new Rewirings(this.plan, this.quick, cores);
    const found: Candidate[] = [];
    const whole = before.edits.length === 0;
    let enough = Number.POSITIVE_INFINITY;
    const kinds = [
      options.moves(),
      ...(whole ? [options.tabs()] : []),
      options.swaps(),
      options.removals(),
      options.additions(MOST_CONDUCTORS),
    ];
    for (const tries of kinds)
      for (const t of tries) {
        if (this.looked++ >= MOST_LOOKED || this.looked > enough) return found;
        const left = countWrong(this.quick, t.wiring, this.states, failed ? this.now : 0);
        if (left > 0) failed?.(t, left);
        else {
          enough = Math.min(enough, this.looked + MOST_MORE);
          found.push({
            edits: [...before.edits, ...t.edits],
            ends: before.ends + t.ends,
            added: before.added + t.added,
            oddness: before.oddness + t.oddness,
          });
        }
      }
    return found;
  }

  private doubles(halves: FirstHalf[]): Candidate[] {
    const found: Candidate[] = [];
    for (const half of halves.sort((x, y) => x.left - y.left).slice(0, MOST_HALVES)) {
      const cores = rewired(this.circuit, this.circuit.cores, half.half.edits);
      found.push(...this.passing(cores, half.half));
      if (found.length >= MOST_CHECKED || this.looked >= MOST_LOOKED) break;
    }
    return found;
  }

  /** The whole check decides: nothing grave is left of the wiring, and nothing is worse anywhere than it need be. */
  private verify(tries: readonly Candidate[]): Repair[] {
    const others = new Set(grave(this.report.findings, false).map((f) => f.id));
    const before = idsOf(this.report.findings);
    const passed: Passed[] = [];
    const known = new Set<string>();
    for (const { t, after: plan, cost } of this.ranking.ranked(tries)) {
      if (passed.length >= (this.few ? FEW_REPAIRS : MOST_REPAIRS)) break;
      if (this.checked >= (this.few ? FEW_CHECKED : MOST_CHECKED)) break;
      if (passed[0] && cost > passed[0].cost + FAR_BEHIND) break;
      const key = sameWhicheverOrder(t.edits);
      if (known.has(key)) continue;
      known.add(key);
      this.checked++;
      const after = Study.of(plan);
      const { findings, logic } = judge(after);
      if (grave(findings, true).length > 0 || logic.holds === false) continue;
      if (grave(findings, false).some((f) => !others.has(f.id))) continue;
      if (!this.touchesLamps(t.edits) && !keepsLamps(this.study, after)) continue;
      const fresh = new Set([...idsOf(findings)].filter((id) => !before.has(id)));
      passed.push({
        t,
        after,
        cost,
        fresh,
        grave: findings.filter((f) => GRAVE.has(f.severity)).length,
      });
    }
    // What every repair brings was hidden by the mistake; what only some bring, they bring themselves.
    const hidden = [...(passed[0]?.fresh ?? [])].filter((id) => passed.every((p) => p.fresh.has(id)));
    const least = Math.min(...passed.map((p) => p.grave));
    return passed
      .filter((p) => p.fresh.size === hidden.length && p.grave === least)
      .map((p) => this.repair(p.t, p.after));
  }

  /** Whether a core is changed that ends at a lamp: then the lamp itself was wired wrongly. */
  private touchesLamps(edits: readonly Edit[]): boolean {
    const shows = (part: string) => ['lamp', 'led'].includes(this.plan.parts.get(part)?.kind ?? '');
    const ends = (at: { readonly run: number; readonly core: number }) => {
      const { a, b } = this.plan.runs[at.run]!.cores[at.core]!;
      return shows(a.part) || shows(b.part);
    };
    return edits.some((e) =>
      e.do === 'add'
        ? shows(partOfKey(e.from)) || shows(partOfKey(e.to))
        : e.do === 'swap'
          ? ends(e.first) || ends(e.second)
          : ends(e),
    );
  }

  private repair(t: Candidate, after: Study): Repair {
    const options = new Rewirings(this.plan, this.quick, this.circuit.cores);
    const lines = linesOf(this.study, after);
    return {
      edits: t.edits,
      words: instructionsFor(this.plan, t.edits),
      ends: t.ends,
      metres: t.added === 0 ? 0 : null,
      before: lines.before,
      after: lines.after,
      alike: t.edits.length === 1 ? options.alike(t.edits[0]!) : 0,
    };
  }
}

interface Passed {
  readonly t: Candidate;
  readonly after: Study;
  readonly cost: number;
  /** findings that the plan had not before */
  readonly fresh: ReadonlySet<string>;
  /** grave findings of other questions that it leaves */
  readonly grave: number;
}

const idsOf = (findings: readonly Finding[]): ReadonlySet<string> =>
  new Set(findings.flatMap((f) => [f.id, ...f.also.map((a) => a.id)]));

/** Two changes are one repair, whichever comes first. */
function sameWhicheverOrder(edits: readonly Edit[]): string {
  return edits
    .map((e) => JSON.stringify(e))
    .sort()
    .join();
}

/** A gate that starts a load though no intent names it is left out of the plan's intent, rather than wired wrongly. */
function gateOutsideIntent(plan: Plan, report: Report): string | undefined {
  const named = new Set((plan.intents ?? []).flatMap((i) => i.runsOn.flat().map((r) => r.part)));
  const wrong = grave(report.findings, true);
  if (plan.intents === undefined || wrong.some((f) => f.id !== 'runs-without-cause')) return undefined;
  const gate = [...plan.parts.values()].find(
    (p) => p.kind === 'gate' && !named.has(p.name) && wrong.some((f) => f.parts.includes(p.name)),
  );
  return (
    gate &&
    `Gate ${gate.name} is wired like the others, but no intent names it: add it to runs-on of what it starts. If it must start nothing, take its cores off.`
  );
}
