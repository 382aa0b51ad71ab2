import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ascii, printable, printableLines } from '../../src/text/escape.ts';
import { columns, wrap } from '../../src/text/wrap.ts';

const anyText = fc.string({ unit: 'binary', maxLength: 200 });

describe('printable', () => {
  it('shows what would act instead of print', () => {
    expect(printable('a\u001b[31mb')).toBe('a\\u001b[31mb');
    expect(printable('\u0000\t\n\r\u007f\u009b')).toBe('\\u0000\\u0009\\u000a\\u000d\\u007f\\u009b');
    expect(printable('\u200b\u202e\u2066\u2028\ufeff\u00ad')).toBe(
      '\\u200b\\u202e\\u2066\\u2028\\ufeff\\u00ad',
    );
    expect(printable('\u{e0041}\ud800')).toBe('\\u{e0041}\\ud800');
  });

  it('leaves writing as it is', () => {
    for (const text of ['Säge Ω 40 °C', 'пила', '日本', '♻\ufe0f 🪚', 'C:\\shop'])
      expect(printable(text)).toBe(text);
  });

  it('cuts letters short that smear over other lines', () => {
    expect(columns(printable(`a${'\u0301'.repeat(50)}`))).toBe(1);
    expect(printable(`a${'\u0301'.repeat(50)}`).length).toBe(5);
  });

  it('leaves nothing that acts, whatever it is given', () => {
    fc.assert(
      fc.property(anyText, (text) => {
        expect(printable(text)).not.toMatch(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}\p{Cs}]/u);
        expect(printable(printable(text))).toBe(printable(text));
        expect(ascii(printable(text))).toMatch(/^[ -~]*$/);
      }),
    );
  });

  it('keeps line breaks where they are meant', () => {
    expect(printableLines('a\r\nb\n\u001bc')).toBe('a\nb\n\\u001bc');
  });
});

describe('wrap', () => {
  it('keeps to the width and loses no word', () => {
    fc.assert(
      fc.property(anyText, fc.integer({ min: 20, max: 100 }), (raw, width) => {
        const text = printable(raw);
        const lines = wrap(text, width, '  - ');
        for (const line of lines) expect(columns(line)).toBeLessThanOrEqual(width);
        expect(lines.join('').replace(/ /g, '')).toBe(`-${text.replace(/ /g, '')}`);
      }),
    );
  });

  it('counts wide letters as two columns', () => {
    expect(wrap('日本日本日本日本日本日本', 12)).toEqual(['日本日本日本', '日本日本日本']);
  });
});
