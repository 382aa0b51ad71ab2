import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import { listed } from '../../src/draw/finding-marks.ts';
import { behindVerdict, gravestFirst, verdictOf } from '../../src/findings/report-model.ts';
import { reportJsonSchema, reportSchema } from '../../src/findings/report-schema.ts';
import { foundHtml } from '../../src/page/html/findings.ts';
import { quietDocument } from '../../src/report/check.ts';
import { asText } from '../../src/report/forms/text.ts';
import { failing, finding, report } from '../report/samples.ts';

describe('the report model', () => {
  it('takes the samples, by zod and by the JSON Schema alike', () => {
    const validate = new Ajv2020().compile(reportJsonSchema());
    for (const sample of [report(), failing()]) {
      expect(reportSchema.parse(sample)).toEqual(sample);
      expect(validate(JSON.parse(JSON.stringify(sample))), JSON.stringify(validate.errors)).toBe(true);
    }
    expect(validate({ ...report(), verdict: 'fine' })).toBe(false);
    expect(validate({ ...report(), findings: [{ ...finding(), question: 8 }] })).toBe(false);
  });

  it('draws the verdict from the worst finding', () => {
    expect(verdictOf([])).toBe('pass');
    expect(verdictOf([finding({ severity: 'caution' }), finding({ severity: 'notice' })])).toBe('pass');
    expect(verdictOf([finding({ severity: 'doubt' }), finding({ severity: 'caution' })])).toBe('cannot-tell');
    for (const severity of ['danger', 'warning', 'fault'] as const) {
      expect(verdictOf([finding({ severity: 'doubt' }), finding({ severity })])).toBe('fail');
    }
  });
});

describe('wherever findings are told, the gravest come first, whatever question they answer', () => {
  // In a report they stand by question, so that a doubt of the first may come before a danger of the last.
  const all = report({
    verdict: 'fail',
    findings: [
      ...Array.from({ length: 14 }, (_, i) =>
        finding({ severity: 'doubt', question: 1, message: `doubt ${i}`, line: i + 1 }),
      ),
      finding({ severity: 'notice', question: 2, message: 'notice' }),
      finding({ severity: 'fault', question: 4, message: 'fault' }),
      finding({ severity: 'danger', question: 7, message: 'danger' }),
    ],
  });
  const order = (text: string, words: readonly string[]) => words.map((word) => text.indexOf(word));

  it('in the order of ISO 3864-2 and ANSI Z535, of equals as they stood', () => {
    expect(gravestFirst(all.findings).map((f) => f.message)).toEqual([
      ...['danger', 'fault'],
      ...Array.from({ length: 14 }, (_, i) => `doubt ${i}`),
      'notice',
    ]);
    expect(behindVerdict(all).map((f) => f.message)).toEqual(['danger', 'fault']);
  });

  it('a line each, on the page, and under a drawing, where no doubt crowds a danger out', () => {
    const pageHtml = foundHtml({
      report: all,
      findings: gravestFirst(all.findings),
      links: { findings: [], cores: [] },
    });
    for (const text of [asText(quietDocument(all), { width: 80 }), pageHtml]) {
      const places = order(
        text,
        ['danger: danger', 'doubt: doubt 0'].map((w) => (text.startsWith('<') ? w.split(': ')[1]! : w)),
      );
      expect(Math.min(...places)).toBeGreaterThan(-1);
      expect(places).toEqual([...places].sort((a, b) => a - b));
    }
    expect(listed(all.findings)[0]).toEqual({ mark: '!1', text: 'DANGER: danger' });
  });
});
