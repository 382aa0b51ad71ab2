/**
 * Findings at both ends of what the plan leaves out: what stands at both, stands; what stands at one is a doubt. This folder
 * knows how a plan is completed, and must not know what any check looks at.
 */
import { BETTER, type World, WORSE } from '../../ratings/unsaid/ends.ts';
import type { Study } from '../../study/study.ts';
import type { Check } from '../entry.ts';
import type { Finding } from '../report-model.ts';
import { isSame, Settler } from './settle.ts';
import { turnsOn } from './unsaid-words.ts';
import { Worlds } from './worlds.ts';

/** What a check finds in the plan as it is taken where it leaves something out. */
export interface Taken {
  readonly check: Check;
  readonly findings: readonly Finding[];
}

const isGrave = ({ severity }: Finding) => ['danger', 'warning', 'fault'].includes(severity);

/** What each check finds at both ends of what the plan leaves out. */
export function weigh(study: Study, taken: readonly Taken[]): Finding[] {
  const worlds = new Worlds(study);
  if (worlds.unsaid.length === 0) return taken.flatMap((t) => t.findings);
  const settler = new Settler(worlds);
  return taken.flatMap((t) => weighed(worlds, settler, t));
}

/** Whether a check goes by figures; findings of the wiring alone are the same in every world. */
function goesByFigures({ entry }: Check): boolean {
  return entry.ofWiring !== true || entry.id === 'coil-holds-in' || entry.id === 'not-as-joined';
}

function weighed(worlds: Worlds, settler: Settler, { check, findings }: Taken): readonly Finding[] {
  const { question } = check.entry;
  const worse = WORSE.filter((w) => worlds.bearing(question, w).length > 0);
  if (!goesByFigures(check) || worse.length === 0) return findings;
  const lists = new Map<World, readonly Finding[]>(worse.map((w) => [w, worlds.find(check, w)]));
  const all: Finding[] = [...findings];
  for (const list of lists.values())
    for (const f of list) if (isGrave(f) || f.severity === 'doubt') if (!all.some((g) => same(f, g))) all.push(f);
  return all.flatMap((f) => verdictOn(f, { worlds, settler, check, findings, lists }));
}

/** Of one id and part; a caution and a graver finding of the same are one. */
const same = isSame;

interface Weighing {
  readonly worlds: Worlds;
  readonly settler: Settler;
  readonly check: Check;
  readonly findings: readonly Finding[];
  readonly lists: ReadonlyMap<World, readonly Finding[]>;
}

function verdictOn(f: Finding, weighing: Weighing): Finding[] {
  const { worlds, settler, check, findings, lists } = weighing;
  const at = (w: World) => lists.get(w) ?? worlds.find(check, w);
  const gravely = (list: readonly Finding[]) => list.find((g) => isGrave(g) && same(f, g));
  const sure = [findings, ...lists.values()].every((list) => gravely(list) !== undefined);
  if (sure && BETTER.every((w) => gravely(at(w)) !== undefined)) return [isGrave(f) && findings.includes(f) ? f : gravely(findings)!];
  const doubtful = (list: readonly Finding[]) => list.find((g) => g.severity === 'doubt' && same(f, g));
  const doubt = f.severity === 'doubt' ? f : [findings, ...lists.values()].flatMap((l) => doubtful(l) ?? [])[0];
  const world = [...lists.keys()].find((w) => gravely(lists.get(w)!) !== undefined);
  if (world !== undefined && doubt === undefined) {
    const grave = gravely(lists.get(world)!)!;
    const settling = settler.settle(check, grave, world);
    return [turnsOn(grave, settling, settling.some((s) => s.from !== undefined))];
  }
  if (gravely(findings) !== undefined && world === undefined) return [];
  if (doubt !== undefined) {
    const open = world !== undefined || [...lists.values()].some((l) => doubtful(l) !== undefined);
    return open ? [doubt] : [];
  }
  // What is neither grave nor open is told only where it is so whatever was left out.
  const everywhere = [...lists.values(), ...BETTER.map(at)].every((l) => l.some((g) => same(f, g)));
  return f.severity === 'notice' || everywhere ? [f] : [];
}
