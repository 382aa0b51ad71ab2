/** The dial of an overload relay against the plate of what it stops; the factors stand in tests/ratings/overload.test.ts. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { reportOf } from '../contact-plans.ts';

const armed = readFileSync(new URL('../bases/armed.yaml', import.meta.url), 'utf8');
const changed = (text: string, ...changes: readonly (readonly [string, string])[]) =>
  changes.reduce((t, [from, to]) => {
    expect(t).toContain(from);
    return t.replace(from, () => to);
  }, text);
const of = (text: string) => reportOf(text).findings.filter((f) => f.id === 'overload-setting');
const severities = (text: string) => of(text).map((f) => f.severity);
const set = (to: string, ...more: readonly (readonly [string, string])[]) =>
  changed(armed, ['setting: 9.4 A', `setting: ${to}`], ...more);

describe('iec, IEC 60204-1:2016 7.3 with IEC 60947-4-1 from memory: 8.95 A to 9.87 A for a fan of 9.4 A', () => {
  it.each([
    ['8.9 A', ['warning']],
    ['9 A', []],
    ['9.8 A', []],
    ['9.9 A', ['warning']],
  ])('%s', (setting, expected) => expect(severities(set(setting))).toEqual(expected));
});

describe('nec, 430.32(A)(1) as in the 2008 and 2023 editions: 115 % of 9.4 A is 10.81 A, 125 % is 11.75 A', () => {
  const nec: readonly [string, string] = ['practice: iec', 'practice: nec'];
  const factor = (value: string): readonly [string, string] => [
    '    amps: 9.4 A\n',
    `    amps: 9.4 A\n    service-factor: ${value}\n`,
  ];
  it.each([
    ['8.4 A', ['warning']],
    ['8.5 A', []],
    ['10.8 A', []],
    ['11 A', ['doubt']],
    ['11.8 A', ['warning']],
  ])('%s, service factor not stated', (setting, expected) =>
    expect(severities(set(setting, nec))).toEqual(expected),
  );
  it('11 A turns on the service factor', () => {
    expect(severities(set('11 A', nec, factor('1.15')))).toEqual([]);
    expect(severities(set('11 A', nec, factor('1.0')))).toEqual(['warning']);
  });
});

describe('what is not stated', () => {
  it('a setting is asked for, with the figure of the plate, where nothing else protects the motor', () => {
    const [found] = of(changed(armed, ['    setting: 9.4 A\n', '']));
    expect(found!.severity).toBe('doubt');
    expect(found!.fix).toContain('by the plate 9.4 A');
    expect(
      severities(
        changed(
          armed,
          ['    setting: 9.4 A\n', ''],
          ['    plugged-into', '    protector: manual\n    plugged-into'],
        ),
      ),
    ).toEqual([]);
  });
  it('a current is asked for', () =>
    expect(of(changed(armed, ['    amps: 9.4 A\n', ''])).map((f) => [f.severity, f.fix])).toEqual([
      ['doubt', 'State amps: of fan, as on the plate.'],
    ]));
});

describe('several motors', () => {
  const second = (fields: string) =>
    changed(
      armed,
      [
        '  B1: {kind: box',
        `  vac: {kind: motor, volts: 230 V AC, amps: 2 A, power: 0.25 kW, locked-rotor: 10 A${fields}, plugged-into: X1}\n  B1: {kind: box`,
      ],
      ['fan: {runs-on', 'X1: {runs-on'],
    );
  it('through one relay count by their sum, and neither is protected alone', () => {
    expect(severities(second(''))).toEqual(['warning']);
    expect(severities(changed(second(''), ['setting: 9.4 A', 'setting: 11.4 A']))).toEqual(['caution']);
  });
  it('one with a protector of its own need not pass through it', () =>
    expect(severities(second(', protector: manual'))).toEqual([]));
  it('through two relays in line are each held to one of them', () => {
    const two = changed(
      second(''),
      [
        '  STOP: {from: press}',
        '  OL2: {kind: cutout, setting: 2 A, reset: manual, contact: {ratings: [6 A 250 V AC, 3 A 30 V DC]}}\n  STOP: {from: press}',
      ],
      ['red: [OL.96, STOP.COM]', 'red: [OL2.96, STOP.COM]'],
      ['  - {link: [armed, CR.11]}', '  - {link: [OL.96, OL2.95]}\n  - {link: [armed, CR.11]}'],
      ['blocked-by: [STOP, OL]', 'blocked-by: [STOP, OL, OL2]'],
    );
    expect(severities(two)).toEqual([]);
    expect(of(changed(two, ['setting: 2 A', 'setting: 3 A'])).map((f) => f.parts)).toEqual([['OL2', 'vac']]);
  });
});

it('what it says to do makes it go', () => {
  for (const setting of ['5 A', '15 A']) {
    const [found] = of(set(setting));
    const to = /setting: ([\d.]+ A)/.exec(found!.fix)![1]!;
    expect(of(set(to))).toEqual([]);
  }
});
