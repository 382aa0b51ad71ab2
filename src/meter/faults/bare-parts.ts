/** Parts that no core goes to: nothing hangs on them, so no fault of theirs is tried. */
import type { Part } from '../../plan/part-types.ts';
import { partOfKey } from '../../plan/terminal-key.ts';
import type { Study } from '../../study/study.ts';
import type { Fault } from '../fault.ts';

/** What is joined to the rest by no core, but by what is plugged into what. */
const PLUGGED: ReadonlySet<Part['kind']> = new Set(['plug', 'outlet', 'motor', 'load']);

/** Whether no core goes to a part that would be joined by cores alone. */
export function barePart({ plan, wired }: Study): (name: string) => boolean {
  const wiredUp = new Set([...wired.landed.keys()].map((key) => partOfKey(key)));
  return (name) => {
    const part = plan.parts.get(name);
    return part !== undefined && !PLUGGED.has(part.kind) && !wiredUp.has(name);
  };
}

/** The faults, with those of such parts told as not tried. */
export function withBareUntried(study: Study, faults: readonly Fault[]): Fault[] {
  const isBare = barePart(study);
  return faults.map((f) =>
    f.untried === undefined && f.parts.length > 0 && f.parts.every(isBare)
      ? { ...f, untried: 'no core is on it, so nothing hangs on it' }
      : f,
  );
}
