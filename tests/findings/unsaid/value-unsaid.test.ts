/** What is judged at both ends, what is asked for, and what a stated figure does. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { judge } from '../../../src/findings/judge.ts';
import { defaults } from '../../../src/ratings/defaults.ts';
import { Study } from '../../../src/study/study.ts';
import { examplePath } from '../../helpers/example-plans.ts';
import { planOf } from '../../helpers/plan-of.ts';

const right = readFileSync(examplePath('plover-loft'), 'utf8');

/** The report of a plan that passes with pieces of its text replaced. */
function having(...changes: readonly (readonly [string, string])[]) {
  const text = changes.reduce((t, [from, to]) => {
    expect(t, from).toContain(from);
    return t.replace(from, () => to);
  }, right);
  return judge(Study.of(planOf(text)));
}

const doubts = (report: ReturnType<typeof having>) =>
  report.findings.filter((f) => f.severity === 'doubt').map((f) => `${f.question} ${f.id}: ${f.fix}`);

describe('a figure left out', () => {
  it('passes where it passes at both ends', () => {
    // 12 V DC relay to 16 A and above: 0.15 to 2 W, relay makers' data; 1 A gives them all, and 24 V insulation is no matter.
    const report = having(['      resistance: 155 ohm\n', ''], ['most: 130 %', 'most: 140 %']);
    expect(report.verdict).toBe('pass');
    // Volts are told for what such coils usually draw, and that is said.
    expect(report.coils.every((c) => c.volts.min !== null && c.margin !== null)).toBe(true);
    const { value, basis } = defaults.coilWattsDcLarge;
    expect(report.defaults.join('\n')).toContain(`coil power told as ${value} W (${basis}`);
  });

  it('is a doubt that names the field and the value where it fails at one end', () => {
    // An adapter that is not regulated rises 30 to 75 % (readings on plug-in adapters): 15.6 V and more on a coil for 13.2 V.
    const report = having(['regulation: regulated, tolerance: 2 %, ', ''], ['most: 130 %', 'most: 110 %']);
    expect(report.verdict).toBe('cannot-tell');
    expect(doubts(report)).toEqual(['4 value-unsaid: State regulation: of PS1 (regulated settles it).']);
  });

  it('stays a fault where it fails at both ends', () => {
    const report = having([
      'output: 12 V DC, limit: 1 A, regulation: regulated, tolerance: 2 %',
      'output: 5 V DC, limit: 1 A',
    ]);
    expect(report.verdict).toBe('fail');
    expect(report.findings.map((f) => f.id)).toContain('coil-too-low');
  });

  it('tells how much is enough', () => {
    const [doubt] = doubts(having(['tolerance: 2 %, ', ''], ['pull-in: 75 %', 'pull-in: 78 %']));
    expect(doubt).toMatch(/^4 value-unsaid: State .*tolerance: of PS1 \([\d.]+ % or less settles it\)/);
  });
});

describe('what has no usual value is asked for', () => {
  it('the way a lever is mounted, and both questions stay open', () => {
    const report = having(['pressed-when: open, ', '']);
    expect(report.verdict).toBe('cannot-tell');
    expect(report.questions.slice(1, 3).map((q) => q.answer)).toEqual(['cannot tell', 'cannot tell']);
  });

  it('a gate that is right only if its lever is mounted the other way is no fault', () => {
    const report = having(
      ['pressed-when: open, ', ''],
      ['white: [jigsaw-bench.NO, belt-sander.NO]', 'white: [jigsaw-bench.NC, belt-sander.NC]'],
      ['white: [belt-sander.NO, K1.A1]', 'white: [belt-sander.NC, K1.A1]'],
    );
    expect(report.verdict).toBe('cannot-tell');
  });

  it('practice, where no pattern tells it; a pattern settles it and the report says so', () => {
    expect(having(['practice: nec\n', '']).plan).toMatchObject({ practice: 'nec', practiceFrom: 'patterns' });
    expect(having(['practice: nec\n', '']).verdict).toBe('pass');
    const open = having(
      ['practice: nec\n', ''],
      ['pattern: NEMA 5-15, breaker', 'breaker'],
      ['outlet, pattern: NEMA 5-15', 'outlet'],
    );
    expect(open.plan.practiceFrom).toBe('taken');
    expect(doubts(open).join()).toContain('State practice:');
  });

  it('a fuse of no stated rating', () => {
    const report = having(
      ['  neutral: {kind: joint}', '  neutral: {kind: joint}\n  F1: {kind: fuse}'],
      ['red: [PS1.+, jigsaw-bench.COM]', 'red: [F1.2, jigsaw-bench.COM]'],
      ['  # mains', '  - {link: [PS1.+, F1.1]}\n  # mains'],
    );
    expect(report.verdict).toBe('cannot-tell');
    expect(doubts(report).join()).toContain('rating: of F1');
  });
});

describe('a stated figure does no worse than the same figure taken', () => {
  it.each([
    ['tolerance: 2 %, ', `tolerance: ${defaults.regulatedTolerance.value * 100} %, `],
    ['hot-rise: 30 K', `hot-rise: ${defaults.hotRiseRelay.value} K`],
    ['tolerance: 10 %\n', `tolerance: ${defaults.coilTolerance.value * 100} %\n`],
    ['pull-in: 75 %', `pull-in: ${defaults.pullInDcRelay.value * 100} %`],
  ])('%s', (field, stated) => {
    const grave = (r: ReturnType<typeof having>) =>
      r.findings.filter((f) => ['fault', 'warning', 'danger'].includes(f.severity));
    expect(grave(having([field, stated]))).toEqual([]);
  });

  // IEC 60947-4-1 8.2.1.2 (from memory): 85 % of rated volts, the coil warm.
  it('a contactor with a stated 85 % passes where one without passes', () => {
    const heron = readFileSync(examplePath('heron-slip'), 'utf8');
    const verdict = (pullIn: string) =>
      judge(Study.of(planOf(heron.replace('      pull-in: 75 %\n', pullIn)))).verdict;
    expect([verdict(''), verdict('      pull-in: 85 %\n')]).toEqual(['pass', 'pass']);
  });
});

it('no caution stands on a figure that is only taken', () => {
  const told = (text: readonly (readonly [string, string])[]) => having(...text).findings.map((f) => f.id);
  const thin = ['tolerance: 2 %', 'tolerance: 5 %'] as const;
  const pull = ['pull-in: 75 %', 'pull-in: 78 %'] as const;
  expect(told([thin, pull])).toContain('coil-thin-margin');
  expect(told([thin, pull, ['ambient: 35 °C\n', ''], ['      hot-rise: 30 K\n', '']])).not.toContain(
    'coil-thin-margin',
  );
});
