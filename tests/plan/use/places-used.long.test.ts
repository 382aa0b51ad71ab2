/** What stands beside the fields of parts and cables bears on some answer too: the head, runs, intents and a part's own marks. */
import { describe, expect, it } from 'vitest';
import { isMap, parseDocument } from 'yaml';
import { judge } from '../../../src/findings/judge.ts';
import { readPlan } from '../../../src/plan/read.ts';
import { checkDocument } from '../../../src/report/check.ts';
import { Study } from '../../../src/study/study.ts';
import { PLANS, tellsApart, type Value, withField } from './changed-plans.ts';
import { INTENT as INTENT_SCHEMA, kindsIn, RUN_FORMS, root, type Schema } from './published-schema.ts';

const optional = (s: Schema) => Object.keys(s.properties!).filter((f) => !s.required?.includes(f));

/** Path of the field, and two values; an undefined one leaves it out. */
type Case = readonly [base: string, path: readonly (string | number)[], a: Value | undefined, b: Value];
const plan = (name: string) => PLANS.find(([file]) => file === `${name}.yaml` || file === name)![1];
const differs = ([base, path, a, b]: Case) =>
  tellsApart(withField(plan(base), path, a), withField(plan(base), path, b));

const FAN = ['intent', 'fan'];
const INTENT: Readonly<Record<string, Case>> = {
  'runs-on': ['dc-chain', ['intent', 'collector', 'runs-on'], ['bandsaw', 'planer', 'router'], ['bandsaw']],
  'blocked-by': ['armed', [...FAN, 'blocked-by'], undefined, ['STOP', 'OL']],
  'stays-on-after': ['seal-in', [...FAN, 'stays-on-after'], undefined, ['START']],
  'stopped-by': ['seal-in', [...FAN, 'stopped-by'], ['STOP'], ['saw']],
  'run-on': ['stored-delay', [...FAN, 'run-on'], '1 s', '500 s'],
  'lit-when': ['lamps', ['intent', 'ready', 'lit-when'], 'all-shut', 'any-open'],
  'if-supply-fails': ['dc-chain', ['intent', 'collector', 'if-supply-fails'], 'stopped', 'running'],
};
const CABLE: Readonly<Record<string, Case>> = {
  length: ['dc-chain', ['runs', 0, 'length'], '1 m', '90 m'],
  name: ['dc-chain', ['runs', 0, 'name'], 'north', 'south'],
  route: ['dc-chain', ['runs', 0, 'route'], 'attic', 'floor'],
  slack: ['dc-chain', ['runs', 0, 'slack'], '0 %', '80 %'],
  'marked-as': ['fixed-motor', ['runs', 4, 'marked-as'], undefined, { white: 'red' }],
};
/** The gates of the chain on one run. */
const along = (lengths: string): string =>
  plan('dc-chain').replace(
    / {2}- \{cable: bell, length: 4 m.*\n.*length: 3 m.*\n/,
    `  - {cable: bell, ${lengths}, along: [bandsaw, planer, router], cores: {red: COM, white: NO}}\n`,
  );
const LINK: Readonly<Record<string, Case>> = {
  name: ['armed', ['runs', 3, 'name'], 'north', 'south'],
  route: ['armed', ['runs', 3, 'route'], 'attic', 'floor'],
  length: ['armed', ['runs', 3, 'length'], '1 cm', '19 cm'],
};
const TOP: Readonly<Record<string, Case>> = {
  practice: ['one-gate', ['practice'], 'nec', 'iec'],
  ambient: ['dc-chain', ['ambient'], '10 °C', '60 °C'],
};

describe('the head of a plan', () => {
  const fields = Object.keys(root.properties!).filter(
    (f) => !['format', 'stock', 'parts', 'runs', 'intent', 'title'].includes(f),
  );
  it.each(fields)('%s', (field) => expect(differs(TOP[field]!)).toBe(true));
  it('title', () => {
    const shown = (title: string) => {
      const read = readPlan(withField(plan('one-gate'), ['title'], title), 'use.yaml');
      if (!read.ok) throw new Error('cannot be read');
      return JSON.stringify(checkDocument(judge(Study.of(read.plan))));
    };
    expect(shown('One')).not.toBe(shown('Two'));
  });
});

describe('a run', () => {
  const { link, cable } = RUN_FORMS;
  it.each(['length', ...optional(cable)])('of cable: %s', (f) => expect(differs(CABLE[f]!)).toBe(true));
  it.each(optional(link))('link: %s', (f) => expect(differs(LINK[f]!)).toBe(true));
});

describe('a run along several parts', () => {
  const changed = (field: string, a: Value | undefined, b: Value) =>
    tellsApart(
      withField(along('length: 4 m'), ['runs', 2, field], a),
      withField(along('length: 4 m'), ['runs', 2, field], b),
    );
  it('has the fields of a cable besides its own', () => {
    expect(optional(RUN_FORMS.along).sort()).toEqual(
      ['length', 'lengths', ...Object.keys(CABLE).filter((f) => f !== 'length')].sort(),
    );
  });
  it.each(['length', 'name', 'route', 'slack'])('%s', (field) => {
    const [, , a, b] = CABLE[field]!;
    expect(changed(field, a, b)).toBe(true);
  });
  it('lengths', () => {
    expect(tellsApart(along('lengths: [4 m, 3 m]'), along('lengths: [4 m, 60 m]'))).toBe(true);
  });
});

describe('an intent', () => {
  it.each(optional(INTENT_SCHEMA))('%s', (field) => expect(differs(INTENT[field]!)).toBe(true));
});

describe("a part's own marks", () => {
  const kinds = kindsIn('parts')
    .flatMap(({ kind, of }) => (of.properties?.marks === undefined ? [] : [kind]))
    // one terminal that has no second to be taken for, and none that is named
    .filter((kind) => kind !== 'box' && kind !== 'joint');
  it.each(kinds)('%s', (kind) => {
    expect(PLANS.some(([, text]) => swapsAnswer(text, kind))).toBe(true);
  });
});

/** Two terminals of a part, written in the runs by marks that mean the one and the other, and the other way round. */
function swapsAnswer(text: string, kind: string): boolean {
  const parts = parseDocument(text).get('parts');
  const read = readPlan(text, 'use.yaml');
  if (!isMap(parts) || !read.ok) return false;
  for (const { name, kind: own } of read.plan.parts.values()) {
    if (own !== kind || !isMap(parts.get(name))) continue;
    const end = new RegExp(`\\b${name}\\.([\\w+~-]+)`, 'g');
    const written = [...new Set([...text.matchAll(end)].map((m) => m[1] ?? ''))];
    const [a, b] = written;
    if (a === undefined || b === undefined) continue;
    const marked = text.replaceAll(end, (whole: string, terminal: string) =>
      terminal === a ? `${name}.one` : terminal === b ? `${name}.other` : whole,
    );
    const as = (one: string, other: string) => withField(marked, ['parts', name, 'marks'], { one, other });
    const both = [as(a, b), as(b, a)] as const;
    if (both.every((t) => readPlan(t, 'use.yaml').ok) && tellsApart(...both)) return true;
  }
  return false;
}
