/** The pages of `wirelist` and `materials`. */
import { parse } from 'csv-parse/sync';
import { describe, expect, it } from 'vitest';
import { METHOD_WORDS } from '../../src/lists/end-methods.ts';
import { materials as worked } from '../../src/lists/materials.ts';
import type { Materials } from '../../src/lists/materials-model.ts';
import { type WireList, wireList } from '../../src/lists/wirelist.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { feetWords, listingCsv, listingLines, listingMarkdown } from '../../src/report/lists.ts';
import {
  renderMaterialsCsv,
  renderMaterialsMarkdown,
  renderMaterialsText,
} from '../../src/report/materials.ts';
import {
  renderWireListCsv,
  renderWireListMarkdown,
  renderWireListText,
  WIRE_LISTS,
} from '../../src/report/wirelist.ts';
import { sectionNotes } from '../../src/report/wirelist-notes.ts';
import { Study } from '../../src/study/study.ts';
import { columns } from '../../src/text/wrap.ts';
import { example, exampleNames } from '../example-plans.ts';
import { planOf } from '../plan-of.ts';

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
const words = (plan: Plan) => ({ title: plan.title, methods: METHOD_WORDS, notes: sectionNotes(plan) });
const text = (plan: Plan, width: number, unicode = true) => {
  const look = { width, unicode };
  return [
    renderWireListText(wires(plan, [20_000]), words(plan), WIRE_LISTS, look),
    renderMaterialsText(materials(plan), plan.title, look),
  ];
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

describe.each(exampleNames())('%s', (name) => {
  const plan = example(name);

  it.each([40, 80, 132])('keeps to %d columns', (width) => {
    for (const page of text(plan, width)) expect(widest(page)).toBeLessThanOrEqual(width);
  });

  it('comes back from CSV as it went in', () => {
    const list = wires(plan);
    const rows: string[][] = parse(renderWireListCsv(list, 'wires'));
    expect(rows.slice(1).map((r) => Number(r[0]))).toEqual(list.wires.map((w) => w.number));
    expect(rows.slice(1).map((r) => r.slice(2, 4))).toEqual(
      list.wires.map((w) => [w.from.terminal, w.to.terminal]),
    );
    const labels: string[][] = parse(renderWireListCsv(list, 'labels'));
    expect(labels.slice(1).map((r) => r[2])).toEqual(list.labels.map((l) => l.text));
    const cuts: string[][] = parse(renderWireListCsv(list, 'cuts'));
    expect(cuts).toHaveLength(1 + list.cuts.reduce((n, c) => n + c.pieces.length, 0));
    const made = materials(plan);
    const rowsBought: string[][] = parse(renderMaterialsCsv(made));
    expect(rowsBought).toHaveLength(
      1 + made.items.length + made.cables.length + made.joints.length + made.small.length,
    );
  });
});

describe('hostile text', () => {
  const all = () => [
    ...text(HOSTILE, 80),
    renderWireListMarkdown(wires(HOSTILE), words(HOSTILE), WIRE_LISTS),
    renderMaterialsMarkdown(materials(HOSTILE), HOSTILE.title),
    ...WIRE_LISTS.map((part) => renderWireListCsv(wires(HOSTILE), part).replaceAll('\r\n', '\n')),
    renderMaterialsCsv(materials(HOSTILE)).replaceAll('\r\n', '\n'),
  ];

  it('reaches no terminal raw', () => {
    for (const page of all()) expect(page).not.toMatch(/[^\n\P{Cc}]|[\u202a-\u202e\u2066-\u2069]/u);
  });

  it('is no markup', () => {
    for (const page of all().slice(2, 4)) expect(page).not.toMatch(/<[a-z]/i);
  });

  it('is no formula', () => {
    const tables = [
      ...WIRE_LISTS.map((p) => renderWireListCsv(wires(HOSTILE), p)),
      renderMaterialsCsv(materials(HOSTILE)),
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
    for (const page of [
      ...text(plan, 80),
      renderWireListMarkdown(wires(plan), words(plan), WIRE_LISTS),
      renderMaterialsMarkdown(materials(plan), plan.title),
    ])
      expect(page.replace(/\s+/g, ' ')).toMatch(/Note: this plan fails the check: .*K1/);
  });

  it('gives no least figure and claims nothing of ratings', () => {
    for (const name of exampleNames('wrong').slice(0, 12)) {
      const list = materials(example(name));
      const page = renderMaterialsText(list, 'x', { width: 80, unicode: true }).replace(/\s+/g, ' ');
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

describe('what is done to the power first', () => {
  const source = {
    supply: 'PS1: {kind: supply, output: 12 V DC, limit: 1 A}',
    battery: 'B1: {kind: battery, output: 12 V DC, capacity: 7 Ah}',
    plug: 'P1: {kind: plug, pattern: NEMA 5-20, volts: 120 V AC}',
    fixed: 'P2: {kind: plug, pattern: fixed, breaker: 16 A, volts: 120 V AC}',
  };
  const notes = (...names: (keyof typeof source)[]) =>
    sectionNotes(planOf(`parts:\n${names.map((n) => `  ${source[n]}\n`).join('')}runs: []\n`));

  it('is said of the sources that the plan has', () => {
    expect(notes('supply', 'plug')).toEqual({
      'low voltage': 'Low voltage, with the supply unplugged',
      mains: 'Mains, last of all: plug out, breaker off, and tested dead with a meter',
    });
    expect(notes('battery', 'fixed')).toEqual({
      'low voltage': 'Low voltage, with the battery disconnected',
      mains: 'Mains, last of all: breaker off, locked, and tested dead with a meter',
    });
    expect(notes('supply', 'battery', 'plug', 'fixed')).toEqual({
      'low voltage': 'Low voltage, with the supply unplugged and the battery disconnected',
      mains: 'Mains, last of all: plug out, breaker off, locked, and tested dead with a meter',
    });
  });
});

describe('the total', () => {
  const look = { width: 80, unicode: true };
  const list = materials(example('saltmarsh-lane'));
  const end = (more: object) =>
    renderMaterialsText({ ...list, ...more }, 'x', look)
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

describe('listings', () => {
  const listing = {
    head: ['a', 'b', 'c'],
    rows: [
      ['1', '', 'long words here'],
      ['2', '', 'x'],
    ],
  };

  it('drop empty columns, and become paragraphs where they do not fit', () => {
    expect(listingLines(listing, { width: 30, unicode: true })).toEqual([
      'a  c',
      '1  long words here',
      '2  x',
    ]);
    expect(listingLines(listing, { width: 15, unicode: true })).toEqual([
      '1: c long',
      '    words here',
      '2: c x',
    ]);
    expect(listingMarkdown(listing)).toEqual([
      '| a | c |',
      '| --- | --- |',
      '| 1 | long words here |',
      '| 2 | x |',
    ]);
    expect(listingCsv(listing)).toBe('a,b,c\r\n1,,long words here\r\n2,,x\r\n');
  });

  it('give feet and inches, never too short', () => {
    expect(['0.01', '0.3048', '2.2', '15.24'].map((m) => feetWords(Number(m)))).toEqual([
      ...['1 in', '1 ft', '7 ft 3 in', '50 ft'],
    ]);
    expect(feetWords(0)).toBe('0 in');
  });
});
