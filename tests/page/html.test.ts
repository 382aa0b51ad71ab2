/** The page as text: what is in it, in which order, and what a plan cannot put into it. */
import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import type { FindingId } from '../../src/findings/finding-ids.ts';
import { pageOf } from '../../src/page/build.ts';
import { Study } from '../../src/study/study.ts';
import { example, exampleNames } from '../helpers/example-plans.ts';
import { planOf } from '../helpers/plan-of.ts';
import { sampled, WHOLE } from '../helpers/share.ts';
import { report } from '../report/samples.ts';
import { browserFiles } from './browser-files.ts';
import { hostilePlan, MARKUP, pageFor, pageOfExample } from './pages.ts';

const hash = (text: string) => `'sha256-${createHash('sha256').update(text).digest('base64')}'`;

/** A plan with gates in parallel on one loop. */
function gates(count: number) {
  const names = Array.from({ length: count }, (_, i) => `gate-${i + 1}`);
  const cable = 'cable: {kind: cable, gauge: 20 AWG, cores: 2}, length: 4 m';
  return planOf(`title: Many gates
parts:
  PS1: {kind: supply, output: 12 V DC, limit: 1 A, regulation: regulated}
  K1: {kind: relay, coil: {rated: 12 V DC, resistance: 144 ohm}, contact: {ratings: [10 A 240 V AC]}}
  P1: {kind: plug, volts: 230 V AC}
  M: {kind: motor, volts: 230 V AC, power: 500 W}
${names.map((n) => `  ${n}: {kind: gate, contact: {ratings: [5 A 250 V AC]}}`).join('\n')}
runs:
  - {link: [P1.L, K1.11]}
  - {link: [K1.14, M.L]}
  - {link: [P1.N, M.N]}
  - {link: [PS1.-, K1.A2]}
${names.map((n, i) => `  - {${cable}, cores: {red: [${i === 0 ? 'PS1.+' : `${names[i - 1]}.COM`}, ${n}.COM], white: [${i === 0 ? 'K1.A1' : `${names[i - 1]}.NO`}, ${n}.NO]}}`).join('\n')}
`);
}

describe('a page', () => {
  const page = pageFor(example('saltmarsh-lane'));

  it('lets in its own script and style alone', () => {
    const { script, style } = browserFiles();
    const policy = /http-equiv="Content-Security-Policy" content="([^"]*)"/.exec(page)?.[1];
    expect(policy?.replaceAll('&#39;', "'")).toBe(
      `default-src 'none'; style-src ${hash(style)}; script-src ${hash(script)}; base-uri 'none'; form-action 'none'`,
    );
    expect(page.indexOf('Content-Security-Policy')).toBeLessThan(page.indexOf('<style>'));
  });

  it('tells things in the order in which one asks for them', () => {
    const order = [
      '<h1>Saltmarsh Lane boat shop, collector loop</h1>',
      'Nothing in this check failed.',
      'CAUTION',
      'data-chip="K1"',
      'aria-live="polite"',
      '>bandsaw</span>',
      'id="to-rest"',
      'data-load="collector"',
      '<svg',
      'What the check found',
      'id="truth"',
      'id="wires"',
      'C-UNPLUG',
      'id="plan-data"',
    ].map((text) => page.indexOf(text));
    expect(order).not.toContain(-1);
    expect([...order].sort((a, b) => a - b)).toEqual(order);
  });

  it.each([...sampled(exampleNames(), 6), 'wrong/planer-on-break-tab'])(
    'asks for nothing from anywhere: %s',
    (name) => {
      const html = pageOfExample(name).replaceAll('xmlns="http://www.w3.org/2000/svg"', '');
      expect(html).not.toMatch(
        /https?:|\bsrc\s*=|\bhref\s*=\s*"(?!#)|url\(|@import|\bstyle\s*=|\son[a-z]+\s*=\s*"/,
      );
    },
  );

  it.runIf(WHOLE)('stays below 300 kB with 10 gates', () => {
    expect(Buffer.byteLength(pageFor(gates(10)))).toBeLessThan(300_000);
  });

  it.runIf(WHOLE)('has no column for each of many gates: the row says which is open', () => {
    const heads = /<section id="truth".*?<\/thead>/s.exec(pageFor(gates(30)))![0];
    expect(heads.match(/<th /g)).toHaveLength(5);
    expect(heads).toContain('>K1<');
  });

  it('is written when the circuit cannot be decided', () => {
    expect(pageFor(planOf('parts:\n  J: {kind: joint}\nruns: []\n'))).toContain('nothing to move by hand');
  });
});

describe('text of a plan', () => {
  const page = pageFor(hostilePlan());

  it('is text on the page', () => {
    expect(page).not.toContain('<img');
    expect(page.match(/<script/g)).toHaveLength(2);
    expect(page.match(/<\/script>/g)).toHaveLength(2);
    expect(page.match(/&lt;img src=x onerror=&quot;/g)!.length).toBeGreaterThan(5);
    expect(page).not.toContain(MARKUP);
  });

  it('leaves the data as they were', () => {
    const data = /<script type="application\/json" id="plan-data">(.*?)<\/script>/s.exec(page)![1]!;
    expect(data).not.toContain('<');
    const {
      drawn: { plan },
    } = JSON.parse(data) as {
      drawn: { plan: { parts: [string, number][]; kinds: { pattern?: string }[] } };
    };
    expect(plan.kinds[plan.parts.find(([name]) => name === 'P1')![1]]!.pattern).toBe(MARKUP);
  });

  it('cannot be in the report either', () => {
    const plan = example('saltmarsh-lane');
    const finding = { id: MARKUP as FindingId, severity: 'fault', question: 1, cause: null } as const;
    const texts = {
      message: MARKUP,
      why: MARKUP,
      fix: MARKUP,
      basis: MARKUP,
      also: [{ id: 'gate-dead' as const, message: MARKUP }],
      repair: { words: [MARKUP], edits: [] },
      remedies: [],
    };
    const html = pageOf(
      Study.of(plan),
      report({
        findings: [{ ...finding, ...texts, parts: [], terminals: [], line: 1, column: 1, figures: [] }],
        cautions: [{ id: MARKUP, level: 'danger', text: MARKUP, basis: '' }],
      }),
      browserFiles(),
    );
    expect(html).not.toContain('<img');
    expect(html.match(/<script/g)).toHaveLength(2);
  });

  it('is not let in as script or style', () => {
    const plan = example('saltmarsh-lane');
    expect(() => pageOf(Study.of(plan), report(), { script: '"</script>"', style: '' })).toThrow(
      'hold markup',
    );
    expect(() => pageOf(Study.of(plan), report(), { script: '', style: '</style>' })).toThrow('hold markup');
  });
});
