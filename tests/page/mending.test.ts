/** The mended plan of a page: what `mend` tells first, written as it would be written, and as the page takes it along. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { settledState } from '../../src/machine/power.ts';
import { stateView } from '../../src/machine/state-view.ts';
import { coresChanged, coresNew } from '../../src/page/links.ts';
import { mendingOf } from '../../src/page/mending.ts';
import { packChanges, packPlan } from '../../src/page/pack.ts';
import { unpackChanges } from '../../src/page/unpack.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { check } from '../../src/repair/check.ts';
import { mend } from '../../src/repair/mend.ts';
import { Study } from '../../src/study/study.ts';
import { example, exampleNames, examplePath } from '../helpers/example-plans.ts';
import { WHOLE } from '../helpers/share.ts';
import { pageOfExample } from './pages.ts';
import { someStates } from './states.ts';

function mended(name: string) {
  const study = Study.of(example(name));
  const report = check(study);
  return { study, report, mending: mendingOf(study, report, readFileSync(examplePath(name), 'utf8')) };
}

/** What everything does in one state, as plain data. */
function told(plan: Plan, moved: readonly number[]) {
  const state = settledState(Study.of(plan), moved, 'on');
  const targets = new Map(state.circuit.consumers.map((c) => [c.part, null]));
  const { made: _, live, ...view } = stateView(plan, state, targets);
  return { ...view, live: [...live] };
}

describe('the mended plan of a page', () => {
  const { study, mending } = mended('wrong/planer-on-break-tab');

  it('is the first repair of mend, and was checked again', () => {
    expect(mending!.repair.edits).toEqual(mend(study).repairs[0]!.edits);
    expect(mending!.report.verdict).toBe('pass');
    const [was, is] = [study.plan, mending!.study.plan].map((p) => p.runs.flatMap((r) => r.cores));
    const moved = was!.filter(
      (c, i) => c.a.written !== is![i]!.a.written || c.b.written !== is![i]!.b.written,
    );
    expect(moved.length).toBe(mending!.repair.edits.length);
    expect(is!.every((c) => c.a.written !== 'planer.NC' && c.b.written !== 'planer.NC')).toBe(true);
  });

  it('has the moved cores in both drawings', () => {
    const from = mending!.repair.edits.flatMap(coresChanged);
    expect(coresNew(study.plan, mending!.study.plan)).toEqual([...from].sort());
  });

  it('is not there where nothing is to be mended, or no text was given', () => {
    expect(mended('saltmarsh-lane').mending).toBeUndefined();
    const { report } = mended('wrong/planer-on-break-tab');
    // A text that is another plan's is refused.
    expect(mendingOf(study, report, readFileSync(examplePath('osier-yard'), 'utf8'))).toBeUndefined();
    expect(pageOfExample('saltmarsh-lane')).not.toContain('data-shows="mended"');
  });

  it('is told with what stays open', () => {
    const page = pageOfExample('wrong/planer-on-break-tab');
    const box = /<div class="mending">.*?<\/div>/s.exec(page)![0];
    for (const words of mending!.repair.words) expect(box).toContain(words.replaceAll('>', '&gt;'));
    expect(box).toContain('checked again in whole');
    for (const f of mending!.report.findings)
      expect(box).toContain(`${f.severity.toUpperCase()}: ${f.message}`);
    expect(box).toContain('stay as drawn');
  });

  it('is not called mended where something that fails stays', () => {
    const page = pageOfExample('wrong/wall-switch-round-contact');
    const box = /<div class="mending">.*?<\/div>/s.exec(page)![0];
    expect(box).toContain('Do not build this plan as it stands');
    expect(box).toContain('Still open:');
    expect(box).not.toContain('none of it fails');
    expect(/<p data-as="mended">[^<]*/.exec(page)![0]).toContain('Do not build this plan as it stands');
  });

  it.each(exampleNames('wrong').filter((_, i) => i % (WHOLE ? 3 : 20) === 0))(
    'goes along with the page and settles as it did: %s',
    (name) => {
      const { study, report, mending } = mended(name);
      const repair = report.findings.find((f) => f.repair !== null);
      if (mending === undefined) return expect(repair).toBeUndefined();
      const from = packPlan(study.plan);
      const { plan } = mending.study;
      const again = unpackChanges(from, JSON.parse(JSON.stringify(packChanges(from, packPlan(plan)))));
      for (const moved of someStates(plan).slice(0, 6)) expect(told(again, moved)).toEqual(told(plan, moved));
    },
  );
});
