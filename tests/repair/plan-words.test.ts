import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { applyEdits } from '../../src/edit/apply-edits.ts';
import { readPlan } from '../../src/plan/read.ts';
import { check } from '../../src/repair/check.ts';
import { mend } from '../../src/repair/mend.ts';
import { Study } from '../../src/study/study.ts';

const text = (name: string) => readFileSync(`examples/${name}.yaml`, 'utf8');
const planOf = (source: string) => {
  const read = readPlan(source, 'plan.yaml');
  if (!read.ok) throw new Error(read.errors.map((e) => e.message).join());
  return read.plan;
};
const mended = (source: string) => mend(Study.of(planOf(source)));

/** The plan as the first repair writes it passes questions 1 to 3. */
function isMendedInItsText(source: string): string {
  const plan = planOf(source);
  const [first] = mend(Study.of(plan)).repairs;
  const applied = applyEdits(source, plan, first!.edits);
  if ('refused' in applied) throw new Error(applied.refused);
  expect(mended(applied.text).needed).toBe(false);
  return applied.text;
}

describe('where the plan says what is not so', () => {
  it('five gates mounted the other way are one word in the stock, and one finding', () => {
    const wrong = text('alder-mill').replace('pressed-when: open', 'pressed-when: shut');
    const { findings } = check(Study.of(planOf(wrong)));
    const grave = findings.filter((f) => f.severity === 'fault');
    expect(grave).toHaveLength(1);
    expect(grave[0]!.fix).toMatch(
      /^If each lever of .* is pressed while its gate is open, say so in the plan/,
    );
    expect(isMendedInItsText(wrong)).toBe(text('alder-mill'));
  });

  it('all gates on the wrong tab are one slip, told as being as likely as a wrong word', () => {
    const wrong = text('saltmarsh-lane').replace(/(bandsaw|planer|router)\.NO/g, '$1.NC');
    const likely = mended(wrong).repairs.filter((r) => r.asLikely);
    expect(likely.map((r) => r.words.join(' '))).toEqual([
      'If each lever of bandsaw, planer and router is pressed while its gate is shut, say so in the plan: pressed-when: shut.',
      'At each of bandsaw, planer and router, move what is on NC to NO.',
    ]);
    const { findings } = check(Study.of(planOf(wrong)));
    expect(findings[0]!.fix).toContain(' Or, as likely: At each of bandsaw, planer and router');
  });

  it('a gate that no intent names is written into it', () => {
    const wrong = text('saltmarsh-lane').replace('[bandsaw, planer, router]', '[bandsaw, planer]');
    expect(isMendedInItsText(wrong)).toBe(text('saltmarsh-lane'));
  });

  it('a gate that another load names alone is written into the intent of the load that it starts as well', () => {
    const shop = readFileSync('tests/repair/rigs/two-collectors.yaml', 'utf8');
    const [, list] = /dustfan: \{runs-on: \[(.*?)\]\}/.exec(shop)!;
    expect(list).toContain('both2');
    const wrong = shop.replace(
      `dustfan: {runs-on: [${list}]}`,
      `dustfan: {runs-on: [${list!.replace(', both2', '')}]}`,
    );
    const [first] = mended(wrong).repairs;
    expect(first?.edits).toEqual([
      { do: 'intend', load: 'dustfan', field: 'runs-on', input: 'both2', instead: undefined },
    ]);
    expect(planOf(isMendedInItsText(wrong)).intents).toHaveLength(2);
  });

  it('a start button that holds is said to be meant, and nothing goes round the stop', () => {
    const right = text('millrace-joinery');
    const wrong = right.replace(/\n {4}stays-on-after: .*\n {4}stopped-by: .*/, '');
    expect(wrong).not.toBe(right);
    const [first] = mended(wrong).repairs;
    expect(first!.words).toEqual([
      'If START is meant to start fan, or to arm it, and that lasts after it is let go, say so in the plan: add it to stays-on-after of fan.',
      'If STOP and OL are meant to end that, say so in the plan: add them to stopped-by of fan.',
    ]);
    isMendedInItsText(wrong);
  });

  it('a selector named at another position is as likely as its cores changed over', () => {
    const wrong = text('osier-yard').replace('bench-sander, mode.hand]', 'bench-sander, mode.auto]');
    const words = mended(wrong)
      .repairs.filter((r) => r.asLikely)
      .map((r) => r.words.join(' '));
    expect(words).toContain(
      'If mode.hand is meant, name it in runs-on of collector in the plan, in place of mode.auto.',
    );
  });

  it('a button that stops is never said to start', () => {
    const plan = planOf(
      text('millrace-joinery').replace('yellow: [armed, STOP.NC]', 'yellow: [armed, STOP.NO]'),
    );
    for (const { edits } of mend(Study.of(plan)).repairs)
      expect(edits).not.toContainEqual(expect.objectContaining({ do: 'intend', input: 'STOP' }));
  });
});

describe('what a mistake hides', () => {
  const thin = text('saltmarsh-lane')
    .replace(/(bell:.*?)20 AWG/, '$128 AWG')
    .replaceAll('length: 5 m', 'length: 90 m');
  const wrong = thin.replace('white: [K1.A1, bandsaw.NO]', 'white: [K1.NC, bandsaw.NO]');

  it('is told with the repair, where every repair brings it to light', () => {
    expect(check(Study.of(planOf(thin))).findings.map((f) => f.id)).toContain('coil-too-low');
    const [first] = mended(
      text('saltmarsh-lane').replace('white: [K1.A1, bandsaw.NO]', 'white: [feed, bandsaw.NO]'),
    ).repairs;
    expect(first!.uncovers).toEqual([]);
    const { repairs } = mended(thin.replace('white: [K1.A1, bandsaw.NO]', 'white: [feed, bandsaw.NO]'));
    expect(repairs[0]!.words.join(' ')).toContain('K1.A1');
    expect(repairs[0]!.uncovers.join(' ')).toMatch(/K1 gets .* needs/);
    expect(mended(wrong).needed).toBe(true);
  });
});
