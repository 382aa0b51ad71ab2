/** What a schema cannot say of a part: fields that need each other, or contradict each other. */
import type { Errors, Span } from './errors.ts';
import type { Subject } from './issues.ts';
import { type AnyFields, rowOf } from './kinds/kinds.ts';
import type { Spots, Tree, TreeMap } from './tree.ts';

/** Adds the errors of a part whose fields each are well; returns the keys they stand in. */
export function checkPart(
  errors: Errors,
  spots: Spots,
  tree: TreeMap,
  fields: AnyFields,
  subject: Subject,
  skip: ReadonlySet<string> = new Set(),
): Set<string> {
  const broken = new Set<string>();
  const add = (path: readonly (string | number)[], text: string) => {
    if (skip.has(String(path[0]))) return;
    broken.add(String(path[0] ?? 'kind'));
    errors.add(spanAt(tree, path, spots, subject.at), text, subject.name);
  };
  rowOf(fields.kind).check?.(fields, add, (key) => key in tree);
  return broken;
}

function spanAt(tree: Tree, path: readonly (string | number)[], spots: Spots, at: Span): Span {
  let node: Tree | undefined = tree;
  let span = at;
  for (const step of path) {
    if (typeof node !== 'object' || node === null) break;
    const spot = spots.of(node).get(String(step));
    if (spot === undefined) break;
    const next: Tree | undefined = (node as TreeMap)[String(step)];
    span = typeof next === 'object' ? spot.key : spot.value;
    node = next;
  }
  return span;
}
