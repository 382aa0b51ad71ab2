/** An answers file: the same words as the flags, one key a line, with all that is wrong told at its place. */
import { addIssues } from '../../plan/issues.ts';
import type { PlanError } from '../../plan/plan.ts';
import { type ReadTree, readTree } from '../../plan/read.ts';
import { isTreeMap, type Tree, type TreeMap } from '../../plan/tree.ts';
import type { AnswerProblem } from './answering.ts';
import { answersSchema, KEYS, type Key } from './questions.ts';

export interface AnswersFile {
  readonly texts: ReadonlyMap<Key, string>;
  /** errors of the file itself, with these problems of answers that stand in it, in file order */
  errorsWith(problems: readonly AnswerProblem[]): readonly PlanError[];
}

/** `[saw 6 ft, planer 4 ft]` and `{saw: 6 ft}` as they would be typed in one line; undefined for what is neither. */
function inOneLine(value: Tree): string | undefined {
  if (typeof value === 'string') return value;
  if (value === null) return undefined;
  const items = Array.isArray(value)
    ? value
    : Object.entries(value).map(([name, length]) =>
        typeof length === 'string' ? `${name} ${length}` : null,
      );
  return items.every((item) => typeof item === 'string') ? items.join(', ') : undefined;
}

const isKey = (key: string): key is Key => (KEYS as readonly string[]).includes(key);

/** Reads an answers file; what is no file of answers at all comes back as errors. */
export function readAnswersFile(
  bytes: string | Uint8Array,
  file: string,
): AnswersFile | readonly PlanError[] {
  const read = readTree(bytes, file);
  if (!('tree' in read)) return read;
  const { tree, errors, span } = read;
  if (!isTreeMap(tree)) {
    errors.add(span, 'expected answers, a key and an answer a line, such as practice: nec');
    return errors.list();
  }
  return new Answers(read, tree);
}

class Answers implements AnswersFile {
  readonly texts = new Map<Key, string>();
  readonly #read: ReadTree;
  readonly #tree: TreeMap;

  constructor(read: ReadTree, tree: TreeMap) {
    this.#read = read;
    this.#tree = tree;
    for (const [key, value] of Object.entries(tree)) {
      const text = inOneLine(value);
      if (text === undefined) continue;
      tree[key] = text;
      if (isKey(key)) this.texts.set(key, text);
    }
    const result = answersSchema().safeParse(tree);
    // What is wrong with the text of an answer is told beside the other answers.
    const issues = (result.error?.issues ?? []).filter((issue) => issue.code !== 'custom');
    addIssues(read.errors, read.spots, tree, answersSchema(), issues, {
      name: '',
      at: read.span,
      what: 'an answers file',
    });
  }

  errorsWith(problems: readonly AnswerProblem[]): readonly PlanError[] {
    const { errors, spots, span } = this.#read;
    for (const { key, problem } of problems) {
      const spot = spots.of(this.#tree).get(key);
      if (spot !== undefined && !this.texts.has(key)) continue;
      errors.add(spot?.value ?? [span[0], span[0] + 1], `${key}: ${problem}`);
    }
    return errors.list();
  }
}
