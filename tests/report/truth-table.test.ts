import { describe, expect, it } from 'vitest';
import { asCsv } from '../../src/report/forms/csv.ts';
import { asMarkdown } from '../../src/report/forms/markdown.ts';
import { asText } from '../../src/report/forms/text.ts';
import { truthTableDocument } from '../../src/report/truth-table.ts';
import type { TruthTable } from '../../src/study/table-model.ts';
import { columns } from '../../src/text/wrap.ts';

function table(gates: number): TruthTable {
  const names = Array.from({ length: gates }, (_, i) => `gate-${i + 1}`);
  const row = (open: number) => ({
    moves: open < 0 ? [] : [`${names[open]} open`],
    label: open < 0 ? 'at rest' : `${names[open]} open`,
    inputs: Object.fromEntries(names.map((n, i) => [n, i === open ? 'open' : 'shut'])),
    relays: { K1: open >= 0 ? 'pulled in' : 'released' },
    loads: { collector: open >= 0 ? 'running' : 'stopped' },
    expected: { collector: open >= 0 ? 'running' : 'stopped' },
  });
  return { rests: 'joins', columns: [...names, 'K1', 'collector'], rows: [-1, ...names.keys()].map(row) };
}

const text = (truth: TruthTable) => asText(truthTableDocument(truth, 'pass'), { width: 80 });

describe('the truth table as text', () => {
  it('sets out one line a state', () => {
    expect(text(table(1))).toBe(
      [
        '  state        gate-1  K1         collector',
        '  at rest      shut    released   stopped',
        '  gate-1 open  open    pulled in  running',
        '',
        '2 states, each as intended.',
        '',
      ].join('\n'),
    );
  });

  it.each([1, 12, 60])('keeps to 80 columns with %d gates and loses no column', (gates) => {
    const shown = text(table(gates));
    expect(Math.max(...shown.split('\n').map(columns))).toBeLessThanOrEqual(80);
    const heads = shown.split('\n').filter((l) => l.startsWith('  state'));
    expect(heads.join(' ').split(/ +/)).toEqual(expect.arrayContaining([`gate-${gates}`, 'K1', 'collector']));
  });

  it('marks what is not as intended', () => {
    const [rest, open] = table(1).rows;
    const wrong = { ...table(1), rows: [rest!, { ...open!, loads: { collector: 'stopped' } }] };
    const shown = text(wrong);
    expect(shown).toContain('! gate-1 open  open');
    expect(shown).toContain('1 not as intended:\n! gate-1 open: collector ought to be running');
  });
});

describe('a plan that does not pass', () => {
  const sum = (verdict: 'fail' | 'cannot-tell', truth = table(1)) =>
    asText(truthTableDocument(truth, verdict), { width: 80 }).split('\n\n').at(-1)!;

  it('is not said to be as intended, though its loads start and stop so', () => {
    expect(sum('fail')).toBe(
      '2 states, each load as intended in these. The plan fails the check all the same.\n',
    );
    expect(sum('cannot-tell')).toContain('The check cannot tell of the plan as a whole.');
  });

  it('says where volts were left out', () => {
    expect(sum('fail', { ...table(1), rests: 'unknown' })).toContain('Volts were left out of this table');
  });
});

describe('as Markdown', () => {
  it('lets nothing out of its cell', () => {
    const bad = { ...table(1), rows: [{ ...table(1).rows[0]!, label: 'a|b <script>\n`x` *y*' }] };
    const text = asMarkdown(truthTableDocument(bad, 'pass'));
    expect(text.split('\n')).toHaveLength(4);
    expect(text).toContain('a\\|b &lt;script\\>\\\\u000a\\`x\\` \\*y\\*');
  });
});

describe('as CSV', () => {
  it('quotes as RFC 4180 and ends lines with CR LF', () => {
    const text = asCsv(
      truthTableDocument(
        { ...table(1), columns: ['a'], rows: [{ ...table(1).rows[0]!, label: 'say "on", now' }] },
        'pass',
      ),
    );
    expect(text.split('\r\n')).toHaveLength(3);
    expect(text).toContain('"say ""on"", now"');
  });
});
