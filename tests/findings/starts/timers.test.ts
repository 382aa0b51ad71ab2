/** Timers, triggers, electronic inputs and relays that stay put: figures on either side of what decides. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { reportOf } from '../../logic/product.ts';

const base = (name: string) => readFileSync(new URL(`../bases/${name}.yaml`, import.meta.url), 'utf8');
const example = (name: string) =>
  readFileSync(new URL(`../../../examples/${name}.yaml`, import.meta.url), 'utf8');

function put(text: string, ...changes: readonly (readonly [string, string])[]): string {
  return changes.reduce((t, [from, to]) => {
    expect(t.split(from).length - 1, from).toBe(1);
    return t.replace(from, () => to);
  }, text);
}

/** Every finding with its severity, those under another included by their ids alone. */
function told(text: string, id: string): string[] {
  const report = reportOf(text);
  return report.findings.flatMap((f) => [
    ...(f.id === id ? [f.severity] : []),
    ...f.also.filter((a) => a.id === id).map(() => 'folded'),
  ]);
}

const messageOf = (text: string, id: string) => reportOf(text).findings.find((f) => f.id === id)?.message;

const TERN = example('tern-loft');

describe('run-on', () => {
  it.each([
    ['20 s', []],
    ['19.9 s', ['fault']],
    ['0 s', ['fault']],
  ])('of 20 s with the knob at %s', (time, expected) => {
    expect(told(put(TERN, ['time: 25 s', `time: ${time}`]), 'run-on-missing')).toEqual(expected);
  });

  it('tells the cause: no timer, an on-delay, a supply that goes, another contact', () => {
    const why = (text: string) => reportOf(text).findings.find((f) => f.id === 'run-on-missing')?.why;
    expect(why(put(TERN, ['function: off-delay', 'function: on-delay']))).toContain('KT1 is an on-delay');
    const plain = put(base('set-reset'), [
      'if-supply-fails: running',
      'run-on: 5 s, if-supply-fails: running',
    ]);
    expect(why(plain)).toContain('Nothing on its way lets go late');
    const cut = put(
      TERN,
      ['  - {link: [plus, KT1.A1]}\n', '  - {link: [KT1.T1, KT1.T2]}\n'],
      [
        '{white: [KT1.T1, planer.COM], brown: [KT1.T2, planer.NO]}',
        '{white: [plus, planer.COM], brown: [KT1.A1, planer.NO]}',
      ],
    );
    expect(why(cut)).toContain('loses its own supply');
  });

  it('is asked of nothing that does not ask for it', () => {
    const text = put(TERN, [', run-on: 20 s', ''], ['time: 25 s', 'time: 0 s']);
    expect(told(text, 'run-on-missing')).toEqual([]);
    expect(told(text, 'run-on-clears-no-duct')).toEqual([]);
  });

  it('is of no use to a stop: what blocks has to stop at once', () => {
    const late = put(
      TERN,
      [
        '{white: [KT1.T1, planer.COM], brown: [KT1.T2, planer.NO]}',
        '{white: [bin.NC, planer.COM], brown: [KT1.T2, planer.NO]}',
      ],
      [
        '{red: [plus, bin.COM], black: [bin.NC, KT1.15]}',
        '{white: [KT1.T1, bin.COM]}}\n  - {cable: bell, length: 1 m, cores: {red: [plus, KT1.15]}',
      ],
    );
    expect(told(late, 'block-late')).toEqual(['danger']);
    expect(messageOf(late, 'block-late')).toContain('25 s after bin');
    expect(told(TERN, 'block-late')).toEqual([]);
  });
});

describe('the supply of an off-delay', () => {
  const own = base('stored-delay');
  it('is asked for where no trigger is used', () => {
    expect(told(own, 'timer-supply')).toEqual([]);
    expect(told(put(own, ['    supply: none\n', '']), 'timer-supply')).toEqual(['doubt']);
  });

  it('permanent, and nothing on T1 T2: it never pulls in', () => {
    const text = put(own, ['supply: none', 'supply: permanent']);
    expect(reportOf(text).findings.map((f) => f.id)).toContain('loop-dead');
  });
});

// Test vector of timer data: a dry trigger of 5 mA suits a gate for 1 mA and not one for 100 mA.
describe('small currents on a dry trigger', () => {
  const at = (sent: string, least: string) =>
    put(TERN, ['trigger-current: 3 mA', sent], ['least: 1 mA 5 V DC, metal: gold', `least: ${least} 5 V DC`]);
  it.each([
    ['trigger-current: 5 mA', '1 mA', []],
    ['trigger-current: 1 mA', '1 mA', []],
    ['trigger-current: 0.99 mA', '1 mA', ['caution']],
    ['trigger-current: 5 mA', '100 mA', ['caution']],
    // Unsaid it is 0.1 to 10 mA by make.
    ['isolation: reinforced\n    price: 9', '0.1 mA', []],
    ['isolation: reinforced\n    price: 9', '5 mA', ['doubt']],
    ['isolation: reinforced\n    price: 9', '11 mA', ['caution']],
  ])('%s through contacts for %s', (sent, least, expected) => {
    const text = sent.startsWith('isolation')
      ? put(
          TERN,
          ['    trigger-current: 3 mA\n', ''],
          ['least: 1 mA 5 V DC, metal: gold', `least: ${least} 5 V DC`],
        )
      : at(sent, least);
    expect(told(text, 'switch-underloaded')).toEqual(expected);
  });
});

// Test vector: 100 m of 24 AWG pair have 16.8 ohm, which every timer takes as closed (ASTM B258: 0.0842 ohm/m at 20 °C).
describe('the ohms of a trigger loop', () => {
  const far = (metres: number, stated: string) =>
    put(
      TERN,
      ['    trigger-resistance: 220 ohm\n', stated],
      [
        '{cable: bell, length: 4 m, cores: {white: [KT1.T1',
        `{cable: {gauge: 24 AWG, cores: 2, insulation: 300 V}, length: ${metres} m, cores: {white: [KT1.T1`,
      ],
    );
  it('passes 100 m of 24 AWG unsaid', () => {
    expect(told(far(100, ''), 'trigger-loop')).toEqual([]);
  });
  it.each([
    [1500, '', ['doubt']],
    [6500, '', ['fault']],
    [1100, '    trigger-resistance: 220 ohm\n', []],
    [1500, '    trigger-resistance: 220 ohm\n', ['fault']],
  ])('%i m of it with %j', (metres, stated, expected) => {
    expect(told(far(metres, stated), 'trigger-loop')).toEqual(expected);
  });
});

describe('a trigger fed from outside', () => {
  it('is a caution with one pole, a warning with both', () => {
    const one = put(base('timer'), [
      '  - {link: [minus, KT1.A2]}\n',
      '  - {link: [minus, KT1.A2]}\n  - {link: [minus, KT1.T2]}\n',
    ]);
    expect(told(one, 'trigger-fed')).toEqual(['caution']);
    const two = put(one, [
      '{white: [KT1.T1, planer.COM], brown: [KT1.T2, planer.NO]}',
      '{white: [plus, planer.COM], brown: [KT1.T1, planer.NO]}',
    ]);
    expect(told(two, 'trigger-fed')).toEqual(['warning']);
  });

  it('is told by what its data say where the timer is on mains', () => {
    const mains = (isolation: string) =>
      put(
        TERN,
        ['    isolation: reinforced\n', isolation],
        ['  - {link: [plus, KT1.A1]}\n  - {link: [minus, KT1.A2]}\n', ''],
        [
          '  - {cable: flex, length: 2 m, cores: {brown: [Q1.2,',
          '  - {cable: flex, length: 20 cm, cores: {brown: [isolator.2, KT1.A1], blue: [isolator.4, KT1.A2]}}\n  - {cable: flex, length: 2 m, cores: {brown: [Q1.2,',
        ],
      );
    expect(told(mains(''), 'trigger-may-be-live')).toEqual(['doubt']);
    expect(told(mains('    isolation: basic\n'), 'trigger-may-be-live')).toEqual(['danger']);
    expect(told(mains('    isolation: reinforced\n'), 'trigger-may-be-live')).toEqual([]);
  });
});

// Test vector of wide-range data: a coil for 24-240 V AC/DC works from 20.4 V (85 % of its lowest), cold and warm.
describe('an electronic coil', () => {
  const fed = (volts: number, ambient = 30) =>
    put(
      base('stored-delay'),
      [
        'output: 24 V DC, limit: 2 A, regulation: regulated, tolerance: 2 %',
        `output: ${volts} V DC, limit: 2 A, regulation: regulated, tolerance: 0 %`,
      ],
      ['ambient: 30 °C', `ambient: ${ambient} °C`],
      [
        'rated: 24-48 V AC/DC, power: 1.5 W, inrush: 20 VA, pull-in: 85 %',
        'rated: 12-48 V AC/DC, power: 1.5 W, pull-in: 85 %',
      ],
      [
        '{cable: bell, length: 3 m, cores: {red: [PS1.+, planer.COM]',
        '{cable: bell, length: 10 cm, cores: {red: [PS1.+, planer.COM]',
      ],
      [
        '{cable: bell, length: 3 m, cores: {red: [planer.COM, saw.COM]',
        '{cable: bell, length: 10 cm, cores: {red: [planer.COM, saw.COM]',
      ],
      ['{cable: bell, length: 5 m, cores: {black', '{cable: bell, length: 10 cm, cores: {black'],
    );
  it.each([
    [20.3, 30, ['fault']],
    [20.6, 30, []],
    [20.6, 50, []],
  ])('for 24 V and more, fed %f V at %i °C', (volts, ambient, expected) => {
    const low = reportOf(fed(volts, ambient)).findings.filter((f) => f.id === 'coil-too-low');
    expect(low.filter((f) => f.parts[0] === 'KT1').map((f) => f.severity)).toEqual(expected);
  });

  it('wants no diode, on AC or DC, and nothing quenched', () => {
    expect(told(base('stored-delay'), 'coil-unsuppressed')).toEqual([]);
    expect(told(example('cooper-yard'), 'coil-unsuppressed')).toEqual([]);
    expect(told(example('cooper-yard'), 'coil-kind')).toEqual([]);
  });
});

describe('relays that stay put', () => {
  it('a gate on a toggling one is told by what happens at the machine', () => {
    const text = put(
      base('toggle'),
      [
        '{red: [plus, saw.COM], black: [saw.NO, KB1.1.COM]}',
        '{red: [plus, saw.COM], black: [saw.NO, KB1.A1]}',
      ],
      ['  - {link: [KB1.1.NO, Q1.A1]}\n', '  - {link: [KB1.1.NO, Q1.A1]}\n  - {link: [plus, KB1.1.COM]}\n'],
      [', stays-on-after: [push1, push2], stopped-by: [push1, push2]', ''],
    );
    expect(messageOf(text, 'toggle-needs-button')).toMatch(
      /opening (saw|lathe) starts fan, shutting it leaves fan running, and the next opening stops it$/,
    );
    // Nothing of it is told twice.
    expect(
      reportOf(text)
        .findings.filter((f) => f.severity === 'fault')
        .map((f) => f.id),
    ).toEqual(['toggle-needs-button']);
  });

  it.each([
    ['pulse: continuous', []],
    ['pulse: 200 ms', ['warning', 'warning']],
    ['price: 30', ['doubt', 'doubt']],
  ])('gates on a set-reset one, %s', (said, expected) => {
    expect(told(put(base('set-reset'), ['pulse: continuous', said]), 'pulse-coil-held')).toEqual(expected);
  });

  it('does not stop with its supply', () => {
    const text = put(base('set-reset'), [', if-supply-fails: running', '']);
    expect(told(text, 'runs-on-dead-supply')).toEqual(['danger']);
  });

  it('fed through a timer is left undecided', () => {
    const text = put(base('timer'), [
      '    coil: {rated: 24 V DC, power: 5 W, pull-in: 70 %, drop-out: 10 %, suppressor: diode}',
      '    bistable: toggle\n    pulse: continuous\n    coil: {rated: 24 V DC, power: 5 W, pull-in: 70 %, drop-out: 10 %, suppressor: diode}',
    ]);
    expect(told(text, 'undecided')).toEqual(['doubt']);
  });
});
