import { describe, expect, it } from 'vitest';
import { readPlan } from '../../src/plan/read.ts';
import { alongWith } from '../../src/plan/what-if/along.ts';
import { WhatIfs } from '../../src/plan/what-if/what-if.ts';
import { fileOf, textOf } from '../lists/size/moved-text.ts';

const TEXT = textOf(fileOf('saltmarsh-lane'));

function read(...typed: string[]) {
  const whatIfs = new WhatIfs(typed);
  const result = readPlan(TEXT, 'lane.yaml', whatIfs);
  return { whatIfs, plan: result.ok ? result.plan : undefined };
}
const part = (name: string, ...typed: string[]) => read(...typed).plan?.parts.get(name);

describe('a what-if', () => {
  it('gives each quantity to the field that reads it', () => {
    expect(part('collector', 'collector=3 hp 240 V')).toMatchObject({
      power: { horsepower: 3 },
      volts: { volts: 240, kind: 'ac' },
    });
    expect(part('PS1', 'PS1=24 V DC 2 A')).toMatchObject({
      output: { volts: 24, kind: 'dc' },
      limit: { amps: 2 },
      tolerance: 0.02,
    });
    expect(part('P1', 'P1 = 240 V 20 A')).toMatchObject({ volts: { volts: 240 }, breaker: 20 });
    expect(part('K1', 'K1=24 V DC 1 W')).toMatchObject({
      coil: { rated: { volts: 24, kind: 'dc' }, power: { watts: 1 } },
    });
    expect(part('planer', 'planer=10 A 24 V DC')).toMatchObject({
      contact: { ratings: [{ amps: 10, volts: 24, kind: 'dc' }] },
    });
  });

  it('leaves out what held for the old thing, and says so', () => {
    const { plan, whatIfs } = read('collector=3 hp');
    expect(plan!.parts.get('collector')).not.toHaveProperty('amps');
    expect(plan!.parts.get('collector')).not.toHaveProperty('code');
    expect(whatIfs.done).toEqual([
      'collector: power 3 hp; amps and code left out, which held for the one in the plan',
    ]);
    const coil = part('K1', 'K1=24 V DC 1 W');
    expect(coil).toMatchObject({ coil: { pullIn: { fraction: 0.75 } } });
    expect((coil as { coil: object }).coil).not.toHaveProperty('resistance');
  });

  it('takes a field by its name, a stock item, a run and the air', () => {
    expect(part('K1', 'K1.coil.pull-in=70 %')).toMatchObject({ coil: { pullIn: { fraction: 0.7 } } });
    const { plan } = read('bell=18 AWG', 'run 3=12 m', 'ambient=45 °C');
    expect(plan!.runs.filter((r) => r.cable?.stock === 'bell').map((r) => r.cable!.awg)).toEqual([
      18, 18, 18, 18,
    ]);
    expect([plan!.runs[2]!.length, plan!.ambient]).toEqual([12, 45]);
    expect(part('router', 'snap=1 A 12 V DC')).toMatchObject({ contact: { ratings: [{ amps: 1 }] } });
  });

  it('leaves the plan as it is where nothing is asked', () => {
    const plain = readPlan(TEXT, 'lane.yaml');
    expect(JSON.stringify(read().plan)).toBe(JSON.stringify(plain.ok && plain.plan));
  });

  it.each([
    ['colector=3 hp', /no part and no stock item is called "colector"; did you mean collector\?/],
    ['collector=3 hpp', /"3 hpp" is not understood here; a motor takes power, volts and amps$/],
    ['collector=3 hp 4 hp', /is not understood here/],
    ['K1.coil.pul-in=70 %', /a relay has no coil.pul-in; did you mean pull-in\?/],
    ['K1.coil.pull-in=7 m', /expected a/],
    ['K1.kind=timer', /a relay has no kind/],
    ['K1.__proto__=1', /a relay has no __proto__/],
    ['__proto__=1', /no part and no stock item is called/],
    ['constructor.name=1', /no part and no stock item is called/],
    ['feed=3 V', /name a field/],
    ['run 99=3 m', /there is no run 99; the plan has 8/],
    ['run 5=3 m', /run 5 has no length of its own to change/],
    ['nonsense', /expected NAME=QUANTITIES, such as collector=3 hp 240 V/],
    [`K1=${'9'.repeat(300)}`, /expected NAME=QUANTITIES/],
    ['\u001b[31mx=3 V', /is called "\\x1b\[31mx"/],
  ])('that cannot be is told: %s', (typed, problem) => {
    const { whatIfs } = read(typed);
    expect(whatIfs.problems.join()).toMatch(problem);
    expect(({} as Record<string, unknown>).kind).toBeUndefined();
  });

  describe('of an overload relay', () => {
    const KILN = textOf(fileOf('kiln-street'));
    const kiln = (...typed: string[]) => {
      const of = (...along: ConstructorParameters<typeof WhatIfs>) => {
        const whatIfs = new WhatIfs(...along);
        const result = readPlan(KILN, 'kiln.yaml', whatIfs);
        if (!result.ok) throw new Error('unreadable');
        return { plan: result.plan, done: whatIfs.done };
      };
      const along = alongWith(of([]).plan, of(typed).plan);
      return { along, ...of(typed, along) };
    };

    it('is its setting', () => {
      expect(kiln('OL=17 A').plan.parts.get('OL')).toMatchObject({ setting: 17 });
      expect(kiln('OL=5 A 250 V AC').plan.parts.get('OL')).toMatchObject({
        ...{ setting: 15.6, contact: { ratings: [{ amps: 5, volts: 250, kind: 'ac' }] } },
      });
    });

    it('goes with the plate of the motor that it is set to, unless the what-if says otherwise', () => {
      const { plan, done, along } = kiln('fan=3 hp 11 A');
      expect(along).toHaveLength(1);
      expect(plan.parts.get('OL')).toMatchObject({ setting: 11 });
      expect(done).toContain('OL: setting 11 A, so that it stays set to the current on the plate of fan');
      expect(kiln('fan=3 hp 11 A', 'OL=12 A').plan.parts.get('OL')).toMatchObject({ setting: 12 });
      // With no amps on the plate there is nothing to set it to.
      expect(kiln('fan=3 hp').along).toEqual([]);
    });
  });

  it('of another motor takes its mains along, and loses the pattern made for the old', () => {
    const before = read().plan!;
    const after = read('collector=3 hp 240 V').plan!;
    const along = alongWith(before, after);
    expect(along.map((a) => [a.name, a.field, a.text])).toEqual([
      ['P1', 'volts', '240 V AC'],
      ['X1', 'pattern', undefined],
    ]);
    const all = new WhatIfs(['collector=3 hp 240 V'], along);
    const result = readPlan(TEXT, 'lane.yaml', all);
    const plug = result.ok ? result.plan.parts.get('P1') : undefined;
    expect(plug).toMatchObject({ volts: { volts: 240, kind: 'ac' }, breaker: 30 });
    expect(plug).not.toHaveProperty('pattern');
    expect(all.done.join('; ')).toContain('so that collector gets its volts');
    // A plug of which the what-if speaks itself is left to it.
    expect(alongWith(before, read('collector=3 hp 240 V', 'P1=230 V').plan!)).toEqual([]);
  });
});
