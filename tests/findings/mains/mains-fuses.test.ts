/** Fuses wired into the mains: against running and starting, and in the neutral. */
import { describe, expect, it } from 'vitest';
import { findings } from '../threshold-plans.ts';
import { type Lead, lead } from './lead-plans.ts';

const of = (text: string, ...ids: readonly string[]) =>
  findings(text).flatMap((f) =>
    [f, ...f.also].some((x) => ids.includes(x.id))
      ? [`${f.severity} ${f.question} ${f.id}${f.also.map((a) => ` < ${a.id}`).join('')}`]
      : [],
  );

/** A fuse between contact and motor. */
const fused = (fuse: string, motor: string, practice: 'nec' | 'iec' = 'iec'): string =>
  lead({
    practice,
    cable: practice === 'iec' ? '10 mm2' : '8 AWG',
    more: ', rated: 60 °C',
    plug: 'breaker: 40 A',
    load: `kind: motor, protector: manual, ${motor}`,
    parts: [`F1: {kind: fuse, ${fuse}}`],
    line: ['P1.L', 'F1.1'],
    runs: ['{link: [F1.2, M.L]}'],
  });

describe('fuse-too-small on the mains', () => {
  it.each<[string, string, readonly string[]]>([
    // A fuse carries its rating: IEC 60269-1.
    ['rating: 10 A, class: gG', 'amps: 10 A, locked-rotor: 20 A', []],
    ['rating: 10 A, class: gG', 'amps: 10.1 A, locked-rotor: 20 A', ['fault 7 fuse-too-small']],
    // gG 16 A: 33 A for 10 s from memory, melts within 10 ms at 316 A by its I²t (IEC 60269-1 Table 7, verified).
    ['rating: 16 A, class: gG', 'amps: 6 A, locked-rotor: 33 A', []],
    ['rating: 16 A, class: gG', 'amps: 6 A, locked-rotor: 34 A', ['caution 7 fuse-too-small']],
    ['rating: 16 A, class: gG', 'amps: 6 A, locked-rotor: 317 A', ['fault 7 fuse-too-small']],
    // aM holds four times its rating (IEC 60269-1, verified).
    ['rating: 16 A, class: aM', 'amps: 10 A, locked-rotor: 64 A', []],
    ['rating: 16 A, class: aM', 'amps: 10 A, locked-rotor: 65 A', ['caution 7 fuse-too-small']],
  ])('iec: %s before %s', (fuse, motor, expected) => {
    expect(of(fused(fuse, motor), 'fuse-too-small')).toEqual(expected);
  });
  // NEC 430.52: 175 % for time-delay, 300 % for others.
  it.each<[string, readonly string[]]>([
    ['rating: 14 A, class: time-delay', []],
    ['rating: 13 A, class: time-delay', ['caution 7 fuse-too-small']],
    ['rating: 24 A, class: fast', []],
    ['rating: 23 A, class: fast', ['caution 7 fuse-too-small']],
    ['rating: 23 A', ['caution 7 fuse-too-small']],
    ['rating: 7 A', ['fault 7 fuse-too-small']],
  ])('nec: %s before 8 A', (fuse, expected) => {
    expect(of(fused(fuse, 'amps: 8 A, locked-rotor: 48 A', 'nec'), 'fuse-too-small')).toEqual(expected);
  });
  it('counts what is plugged into an outlet behind it', () => {
    const plugged = (amps: number) =>
      lead({
        practice: 'iec',
        cable: '2.5 mm2',
        plug: 'breaker: 16 A',
        parts: [
          'F1: {kind: fuse, rating: 10 A, class: gG}',
          `T: {kind: load, type: heater, volts: 230 V AC, amps: ${amps} A, plugged-into: X1}`,
        ],
        line: ['P1.L', 'F1.1'],
        runs: ['{link: [F1.2, X1.L]}'],
      });
    expect(of(plugged(10), 'fuse-too-small')).toEqual([]);
    expect(of(plugged(10.5), 'fuse-too-small')).toEqual(['fault 7 fuse-too-small']);
  });
});

describe('fuse-in-neutral', () => {
  const base: Lead = {
    practice: 'iec',
    cable: '2.5 mm2',
    plug: 'breaker: 16 A',
    load: 'kind: load, type: heater, amps: 2 A',
  };
  const inNeutral = (part: string, terminals: readonly [string, string]) =>
    lead({
      ...base,
      parts: [part, 'cold: {kind: joint}'],
      runs: [`{link: [P1.N, ${terminals[0]}]}`, `{link: [${terminals[1]}, cold]}`],
    }).replace('[P1.N, M.N]', '[cold, M.N]');
  it('a fuse in the neutral is a danger, one in the line is not', () => {
    expect(of(inNeutral('F1: {kind: fuse, rating: 10 A}', ['F1.1', 'F1.2']), 'fuse-in-neutral')).toEqual([
      'danger 7 fuse-in-neutral',
    ]);
    expect(of(fused('rating: 16 A, class: gG', 'amps: 4 A'), 'fuse-in-neutral')).toEqual([]);
    expect(of(lead(base), 'fuse-in-neutral')).toEqual([]);
  });
  it('a hand switch in the neutral alone, which leaves the load live while it is off', () => {
    const hand = inNeutral('S1: {kind: switch, contact: {ratings: [16 A 250 V AC]}}', ['S1.COM', 'S1.NO']);
    expect(of(hand, 'fuse-in-neutral').join()).toContain('fuse-in-neutral');
  });
  it('two poles of one relay, one in each conductor, are right', () => {
    const both = lead({
      ...base,
      parts: ['cold: {kind: joint}'],
      runs: ['{link: [P1.N, K1.3]}', '{link: [K1.4, cold]}'],
    })
      .replace('[P1.N, M.N]', '[cold, M.N]')
      .replace('K1.COM', 'K1.1')
      .replace('K1.NO', 'K1.2')
      .replace(
        'contact: {ratings: [90 A 600 V AC]}',
        'contact: {ratings: [90 A 600 V AC]}, poles: [{form: make, marks: [1, 2]}, {form: make, marks: [3, 4]}]',
      );
    expect(of(both, 'fuse-in-neutral')).toEqual([]);
  });
});

describe('trips-at-start and breaker-may-trip', () => {
  const start = (plug: string, amps: number) =>
    of(
      lead({
        practice: 'iec',
        cable: '10 mm2',
        plug,
        load: `kind: motor, protector: manual, amps: 6 A, locked-rotor: ${amps} A`,
      }),
      'trips-at-start',
      'breaker-may-trip',
    );
  // IEC 60898-1, verified.
  it.each<[string, number, readonly string[]]>([
    ['breaker: 16 A B', 48, []],
    ['breaker: 16 A B', 49, ['caution 7 breaker-may-trip']],
    ['breaker: 16 A B', 80, ['fault 7 trips-at-start']],
    ['breaker: 16 A C', 80, []],
    ['breaker: 16 A C', 159, ['caution 7 breaker-may-trip']],
    ['breaker: 16 A C', 160, ['fault 7 trips-at-start']],
    ['breaker: 16 A D', 160, []],
    ['breaker: 16 A D', 320, ['fault 7 trips-at-start']],
    ['breaker: 16 A', 48, []],
    ['breaker: 16 A', 319, ['caution 7 breaker-may-trip']],
    ['breaker: 16 A', 320, ['fault 7 trips-at-start']],
    // a plug fuse of class gG: 20 A holds 42 A for 10 s (from memory)
    ['breaker: 40 A D, fuse: 20 A gG', 42, []],
    ['breaker: 40 A D, fuse: 20 A gG', 43, ['caution 7 breaker-may-trip']],
  ])('%s at %d A', (plug, amps, expected) => {
    expect(start(plug, amps)).toEqual(expected);
  });
});
