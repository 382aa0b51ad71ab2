/** The terminals of a part: their names in this program, and the other marks they may carry. */
import { kept } from './map-entries.ts';

/** The terminals of one part. A joint has one, whose name is empty. */
export class Terminals {
  /** canonical names, in the order a person would list them */
  readonly names: readonly string[];
  readonly #canonical: Map<string, string>;

  constructor(names: readonly string[], aliases: Iterable<readonly [string, string]> = []) {
    this.names = names;
    this.#canonical = new Map(names.map((name) => [name, name]));
    for (const [alias, name] of aliases) {
      if (!this.#canonical.has(alias)) this.#canonical.set(alias, name);
    }
  }

  /** The canonical name of a mark, or undefined. */
  find(mark: string): string | undefined {
    return this.#canonical.get(mark);
  }

  /** All names a terminal may be written by. */
  marks(): IterableIterator<string> {
    return this.#canonical.keys();
  }

  /** The same terminals with a part's own marks, which win over the standard ones. */
  marked(own: Iterable<readonly [string, string]>): Terminals {
    return new Terminals(this.names, [...own, ...this.#canonical]);
  }
}

const made = new Map<string, Terminals>();
/** One table for all parts that have the same terminals. */
export function shared(key: string, make: () => Terminals): Terminals {
  return kept(made, key, make);
}
