import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { xml } from '../../src/text/xml.ts';
import { readSvg } from '../draw/svg-reader.ts';

describe('xml', () => {
  it('writes the five characters of markup as entities', () => {
    expect(xml(`a<b>&"c'`)).toBe('a&lt;b&gt;&amp;&quot;c&#39;');
  });

  it('leaves writing as it is, and shows what would act', () => {
    expect(xml('Säge 日本 Ω')).toBe('Säge 日本 Ω');
    expect(xml('\u202e\u0007\n')).toBe('\\u202e\\u0007\\u000a');
  });

  it('leaves no character that XML 1.0 has not', () => {
    // XML 1.0, production [2] Char
    expect(xml('\ufffe\uffff\ud800')).toBe('\ufffd\ufffd\\ud800');
  });

  it('fits an attribute and an element, whatever it is given', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 100 }), (text) => {
        const written = xml(text);
        expect(written).not.toMatch(/[<>"']|[\ufffe\uffff\p{Cc}\p{Cs}]/u);
        const [element] = readSvg(`<g data-x="${written}">${written}</g>`).children;
        expect(element?.text).toBe(element?.attributes['data-x']);
      }),
    );
  });
});
