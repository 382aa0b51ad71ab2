/** What to buy for a plan: parts by specification with the least rating that passes, cable, joints and small parts. */

import { toldOf } from '../findings/verdict-line.ts';
import { Undecided } from '../logic/undecided.ts';
import { saidOf } from '../plan/by-kind.ts';
import { lengthUnit } from '../plan/length-unit.ts';
import { push } from '../plan/map-entries.ts';
import type { JointPart, Part } from '../plan/part-types.ts';
import type { Plan } from '../plan/plan.ts';
import type { Study } from '../study/study.ts';
import { FOOT } from '../text/lengths.ts';
import { buyingKey, cableSpec, specOf } from './buying-words.ts';
import { type CableGroup, cableGroups, exactCm } from './cuts.ts';
import { LEAST, LISTED } from './kinds.ts';
import { leastCable } from './least-loop.ts';
import type {
  LeastRatings,
  MaterialCable,
  MaterialItem,
  MaterialJoint,
  Materials,
} from './materials-model.ts';
import { smallParts } from './small-parts.ts';
import { sectionOf } from './wiring-order.ts';

/** Figures found with all else as it stands would not make a plan that fails pass. */
const FAILED: LeastRatings = {
  least: [],
  untold: ['not worked out, because the plan fails its check'],
};

/** Money is summed in hundredths, so that tenths of a coin do not add up. */
const money = (x: number): number => Math.round(x * 100) / 100;

/** A question that would take too long to decide is left open, as in the check. */
function attempted(find: () => LeastRatings): LeastRatings {
  try {
    return find();
  } catch (error) {
    if (!(error instanceof Undecided)) throw error;
    return { least: [], untold: [`it was not decided: ${error.message}`] };
  }
}

function itemsOf(s: Study, fails: boolean): MaterialItem[] {
  const groups = new Map<string, Part[]>();
  for (const part of s.plan.parts.values()) if (part.kind !== 'joint') push(groups, buyingKey(part), part);
  return [...groups.values()].map((parts) => {
    const [first] = parts;
    const names = parts.map((p) => p.name);
    const { price } = first!;
    return {
      kind: first!.kind,
      spec: specOf(first!),
      count: parts.length,
      names,
      ...(fails && LISTED[first!.kind].rated ? FAILED : attempted(() => saidOf(LEAST, first!, s, names))),
      price: price ?? null,
      sum: price === undefined ? null : money(price * parts.length),
    };
  });
}

function cableOf(s: Study, group: CableGroup, fails: boolean): MaterialCable {
  const { cable, pieces, runs } = group;
  const known = pieces.flatMap((p) => p.cm ?? []);
  const metres = exactCm(known.reduce((a, b) => a + b, 0)) / 100;
  const sections = new Set(runs.flatMap((r) => r.cores.map((c) => sectionOf(s.circuit, s.sides, c))));
  const sides = { mains: sections.has('mains'), low: sections.has('low voltage') };
  return {
    name: group.name,
    spec: cableSpec(cable),
    pieces: pieces.length,
    metres,
    feet: Math.round((metres / FOOT) * 100) / 100,
    unmeasured: pieces.length - known.length,
    ...(fails ? FAILED : attempted(() => leastCable(s, group, sides))),
    price: cable.price ?? null,
    sum: cable.price === undefined ? null : money(cable.price * metres),
  };
}

/** `2 x 10 AWG + 1 x link` of the wires at one joint. */
function wiresAt(plan: Plan, joint: JointPart): string {
  const counts = new Map<string, number>();
  for (const run of plan.runs)
    for (const core of run.cores)
      for (const end of [core.a, core.b]) {
        if (end.part !== joint.name) continue;
        const what = run.cable?.gauge ?? 'bare link';
        counts.set(what, (counts.get(what) ?? 0) + 1);
      }
  const words = [...counts].sort(([a], [b]) => (a < b ? -1 : 1)).map(([what, n]) => `${n} x ${what}`);
  return words.join(' + ') || 'no wire';
}

function jointsOf(plan: Plan): MaterialJoint[] {
  const groups = new Map<string, string[]>();
  for (const part of plan.parts.values())
    if (part.kind === 'joint') push(groups, wiresAt(plan, part), part.name);
  return [...groups].map(([wires, names]) => ({ wires, count: names.length, names }));
}

/** What to buy for a plan. Pure. */
export function materials(s: Study): Materials {
  const { plan } = s;
  const told = toldOf(s);
  const fails = told.verdict === 'fail';
  const items = itemsOf(s, fails);
  const cables = cableGroups(plan).map((group) => cableOf(s, group, fails));
  const joints = jointsOf(plan);
  const small = smallParts(s);
  const joined = [...plan.parts.values()].filter((p) => p.kind === 'joint');
  const sums = [...[...items, ...cables].map((x) => x.sum), ...joined.map((p) => p.price)].flatMap(
    (x) => x ?? [],
  );
  return {
    format: 1,
    check: told,
    unit: lengthUnit(plan),
    items,
    joints,
    cables,
    small,
    total: sums.length === 0 ? null : money(sums.reduce((a, b) => a + b, 0)),
    unpriced: [
      ...items.filter((i) => i.sum === null).flatMap((i) => i.names),
      // What has a length that is not known is not wholly paid for.
      ...cables.filter((c) => c.sum === null || c.unmeasured > 0).map((c) => c.name),
      ...joints.flatMap((j) => j.names).filter((name) => plan.parts.get(name)?.price === undefined),
      ...small.map((x) => x.what),
    ],
  };
}
