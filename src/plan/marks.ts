/** Reading `marked-as` of a run: which cores are marked at both ends, and in which colour. */
import { colourOf } from '../text/core-colours.ts';
import { type Errors, quoted } from './errors.ts';
import type { Subject } from './issues.ts';
import { isTreeMap, type Spots, type TreeMap } from './tree.ts';

/** Colours by core; what is wrong is told and left out. What is no text was reported by the schema. */
export function readMarks(
  errors: Errors,
  spots: Spots,
  run: TreeMap,
  subject: Subject,
): ReadonlyMap<string, string> {
  const marks = new Map<string, string>();
  const map = run['marked-as'];
  if (map === undefined || !isTreeMap(map) || !isTreeMap(run.cores)) return marks;
  const cores = [...spots.of(run.cores).keys()];
  for (const [core, spot] of spots.of(map)) {
    const colour = map[core];
    if (typeof colour !== 'string') continue;
    if (!cores.includes(core)) {
      const near = errors.hint(core, cores, ';');
      errors.add(
        spot.key,
        `marked-as: found ${quoted(core)}, expected a core of this run${near} it has ${cores.map((c) => quoted(c)).join(', ')}`,
        subject.name,
      );
    } else if (colourOf(colour) === undefined)
      errors.add(
        spot.value,
        `marked-as.${core}: found ${quoted(colour)}, expected a colour such as black, red or brown`,
        subject.name,
      );
    else marks.set(core, colour);
  }
  return marks;
}
