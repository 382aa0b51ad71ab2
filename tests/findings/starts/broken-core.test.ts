/** What a broken core in the loop would do, told once and only where it does that. */
import { describe, expect, it } from 'vitest';
import { findings, type Loop, loop } from '../threshold-plans.ts';

const IDS = ['break-starts-load', 'break-is-silent', 'ring-hides-break'];
const breaks = (text: string) => findings(text).filter((f) => IDS.includes(f.id));
const ids = (text: string) => breaks(text).map((f) => f.id);

const gate = (name: string) => `${name}: {kind: gate, contact: {ratings: [5 A 30 V DC], least: 1 mA 5 V DC}}`;
const two: Loop = {
  parts: [gate('h')],
  more: ['{link: [g.COM, h.COM]}', '{link: [g.NO, h.NO]}'],
  runsOn: 'g, h',
};

describe('break-is-silent', () => {
  it('of two gates that make the circuit either may be the broken one', () => {
    const [found] = breaks(loop(two));
    expect(found).toMatchObject({ id: 'break-is-silent', severity: 'notice', parts: ['K1'] });
  });
  it('one gate alone is missed at once; a gate without its common counts for none', () => {
    expect(ids(loop({}))).toEqual([]);
    expect(ids(loop({ parts: [gate('h')], more: ['{link: [g.NO, h.NO]}'] }))).toEqual([]);
  });
  it('a plan that does not work has other worries', () => {
    expect(
      ids(loop({ ...two, runs: ['{link: [PS1.+, g.COM]}', '{link: [K1.A2, PS1.-]}', ...two.more!] })),
    ).toEqual([]);
  });
});

describe('break-starts-load', () => {
  // K1 is held in while all gates are shut and its break contact feeds K2: common practice calls that closed-circuit.
  const held = (more: Loop = {}) =>
    loop({
      parts: [
        gate('h'),
        'K2: {kind: relay, coil: {rated: 12 V DC, resistance: 120 ohm, suppressor: diode}, contact: {ratings: [5 A 30 V DC]}}',
      ],
      runs: [
        '{link: [PS1.+, g.COM]}',
        '{link: [g.NC, h.COM]}',
        '{link: [h.NC, K1.A1]}',
        '{link: [K1.A2, PS1.-]}',
        '{link: [PS1.+, K1.COM]}',
        '{link: [K1.NC, K2.A1]}',
        '{link: [K2.A2, PS1.-]}',
      ],
      runsOn: 'g, h',
      ...more,
    }).replace('  K1: {runs-on', '  K2: {runs-on');
  it('names the load and the relay that is held, and is then not silent', () => {
    const found = breaks(held());
    expect(found.map((f) => [f.id, f.parts])).toEqual([['break-starts-load', ['K2', 'K1']]]);
    expect(found[0]?.severity).toBe('caution');
  });
  it('each load that the relay keeps out is told', () => {
    const K3 =
      'K3: {kind: relay, coil: {rated: 12 V DC, resistance: 120 ohm, suppressor: diode}, contact: {ratings: [5 A 30 V DC]}}';
    const text = held()
      .replace('runs:\n', `  ${K3}\nruns:\n`)
      .replace(
        '  - {link: [K2.A2, PS1.-]}',
        (run) => `${run}\n  - {link: [K1.NC, K3.A1]}\n  - {link: [K3.A2, PS1.-]}`,
      )
      .concat('  K3: {runs-on: [g, h]}\n');
    const loads = breaks(text).filter((f) => f.id === 'break-starts-load');
    expect(loads.flatMap((f) => f.parts).sort()).toEqual(expect.arrayContaining(['K2', 'K3']));
  });
  it('a relay that rests while the gates are shut starts nothing by falling out', () => {
    expect(ids(loop(two))).not.toContain('break-starts-load');
  });
});

describe('ring-hides-break', () => {
  const cable = (cores: string) =>
    `{cable: {gauge: 20 AWG, cores: 2, insulation: 300 V}, length: 1 m, cores: {${cores}}}`;
  const chain = [
    cable('red: [PS1.+, g.COM], black: [K1.A1, g.NO]'),
    cable('red: [g.COM, h.COM], black: [g.NO, h.NO]'),
    '{link: [K1.A2, PS1.-]}',
  ];
  const ring = (text: string) => breaks(text).filter((f) => f.id === 'ring-hides-break');
  it('a chain is none', () => {
    expect(ring(loop({ ...two, runs: chain }))).toEqual([]);
  });
  it('the core that closes it is named', () => {
    const [found, more] = ring(
      loop({ ...two, runs: [...chain, cable('white: [h.COM, PS1.+]').replace('cores: 2', 'cores: 1')] }),
    );
    expect(found?.message).toBe(
      'the loop is a ring (h.COM to PS1.+ closes it): one break in it goes unnoticed',
    );
    expect(found).toMatchObject({ severity: 'notice', question: 2 });
    expect(more).toBeUndefined();
  });
  it('a link is no wire that breaks', () => {
    expect(ring(loop({ ...two, runs: [...chain, '{link: [h.COM, PS1.+]}'] }))).toEqual([]);
  });
});
