/** What only scripts meet: plans that change hands, questions that have no answer, names that no plan has. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import {
  applyEdits,
  check,
  drawSvg,
  hunt,
  mend,
  NotAnswered,
  newPlan,
  planWith,
  type Reason,
  readMeter,
  readPlan,
  Study,
  study,
  truthTable,
  wireList,
} from '../../src/index.ts';

const RIGHT = 'examples/saltmarsh-lane.yaml';

function planOf(file: string) {
  const read = readPlan(readFileSync(file), file);
  if (!read.ok) throw new Error(`${file} cannot be read`);
  return read.plan;
}

function reason(ask: () => unknown): { readonly reason: Reason; readonly message: string } {
  try {
    ask();
  } catch (error) {
    if (!(error instanceof NotAnswered)) throw error;
    return { reason: error.reason, message: error.message };
  }
  throw new Error('it was answered');
}

describe('a study', () => {
  it('holds its plan and shows nothing else', () => {
    const plan = planOf(RIGHT);
    const shop = study(plan);
    expect(shop).toBeInstanceOf(Study);
    expect(Object.keys(shop)).toEqual(['plan']);
    expect(shop.plan).toBe(plan);
  });

  it('is asked for what it is: a likeness of one is refused', () => {
    const likeness = { plan: planOf(RIGHT) } as unknown as Study;
    expect(() => check(likeness)).toThrow(TypeError);
  });

  it('says the same twice, whatever was asked between', () => {
    const shop = study(planOf('examples/wrong/planer-on-break-tab.yaml'));
    const first = structuredClone(check(shop));
    mend(shop);
    drawSvg(shop, { positions: { open: ['planer'] } });
    expect(check(shop)).toEqual(first);
  });
});

describe('a question without an answer', () => {
  const shop = () => study(planOf(RIGHT));

  it('names what the plan has not, and the nearest that it has', () => {
    expect(reason(() => readMeter(shop(), { positions: { open: ['plainer'] } }))).toEqual({
      reason: 'name',
      message: 'open: no part is called "plainer"; did you mean planer?',
    });
    expect(reason(() => readMeter(shop(), { positions: { on: ['planer'] } })).message).toBe(
      'on: planer is a gate; say open planer',
    );
    expect(reason(() => readMeter(shop(), { between: ['K1.A3', 'K1.A2'] })).reason).toBe('name');
    expect(reason(() => drawSvg(shop(), { positions: { press: ['start'] } })).reason).toBe('name');
    expect(reason(() => wireList(shop(), { of: { bel: [30] } })).message).toContain('did you mean bell?');
    expect(reason(() => hunt(shop(), { saw: ['planer ajar: runs'] })).reason).toBe('name');
    expect(reason(() => newPlan({ montor: '1 hp' } as never)).message).toContain('did you mean motor?');
  });

  it('says which piece of cable is longer than every reel', () => {
    const { reason: why, message } = reason(() => wireList(shop(), { any: [0.5] }));
    expect(why).toBe('too-long');
    expect(message).toContain('it cannot be cut in one piece');
    for (const length of [0, -3, Number.NaN, Number.POSITIVE_INFINITY])
      expect(reason(() => wireList(shop(), { any: [length] })).reason).toBe('name');
  });

  it('asks nobody to measure where somebody is in danger', () => {
    expect(reason(() => hunt(study(planOf('examples/wrong/bin-switch-on-make-tab.yaml')))).reason).toBe(
      'danger',
    );
  });

  it('has no table of every combination of many inputs', () => {
    const many = study(planOf('examples/large/tallow-reach.yaml'));
    expect(reason(() => truthTable(many, { all: true })).reason).toBe('too-many-inputs');
  });
});

describe('a plan', () => {
  it('that is mended by its edits passes', () => {
    const file = 'examples/wrong/planer-on-break-tab.yaml';
    const text = readFileSync(file, 'utf8');
    const plan = planOf(file);
    const edited = applyEdits(text, plan, mend(study(plan)).repairs[0]!.edits);
    if (!('text' in edited)) throw new Error(edited.refused);
    const again = readPlan(edited.text, file);
    expect(again.ok && check(study(again.plan)).verdict).toBe('pass');
    expect(applyEdits(`${text}\n# changed`, plan, [])).toHaveProperty('text');
    expect(applyEdits('format: 1', plan, [])).toHaveProperty('refused');
  });

  it('with what-ifs tells what cannot be found of them', () => {
    const text = readFileSync(RIGHT);
    const changed = planWith(text, RIGHT, ['collektor=3 hp 240 V', 'nonsense']);
    expect(changed).toMatchObject({ ok: false, errors: [] });
    expect(!changed.ok && changed.problems.length).toBe(2);
    expect(planWith('', 'empty.yaml', [])).toMatchObject({ ok: false, problems: [] });
    const plain = planWith(text, RIGHT, []);
    expect(plain.ok && plain.done).toEqual([]);
  });

  it('from answers passes, and its text reads as a plan', () => {
    const made = newPlan({
      ...{ practice: 'nec', motor: '1 hp 13 A', lever: 'open' },
      gates: 'bandsaw 3 m, planer 4 m',
    });
    if ('problems' in made) throw new Error(made.problems.map((p) => p.problem).join('; '));
    expect(made.passes).toBe(true);
    expect(made.answers.gates).toBe('bandsaw 3 m, planer 4 m');
    const read = readPlan(made.text, 'new.yaml');
    expect(read.ok && check(study(read.plan)).verdict).toBe('pass');
    const wrong = newPlan({ practice: 'nec', motor: 'strong', lever: 'open', gates: 'bandsaw 3 m' });
    expect('problems' in wrong && wrong.problems.map((p) => p.key)).toEqual(['motor']);
  });
});
