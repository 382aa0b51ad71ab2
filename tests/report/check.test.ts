import { stripVTControlCharacters } from 'node:util';
import { describe, expect, it } from 'vitest';
import type { Report } from '../../src/findings/report-model.ts';
import { logicSentence, verdictLine } from '../../src/findings/report-sentences.ts';
import { quietDocument, renderText } from '../../src/report/check.ts';
import { asText } from '../../src/report/forms/text.ts';
import { columns } from '../../src/text/wrap.ts';
import { failing, finding, report } from './samples.ts';

const quiet = (of: Report) => asText(quietDocument(of), { width: 80 });
const plain = { width: 80, colour: false };
/** Lines with a file's name and line number are left whole, whatever their length. */
const widest = (text: string) =>
  Math.max(
    ...text
      .split('\n')
      .filter((line) => !/\.yaml:\d+$/.test(line))
      .map(columns),
  );

describe('renderText', () => {
  it('starts with the verdict in plain words', () => {
    expect(renderText(report(), plain).split('\n')[0]).toBe('Nothing in this check failed.');
    expect(renderText(failing(), plain).split('\n')[0]).toBe(
      'Do not build this plan as it stands: 1 fault and 1 caution.',
    );
    expect(
      verdictLine(report({ verdict: 'cannot-tell', findings: [finding({ severity: 'doubt' })] })),
    ).toContain('cannot tell');
  });

  it('puts a finding under its question, with all it carries', () => {
    const whole = renderText(failing(), plain);
    expect(whole).toMatch(/^First: .*\nDo: {4}/m);
    const text = whole.slice(whole.indexOf('1. '));
    const order = [
      '2. Does every gate start its load?',
      'No: 2 of 3 gates start the collector',
      'FAULT [gate-dead] shop.yaml:34',
      'Opening the planer gate does not start the collector.',
      'why     The white core',
      'do      Move the white core',
      'basis   common practice',
      'also    The router gate',
      '3. Does the load stop',
      '4. Will the coil',
      'CAUTION [coil-unsuppressed] shop.yaml:12',
      '5. Will the supply',
      'case, from rest, bandsaw open, then planer open and router open',
      '- ambient: 40 °C',
      'With every plan',
    ].map((part) => text.replace(/\s+/g, ' ').indexOf(part.replace(/\s+/g, ' ')));
    expect(order).not.toContain(-1);
    expect(order).toEqual([...order].sort((a, b) => a - b));
  });

  it.each([40, 60, 80, 132])('fills no line beyond %d columns', (width) => {
    expect(widest(renderText(failing(), { width, colour: false }))).toBeLessThanOrEqual(width);
  });

  it('says the same with and without colour', () => {
    const coloured = renderText(failing(), { width: 80, colour: true });
    expect(coloured).toContain('\u001b[');
    expect(stripVTControlCharacters(coloured)).toBe(renderText(failing(), plain));
    expect(renderText(failing(), plain)).not.toContain('\u001b');
  });

  it('prints ASCII alone where asked', () => {
    const odd = report({ defaults: ['shunt 155 Ω ± 10 % at 40 °C', 'Jörg’s 日'] });
    const text = renderText(odd, { width: 80, colour: false, unicode: false });
    expect(text).toMatch(/^[\n -~]*$/);
    expect(text).toContain('155 ohm +/- 10 % at 40 deg C');
    expect(text).toContain("Jorg's \\u65e5");
  });

  it('lets nothing from a plan move the cursor or turn a line', () => {
    const nasty = 'x\u001b[2J\u0007\r\u202eyes\u2066\u200b\u0085\u2028z';
    const bad = finding({
      message: nasty,
      why: nasty,
      fix: nasty,
      basis: nasty,
      also: [{ id: 'gate-dead', message: nasty }],
      id: 'gate-dead',
    });
    const text = renderText(
      report({
        plan: { file: nasty, title: nasty, practice: 'iec' },
        verdict: 'fail',
        findings: [bad],
        defaults: [nasty],
        questions: report().questions.map((q) => ({ ...q, figure: nasty })),
      }),
      plain,
    );
    expect(text).not.toMatch(/[^\P{C}\n]|[\u2028\u2029]/u);
    expect(text).toContain('\\u001b[2J\\u0007\\u000d\\u202eyes');
    expect(quiet(report({ findings: [bad] }))).not.toMatch(/[^\P{C}\n]/u);
  });

  it('shows a finding whose question is missing', () => {
    expect(renderText(report({ questions: [], findings: [finding()] }), plain)).toContain('[gate-dead]');
  });

  it('never claims more than it may', () => {
    for (const practice of ['nec', 'iec'] as const) {
      const text = renderText(report({ plan: { file: 'a', title: 'b', practice } }), plain);
      expect(text).not.toMatch(/\bsafe|compliant|approved/i);
    }
  });
});

describe('one line a finding', () => {
  it('prints one line a finding and the verdict last', () => {
    expect(quiet(failing()).split('\n')).toEqual([
      'shop.yaml:34:5: fault: Opening the planer gate does not start the collector. [gate-dead]',
      'shop.yaml:12:3: caution: K1 has no suppressor. [coil-unsuppressed]',
      'shop.yaml: Do not build this plan as it stands: 1 fault and 1 caution.',
      '',
    ]);
  });
});

const JOINS = { restsOn: 'joins' } as const;

describe('logicSentence', () => {
  it('says what was proved, refuted or left open', () => {
    expect(logicSentence(report().logic)).toContain('all 8 combinations of 3 inputs');
    expect(
      logicSentence({
        inputs: 200,
        combinations: '2^200',
        holds: true,
        holdsAtNominalVolts: true,
        counterexample: null,
        ...JOINS,
      }),
    ).toContain('2^200');
    expect(
      logicSentence({
        inputs: 3,
        combinations: 8,
        holds: null,
        holdsAtNominalVolts: null,
        counterexample: null,
        ...JOINS,
      }),
    ).toContain('could not');
    const atRest = { steps: [], target: 'collector', expected: false, found: true };
    expect(
      logicSentence({
        inputs: 1,
        combinations: 2,
        holds: false,
        holdsAtNominalVolts: false,
        counterexample: atRest,
        ...JOINS,
      }),
    ).toContain('with everything at rest: collector runs, but ought not to.');
  });
});
