/** Changes to a plan that is there: to its bytes and tokens, or to its tree, so that it often stays a plan. */
import { parseDocument, visit } from 'yaml';
import type { Dice } from './dice.ts';
import {
  aKind,
  endsIn,
  fieldOf,
  intentOf,
  isMap,
  mapOf,
  type Node,
  type NodeMap,
  partOf,
  runOf,
  terminal,
  wrong,
} from './grammar.ts';
import { oddText } from './odd-values.ts';
import { yamlText } from './yaml-text.ts';

const TOKENS = [
  '{',
  '}',
  '[',
  ']',
  ':',
  ',',
  '\n',
  ' ',
  '- ',
  '? ',
  '&a ',
  '*a',
  '!!str ',
  '#',
  '"',
  "'",
  '|\n',
  '>\n',
  '---\n',
  '\t',
  '<<: *a',
  '.',
  '~',
  '0',
  '-',
  '%',
  '\0',
  '\ufeff',
  '\r\n',
];

/** Bytes and tokens cut out, doubled, moved, or put in from another plan. */
export function mutatedText(text: string, other: string, dice: Dice): string {
  let out = text;
  for (let n = 1 + dice.few(6); n > 0; n--) {
    const at = dice.below(out.length + 1);
    const to = Math.min(out.length, at + dice.few(dice.chance(0.2) ? 400 : 12));
    const put = [
      () => '',
      () => out.slice(at, to).repeat(2),
      () => out.slice(at, to) + dice.of(TOKENS),
      () => oddText(dice),
      () => other.slice(dice.below(other.length + 1)).slice(0, dice.few(300)),
      () => String.fromCharCode(dice.below(0x250)),
      () => `${dice.below(1e6)}`,
    ][dice.below(7)]!();
    out = out.slice(0, at) + put + out.slice(to);
    // Whole lines and words as well: most of what is cut anywhere is no YAML any more.
    if (dice.chance(0.5)) out = mutatedLine(out, dice);
  }
  return out.slice(0, 100_000);
}

function mutatedLine(text: string, dice: Dice): string {
  const lines = text.split('\n');
  const at = dice.below(lines.length);
  const line = lines[at]!;
  const words = line.split(/(\s+|[{}[\],:])/);
  switch (dice.below(4)) {
    case 0:
      lines.splice(at, 1);
      break;
    case 1:
      lines.splice(at, 0, line);
      break;
    case 2:
      lines.splice(at, 1, dice.of(lines));
      break;
    default:
      words[dice.below(words.length)] = dice.of([...dice.of(lines).split(/[\s{}[\],:]+/), '0']);
      lines[at] = words.join('');
  }
  return lines.join('\n');
}

/** The tree of a text; undefined where it is none. */
function treeOf(text: string): NodeMap | undefined {
  const document = parseDocument(text, {
    schema: 'failsafe',
    uniqueKeys: false,
    merge: false,
    logLevel: 'silent',
  });
  if (document.errors.length > 0) return undefined;
  let aliases = 0;
  visit(document, { Alias: () => void aliases++ });
  if (aliases > 0) return undefined;
  const node = (value: unknown): Node => {
    if (value instanceof Map)
      return mapOf(...[...value].map(([k, v]): [string, Node] => [String(k), node(v)]));
    if (Array.isArray(value)) return value.map(node);
    return typeof value === 'string' ? value : null;
  };
  const tree = node(document.toJS({ mapAsMap: true }));
  return isMap(tree) ? tree : undefined;
}

/** Every place in the tree, as a way to look at it and to put something else there. */
function places(node: Node, found: ((change: (old: Node) => Node) => void)[] = []) {
  const children = Array.isArray(node) ? node.keys() : isMap(node) ? node.pairs.keys() : [];
  for (const i of children) {
    found.push((change) => {
      if (Array.isArray(node)) node[i] = change(node[i]!);
      else if (isMap(node) && node.pairs[i]) node.pairs[i][1] = change(node.pairs[i][1]);
    });
    places(Array.isArray(node) ? node[i]! : (node as NodeMap).pairs[i]![1], found);
  }
  return found;
}

const figure =
  (dice: Dice) =>
  (old: Node): Node =>
    typeof old === 'string' && /\d/.test(old)
      ? old.replace(/\d+(\.\d+)?/, (n) => `${Number(n) * dice.of([0, 0.01, 0.5, 0.9, 1.1, 2, 100, 1e9])}`)
      : old;

/** One change to a plan that leaves it a plan more often than not. */
function changeOnce(tree: NodeMap, other: NodeMap | undefined, dice: Dice): void {
  const parts = fieldOf(tree, 'parts');
  const runs = fieldOf(tree, 'runs');
  if (!isMap(parts) || !Array.isArray(runs)) return;
  const names = parts.pairs.map(([name]) => name);
  const used = endsIn(runs);
  const run = runs.length > 0 ? dice.of(runs) : undefined;
  const ends =
    fieldOf(run, 'link') ??
    (() => {
      const cores = fieldOf(run, 'cores');
      return isMap(cores) && cores.pairs.length > 0 ? dice.of(cores.pairs)[1] : undefined;
    })();
  const changes: (() => void)[] = [
    () => void runs.splice(dice.below(runs.length + 1), 1),
    () => void runs.push(runOf(parts, dice, 0.02, used)),
    () => void (run !== undefined && runs.push(run)),
    () =>
      void (
        Array.isArray(ends) &&
        ends.splice(
          dice.below(ends.length),
          1,
          used.length > 0 && dice.chance(0.9) ? dice.of(used) : terminal(parts, dice, 0.05),
        )
      ),
    () => void (Array.isArray(ends) && ends.reverse()),
    () => void parts.pairs.splice(dice.below(parts.pairs.length + 1), 1),
    () => void parts.pairs.push([`q${dice.below(99)}`, partOf(aKind(dice), dice, 0.01, names)]),
    () => {
      const from = fieldOf(other, 'parts');
      if (isMap(from)) parts.pairs.push(...dice.some(from.pairs, 0.3));
      const more = fieldOf(other, 'runs');
      if (Array.isArray(more)) runs.push(...dice.some(more, 0.3));
    },
    () => dice.of(places(parts))?.((old) => (dice.chance(0.9) ? figure(dice)(old) : wrong(dice))),
    () => dice.of(places(tree))?.(figure(dice)),
    () => {
      const part = dice.of(parts.pairs)?.[1];
      if (isMap(part)) part.pairs.splice(dice.below(part.pairs.length), 1);
    },
    () => {
      const part = dice.of(parts.pairs)?.[1];
      const kind = fieldOf(part, 'kind');
      if (!isMap(part) || typeof kind !== 'string') return;
      const more = partOf(kind, dice, 0.01, names);
      if (isMap(more))
        part.pairs.push(...more.pairs.filter(([k]) => fieldOf(part, k) === undefined).slice(0, 2));
    },
    () => {
      const intent = fieldOf(tree, 'intent');
      if (isMap(intent) && names.length > 0) intent.pairs.push([dice.of(names), intentOf(names, dice, 0.02)]);
      else if (names.length > 0)
        tree.pairs.push(['intent', mapOf([dice.of(names), intentOf(names, dice, 0.02)])]);
    },
    () => void (dice.chance(0.1) && tree.pairs.splice(dice.below(tree.pairs.length), 1)),
  ];
  dice.of(changes)();
}

/** A plan after some changes to its tree; its text where it has no tree that can be changed. */
export function mutatedPlan(text: string, other: string, dice: Dice): string {
  const tree = treeOf(text);
  if (tree === undefined) return mutatedText(text, other, dice);
  const from = dice.chance(0.2) ? treeOf(other) : undefined;
  for (let n = dice.few(6); n > 0; n--) changeOnce(tree, from, dice);
  return yamlText(tree, dice).slice(0, 100_000);
}
