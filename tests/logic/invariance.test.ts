import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { parseDocument, YAMLMap, YAMLSeq } from 'yaml';
import { share, WHOLE } from '../helpers/share.ts';
import { reportOf } from './product.ts';
import { randomPlan } from './random-plan.ts';

/** How a plan is written down must not change what is said of it: names, order, direction of a core, a joint more. */
type Doc = ReturnType<typeof parseDocument>;

const outcomes = new Map<string, ReturnType<typeof outcome>>();
/** That of a plan as it stands, which is held against several changes. */
const outcomeBefore = (text: string) => {
  const found = outcomes.get(text) ?? outcome(text);
  outcomes.set(text, found);
  return found;
};

const outcome = (text: string) => {
  const r = reportOf(text);
  // A motor listed ahead of the outlet it plugs into is named beside that outlet, so this one is counted once.
  // Where mains meets the loop, a coil is judged by the first source of the plan that reaches it.
  const met = r.findings.some((f) => f.id === 'mains-meets-low-voltage');
  const ids = r.findings
    .map((f) => f.id)
    .filter((id, i, all) => id !== 'earth-broken' || all.indexOf(id) === i)
    .filter((id) => !(met && id.startsWith('coil-')));
  return { verdict: r.verdict, ids: ids.sort(), holds: r.logic.holds };
};

function coresOf(doc: Doc): YAMLSeq[] {
  const found: YAMLSeq[] = [];
  for (const run of (doc.get('runs') as YAMLSeq).items) {
    if (!(run instanceof YAMLMap)) continue;
    const cores = run.get('cores');
    if (cores instanceof YAMLMap) for (const pair of cores.items) found.push(pair.value as YAMLSeq);
  }
  return found;
}

const partNames = (doc: Doc): string[] => (doc.get('parts') as YAMLMap).items.map((p) => String(p.key));

/** Every part gets another name; words that are not names of parts stay. */
function renamed(text: string): string {
  const names = partNames(parseDocument(text));
  // names turn round in the alphabet, so that nothing can hang on their order
  const to = new Map(names.map((n, i) => [n, `x${String(names.length - i).padStart(3, '0')}`]));
  const doc = parseDocument(text);
  const swap = (s: string): string => {
    const [head = '', ...rest] = s.split('.');
    return to.has(head) ? [to.get(head)!, ...rest].join('.') : s;
  };
  const each = (node: unknown): void => {
    if (node instanceof YAMLSeq) for (const item of node.items) rename(item, node);
    if (node instanceof YAMLMap) for (const pair of node.items) rename(pair.value, node);
  };
  const rename = (node: unknown, _in: unknown): void => {
    if (node && typeof node === 'object' && 'value' in node && typeof node.value === 'string')
      node.value = swap(node.value);
    else each(node);
  };
  const parts = doc.get('parts') as YAMLMap;
  for (const pair of parts.items) {
    const key = pair.key as { value: string };
    key.value = to.get(key.value)!;
    const fields = pair.value as YAMLMap;
    for (const name of ['plugged-into', 'fed-from', 'holds', 'returns-through']) {
      const at = fields.items.find((p) => String(p.key) === name);
      if (at) rename(at.value, fields);
    }
  }
  for (const run of (doc.get('runs') as YAMLSeq).items) {
    const link = (run as YAMLMap).get('link');
    if (link) each(link);
  }
  for (const core of coresOf(doc)) each(core);
  const intent = doc.get('intent');
  if (intent instanceof YAMLMap)
    for (const pair of intent.items) {
      const key = pair.key as { value: string };
      key.value = swap(key.value);
      rename(pair.value, intent);
    }
  return doc.toString({ lineWidth: 0 });
}

function reordered(text: string, turn: number): string {
  const doc = parseDocument(text);
  for (const key of ['parts', 'runs']) {
    const { items } = doc.get(key) as YAMLMap | YAMLSeq;
    const by = turn % items.length;
    items.push(...(items.splice(0, by) as never[]));
    items.reverse();
  }
  return doc.toString({ lineWidth: 0 });
}

function turnedRound(text: string, which: number): string {
  const doc = parseDocument(text);
  coresOf(doc).forEach((core, i) => {
    if ((which >> (i % 20)) & 1) core.items.reverse();
  });
  return doc.toString({ lineWidth: 0 });
}

/** One core of the plan passes a new joint half way. */
function split(text: string, which: number): string {
  const doc = parseDocument(text);
  const runs = doc.get('runs') as YAMLSeq;
  const alone = runs.items.filter((r): r is YAMLMap => {
    const cores = (r as YAMLMap).get('cores');
    return cores instanceof YAMLMap && cores.items.length === 1;
  });
  if (alone.length === 0) return text;
  const run = alone[which % alone.length]!;
  const core = (run.get('cores') as YAMLMap).items[0]!;
  const second = run.clone() as YAMLMap;
  const other = (second.get('cores') as YAMLMap).items[0]!.value as YAMLSeq;
  (core.value as YAMLSeq).set(1, 'half-way');
  other.set(0, 'half-way');
  runs.items.push(second);
  (doc.get('parts') as YAMLMap).set('half-way', doc.createNode({ kind: 'joint' }));
  return doc.toString({ lineWidth: 0 });
}

const CHANGES: readonly (readonly [string, (text: string, n: number) => string])[] = [
  ['renamed', renamed],
  ['reordered', reordered],
  ['cores turned round', turnedRound],
  ['a joint more', split],
];

const tapes = fc.array(fc.nat(119), { minLength: 20, maxLength: 90, size: 'max' });

it.each(CHANGES)('random plans, %s: the same verdict and findings', { timeout: 60_000 }, (_, change) => {
  fc.assert(
    fc.property(tapes, fc.nat(1 << 20), (tape, n) => {
      const text = randomPlan(tape);
      expect(outcome(change(text, n))).toEqual(outcomeBefore(text));
    }),
    { numRuns: share(25), seed: 40 },
  );
});

const folders = ['../../examples/', '../../examples/wrong/'].map((f) => new URL(f, import.meta.url));
const files = folders.flatMap((folder) =>
  readdirSync(folder)
    .filter((f) => f.endsWith('.yaml'))
    .map((f) => new URL(f, folder)),
);

it.each(CHANGES.slice(0, 3))(
  'the examples, %s: the same verdict and findings',
  { timeout: 60_000 },
  (_, change) => {
    for (const file of files.filter((_, i) => i % (WHOLE ? 3 : 20) === 0)) {
      const text = readFileSync(file, 'utf8');
      expect([file.pathname.split('/').pop(), outcome(change(text, 0xa5a5a))]).toEqual([
        file.pathname.split('/').pop(),
        outcomeBefore(text),
      ]);
    }
  },
);
