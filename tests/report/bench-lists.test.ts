/** The pages of `wirelist` and `materials`. */
import { parse } from 'csv-parse/sync';
import { describe, expect, it } from 'vitest';
import { METHOD_WORDS } from '../../src/lists/end-methods.ts';
import { materials as worked } from '../../src/lists/materials.ts';
import type { Materials } from '../../src/lists/materials-model.ts';
import { wireList } from '../../src/lists/wirelist.ts';
import type { WireList } from '../../src/lists/wirelist-model.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { asCsv } from '../../src/report/forms/csv.ts';
import { asMarkdown } from '../../src/report/forms/markdown.ts';
import { asText } from '../../src/report/forms/text.ts';
import { materialsDocument, materialsTable } from '../../src/report/materials.ts';
import { sectionNotes } from '../../src/report/section-notes.ts';
import { WIRE_LISTS, wireListDocument, wireListTable } from '../../src/report/wire-list.ts';
import { Study } from '../../src/study/study.ts';
import { columns } from '../../src/text/wrap.ts';
import { example, exampleNames } from '../helpers/example-plans.ts';
import { planOf } from '../helpers/plan-of.ts';
import { sampled, WHOLE } from '../helpers/share.ts';

function wires(plan: Plan, reels: readonly number[] = []): WireList {
  const list = wireList(Study.of(plan), { any: reels, own: new Map() });
  if ('tooLong' in list) throw new Error('too long');
  return list;
}
const bought = new Map<Plan, Materials>();
/** Worked out once for each plan. */
function materials(plan: Plan): Materials {
  const known = bought.get(plan) ?? worked(Study.of(plan));
  bought.set(plan, known);
  return known;
}
const wireDocument = (plan: Plan, reels: readonly number[] = []) =>
  wireListDocument(
    wires(plan, reels),
    plan.title,
    { methods: METHOD_WORDS, notes: sectionNotes(plan) },
    WIRE_LISTS,
  );
const goods = (plan: Plan) => materialsDocument(materials(plan), plan.title);
const text = (plan: Plan, width: number, unicode = true) => {
  const look = { width, unicode };
  return [asText(wireDocument(plan, [20_000]), look), asText(goods(plan), look)];
};
const widest = (page: string) => Math.max(...page.split('\n').map(columns));

const HOSTILE = planOf(`title: "T\\u001b[31m <script>|x| \\u202e"
stock: {wire: {kind: cable, gauge: 20 AWG, cores: 2, insulation: 150 V}}
parts:
  PS1: {kind: supply, output: 12 V DC, limit: 1 A}
  P1: {kind: plug, volts: 120 V AC, pattern: "=cmd|'/c calc'!A0\\u001b[2J"}
  日本語: {kind: joint}
runs:
  - {cable: wire, length: 1 m, name: "=1+1", route: "@SUM(A1)\\u0007, \\"up\\" | <b>", cores: {"<b>|red|": [PS1.+, 日本語]}}
`);

describe.each(sampled(exampleNames(), 30))('%s', (name) => {
  const plan = example(name);

  it.each([40, 80, 132])('keeps to %d columns', (width) => {
    for (const page of text(plan, width)) expect(widest(page)).toBeLessThanOrEqual(width);
  });

  it('comes back from CSV as it went in', () => {
    const list = wires(plan);
    const rows: string[][] = parse(asCsv(wireListTable(list, 'wires')));
    expect(rows.slice(1).map((r) => Number(r[0]))).toEqual(list.wires.map((w) => w.number));
    expect(rows.slice(1).map((r) => r.slice(2, 4))).toEqual(
      list.wires.map((w) => [w.from.terminal, w.to.terminal]),
    );
    const labels: string[][] = parse(asCsv(wireListTable(list, 'labels')));
    expect(labels.slice(1).map((r) => r[2])).toEqual(list.labels.map((l) => l.text));
    const cuts: string[][] = parse(asCsv(wireListTable(list, 'cuts')));
    expect(cuts).toHaveLength(1 + list.cuts.reduce((n, c) => n + c.pieces.length, 0));
    const made = materials(plan);
    const rowsBought: string[][] = parse(asCsv(materialsTable(made)));
    expect(rowsBought).toHaveLength(
      1 + made.items.length + made.cables.length + made.joints.length + made.small.length,
    );
  });
});

describe('hostile text', () => {
  const all = () => [
    ...text(HOSTILE, 80),
    asMarkdown(wireDocument(HOSTILE)),
    asMarkdown(goods(HOSTILE)),
    ...WIRE_LISTS.map((part) => asCsv(wireListTable(wires(HOSTILE), part)).replaceAll('\r\n', '\n')),
    asCsv(materialsTable(materials(HOSTILE))).replaceAll('\r\n', '\n'),
  ];

  it('reaches no terminal raw', () => {
    for (const page of all()) expect(page).not.toMatch(/[^\n\P{Cc}]|[\u202a-\u202e\u2066-\u2069]/u);
  });

  it('is no markup', () => {
    for (const page of all().slice(2, 4)) expect(page).not.toMatch(/<[a-z]/i);
  });

  it('is no formula', () => {
    const tables = [
      ...WIRE_LISTS.map((p) => asCsv(wireListTable(wires(HOSTILE), p))),
      asCsv(materialsTable(materials(HOSTILE))),
    ];
    for (const table of tables)
      for (const field of (parse(table) as string[][]).flat()) expect(field).not.toMatch(/^[=+\-@]/);
  });

  it('is spelled out where the terminal has ASCII alone', () => {
    for (const page of text(HOSTILE, 80, false)) expect(page).toMatch(/^[\n -~]*$/);
  });
});

describe('a plan that does not pass', () => {
  const plan = example('wrong/coil-24-on-12');

  it('says so before its lists', () => {
    for (const page of [...text(plan, 80), asMarkdown(wireDocument(plan)), asMarkdown(goods(plan))])
      expect(page.replace(/\s+/g, ' ')).toMatch(/Note: this plan fails the check: .*K1/);
  });

  it('gives no least figure and claims nothing of ratings', () => {
    for (const name of exampleNames('wrong').slice(0, WHOLE ? 12 : 2)) {
      const list = materials(example(name));
      const page = asText(materialsDocument(list, 'x'), { width: 80 }).replace(/\s+/g, ' ');
      if (list.check.verdict !== 'fail') continue;
      expect(page, name).toContain('Least ratings are not worked out, because the plan fails its check.');
      expect(page, name).not.toMatch(/still passes|nothing that the checks|no check looks|in the tables/);
      for (const x of [...list.items, ...list.cables]) {
        expect(x.least).toEqual([]);
        expect(x.untold.every((u) => u === 'not worked out, because the plan fails its check')).toBe(true);
      }
    }
  });

  it('is not said of one that does', () => {
    for (const page of text(example('saltmarsh-lane'), 80)) expect(page).not.toContain('Note:');
  });
});

describe('the total', () => {
  const list = materials(example('saltmarsh-lane'));
  const end = (more: object) =>
    asText(materialsDocument({ ...list, ...more }, 'x'), { width: 80 })
      .trimEnd()
      .split('\n\n')
      .at(-1);

  it('never hides what has no price', () => {
    expect(end({})).toBe('No price is given in the plan, so there is no total.');
    expect(end({ total: 12.5, unpriced: ['K1', 'wire labels'] })).toBe(
      'Total of what has a price: 12.50. Without a price: K1, wire labels.',
    );
    expect(end({ total: 12.5, unpriced: [] })).toBe('Total: 12.50.');
  });
});
