/** Question 1 where one step does not decide: chains of contacts, each cable's own volts, earthed loops, bare links. */
import { describe, expect, it } from 'vitest';
import { base, lacks, link, PRACTICES, pair, put, severityOf, withParts, withRuns } from '../apart-plans.ts';
import { findings } from '../threshold-plans.ts';

const LAMP = 'H1: {kind: lamp, rated: 120 V AC 3 W}';
const LAMP2 = 'H2: {kind: lamp, rated: 120 V AC 3 W}';
const SWITCH = '{kind: switch, contact: {ratings: [5 A 250 V AC]}}';
const partsOf = (plan: string, id: string) =>
  findings(plan)
    .filter((f) => f.id === id)
    .map((f) => f.parts);

describe.each(PRACTICES)('%s: earth through a chain', (practice) => {
  const plan = base(practice);

  it('neutral joined to earth by two switches in line, or through none', () => {
    const both = (end: string) =>
      withRuns(
        withParts(plan, `S1: ${SWITCH}`, `S2: ${SWITCH}`),
        link('X1.N', 'S1.COM'),
        link('S1.NO', 'S2.COM'),
        link('S2.NO', end),
      );
    pair('neutral-earthed', 'danger', both('X1.PE'), both('P1.N'));
    expect(partsOf(both('X1.PE'), 'neutral-earthed')).toEqual([['S1', 'S2', 'P1']]);
  });

  it('two throws of one switch never join neutral and earth', () => {
    const ends = (tab: string) =>
      withRuns(withParts(plan, `S1: ${SWITCH}`), link('X1.N', 'S1.NO'), link(`S1.${tab}`, 'X1.PE'));
    pair('neutral-earthed', 'danger', ends('COM'), ends('NC'));
  });

  it('a lamp between line and earth with a switch behind it, before it, or two in line', () => {
    const parts = withParts(plan, LAMP, LAMP2, `S1: ${SWITCH}`, `S2: ${SWITCH}`);
    const lead = (...steps: readonly string[]) => withRuns(parts, ...pairs(['X1.L', ...steps]));
    const ways = (end: string) => [
      lead('H1.1', 'H1.2', 'S1.COM', 'S1.NO', end),
      lead('S1.COM', 'S1.NO', 'H1.1', 'H1.2', end),
      lead('H1.1', 'H1.2', 'S1.COM', 'S1.NO', 'S2.COM', 'S2.NO', end),
      lead('H2.1', 'H2.2', 'H1.1', 'H1.2', 'S1.COM', 'S1.NO', end),
    ];
    const right = ways('X1.N');
    ways('X1.PE').forEach((wrong, i) => {
      pair('earth-as-return', 'danger', wrong, right[i]!);
      expect(partsOf(wrong, 'earth-as-return')).toEqual([['H1']]);
      lacks(wrong, 'neutral-earthed');
    });
  });

  it('one break before an outlet and the box that hangs on it is one finding', () => {
    const cut = put(plan, [', green: [P1.PE, X1.PE]', '']);
    expect(partsOf(cut, 'earth-broken')).toEqual([['X1', 'B1']]);
  });
});

/** Links from each second terminal to the next: the steps between lie inside the parts. */
function pairs(steps: readonly string[]): string[] {
  return steps.flatMap((step, i) => (i % 2 === 0 ? [link(step, steps[i + 1]!)] : []));
}

describe.each(PRACTICES)('%s: each cable against its own circuit', (practice) => {
  const plan = base(practice);

  it('16 V and 17 V of insulation on a supply that gives 17 V with no load', () => {
    const open = (volts: number) =>
      put(plan, ['regulated', 'unregulated, no-load: 17 V'], ['insulation: 150 V', `insulation: ${volts} V`]);
    pair('insulation-too-low', 'danger', open(16), open(17));
  });

  it('300 V of insulation on 120 V, beside a plug of 400 V', () => {
    const thin = put(plan, ['insulation: 750 V', 'insulation: 300 V']);
    const beside = withParts(thin, 'P2: {kind: plug, phases: 3, volts: 400 V AC}');
    const on = withParts(beside, 'X2: {kind: outlet, phases: 3}');
    const cord = '{cable: cord, length: 1 m, cores: {brown: [P2.L1, X2.L1]}}';
    pair('insulation-too-low', 'danger', withRuns(on, cord), beside);
  });

  it('30 V of insulation on 12 V, beside a supply of 48 V', () => {
    const thin = put(plan, ['insulation: 150 V', 'insulation: 30 V']);
    const beside = withParts(thin, 'PS2: {kind: supply, output: 48 V DC, limit: 1 A, class-2: true}');
    const gate = withParts(beside, 'g2: {kind: gate, contact: {ratings: [5 A 60 V DC]}}');
    const wire = '{cable: bell, length: 1 m, cores: {red: [PS2.+, g2.COM]}}';
    pair('insulation-too-low', 'danger', withRuns(gate, wire), beside);
  });

  it('cord behind a lamp of the mains works at mains', () => {
    const behind = (volts: number) =>
      withRuns(
        withParts(put(plan, ['insulation: 750 V', `insulation: ${volts} V`]), LAMP, LAMP2),
        link('P1.L', 'H1.1'),
        '{cable: {gauge: 1 mm2, cores: 1, insulation: 100 V}, length: 1 m, cores: {a: [H1.2, H2.1]}}',
        link('H2.2', 'P1.N'),
      );
    expect(partsOf(behind(750), 'insulation-too-low')).toEqual([['H1', 'H2']]);
  });
});

// An earthed pole does not make the green core a core of the loop.
describe('nec: an earthed loop', () => {
  const earthed = withRuns(base('nec'), link('PS1.-', 'B1.PE'));
  const cord = (ends: string) =>
    withRuns(earthed, `{cable: cord, length: 1 m, cores: {a: ${ends}, b: [K1.NO, X1.L]}}`);

  it('does not make a shared cable of every cord with a green core, but of one with a core of the gate', () => {
    pair('sides-share-cable', 'danger', cord('[K1.A1, g.NO]'), earthed);
    lacks(cord('[B1.PE, X1.PE]'), 'sides-share-cable');
  });

  it('does not make a shared box of one with an outlet alone', () => {
    const box = (holds: string) => withParts(earthed, `B2: {kind: box, holds: [${holds}], volume: 60 in3}`);
    pair('sides-share-box', 'danger', box('X1, g'), box('X1'));
  });

  it('a lamp from line to earth is no mains on the loop', () => {
    const lamp = withRuns(withParts(earthed, LAMP), link('X1.L', 'H1.1'), link('H1.2', 'X1.PE'));
    expect(severityOf(lamp, 'earth-as-return')).toBe('danger');
    lacks(lamp, 'mains-meets-low-voltage');
  });
});

describe('iec: bare links of the loop', () => {
  it('have no insulation inside a box with mains and no divider, and do not count elsewhere', () => {
    const plan = put(base('iec'), ['divider: true', 'divider: false'], ['holds: [K1]', 'holds: [K1, j]']);
    const joined = withParts(plan, 'j: {kind: joint}', 'k: {kind: joint}');
    pair(
      'sides-share-box',
      'danger',
      withRuns(joined, link('K1.A2', 'j')),
      withRuns(joined, link('PS1.-', 'k')),
    );
    const parted = put(withRuns(joined, link('K1.A2', 'j')), ['divider: false', 'divider: true']);
    lacks(parted, 'sides-share-box');
  });
});
