import { stripVTControlCharacters } from 'node:util';
import { describe, expect, it } from 'vitest';
import type { Report } from '../../src/findings/report-model.ts';
import { logicSentence, verdictLine } from '../../src/findings/report-sentences.ts';
import { checkDocument, quietDocument, renderText } from '../../src/report/check.ts';
import { asMarkdown } from '../../src/report/forms/markdown.ts';
import { asText } from '../../src/report/forms/text.ts';
import { columns } from '../../src/text/wrap.ts';
import { failing, finding, report } from './samples.ts';

const quiet = (of: Report) => asText(quietDocument(of), { width: 80 });
const plain = { width: 80, colour: false };
const widest = (text: string) => Math.max(...text.split('\n').map(columns));

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

  it('says what to do first, then the answers, then what stands behind them, then the cautions', () => {
    const order = [
      'Do not build this plan',
      'FAULT Opening the planer gate does not start the collector. [gate-dead]',
      'Do Move the white core',
      '1. Mains apart from loop? yes: figure 1',
      '2. Each gate starts load? NO: see [gate-dead] above',
      '7. Mains carries motor? yes: figure 7',
      '2. Does every gate start its load?',
      'FAULT [gate-dead], line 34',
      'why The white core',
      'basis common practice',
      'also The router gate',
      'Worth knowing of this plan',
      'CAUTION K1 has no suppressor. [coil-unsuppressed], line 12',
      'do Move the white core',
      'case, from rest, bandsaw open, then planer open and router open',
      '- ambient: 40 °C',
      'Cautions;',
    ];
    for (const text of [
      renderText(failing(), plain),
      asMarkdown(checkDocument(failing())).replace(/[*\\]|^#+ |^- (?=\*)/gm, ''),
    ]) {
      const flat = text.replace(/\s+/g, ' ');
      const places = order.map((part) => flat.indexOf(part));
      expect(places, text).not.toContain(-1);
      expect(places).toEqual([...places].sort((a, b) => a - b));
    }
  });

  it('tells one remedy once for all that it mends, the gravest first', () => {
    const graver = finding({
      severity: 'danger',
      id: 'block-ignored',
      question: 3,
      message: 'STOP is ignored',
    });
    const text = renderText(report({ verdict: 'fail', findings: [finding(), graver] }), plain);
    expect(text).toMatch(
      /^DANGER {3}STOP is ignored \[block-ignored\]\nFAULT {4}Opening [^\n]* \[gate-dead\]\nDo {7}Move/m,
    );
    expect(text.match(/Move the white core/g)).toHaveLength(1);
  });

  it('names the finding that an answer rests on, above where the head has it and below where not', () => {
    const doubt = finding({
      severity: 'doubt',
      id: 'switch-kind-unrated',
      question: 5,
      message: 'no rating',
    });
    const questions = report().questions.map((q) =>
      q.number === 2
        ? { ...q, answer: 'no' as const, figure: finding().message }
        : q.number === 5
          ? { ...q, answer: 'cannot tell' as const, figure: doubt.message }
          : q,
    );
    const text = renderText(report({ verdict: 'fail', questions, findings: [finding(), doubt] }), plain);
    expect(text).toMatch(/^2\. .* NO: see \[gate-dead\] above$/m);
    expect(text).toMatch(/^5\. .* cannot tell: see \[switch-kind-unrated\] below$/m);
    expect(text).toMatch(/^ {3}DOUBT no rating \[switch-kind-unrated\], line 34$/m);
  });

  it('leaves why and basis of a notice to explain and to the JSON', () => {
    const text = renderText(report({ findings: [finding({ severity: 'notice' })] }), plain);
    expect(text).toContain('do     Move the white core');
    expect(text).not.toMatch(/why|basis/);
  });

  it('prints every caution with its word; a danger and a warning each begin a line', () => {
    const { cautions } = report();
    const text = renderText(report(), plain);
    const flat = text.replace(/\s+/g, ' ');
    for (const c of cautions) expect(flat).toContain(`${c.text} [${c.id}]`);
    const grave = cautions.filter((c) => ['danger', 'warning'].includes(c.level));
    expect(grave.length).toBeGreaterThan(4);
    for (const c of grave) {
      const [start] = c.text.split(' ', 4).join(' ').split('.');
      expect(text).toMatch(new RegExp(`^${c.level.toUpperCase()} +${start}`, 'm'));
    }
    const levels = text.match(/^(DANGER|WARNING|CAUTION|NOTICE)/gm)!;
    const rank = ['DANGER', 'WARNING', 'CAUTION', 'NOTICE'];
    expect(levels).toEqual([...levels].sort((x, y) => rank.indexOf(x) - rank.indexOf(y)));
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
        plan: { file: nasty, title: nasty, practice: 'iec', practiceFrom: 'plan', lengths: 'm' },
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
      const text = renderText(
        report({ plan: { practiceFrom: 'plan', lengths: 'm', file: 'a', title: 'b', practice } }),
        plain,
      );
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
