import { describe, expect, it } from 'vitest';
import { across, planOf, tables } from '../helpers/plan-of.ts';

describe('sources at odds', () => {
  const two = (join: string) =>
    planOf(`parts:
  A: {kind: battery, output: 9 V DC, internal-resistance: 0 ohm}
  B: {kind: battery, output: 6 V DC, internal-resistance: 0 ohm}
runs:
  - ${join}
  - {link: [A.-, B.-]}
`);
  it('two batteries against each other drive a current through the wire between', () => {
    const plan = two(
      '{cable: {kind: cable, gauge: 22 AWG, cores: 1}, length: 10 m, cores: {red: [A.+, B.+]}}',
    );
    expect(across(plan, 'A.+', 'B.+').volts).toBeCloseTo(3, 9);
    expect(tables(plan).cores[0]!.amps).toBeCloseTo(3 / 0.5296, 3);
  });

  it('with nothing between them nothing is told', () => {
    const plan = two('{link: [A.+, B.+]}');
    const r = across(plan, 'A.+', 'A.-');
    expect([r.volts, r.kind]).toEqual([null, null]);
    expect(r.notes.join()).toContain('unlike volts');
    expect(tables(plan).nets.every((n) => n.volts === null)).toBe(true);
  });

  const adapters = (first: string, second: string) =>
    planOf(`parts:
  A: {kind: supply, output: ${first} V DC, limit: 1 A, regulation: regulated}
  B: {kind: supply, output: ${second} V DC, limit: 1 A, regulation: regulated}
runs:
  - {link: [A.+, B.+]}
  - {link: [A.-, B.-]}
`);
  it('the stronger of two adapters is the one held at its limit, whichever is typed first', () => {
    for (const [first, second, strong] of [
      ['12', '5', 'A'],
      ['5', '12', 'B'],
    ] as const) {
      const r = across(adapters(first, second), 'A.+', 'A.-');
      expect(r.volts).toBeCloseTo(5, 6);
      expect(r.notes.join()).toContain(`${strong} cannot give`);
    }
    expect(across(adapters('12', '12'), 'A.+', 'A.-')).toMatchObject({ volts: 12, notes: [] });
  });

  it.each([
    ['12 V DC', '1 A', '50 mohm', 1],
    ['12 V DC', '1 A', '0 ohm', 1],
    ['5 V DC', '10 A', '0 ohm', 10],
    ['5 V DC', '12 W', '50 mohm', 2.4],
  ])('a supply of %s and %s shorted by a gate of %s gives its limit', (output, limit, contact, amps) => {
    const short = planOf(`parts:
  PS: {kind: supply, output: ${output}, limit: ${limit}, regulation: regulated}
  G: {kind: gate, contact: {ratings: [5 A 250 V AC], resistance: ${contact}}}
runs:
  - {cable: {kind: cable, gauge: 22 AWG, cores: 2}, length: 1 m, cores: {red: [PS.+, G.COM]}}
  - {link: [PS.-, G.NO]}
`);
    const t = tables(short, ['G']);
    expect(t.cores[0]!.amps).toBeCloseTo(amps, 6);
    expect(t.notes.join()).toContain(`limit of ${amps} A`);
    expect(tables(short).notes).toEqual([]);
    const linked = planOf(`parts:
  PS: {kind: supply, output: ${output}, limit: ${limit}, regulation: regulated}
  G: {kind: gate, contact: {ratings: [5 A 250 V AC], resistance: ${contact}}}
runs:
  - {link: [PS.+, G.COM]}
  - {link: [PS.-, G.NO]}
`);
    const r = across(linked, 'PS.+', 'PS.-', ['G']);
    expect(r.volts).toBeCloseTo(contact === '0 ohm' ? 0 : amps * 0.05, 6);
    expect(r.notes.join()).toContain(`limit of ${amps} A`);
  });
});
