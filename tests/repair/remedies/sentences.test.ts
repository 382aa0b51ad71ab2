/** Advice that once failed when it was followed, or told nothing, and what stands in its place. */
import { describe, expect, it } from 'vitest';
import type { Finding } from '../../../src/findings/report-model.ts';
import { check } from '../../../src/repair/check.ts';
import { Study } from '../../../src/study/study.ts';
import { shop } from '../../findings/apart/colour-plans.ts';
import { wired as unstated, type Wired } from '../../findings/wired-plans.ts';
import { example } from '../../helpers/example-plans.ts';
import { planOf } from '../../helpers/plan-of.ts';

/** With the figures stated on which volts turn that lie close to what a coil needs, at what is else taken for the least. */
const wired = (w: Wired): string =>
  unstated(w)
    .replace('practice: nec', 'practice: nec\nambient: 40 °C')
    .replaceAll('least: 1 mA 5 V DC}', 'least: 1 mA 5 V DC, resistance: 0.1 ohm}');

const findingsOf = (text: string): readonly Finding[] => check(Study.of(planOf(text))).findings;
const told = (text: string, id: string): Finding => findingsOf(text).find((f) => f.id === id)!;

const cable = (gauge: string, metres: number, cores: string) =>
  `{cable: {gauge: ${gauge}, cores: 2, insulation: 300 V, strands: solid}, length: ${metres} m, cores: {${cores}}}`;
const coil = (name: string, ohms: number, volts = 12, pullIn = '75 %') =>
  `${name}: {kind: relay, coil: {rated: ${volts} V DC, resistance: ${ohms} ohm, pull-in: ${pullIn}, tolerance: 0 %, hot-rise: 30 K, most: 130 %, suppressor: diode}, contact: {ratings: [5 A 30 V DC]}}`;
const PS = (volts: number) =>
  `PS1: {kind: supply, output: ${volts} V DC, limit: 2 A, regulation: regulated, tolerance: 2 %, class-2: true}`;
const loop = (more: readonly string[], runs: readonly string[]) =>
  wired({ parts: 'g', more, wires: 'K1.A2 PS1.-', runs, intent: ['K1: {runs-on: [g]}'] });

describe('figures that are compared', () => {
  it('are told apart: gets and needs are never one number twice', () => {
    // 11.76 V at least, less the drop of 50 m of 20 AWG, against 12 V times its share, warm.
    const text = loop(
      [PS(12), coil('K1', 400, 12, '81.4 %')],
      [cable('20 AWG', 50, 'red: [PS1.+, g.COM], black: [K1.A1, g.NO]')],
    );
    const { message } = told(text, 'coil-too-low');
    const [, gets, needs] = /gets ([\d.]+) V .*needs ([\d.]+) V/.exec(message)!;
    expect(message).toBe('K1 gets 11.67 V from g at worst and needs 11.69 V to pull in warm');
    expect(gets).not.toBe(needs);
  });
});

describe('wire', () => {
  const far = (trunk: number, spur: number, ohms: number) =>
    wired({
      parts: 'g h',
      more: [PS(12), coil('K1', ohms)],
      wires: 'K1.A2 PS1.-',
      runs: [
        cable('20 AWG', trunk, 'red: [PS1.+, g.COM], black: [K1.A1, g.NO]'),
        cable('20 AWG', spur, 'red: [g.COM, h.COM], black: [g.NO, h.NO]'),
      ],
      intent: ['K1: {runs-on: [g, h]}'],
    });
  it('is asked for on trunk and spur where the spur alone does not do', () => {
    const { fix } = told(far(250, 60, 120), 'coil-too-low');
    expect(fix).toMatch(
      /^Use 12 AWG for the trunk \(run 2\) and the h spur \(run 3\) \(K1 then gets [\d.]+ V and needs [\d.]+ V\)/,
    );
  });
  it('is asked for on the trunk alone where that does', () => {
    expect(told(far(200, 5, 120), 'coil-too-low').fix).toMatch(/^Use 14 AWG for the trunk \(run 2\) \(/);
  });
  it('the other gates that are short are named, those that are not are left out', () => {
    // 20 AWG has 33 ohm a km (ASTM B258): 40 ohm there and back to g, 37 to h, beside 120 ohm of coil; i is next to it.
    const text = wired({
      parts: 'g h i',
      more: [PS(12), coil('K1', 120)],
      wires: 'K1.A2 PS1.-',
      runs: [
        ['g', 600],
        ['h', 550],
        ['i', 1],
      ].map(([gate, metres]) =>
        cable('20 AWG', Number(metres), `red: [PS1.+, ${gate}.COM], black: [K1.A1, ${gate}.NO]`),
      ),
      intent: ['K1: {runs-on: [g, h, i]}'],
    });
    const { message, why } = told(text, 'coil-too-low');
    expect(message).toContain('from g at worst');
    expect(why).toMatch(/ Short too: h\.$/);
  });
  it('of several times the copper is not advised for a little to spare', () => {
    const study = Study.of(example('wrong/relay-pulls-in-late'));
    const thin = check(study).findings.find((f) => f.id === 'coil-thin-margin')!;
    expect(thin.remedies.flatMap((r) => r.changes).filter((c) => c.change === 'cable')).toEqual([]);
  });
});

describe('a supply', () => {
  it('is not advised for the volts that it has, nor for volts that nobody prints', () => {
    const text = loop(
      [PS(24), coil('K1', 640, 24, '86 %')],
      [cable('20 AWG', 1, 'red: [PS1.+, g.COM], black: [K1.A1, g.NO]')],
    );
    const { fix, remedies } = told(text, 'coil-too-low');
    expect(fix).toBe(
      'Use a relay as K1 that pulls in at 18 V (75 %) or less (K1 then gets 23.5 V and needs 21.5 V).',
    );
    expect(remedies).toHaveLength(1);
  });
  it('is of one size for every finding that it mends', () => {
    const text = wired({
      parts: 'g',
      more: [
        'PS1: {kind: supply, output: 24 V AC, limit: 10 VA, regulation: transformer, class-2: true}',
        'K1: {kind: relay, coil: {rated: 24 V AC, power: 8 VA, inrush: 60 VA, most: 130 %}, contact: {ratings: [5 A 30 V DC]}}',
      ],
      wires: 'PS1.~1 g.COM, g.NO K1.A1, K1.A2 PS1.~2',
      intent: ['K1: {runs-on: [g]}'],
    });
    const sizes = findingsOf(text)
      .filter((f) => ['coil-too-low', 'supply-overloaded'].includes(f.id))
      .flatMap((f) => f.remedies.flatMap((r) => r.changes))
      .flatMap((c) => (c.change === 'part' && c.part === 'PS1' ? [c.fields.limit] : []));
    expect(sizes.length).toBeGreaterThanOrEqual(2);
    expect(new Set(sizes).size).toBe(1);
  });
});

describe('a supply that is too small beside wire that is too thin', () => {
  // 40 m of 24 AWG there and back are 6.7 ohm (ASTM B258): no supply brings the volts to the coil of 12 ohm behind them.
  const both = (limit: number) =>
    wired({
      parts: 'g',
      more: [PS(12).replace('2 A', `${limit} A`), coil('K1', 12), ...(limit < 20 ? [] : HEAVY)],
      wires: `K1.A2 PS1.-${limit < 20 ? '' : HEAVY.map((_, n) => `, PS1.+ X${n}.1, X${n}.2 PS1.-`).join('')}`,
      runs: [cable('24 AWG', 40, 'red: [PS1.+, g.COM], black: [K1.A1, g.NO]')],
      intent: ['K1: {runs-on: [g]}'],
    });
  const HEAVY = Array.from({ length: 6 }, (_, n) => `X${n}: {kind: lamp, rated: 12 V DC 60 W}`);
  const ids = ['supply-overloaded', 'coil-too-low'];

  it('gets the larger one all the same, which is half of the cure', () => {
    const found = findingsOf(both(0.5)).filter((f) => ids.includes(f.id));
    expect(found.map((f) => f.id).sort()).toEqual([...ids].sort());
    const larger = found.find((f) => f.id === 'supply-overloaded')!;
    expect(larger.fix).toMatch(/^Use a supply of 12 V DC for [\d.]+ A as PS1/);
  });

  it('gets none where none larger is sold', () => {
    const found = findingsOf(both(20)).filter((f) => ids.includes(f.id));
    expect(found.map((f) => f.id).sort()).toEqual([...ids].sort());
    expect(found.map((f) => f.fix).join(' ')).not.toMatch(/use a supply/i);
  });
});

describe('a relay between', () => {
  it('is offered where the wire carries too heavy a coil, with its figures, and was tried', () => {
    const found = check(Study.of(example('wrong/no-interposing-relay'))).findings.find(
      (f) => f.id === 'coil-too-low',
    )!;
    expect(found.remedies.map((r) => r.changes.map((c) => c.change))).toContainEqual(['relay']);
    expect(found.fix).toContain('put a small relay (coil 24 V DC, 0.5 W or less; contact DC-13');
  });
});

describe('one cause', () => {
  it('is told once for all coils that are short by it, with what the trunk takes', () => {
    const text = wired({
      parts: 'g',
      more: [PS(12), coil('K1', 120), coil('K2', 120), 'p: {kind: joint}', 'q: {kind: joint}'],
      wires: 'q K1.A1, q K2.A1, K1.A2 PS1.-, K2.A2 PS1.-',
      runs: [
        cable('20 AWG', 150, 'red: [PS1.+, p], black: [q, g.NO]'),
        cable('20 AWG', 1, 'red: [p, g.COM]'),
      ],
      intent: ['K1: {runs-on: [g]}', 'K2: {runs-on: [g]}'],
    });
    const low = findingsOf(text).filter((f) => f.id === 'coil-too-low');
    expect(low).toHaveLength(1);
    expect(low[0]!.message).toMatch(/; K[12] is short too$/);
    expect(low[0]!.why).toMatch(/ V stay in the trunk that all of them have \(runs 5 and 6\)\./);
  });
});

describe('a cord that is fixed wiring', () => {
  it('becomes cable that is made for walls, on every run of it', () => {
    const found = check(Study.of(example('wrong/cord-as-fixed-wiring'))).findings.find(
      (f) => f.id === 'cord-as-fixed-wiring',
    )!;
    // Runs 5 and 6 of the plan are the cords; the thermostat wire of runs 1 to 4 is none.
    expect(found.remedies.flatMap((r) => r.changes)).toContainEqual({
      change: 'cable-flexible',
      runs: [5, 6],
    });
    expect(found.fix).toMatch(/^Use building wire in conduit, or a cable made for walls, for runs 5 and 6 /);
  });
});

describe('a coil that nothing quenches', () => {
  // Common practice: a diode across a coil on DC, its band to the + side.
  it('gets a diode', () => {
    const text = loop(
      [PS(12), coil('K1', 160).replace('suppressor: diode', 'suppressor: none')],
      [cable('20 AWG', 2, 'red: [PS1.+, g.COM], black: [K1.A1, g.NO]')],
    );
    const { fix, remedies } = told(text, 'coil-unsuppressed');
    expect(remedies).not.toEqual([]);
    expect(fix).toContain('it a diode at the coil of K1, its band to the + side');
  });
});

describe('where nothing does', () => {
  it('what is short is told, and nothing is offered', () => {
    const text = loop(
      [PS(24), coil('K1', 640, 24, '100 %').replace('most: 130 %', 'most: 100 %')],
      [cable('24 AWG', 900, 'red: [PS1.+, g.COM], black: [K1.A1, g.NO]')],
    );
    const { fix, remedies } = told(text, 'coil-too-low');
    expect(remedies).toEqual([]);
    expect(fix).toMatch(/^K1 is [\d.]+ V short\. No size that was tried mends it\.$/);
  });
});

describe('a contact that is too small for a heater', () => {
  it('is asked for amperes, not for a motor rating, which a heater does not need', () => {
    // 300 W on 120 V are 2.5 A; NEC 430.83 and AC-3 of IEC 60947-4-1 are about motors.
    const text = shop({ practice: 'nec' }).replace(
      /ratings: \[30 A .*?\], motor: .*?\]/,
      'ratings: [2 A 250 V AC]',
    );
    expect(told(text, 'contact-running').remedies.map((r) => r.words)).toEqual([
      'use a contact rated at least 3 A 120 V AC as K1',
    ]);
  });
});
