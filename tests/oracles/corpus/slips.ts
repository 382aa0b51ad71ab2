/** What every kind of slip in the data of a plan is made with. */
import { isMap, isScalar, type parseDocument } from 'yaml';
import type { Splice } from './sheet.ts';

export type Doc = ReturnType<typeof parseDocument>;
export interface Slip {
  name: string;
  kind: string;
  /** names of parts or stock items at fault */
  parts: string[];
  edits: Splice[];
}

/** Replaces the scalar at a path of the document; none when it is not there. */
export function put(doc: Doc, path: (string | number)[], text: string): Splice[] {
  const node = doc.getIn(path, true);
  if (!isScalar(node) || !node.range) return [];
  return [{ from: node.range[0], to: node.range[1], put: text }];
}

export const textAt = (doc: Doc, path: (string | number)[]): string => String(doc.getIn(path) ?? '');

/** Paths of all maps in `stock` and `parts` that carry this kind. */
export function withKind(doc: Doc, kind: string): { path: string[]; name: string }[] {
  return ['stock', 'parts'].flatMap((top) => {
    const map = doc.get(top);
    if (!isMap(map)) return [];
    return map.items.flatMap((p) => {
      const name = isScalar(p.key) ? String(p.key.value) : '';
      return textAt(doc, [top, name, 'kind']) === kind ? [{ path: [top, name], name }] : [];
    });
  });
}

/** Names of the parts that are, or take their fields from, the item. */
export function usersOf(doc: Doc, item: string): string[] {
  const parts = doc.get('parts');
  if (!isMap(parts)) return [item];
  const users = parts.items.map((p) => String(isScalar(p.key) ? p.key.value : ''));
  return [item, ...users.filter((n) => textAt(doc, ['parts', n, 'from']) === item)];
}
