/** Diodes, coils and supplies that are shorted: told of the part that is the cause, and of no neighbour. */
import { describe, expect, it } from 'vitest';
import { shop } from '../mains-plans.ts';
import { findings, type Loop, loop } from '../threshold-plans.ts';

const of = (plan: Loop | string, id: string) =>
  findings(typeof plan === 'string' ? plan : loop(plan)).filter((f) => f.id === id);
const parts = (plan: Loop | string, id: string) => of(plan, id).map((f) => f.parts);

const coil = (name: string, more = '', volts = '12 V DC') =>
  `${name}: {kind: relay, coil: {rated: ${volts}, resistance: 120 ohm${more}}, contact: {ratings: [5 A 30 V DC]}}`;
const H = 'h: {kind: gate, contact: {ratings: [5 A 30 V DC], least: 1 mA 5 V DC}}';
const AC: Loop = {
  supply: 'kind: supply, output: 12 V AC, limit: 60 VA, regulation: transformer, class-2: true',
  contact: 'ratings: [5 A 125 V AC]',
  coil: 'rated: 12 V AC, power: 3 VA, inrush: 5 VA',
};
const BARE = 'rated: 12 V DC, resistance: 120 ohm, suppressor: none';

describe('diode-backwards', () => {
  // K1's first end lies on the - side, as it may: a coil has no polarity. K2 hangs on a gate of its own.
  const two: Loop = {
    coil: BARE,
    parts: [coil('K2'), H, 'D: {kind: diode}'],
    runs: [
      '{link: [PS1.+, g.COM]}',
      '{link: [PS1.+, h.COM]}',
      '{link: [g.NO, K1.A2]}',
      '{link: [K1.A1, PS1.-]}',
      '{link: [h.NO, K2.A1]}',
      '{link: [K2.A2, PS1.-]}',
    ],
  };
  const across = (a: string, k: string) => ({
    ...two,
    runs: [...two.runs!, `{link: [D.A, ${a}]}`, `{link: [D.K, ${k}]}`],
  });
  it('names the coil that the diode lies across, whichever way that is wired', () => {
    expect(parts(across('K2.A1', 'K2.A2'), 'diode-backwards')).toEqual([['D', 'K2']]);
    expect(parts(across('K1.A2', 'K1.A1'), 'diode-backwards')).toEqual([['D', 'K1']]);
  });
  it('names no coil where it lies across none', () => {
    const [found] = of(across('PS1.+', 'PS1.-'), 'diode-backwards');
    expect(found?.parts).toEqual(['D']);
    expect(found?.message).toContain('the loop');
    expect(found?.fix).toContain('Turn D round');
  });
  it('the right way round, or in line, it is none', () => {
    expect(parts(across('K2.A2', 'K2.A1'), 'diode-backwards')).toEqual([]);
    const inLine = {
      ...two,
      runs: [
        ...two.runs!.slice(0, 4),
        '{link: [h.NO, D.A]}',
        '{link: [D.K, K2.A1]}',
        '{link: [K2.A2, PS1.-]}',
      ],
    };
    expect(parts(inLine, 'diode-backwards')).toEqual([]);
  });
  it('across an AC coil either way round is a short in every other half wave', () => {
    for (const [a, k] of [
      ['K1.A1', 'K1.A2'],
      ['K1.A2', 'K1.A1'],
    ]) {
      const [found] = of(
        { ...AC, parts: ['D: {kind: diode}'], more: [`{link: [D.A, ${a}]}`, `{link: [D.K, ${k}]}`] },
        'diode-backwards',
      );
      expect(found?.parts).toEqual(['D', 'K1']);
      expect(found?.message).toContain('AC supply');
      expect(found?.fix).toContain('Take the diode off');
    }
    const inLine = {
      ...AC,
      parts: ['D: {kind: diode}'],
      runs: [
        '{link: [PS1.~1, g.COM]}',
        '{link: [g.NO, D.A]}',
        '{link: [D.K, K1.A1]}',
        '{link: [K1.A2, PS1.~2]}',
      ],
    };
    expect(parts(inLine, 'diode-backwards')).toEqual([]);
  });
});

describe('supply-shorted', () => {
  it('names the gates that join the poles, and the supply', () => {
    const plan = { parts: [H], more: ['{link: [PS1.+, h.COM]}', '{link: [h.NO, PS1.-]}'], runsOn: 'g, h' };
    const [found] = of(plan, 'supply-shorted');
    expect(found?.parts).toEqual(['h', 'PS1']);
    expect(found?.message).toContain('with h open');
    expect(found?.fix).toContain('h');
  });
  it('by a core alone there is no gate to name', () => {
    const [found] = of({ more: ['{link: [PS1.+, PS1.-]}'] }, 'supply-shorted');
    expect(found?.parts).toEqual(['PS1']);
    expect(found?.fix).toContain('Take away the core');
  });
  it('by two diodes in line that pass it, not by two of which one does not', () => {
    // Two silicon diodes drop some 1.4 V of the 12 V: nothing limits the rest.
    const two = (a: string, k: string): Loop => ({
      coil: BARE,
      parts: ['D: {kind: diode}', 'E: {kind: diode}'],
      more: ['{link: [PS1.+, D.A]}', `{link: [D.K, E.${a}]}`, `{link: [E.${k}, PS1.-]}`],
    });
    const shorts = (plan: Loop) =>
      [...parts(plan, 'supply-shorted'), ...parts(plan, 'diode-backwards')].flat();
    expect(shorts(two('A', 'K'))).toEqual(['PS1']);
    expect(shorts(two('K', 'A'))).toEqual([]);
  });
  it('AC poles too; mains are left to question 1', () => {
    const plan = { ...AC, parts: [H], more: ['{link: [PS1.~1, h.COM]}', '{link: [h.NO, PS1.~2]}'] };
    expect(parts(plan, 'supply-shorted')).toEqual([['h', 'PS1']]);
    const mains = shop({}).replace('intent:', '  - {link: [P1.L, P1.N]}\nintent:');
    expect(parts(mains, 'supply-shorted')).toEqual([]);
  });
  it('is not told beside the diode that is the cause', () => {
    const plan = {
      coil: BARE,
      parts: ['D: {kind: diode}'],
      more: ['{link: [D.A, K1.A1]}', '{link: [D.K, K1.A2]}'],
    };
    expect(parts(plan, 'diode-backwards')).toEqual([['D', 'K1']]);
    expect(parts(plan, 'supply-shorted')).toEqual([]);
  });
});

describe('coil-shorted', () => {
  it('both ends on one conductor', () => {
    const [found] = of({ parts: [coil('K2')], more: ['{link: [K2.A1, K2.A2]}'] }, 'coil-shorted');
    expect(found?.parts).toEqual(['K2']);
    expect(found?.terminals).toEqual(['K2.A1', 'K2.A2']);
    expect(parts({}, 'coil-shorted')).toEqual([]);
  });
  it('a board with both supply pins on one conductor, but not with its input on one of them', () => {
    const board = (runs: string[]) => ({
      parts: ['B1: {kind: board, supply: 12 V DC, input: high, contact: {ratings: [10 A 250 V AC]}}'],
      more: runs,
    });
    const [found] = of(board(['{link: [B1.VCC, B1.GND]}', '{link: [PS1.+, B1.IN]}']), 'coil-shorted');
    expect(found?.terminals).toEqual(['B1.VCC', 'B1.GND']);
    expect(
      parts(
        board(['{link: [B1.VCC, PS1.+]}', '{link: [B1.GND, PS1.-]}', '{link: [B1.GND, B1.IN]}']),
        'coil-shorted',
      ),
    ).toEqual([]);
  });
});
