import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import { verdictOf } from '../../src/findings/report-model.ts';
import { reportJsonSchema, reportSchema } from '../../src/findings/report-schema.ts';
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
