/** Several parts with one mistake are one finding with the list of parts; the worst of them lends its figures. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { findingMarks } from '../../src/draw/finding-marks.ts';
import { type Found, finding } from '../../src/findings/finding.ts';
import { judge } from '../../src/findings/judge.ts';
import type { Finding, Report } from '../../src/findings/report-model.ts';
import { reportSchema } from '../../src/findings/report-schema.ts';
import { twinsTogether } from '../../src/findings/twins.ts';
import { check } from '../../src/repair/check.ts';
import { mend } from '../../src/repair/mend.ts';
import { Study } from '../../src/study/study.ts';
import { examplePath } from '../helpers/example-plans.ts';
import { planOf } from '../helpers/plan-of.ts';
import { sampled, WHOLE } from '../helpers/share.ts';

type Change = readonly [RegExp, string];

/** A right example with the same mistake made at several parts. */
function studyWith(name: string, changes: readonly Change[]): Study {
  let text = readFileSync(examplePath(name), 'utf8');
  for (const [from, to] of changes) {
    expect(text).toMatch(from);
    text = text.replace(from, to);
  }
  return Study.of(planOf(text, 'shop.yaml'));
}

const reportWith = (name: string, ...changes: readonly Change[]): Report => check(studyWith(name, changes));

const of = (report: Report, id: Finding['id']) => report.findings.filter((f) => f.id === id);

const WRONG_TABS: Change = [/(bandsaw|planer|router)\.NO/g, '$1.NC'];

describe('the same mistake at several parts of a plan', () => {
  it('gates on the wrong tab are one fault that names every gate', () => {
    const report = judge(studyWith('saltmarsh-lane', [WRONG_TABS]));
    const grave = report.findings.filter((f) => ['danger', 'warning', 'fault'].includes(f.severity));
    expect(grave).toHaveLength(1);
    expect(grave[0]).toMatchObject({
      id: 'gate-on-wrong-tab',
      parts: ['bandsaw', 'planer', 'router'],
      message: 'gates bandsaw, planer and router: cores sit on NC and belong on NO',
      fix: 'Move the white cores from bandsaw.NC to bandsaw.NO, the white cores from planer.NC to planer.NO and the white core from router.NC to router.NO.',
    });
    expect(grave[0]!.cause?.terminals).toHaveLength(6);
    // Moved as told, the plan is the right one again.
    expect(reportWith('saltmarsh-lane').verdict).toBe('pass');
  });

  it.runIf(WHOLE)('two of them are mended together, and check speaks of the same change as mend', () => {
    const study = studyWith('saltmarsh-lane', [[/(planer|router)\.NO/g, '$1.NC']]);
    const [fault] = of(check(study), 'gate-on-wrong-tab');
    expect(fault!.parts).toEqual(['planer', 'router']);
    const [first] = mend(study, { thorough: false }).repairs;
    if (first) expect(fault!.fix).toBe(first.words.join(' '));
    else expect(fault!.repair).toBeNull();
  });

  it.runIf(WHOLE)('two coils that one supply starves are one fault with the figures of the worse', () => {
    const report = reportWith('harrow-sheds', [/24 V DC, limit/, '20 V DC, limit']);
    const [fault, ...more] = of(report, 'coil-too-low');
    expect(more).toEqual([]);
    expect(fault!.parts.slice(0, 2)).toEqual(['K2', 'K1']);
    expect(fault!.message).toMatch(/^K2 gets .*; K1 is short too$/);
    const least = Math.min(...report.coils.map((c) => c.volts.min!));
    expect(fault!.figures[0]!.value).toBeCloseTo(least, 2);
  });

  it.each(
    sampled<[Finding['id'], string, readonly Change[], RegExp, readonly string[]]>(
      [
        [
          'switch-overloaded',
          'harrow-sheds',
          [[/5 A 250 V AC, 5 A 30 V DC\], least: 10 mA 5 V DC/, '50 mA 30 V DC]']],
          /^wide-belt is rated 50 mA and has to carry 137 mA; likewise router, /,
          ['wide-belt', 'router', 'rip-saw', 'planer', 'moulder', 'disc-sander', 'edge-sander'],
        ],
        [
          'coil-unsuppressed',
          'harrow-sheds',
          [[/suppressor: diode .*/, 'suppressor: none']],
          /^nothing quenches the coils of K1 and K2 /,
          ['K1', 'K2'],
        ],
        [
          'earth-broken',
          'harrow-sheds',
          [
            [/, green-yellow: \[B1.PE, X1.PE\]/, ''],
            [/, green-yellow: \[B2.PE, X2.PE\]/, ''],
          ],
          /^X1 has no unbroken protective earth from the plug; likewise X2$/,
          ['X1', 'X2'],
        ],
        [
          'line-neutral-swapped',
          'harrow-sheds',
          [
            [
              /\[(K[12])\.14, (X[12])\.L\], blue: \[K[12]\.24, X[12]\.N\]/g,
              '[$1.14, $2.N], blue: [$1.24, $2.L]',
            ],
          ],
          /^line and neutral change places between P1 and X1; likewise P2 and X2$/,
          ['X1', 'X2'],
        ],
        [
          'sides-share-box',
          'harrow-sheds',
          [[/, divider: true/g, '']],
          /^B1 holds mains and low voltage with no divider between them; likewise B2$/,
          ['B1', 'B2'],
        ],
        [
          'coil-current-unknown',
          'harrow-sheds',
          [
            [/rated: 24 V DC/, 'rated: 24 V AC'],
            [
              /output: 24 V DC, limit: 1 A, regulation: regulated, tolerance: 2 %/,
              'output: 24 V AC, limit: 1 A, regulation: transformer',
            ],
            [/suppressor: diode .*/, 'suppressor: none'],
            [/PS1\.\+/g, 'PS1.~1'],
            [/PS1\.-/g, 'PS1.~2'],
          ],
          /^how much current K1 and K2 draw is not stated$/,
          ['K1', 'K2'],
        ],
        [
          'polarity-reversed',
          'harrow-sheds',
          [
            [/\[line1, K1\.A1\], black: \[minus, K1\.A2\]/, '[line1, K1.A2], black: [minus, K1.A1]'],
            [/\[minus, K2\.A2\]/, '[minus, K2.A1]'],
            [/\[line2, K2\.A1\]/, '[line2, K2.A2]'],
          ],
          /^K1 is fed the wrong way round: .*; likewise K2$/,
          ['K1', 'K2'],
        ],
        [
          'loop-dead',
          'harrow-sheds',
          [[/red: \[PS1\.\+, plus\], /, '']],
          /^no gate starts .*; likewise /,
          [],
        ],
      ],
      4,
    ),
  )('%s is told once', (id, name, changes, message, parts) => {
    const report = reportWith(name, ...changes);
    const told = of(report, id);
    expect(told).toHaveLength(1);
    expect(told[0]!.message).toMatch(message);
    expect(told[0]!.parts).toEqual(expect.arrayContaining([...parts]));
    // What the list alone needs to know does not reach the report, and the format is kept.
    expect(reportSchema.strict().safeParse(report).error).toBeUndefined();
    expect(Object.keys(told[0]!)).not.toContain('twin');
  });

  it('a drawing marks every one of them', () => {
    const report = reportWith('saltmarsh-lane', WRONG_TABS);
    const marks = findingMarks(report.findings);
    expect(['bandsaw', 'planer', 'router'].map((part) => marks.get(part))).toEqual(['!1', '!1', '!1']);
  });
});

describe('twins', () => {
  const plan = planOf(readFileSync(examplePath('saltmarsh-lane'), 'utf8'));
  const one = (name: string, over: Partial<Parameters<typeof finding>[1]> = {}): Found =>
    finding(plan, {
      id: 'switch-underloaded',
      severity: 'caution',
      question: 5,
      parts: [name],
      message: `${name} is worn`,
      why: 'Sawdust.',
      fix: 'Clean it.',
      basis: '-',
      ...over,
    });
  const texts = (list: readonly Found[]) => twinsTogether(list).map((f) => f.message);

  it('are alike where why and what to do are the same, whatever the message', () => {
    expect(texts([one('a'), one('b'), one('c')])).toEqual(['a is worn; likewise b and c']);
    expect(texts([one('a'), one('b', { why: 'Damp.' })])).toHaveLength(2);
    expect(texts([one('a'), one('b', { fix: 'Replace it.' })])).toHaveLength(2);
    expect(texts([one('a'), one('b', { severity: 'fault' })])).toHaveLength(2);
    expect(texts([one('a'), one('a', { message: 'a is burnt' })])).toHaveLength(2);
  });

  it('the worst comes first, and differing remedies each with its part', () => {
    const [told] = twinsTogether([
      one('a', { fix: 'Clean a.', twin: { alike: 'worn', badness: 1 } }),
      one('b', { fix: 'Clean b.', twin: { alike: 'worn', badness: 2 } }),
    ]);
    expect(told).toMatchObject({
      message: 'b is worn; likewise a',
      parts: ['b', 'a'],
      fix: 'For b: Clean b. For a: Clean a.',
    });
  });

  it('words for several take the place of the usual ones', () => {
    const twin = { several: (names: readonly string[]) => ({ message: `${names.length} are worn` }) };
    expect(texts([one('a', { twin }), one('b', { twin })])).toEqual(['2 are worn']);
    expect(texts([one('a', { twin })])).toEqual(['a is worn']);
  });

  it('three hundred of them are one, in bounded words', () => {
    const many = Array.from({ length: 300 }, (_, i) =>
      one(`g${i}`, { fix: `Clean g${i}.`, twin: { alike: '' } }),
    );
    const [told, ...more] = twinsTogether(many);
    expect(more).toEqual([]);
    expect(told!.parts).toHaveLength(300);
    expect(told!.message.length + told!.fix.length).toBeLessThan(300);
  });
});
