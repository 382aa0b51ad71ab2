/** Boxes with mains in them, and the room that NEC 314.16(B) asks for what is inside. */

import { netAt } from '../../circuit/terminals.ts';
import { push } from '../../plan/map-entries.ts';
import type { BoxPart, PartKind } from '../../plan/part-types.ts';
import type { Core, Run } from '../../plan/plan.ts';
import { type BoxFill, boxFill, boxFillSize } from '../../ratings/box-fill.ts';
import { perStudy } from '../../study/per-study.ts';
import type { Study } from '../../study/study.ts';

export interface BoxContents {
  readonly box: BoxPart;
  /** undefined where the table has no row for a conductor */
  readonly fill: BoxFill | undefined;
}

/** Kinds of part that sit on a yoke and take the room of two conductors. */
const ON_YOKE: ReadonlySet<PartKind> = new Set(['switch', 'outlet', 'selector', 'button'] as const);

/** Every box that mains enters; none where the practice has no such count. */
export const mainsBoxes = perStudy((study): readonly BoxContents[] => {
  if (study.plan.practice !== 'nec') return [];
  return [...study.plan.parts.values()]
    .filter((p) => p.kind === 'box')
    .filter((box) => hasMains(study, (core) => isInside(box, core.a.part, core.b.part)))
    .map((box) => ({ box, fill: fillOf(study, box) }));
});

function hasMains(study: Study, which: (core: Core) => boolean): boolean {
  return study.plan.runs.some((run) => run.cores.some((c) => which(c) && onMains(study, c)));
}

const isInside = (box: BoxPart, ...parts: readonly string[]) =>
  parts.some((name) => name === box.name || box.holds.includes(name));

const netOf = ({ circuit }: Study, core: Core) => netAt(circuit, core.a.part, core.a.terminal) ?? -1;
const onMains = (study: Study, core: Core) => study.sides.mains.has(netOf(study, core));

function isEarth(study: Study, core: Core): boolean {
  if (core.a.terminal === 'PE' || core.b.terminal === 'PE') return true;
  return study.sides.earth.has(netOf(study, core)) && !onMains(study, core);
}

function fillOf(study: Study, box: BoxPart): BoxFill | undefined {
  const entering: number[] = [];
  const earths: number[] = [];
  const inside: number[] = [];
  const onPart = new Map<string, number[]>();
  for (const run of study.plan.runs) {
    if (run.link) continue;
    for (const core of run.cores) {
      const ends = [core.a.part, core.b.part].filter((name) => isInside(box, name));
      if (ends.length === 0) continue;
      const awg = sizeOf(run);
      if (awg === undefined) return undefined;
      (ends.length === 2 ? inside : isEarth(study, core) ? earths : entering).push(awg);
      for (const name of ends) push(onPart, name, awg);
    }
  }
  const largest = Math.min(...entering, ...earths, ...inside);
  const yokes = box.holds
    .filter((name) => isOnYoke(study, name))
    // A device joined by links alone is taken to have the thickest conductor of the box.
    .map((name) => Math.min(...(onPart.get(name) ?? [largest])));
  return boxFill({ entering, earths, inside, yokes, clamps: true }, '2020');
}

const sizeOf = (run: Run) => (run.cable === undefined ? undefined : boxFillSize(run.cable));

/** A device of the mains side that is screwed to a yoke. */
function isOnYoke(study: Study, name: string): boolean {
  const kind = study.plan.parts.get(name)?.kind;
  if (kind === undefined || !ON_YOKE.has(kind)) return false;
  return hasMains(study, (core) => core.a.part === name || core.b.part === name);
}
