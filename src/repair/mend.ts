/** The smallest changes of wiring after which questions 1 to 3 hold, each verified by the whole check. */

import type { Edit } from '../edit/edits.ts';
import { judge } from '../findings/judge.ts';
import type { Finding, Report } from '../findings/report-model.ts';
import type { Core, Plan, Run, TerminalRef } from '../plan/plan.ts';
import { Study } from '../study/study.ts';
import type { Mended, Repair } from './mended.ts';
import { type Ends, Quick } from './quick.ts';
import { wordsOf } from './repair-words.ts';
import { Rewirings, rewired, type Try } from './rewire.ts';
import { linesOf } from './state-lines.ts';
import { type Asked, statesToGetRight, wrongs } from './states-to-get-right.ts';

/** Rewirings looked at before the search gives up, and those of them checked in whole. */
const MOST_LOOKED = 400_000;
const MOST_CHECKED = 40;
const FEW_CHECKED = 8;
/** Repairs told, and first halves that a search for two changes starts from. */
const MOST_REPAIRS = 12;
const MOST_HALVES = 24;
/** Conductors between which new cores are tried. */
const MOST_CONDUCTORS = 60;

export const GRAVE: ReadonlySet<string> = new Set(['danger', 'warning', 'fault']);
/** Findings of later questions that a core on the wrong terminal causes all the same. */
const OF_WIRING: ReadonlySet<string> = new Set([
  'supply-shorted',
  'coil-shorted',
  'diode-backwards',
  'polarity-reversed',
  'coil-in-series',
  'coil-holds-in',
  'supplies-joined',
]);

/** Something that a change of wiring could mend. */
export function isWiring(f: Finding): boolean {
  return GRAVE.has(f.severity) && (f.question <= 3 || OF_WIRING.has(f.id));
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
  return new Search(study, report, statesToGetRight(study.verified), options.thorough).run();
}

/** A change after which less is wrong than before. */
interface Half {
  readonly half: Try;
  readonly left: number;
}

class Search {
  private readonly plan: Plan;
  private readonly quick: Quick;
  private readonly now: number;
  private looked = 0;
  private checked = 0;

  constructor(
    private readonly study: Study,
    private readonly report: Report,
    private readonly states: readonly Asked[],
    private readonly thorough: boolean,
  ) {
    this.plan = study.plan;
    this.quick = new Quick(study);
    this.now = wrongs(this.quick, this.quick.cores, states, Number.POSITIVE_INFINITY);
  }

  run(): Mended {
    const nothing: Try = { edits: [], ends: 0, added: 0, oddness: 0 };
    let repairs = this.verify(this.sieve(this.quick.cores, nothing));
    if (repairs.length === 0 && this.thorough) {
      const halves: Half[] = [];
      this.sieve(this.quick.cores, nothing, (half, left) => {
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
  private sieve(
    cores: readonly (readonly Ends[])[],
    before: Try,
    note?: (half: Try, left: number) => void,
  ): Try[] {
    const options = new Rewirings(this.plan, this.quick, cores);
    const found: Try[] = [];
    const whole = before.edits.length === 0;
    const kinds = [
      options.moves(),
      ...(whole ? [options.tabs()] : []),
      options.swaps(),
      options.removals(),
      options.additions(MOST_CONDUCTORS),
    ];
    for (const tries of kinds)
      for (const t of tries) {
        if (this.looked++ >= MOST_LOOKED) return found;
        const after = rewired(this.quick, cores, t.edits);
        const left = wrongs(this.quick, after, this.states, note ? this.now : 0);
        if (left > 0) note?.(t, left);
        else
          found.push({
            edits: [...before.edits, ...t.edits],
            ends: before.ends + t.ends,
            added: before.added + t.added,
            oddness: before.oddness + t.oddness,
          });
      }
    return found;
  }

  private doubles(halves: Half[]): Try[] {
    const found: Try[] = [];
    for (const half of halves.sort((x, y) => x.left - y.left).slice(0, MOST_HALVES)) {
      const cores = rewired(this.quick, this.quick.cores, half.half.edits);
      found.push(...this.sieve(cores, half.half));
      if (found.length >= MOST_CHECKED || this.looked >= MOST_LOOKED) break;
    }
    return found;
  }

  /** The whole check decides; what is left must be no worse anywhere else. */
  private verify(tries: readonly Try[]): Repair[] {
    const order = [...tries].sort((x, y) => x.ends + x.added - y.ends - y.added || x.oddness - y.oddness);
    const others = new Set(grave(this.report.findings, false).map((f) => f.id));
    const repairs: Repair[] = [];
    const told = new Set<string>();
    for (const t of order) {
      if (repairs.length >= (this.thorough ? MOST_REPAIRS : 1)) break;
      if (this.checked >= (this.thorough ? MOST_CHECKED : FEW_CHECKED)) break;
      // Once one is found, only those that are as short are of interest.
      if (repairs[0] && t.ends + t.added > repairs[0].ends + (repairs[0].metres === null ? 1 : 0)) break;
      this.checked++;
      const changed = Study.of(planAfter(this.plan, t.edits));
      const after = judge(changed);
      if (grave(after.findings, true).length > 0 || after.logic.holds === false) continue;
      if (grave(after.findings, false).some((f) => !others.has(f.id))) continue;
      const key = sameWhicheverOrder(t.edits);
      if (told.has(key)) continue;
      told.add(key);
      repairs.push(this.repair(t, changed));
    }
    return repairs;
  }

  private repair(t: Try, after: Study): Repair {
    const options = new Rewirings(this.plan, this.quick, this.quick.cores);
    const lines = linesOf(this.study, after);
    return {
      edits: t.edits,
      words: wordsOf(this.plan, t.edits),
      ends: t.ends,
      metres: t.added === 0 ? 0 : null,
      before: lines.before,
      after: lines.after,
      alike: t.edits.length === 1 ? options.alike(t.edits[0]!) : 0,
    };
  }
}

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

/** The plan as it would read after the edits; positions of new ends are those of what they replace. */
export function planAfter(plan: Plan, edits: readonly Edit[]): Plan {
  const runs: Run[] = plan.runs.map((r) => ({ ...r, cores: [...r.cores] }));
  const cores = (run: number) => runs[run]!.cores as Core[];
  const ref = (name: string, like: TerminalRef): TerminalRef => {
    const dot = name.indexOf('.');
    const [part, terminal] = dot < 0 ? [name, ''] : [name.slice(0, dot), name.slice(dot + 1)];
    return { ...like, part, terminal, written: name };
  };
  const removed: [number, Core][] = [];
  for (const e of edits) {
    if (e.do === 'move') {
      const core = cores(e.run)[e.core]!;
      cores(e.run)[e.core] = { ...core, [e.end]: ref(e.to, core[e.end]) };
    } else if (e.do === 'swap') {
      const [x, y] = [e.first, e.second];
      const [p, q] = [cores(x.run)[x.core]![x.end], cores(y.run)[y.core]![y.end]];
      cores(x.run)[x.core] = { ...cores(x.run)[x.core]!, [x.end]: { ...q, at: p.at } };
      cores(y.run)[y.core] = { ...cores(y.run)[y.core]!, [y.end]: { ...p, at: q.at } };
    } else if (e.do === 'remove') removed.push([e.run, cores(e.run)[e.core]!]);
    else {
      const like = e.like === undefined ? undefined : plan.runs[e.like];
      const core = plan.runs.find((r) => r.cores.length > 0)!.cores[0]!;
      const made: Core = {
        ...core,
        run: runs.length,
        colour: 'jumper',
        a: ref(e.from, core.a),
        b: ref(e.to, core.b),
      };
      const { cable: _, length: __, ...bare } = runs[0]!;
      runs.push(
        like?.cable
          ? {
              ...like,
              index: runs.length,
              link: false,
              cores: [made],
              ...(e.metres === undefined ? {} : { length: e.metres }),
            }
          : { ...bare, index: runs.length, link: true, cores: [made] },
      );
    }
  }
  for (const [run, core] of removed) {
    const kept = cores(run).filter((c) => c !== core);
    runs[run] = { ...runs[run]!, cores: kept };
  }
  return { ...plan, runs };
}
