/** How deeply a YAML text nests, told from its tokens before anything follows the nesting by recursion. */
import type { CST } from 'yaml';

type Below = { readonly key?: CST.Token | null; readonly value?: CST.Token };

/** The tokens that one holds, a level further in; undefined where it is none that holds others. */
function itemsOf(token: CST.Token): readonly Below[] | undefined {
  return 'items' in token ? token.items : undefined;
}

/** Whether maps and lists nest deeper than `most`. */
export function nestsDeeper(tokens: readonly CST.Token[], most: number): boolean {
  let level: CST.Token[] = tokens.flatMap((t) => (t.type === 'document' && t.value ? [t.value] : []));
  for (let depth = 0; level.length > 0; depth++) {
    if (depth > most) return true;
    const below: CST.Token[] = [];
    for (const token of level)
      for (const { key, value } of itemsOf(token) ?? []) {
        if (key) below.push(key);
        if (value) below.push(value);
      }
    level = below;
  }
  return false;
}
