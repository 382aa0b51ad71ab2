/** The page of three hundred gates in twenty zones is below a megabyte; the bound is common practice, no source. */
import { expect, it } from 'vitest';
import { judge } from '../../src/findings/judge.ts';
import { pageOf } from '../../src/page/build.ts';
import { Study } from '../../src/study/study.ts';
import { zonesOf } from '../bench/zones.mjs';
import { planOf } from '../helpers/plan-of.ts';
import { browserFiles } from './browser-files.ts';

it('stays below 1 MB with 300 gates', () => {
  const study = Study.of(planOf(zonesOf(20, 15), 'zones.yaml'));
  const page = pageOf(study, judge(study), browserFiles());
  expect(Buffer.byteLength(page)).toBeLessThan(1_000_000);
  // A row a zone, all shut, all open, and the row of heads.
  expect(/<table id="truth">.*?<\/table>/s.exec(page)![0].match(/<tr/g)).toHaveLength(23);
});
