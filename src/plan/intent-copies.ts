/** Intents that are those of another: `fan2: fan1`. */
import { type Errors, quoted, type Span } from './errors.ts';
import { shown, some } from './parts.ts';
import type { Intent, LampIntent } from './plan.ts';

/** One such line of the plan. */
export interface IntentCopy {
  readonly target: string;
  readonly of: string;
  /** where the other's name stands, and the target's */
  readonly at: Span;
  readonly key: Span;
}

interface Known {
  readonly intents: Map<string, Intent>;
  readonly lamps: Map<string, LampIntent>;
}

/** Adds an intent for each copy, in any order and through one another. */
export function copyIntents(
  errors: Errors,
  copies: readonly IntentCopy[],
  { intents, lamps }: Known,
  isLamp: (target: string) => boolean,
): void {
  const written = [...intents.keys(), ...lamps.keys()];
  const sources = new Map(copies.map(({ target, of }) => [target, of]));
  for (const { target, of, at, key } of copies) {
    const add = (text: string) => errors.add(at, text, `intent ${shown(target)}`);
    const from = sourceOf(target, sources);
    if (from === undefined) {
      add(`${quoted(of)} leads back to ${shown(target)}; write the intent out at one of them`);
    } else if (!intents.has(from) && !lamps.has(from)) {
      const list =
        written.length === 0
          ? '; expected a map such as {runs-on: [gate1, gate2]}'
          : `; intents stand for ${some(written)}`;
      add(`found ${quoted(of)}: no intent of that name to copy${errors.hint(from, written) || list}`);
    } else if (isLamp(target) !== lamps.has(from)) {
      add(`found ${quoted(of)}: a lamp and a load cannot have the same intent`);
    } else {
      const place = errors.source.position(key[0]);
      if (lamps.has(from)) lamps.set(target, { ...lamps.get(from)!, target, at: place });
      else intents.set(target, { ...intents.get(from)!, target, at: place, sameAs: from });
    }
  }
}

/** What a chain of copies ends at; undefined where it leads back to itself. */
function sourceOf(target: string, sources: ReadonlyMap<string, string>): string | undefined {
  const seen = new Set([target]);
  let from = sources.get(target)!;
  for (let next = sources.get(from); next !== undefined; next = sources.get(from)) {
    if (seen.has(from)) return undefined;
    seen.add(from);
    from = next;
  }
  return seen.has(from) ? undefined : from;
}
