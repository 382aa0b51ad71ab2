/** The rules for names: of stock, parts and selector positions. */
import { twinKey, twinWords } from '../text/alike.ts';
import { type Errors, quoted, type Span } from './errors.ts';

const LONGEST = 40;

/** What is wrong with a name, or undefined. */
export function nameProblem(name: string): string | undefined {
  if (name === '') return 'a name is empty; expected letters, digits, - or _';
  if (name.length > LONGEST && [...name].length > LONGEST) {
    return `the name ${quoted(name)} has ${[...name].length} characters; expected at most ${LONGEST}`;
  }
  // Most names are of plain letters; classes of Unicode take longer to make ready than a plan to read.
  if (/^[A-Za-z0-9][\w-]*$/.test(name)) return undefined;
  if (!/^[\p{L}\p{N}]/u.test(name)) return `the name ${quoted(name)} must start with a letter or a digit`;
  const bad = /[^\p{L}\p{M}\p{N}_-]/u.exec(name);
  if (bad === null) return undefined;
  const what =
    bad[0] === '.'
      ? 'a dot (dots part a name from its terminal)'
      : /\s/.test(bad[0])
        ? 'white space'
        : quoted(bad[0]);
  return `the name ${quoted(name)} holds ${what}; expected letters, digits, - and _`;
}

/** Finds names of one map that a person may take for one. */
export class CaseTwins {
  readonly #seen = new Map<string, { name: string; at: Span }>();
  readonly #errors: Errors;

  constructor(errors: Errors) {
    this.#errors = errors;
  }

  /** Adds a name; the second of two twins gets the error. */
  add(name: string, at: Span): void {
    const key = twinKey(name);
    const other = this.#seen.get(key);
    if (other === undefined) {
      this.#seen.set(key, { name, at });
      return;
    }
    const how = twinWords(name, other.name);
    if (how === undefined) return;
    const { line, column } = this.#errors.source.position(other.at[0]);
    const what = `the names ${name} and ${other.name} (line ${line}, column ${column}) ${how}`;
    const todo = `if they are two things, call this one otherwise, such as ${name}-2, here and wherever the plan names it; if they are one, take this entry out and write ${other.name} everywhere`;
    this.#errors.add(at, `${what}: ${todo}`);
  }
}
