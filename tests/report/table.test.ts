import { describe, expect, it } from 'vitest';
import { csvField, renderTableCsv, renderTableMarkdown, renderTableText } from '../../src/report/table.ts';
import type { TruthTable } from '../../src/study/table-model.ts';
import { columns } from '../../src/text/wrap.ts';

function table(gates: number): TruthTable {
  const names = Array.from({ length: gates }, (_, i) => `gate-${i + 1}`);
  const row = (open: number) => ({
    label: open < 0 ? 'at rest' : `${names[open]} open`,
    inputs: Object.fromEntries(names.map((n, i) => [n, i === open ? 'open' : 'shut'])),
    relays: { K1: open >= 0 ? 'pulled in' : 'released' },
    loads: { collector: open >= 0 ? 'running' : 'stopped' },
    expected: { collector: open >= 0 ? 'running' : 'stopped' },
  });
  return { columns: [...names, 'K1', 'collector'], rows: [-1, ...names.keys()].map(row) };
}

describe('renderTableText', () => {
  it('sets out one line a state', () => {
    expect(renderTableText(table(1), 80)).toBe(
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
    const text = renderTableText(table(gates), 80);
    expect(Math.max(...text.split('\n').map(columns))).toBeLessThanOrEqual(80);
    const heads = text.split('\n').filter((l) => l.startsWith('  state'));
    expect(heads.join(' ').split(/ +/)).toEqual(expect.arrayContaining([`gate-${gates}`, 'K1', 'collector']));
  });

  it('marks what is not as intended', () => {
    const [rest, open] = table(1).rows;
    const wrong = { ...table(1), rows: [rest!, { ...open!, loads: { collector: 'stopped' } }] };
    const text = renderTableText(wrong, 80);
    expect(text).toContain('! gate-1 open  open');
    expect(text).toContain('1 not as intended:\n! gate-1 open: collector ought to be running');
  });
});

describe('renderTableMarkdown', () => {
  it('lets nothing out of its cell', () => {
    const bad = { ...table(1), rows: [{ ...table(1).rows[0]!, label: 'a|b <script>\n`x` *y*' }] };
    const text = renderTableMarkdown(bad);
    expect(text.split('\n')).toHaveLength(4);
    expect(text).toContain('a\\|b &lt;script\\>\\\\u000a\\`x\\` \\*y\\*');
  });
});

describe('renderTableCsv', () => {
  it('quotes as RFC 4180 and ends lines with CR LF', () => {
    const text = renderTableCsv({ columns: ['a'], rows: [{ ...table(1).rows[0]!, label: 'say "on", now' }] });
    expect(text.split('\r\n')).toHaveLength(3);
    expect(text).toContain('"say ""on"", now"');
  });

  it.each(['=1+1', '+1', '-1', '@x', ' =1', '＝1'])(
    'does not hand %j to a spreadsheet as a formula',
    (text) => {
      expect(csvField(text).replace(/^"/, '')).toMatch(/^'/);
    },
  );

  it('leaves plain words alone', () => {
    expect(csvField('bandsaw open')).toBe('bandsaw open');
    expect(csvField('a\tb\r\n')).toBe('a\\u0009b\\u000d\\u000a');
  });
});
