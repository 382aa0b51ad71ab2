/**
 * Findings at both ends of what the plan leaves out: what stands at both, stands; what stands at one is a doubt. This folder
 * knows how a plan is completed, and must not know what any check looks at.
 */

import { effort, MOST_EFFORT } from '../../circuit/effort.ts';
import { kept } from '../../plan/map-entries.ts';
import { BETTER, WORSE, type World } from '../../ratings/unsaid/ends.ts';
import type { Study } from '../../study/study.ts';
import type { Check } from '../entry.ts';
import type { FindingId } from '../finding-ids.ts';
import type { Finding } from '../report-model.ts';
import { otherReadings } from './readings.ts';
import { type FindIn, isSame, Settler, sameIn } from './settle.ts';
import { notWeighed, turnsOn } from './unsaid-words.ts';
import { Worlds } from './worlds.ts';

/** What a check finds in the plan as it is taken where it leaves something out. */
export interface Taken {
  readonly check: Check;
  readonly findings: readonly Finding[];
  /** what is grave only as it is taken, and not where something asked for is read otherwise */
  readonly open?: readonly Finding[];
}

const isGrave = ({ severity }: Finding) => ['danger', 'warning', 'fault'].includes(severity);
const isDoubt = ({ severity }: Finding) => severity === 'doubt';

/** What each check finds at both ends of what the plan leaves out. */
export function weigh(study: Study, taken: readonly Taken[]): Finding[] {
  return atBothEnds(study, inEveryReading(study, taken), true);
}

/**
 * What some checks alone find of some parts, or of all, likewise: what holds only by a figure that is left out is a doubt, and
 * no pass. What names no part is of the whole plan and concerns every part. Without `inWords` what would settle a doubt is not
 * sought, which takes most of the time, and its words are not for reading.
 */
export function findWeighed(
  study: Study,
  checks: readonly Check[],
  inWords: boolean,
  concerns: (part: string) => boolean = () => true,
): Finding[] {
  const taken = checks.map((check) => ({ check, findings: check.find(study) }));
  return atBothEnds(study, inEveryReading(study, taken), inWords).filter(
    ({ parts }) => parts.length === 0 || parts.some(concerns),
  );
}

/** The study, and it with what is left out completed in each way in which the answer to a question may be worse. */
export function atWorseEnds(study: Study, question: Finding['question']): Study[] {
  const worlds = new Worlds(study);
  return [study, ...WORSE.filter((w) => worlds.bearing(question, w).length > 0).map((w) => worlds.at(w))];
}

/** Without what is gone where something asked for is read otherwise; that it is asked for stands as a doubt. */
function inEveryReading(study: Study, taken: readonly Taken[]): readonly Taken[] {
  const grave = taken.flatMap((t) => t.findings.filter(isGrave));
  const others = grave.length === 0 ? [] : otherReadings(study, grave);
  if (others.length === 0) return taken;
  return taken.map(({ check, findings }) => {
    if (!findings.some(isGrave)) return { check, findings };
    const lists = others.map((other) => check.find(other));
    const stands = (f: Finding) => lists.every((l) => l.some((g) => isGrave(g) && isSame(f, g)));
    const open = findings.filter((f) => isGrave(f) && !stands(f));
    return { check, findings: findings.filter((f) => !open.includes(f)), open };
  });
}

function atBothEnds(study: Study, taken: readonly Taken[], inWords: boolean): Finding[] {
  const worlds = new Worlds(study);
  if (worlds.unsaid.length === 0) return taken.flatMap((t) => t.findings);
  const borrowed = new WeakSet<Finding>();
  const byOthers = (ids: readonly FindingId[], check: Check, of: Study) =>
    taken
      .filter((t) => ids.includes(t.check.entry.id))
      .flatMap((t) => t.check.find(of))
      .map((f) => ({ ...f, id: check.entry.id }));
  const find: FindIn = (check, of) => {
    const others = OTHERWISE[check.entry.id] ?? [];
    const theirs = byOthers(others, check, of);
    for (const f of theirs) borrowed.add(f);
    return [...check.find(of), ...theirs];
  };
  // A value that does away with a finding and brings its contrary settles nothing.
  const settles: FindIn = (check, of) => [
    ...find(check, of),
    ...byOthers(CONTRARY[check.entry.id] ?? [], check, of),
  ];
  const settler = inWords ? new Settler(worlds, settles) : undefined;
  const until = effort() + MOST_EFFORT;
  let gaveUp = false;
  const all = taken.map((t) => {
    const open = t.open ?? [];
    // Asked once a world and not once a finding: five hundred supplies have five hundred.
    const known = new Map<Study, readonly Finding[]>();
    const at = (check: Check, world: World) => {
      const of = worlds.at(world);
      // Once too much was worked out, nothing is asked of a world that was not looked at before.
      if (!known.has(of) && effort() > until) {
        gaveUp = true;
        return t.findings;
      }
      return kept(known, of, () =>
        find(check, of).filter((f) => !isGrave(f) || !open.some((o) => isSame(o, f))),
      );
    };
    return {
      entry: t.check.entry,
      findings: weighed({ worlds, settler, at, isOwn: (f) => !borrowed.has(f) }, t),
    };
  });
  const stands = new Set(
    all
      .filter(({ findings }) => findings.some((f) => isGrave(f) || isTurned(f)))
      .map(({ entry }) => entry.id),
  );
  // What follows from another finding turns on the same, or is settled with it.
  const told = all.flatMap(({ entry, findings }) =>
    entry.followsFrom.some((id) => stands.has(id)) ? findings.filter((f) => !isTurned(f)) : findings,
  );
  return gaveUp ? [...told, notWeighed(study)] : told;
}

/** What a check finds of a figure that is left out, another finds of it once it is stated. */
const OTHERWISE: { readonly [Id in FindingId]?: readonly FindingId[] } = {
  'contact-not-motor-rated': ['contact-starting', 'contact-running'],
};
/** What may stand in place of a finding once a figure is stated. */
const CONTRARY: { readonly [Id in FindingId]?: readonly FindingId[] } = {
  'coil-too-high': ['coil-too-low'],
  'coil-too-low': ['coil-too-high'],
};

/** Whether a finding was grave at one end and is a doubt now. */
const isTurned = ({ id }: Finding) => id === 'value-unsaid';

/** Worlds in which a check can be worse off than as the plan is taken; all where it is not listed. */
const WORSE_FOR: { readonly [Id in FindingId]?: readonly World[] } = {
  'coil-too-low': ['few', 'sag'],
  'coil-thin-margin': [],
  'coil-drops-at-start': ['few', 'sag'],
  'drop-large': [],
  'coil-too-high': ['many'],
  'coil-holds-in': ['many'],
  'coil-frequency': [],
  'coil-kind': [],
  'coil-unsuppressed': [],
  'switch-underloaded': [],
  'battery-short-lived': [],
  'indicator-volts': [],
};

/** Whether a check goes by figures; findings of the wiring alone are the same in every world. */
function goesByFigures({ entry }: Check): boolean {
  return entry.ofWiring !== true || entry.id === 'coil-holds-in' || entry.id === 'not-as-joined';
}

/** Worlds in which what a check finds may be worse than as the plan is taken, and on whose figures its answer rests. */
export function worseWorlds(worlds: Worlds, check: Check): readonly World[] {
  if (!goesByFigures(check)) return [];
  const { id, question } = check.entry;
  return (WORSE_FOR[id] ?? WORSE).filter((w) => worlds.bearing(question, w).length > 0);
}

interface Tools {
  readonly worlds: Worlds;
  /** seeks what would settle a doubt; undefined where nobody reads its words */
  readonly settler: Settler | undefined;
  /** what a check finds in a world */
  readonly at: (check: Check, world: World) => readonly Finding[];
  /** whether the check found it itself; what it has from another settles its doubts, and is that other's to tell */
  readonly isOwn: (f: Finding) => boolean;
}

function weighed(tools: Tools, { check, findings }: Taken): readonly Finding[] {
  const { worlds } = tools;
  const { question } = check.entry;
  const worse = worseWorlds(worlds, check);
  const better = findings.length === 0 ? [] : BETTER.filter((w) => worlds.bearing(question, w).length > 0);
  if (!goesByFigures(check) || worse.length + better.length === 0) return findings;
  const lists = new Map<World, readonly Finding[]>(worse.map((w) => [w, tools.at(check, w)]));
  const more: Finding[] = [];
  for (const f of [...lists.values()].flat())
    if ((isGrave(f) || isDoubt(f)) && tools.isOwn(f) && ![...findings, ...more].some((g) => isSame(f, g)))
      more.push(f);
  const all = [...findings, ...more];
  return all.flatMap((f) => verdictOn(f, { ...tools, check, findings, lists }));
}

interface Weighing extends Tools {
  readonly check: Check;
  readonly findings: readonly Finding[];
  readonly lists: ReadonlyMap<World, readonly Finding[]>;
}

function verdictOn(f: Finding, { settler, at: findAt, check, findings, lists }: Weighing): Finding[] {
  const at = (w: World) => lists.get(w) ?? findAt(check, w);
  const gravely = (list: readonly Finding[]) => sameIn(list, f).find(isGrave);
  const all = [findings, ...lists.values()];
  const same = all.flatMap((list) => sameIn(list, f));
  const grave = isGrave(f) ? f : same.find(isGrave);
  if (grave !== undefined && all.every(gravely) && BETTER.every((w) => gravely(at(w))))
    return [isGrave(f) ? f : (gravely(findings) ?? grave)];
  const doubt = isDoubt(f) ? f : same.find(isDoubt);
  if (grave !== undefined) {
    if (doubt !== undefined) return [doubt];
    const world = [...lists.keys()].find((w) => gravely(lists.get(w)!)) ?? 'few';
    const worst = gravely(lists.get(world) ?? []) ?? grave;
    return [
      turnsOn(worst, settler?.settle(check, grave, world) ?? [], OTHERWISE[check.entry.id] !== undefined),
    ];
  }
  // What is open only because nothing was stated is settled where every world passes.
  if (doubt !== undefined)
    return lists.size === 0 || [...lists.values()].some((l) => sameIn(l, f).some(isDoubt)) ? [doubt] : [];
  // What is neither grave nor open is told only where it is so whatever was left out.
  const everywhere = [...lists.values(), ...BETTER.map(at)].every((l) => sameIn(l, f).length > 0);
  return f.severity === 'notice' || everywhere ? [f] : [];
}
