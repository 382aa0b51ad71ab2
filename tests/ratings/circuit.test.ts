import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { judgeCircuit } from '../../src/ratings/circuit.ts';
import { powerPlausible } from '../../src/ratings/horsepower.ts';
import { receptacleByName } from '../../src/ratings/pattern-names.ts';
import { circuitRow, judgePlug } from '../../src/ratings/receptacle.ts';
import { ac, hp, load, motor, plug, watts } from './parts.ts';

const heater = (amps: number, volts = 120) =>
  load({ name: 'heater', type: 'heater', amps, volts: ac(volts) });

describe('nec', () => {
  const twenty = plug({ pattern: 'NEMA 5-20', breaker: 20 });
  test('1.5 hp marked 15 A on a 20 A circuit: within 16 A', () => {
    const found = judgeCircuit({
      plug: twenty,
      loads: [motor({ power: hp(1.5), amps: 15, code: 'K' })],
      practice: 'nec',
    });
    expect(found).toMatchObject({ verdict: 'pass', needed: 15, found: 16 });
    expect(found.basis).toContain('210.21(B)(2)');
  });
  test('with no nameplate current the table counts', () => {
    const found = judgeCircuit({ plug: twenty, loads: [motor({ power: hp(1) })], practice: 'nec' });
    expect(found).toMatchObject({ verdict: 'pass', needed: 16, found: 16 });
    expect(judgeCircuit({ plug: twenty, loads: [motor({ power: hp(1.5) })], practice: 'nec' }).verdict).toBe(
      'fail',
    );
  });
  test('a wired-in motor goes by the table even where it is marked (NEC 430.6(A)(1))', () => {
    const fixed = plug({ pattern: 'fixed', breaker: 20 });
    const found = judgeCircuit({
      plug: fixed,
      loads: [motor({ power: hp(1.5), amps: 15 })],
      practice: 'nec',
    });
    expect(found).toMatchObject({ verdict: 'pass', needed: 20, found: 20 });
  });
  // NEC 430.52(C)(1) says how large a breaker may be, not how small; Table 430.248: 3 hp takes 17 A at 230 V
  test.each([
    [17, 'pass'],
    [16, 'fail'],
  ])('a wired-in motor of 3 hp on %d A', (breaker, verdict) => {
    const found = judgeCircuit({
      plug: plug({ pattern: 'fixed', volts: { volts: 240, kind: 'ac' }, breaker }),
      loads: [motor({ power: hp(3), volts: { volts: 240, kind: 'ac' } })],
      practice: 'nec',
    });
    expect(found).toMatchObject({ verdict, needed: 17 });
  });
  test.each([
    ['NEMA 5-15', 15, 12],
    ['NEMA 5-15', 20, 12],
    ['NEMA 5-20', 20, 16],
    ['NEMA L6-30', 30, 24],
    ['NEMA 5-15', 30, 12],
  ])('%s behind %d A holds %d A', (pattern, breaker, most) => {
    const at = (amps: number) =>
      judgeCircuit({ plug: plug({ pattern, breaker }), loads: [heater(amps)], practice: 'nec' }).verdict;
    expect([at(most), at(most + 0.1)]).toEqual(['pass', 'fail']);
  });
  test('everything on the plug adds up', () => {
    const loads = [motor({ power: hp(1), amps: 12 }), heater(4.5)];
    expect(judgeCircuit({ plug: twenty, loads, practice: 'nec' })).toMatchObject({
      verdict: 'fail',
      needed: 16.5,
    });
  });
  test('what is not stated is asked for', () => {
    expect(judgeCircuit({ plug: twenty, loads: [motor()], practice: 'nec' })).toMatchObject({
      verdict: 'cannot-tell',
      missing: 'collector.amps',
    });
    expect(judgeCircuit({ plug: plug(), loads: [heater(5)], practice: 'nec' })).toMatchObject({
      verdict: 'cannot-tell',
      missing: 'breaker',
    });
    expect(judgeCircuit({ plug: twenty, loads: [motor(), heater(17)], practice: 'nec' }).verdict).toBe(
      'fail',
    );
  });
});

describe('iec', () => {
  const at = (fields: Parameters<typeof plug>[0], amps: number) =>
    judgeCircuit({ plug: plug({ volts: ac(230), ...fields }), loads: [heater(amps, 230)], practice: 'iec' });
  test('BS 1363: the 13 A fuse decides, or a smaller one in the plug', () => {
    expect(at({ pattern: 'BS 1363', breaker: 32 }, 13).verdict).toBe('pass');
    expect(at({ pattern: 'BS 1363', breaker: 32 }, 13.1)).toMatchObject({ verdict: 'fail', found: 13 });
    expect(at({ pattern: 'BS 1363', breaker: 32, fuse: 5 }, 6)).toMatchObject({ verdict: 'fail', found: 5 });
  });
  test('the least of pattern and breaker', () => {
    expect(at({ pattern: 'AS/NZS 3112 10 A', breaker: 20 }, 11)).toMatchObject({
      verdict: 'fail',
      found: 10,
    });
    expect(at({ pattern: 'CEE 7/7', breaker: 10 }, 11)).toMatchObject({ verdict: 'fail', found: 10 });
    expect(at({ pattern: 'CEE 7/7' }, 11)).toMatchObject({ verdict: 'cannot-tell', missing: 'breaker' });
  });
});

describe('plugs and sockets', () => {
  test('names are found in any spelling, with or without P and R', () => {
    for (const name of ['NEMA 5-20', 'nema 5-20R', 'NEMA5-20P'])
      expect(receptacleByName(name)?.amps).toBe(20);
    expect(receptacleByName('NEMA L6-30')?.volts).toBe(250);
    expect(receptacleByName('bs1363')?.amps).toBe(13);
    expect(receptacleByName('NEMA 99-99')).toBeUndefined();
  });
  const plugAt = (pattern: string | undefined, volts: number, running?: number, breaker?: number) =>
    judgePlug({
      pattern,
      volts,
      phases: 1,
      running,
      practice: 'nec',
      ...(breaker !== undefined && { breaker }),
    });
  const failing = (judged: ReturnType<typeof judgePlug>) =>
    judged.filter((j) => j.verdict === 'fail').map((j) => j.aspect);
  test('voltage, current, phases and breaker', () => {
    expect(failing(plugAt('NEMA 5-15', 120, 12, 20))).toEqual([]);
    expect(failing(plugAt('NEMA 5-15', 240, 12))).toEqual(['voltage']);
    expect(failing(plugAt('NEMA 6-15', 120, 16))).toEqual(['voltage', 'current']);
    expect(failing(plugAt('NEMA 5-15', 120, 12, 30))).toEqual(['breaker']);
    const three = judgePlug({ pattern: 'NEMA 6-20', volts: 240, phases: 3, running: 5, practice: 'nec' });
    expect(failing(three)).toEqual(['phases']);
  });
  test('unknown pattern or current: cannot tell; a fixed supply is not judged', () => {
    expect(plugAt('NEMA 99-99', 120)).toMatchObject([{ aspect: 'pattern', verdict: 'cannot-tell' }]);
    expect(plugAt(undefined, 120)[0]!.missing).toBe('pattern');
    expect(plugAt('NEMA 5-15', 120).find((j) => j.aspect === 'current')!.verdict).toBe('cannot-tell');
    expect(plugAt('fixed', 120)).toEqual([]);
  });
  test('circuits the tables do not list', () => {
    expect(circuitRow(25)).toBeUndefined();
    expect(circuitRow(20, 20)?.mostLoad).toBe(16);
  });
});

describe('power the nameplate can give', () => {
  test('1.5 hp from 120 V and 15 A can be', () => {
    const found = powerPlausible(motor({ power: hp(1.5), amps: 15 }))!;
    expect(found.plausible).toBe(true);
    expect(found.ratioToBest).toBeCloseTo((1.5 * 745.7) / (0.9 * 1800), 9);
  });
  test('a "3 hp" machine on 120 V and 11 A cannot', () => {
    const found = powerPlausible(motor({ power: hp(3), amps: 11 }))!;
    expect(found.plausible).toBe(false);
    expect(found.share).toBeCloseTo(2237.1 / 1320, 6);
    expect(found.bestHorsepower).toBeCloseTo((0.9 * 1320) / 745.7, 9);
  });
  test('three phases count root three; nothing is said without both figures', () => {
    const three = motor({ power: watts(2200), amps: 4, volts: ac(400), feed: 'three-phase' });
    expect(powerPlausible(three)).toMatchObject({ plausible: true });
    expect(powerPlausible(motor({ amps: 4 }))).toBeUndefined();
    expect(powerPlausible(motor({ power: hp(1) }))).toBeUndefined();
  });
});

test('more load or a smaller breaker is never judged better', () => {
  const gravity = { pass: 0, 'cannot-tell': 1, fail: 2 };
  const amps = fc.double({ min: 0.1, max: 60, noNaN: true });
  fc.assert(
    fc.property(amps, amps, fc.constantFrom<'nec' | 'iec'>('nec', 'iec'), (a, b, practice) => {
      const of = (load: number, breaker: number) =>
        gravity[judgeCircuit({ plug: plug({ breaker }), loads: [heater(load)], practice }).verdict];
      expect(of(Math.min(a, b), 20)).toBeLessThanOrEqual(of(Math.max(a, b), 20));
      expect(of(10, Math.max(a, b))).toBeLessThanOrEqual(of(10, Math.min(a, b)));
    }),
  );
});
