/** Mains and loop kept apart: who is named where they meet. */
import { describe, expect, it } from 'vitest';
import { told, type Wired, wired, words } from '../wired-plans.ts';

const P1 = 'P1: {kind: plug, volts: 120 V AC, pattern: fixed, breaker: 20 A}';

const M = 'M: {kind: motor, volts: 120 V AC, amps: 5 A, power: 0.25 hp, protector: manual}';

const LOOP = 'PS1.+ g.COM, g.NO K1.A1, K1.A2 PS1.-';

const LINE = 'P1.L K1.COM, K1.NO M.L, P1.N M.N, P1.PE M.PE';

const at = (wires: string, more: Partial<Wired> = {}): Wired => ({
  parts: 'PS1 g K1',
  more: [P1, M],
  wires: `${LOOP}, ${LINE}${wires === '' ? '' : `, ${wires}`}`,
  intent: ['M: {runs-on: [g]}'],
  ...more,
});

describe('mains on the loop', () => {
  const K2 =
    'K2: {kind: relay, coil: {rated: 12 V DC, resistance: 120 ohm, suppressor: diode}, contact: {ratings: [30 A 250 V AC]}}';
  it.each<[string, Wired, readonly string[], readonly string[]]>([
    ['apart', at(''), [], []],
    [
      'from the plug to a gate',
      at('P1.L g.NO'),
      ['danger 1 mains-meets-low-voltage: P1 g | P1.L g.NO'],
      [
        'the link core from P1.L to g.NO puts mains on the low-voltage loop. It happens with g open. Every gate switch and its wire can then be at mains voltage.',
      ],
    ],
    [
      'from a gate to the plug',
      at('g.NO P1.L'),
      ['danger 1 mains-meets-low-voltage: g P1 | g.NO P1.L'],
      [
        'the link core from g.NO to P1.L puts mains on the low-voltage loop. It happens with g open. Every gate switch and its wire can then be at mains voltage.',
      ],
    ],
    [
      'from the load to the coil',
      at('M.L K1.A1'),
      ['danger 1 mains-meets-low-voltage: M K1 | M.L K1.A1'],
      [
        'the link core from M.L to K1.A1 puts mains on the low-voltage loop. It happens with g open. Every gate switch and its wire can then be at mains voltage.',
      ],
    ],
    [
      'from the contact of a relay to the supply',
      at('K1.NO PS1.-'),
      ['danger 1 mains-meets-low-voltage: K1 PS1 | K1.NO PS1.-'],
      [
        'the link core from K1.NO to PS1.- puts mains on the low-voltage loop. It happens with g open. Every gate switch and its wire can then be at mains voltage.',
      ],
    ],
    [
      'from the neutral to the supply',
      at('P1.N PS1.-'),
      ['danger 1 mains-meets-low-voltage: P1 PS1 | P1.N PS1.-'],
      [
        'the link core from P1.N to PS1.- puts mains on the low-voltage loop. It happens with everything at rest (all gates shut). Every gate switch and its wire can then be at mains voltage.',
      ],
    ],
    [
      'twice, so that no one core is to blame',
      at('P1.L g.NO, P1.N PS1.-'),
      ['danger 1 mains-meets-low-voltage: PS1 g K1 | PS1.+ g.COM K1.A2 PS1.-'],
      [
        'mains reaches the low-voltage loop at PS1.+, g.COM, K1.A2 and PS1.-. It happens with everything at rest (all gates shut). Every gate switch and its wire can then be at mains voltage.',
      ],
    ],
    [
      'through an open contact',
      at('PS1.- K2.COM, K2.NO P1.N', {
        more: [P1, M, K2],
        wires: `${LOOP}, ${LINE}, PS1.- K2.COM, K2.NO P1.N, K2.A1 g.NO, K2.A2 PS1.-`,
      }),
      ['danger 1 mains-meets-low-voltage: PS1 K2 | PS1.- K2.COM'],
      [
        'the link core from PS1.- to K2.COM puts mains on the low-voltage loop. It happens with g open. Every gate switch and its wire can then be at mains voltage.',
      ],
    ],
    [
      'through a hand switch',
      { ...at('s.COM P1.N, s.NO PS1.-'), parts: 'PS1 g s K1' },
      ['danger 1 mains-meets-low-voltage: s P1 | s.COM P1.N'],
      [
        'the link core from s.COM to P1.N puts mains on the low-voltage loop. It happens with s on. Every gate switch and its wire can then be at mains voltage.',
      ],
    ],
    [
      'by way of a joint',
      at('P1.L p, p g.NO', { more: [P1, M, 'p: {kind: joint}'] }),
      ['danger 1 mains-meets-low-voltage: P1 p | P1.L p'],
      [
        'the link core from P1.L to p puts mains on the low-voltage loop. It happens with g open. Every gate switch and its wire can then be at mains voltage.',
      ],
    ],
    [
      'at the mains terminals of the supply',
      at('PS1.L P1.L, PS1.N P1.N, PS1.L PS1.+'),
      ['danger 1 mains-meets-low-voltage: PS1 | PS1.L PS1.+'],
      [
        'the link core from PS1.L to PS1.+ puts mains on the low-voltage loop. It happens with everything at rest (all gates shut). Every gate switch and its wire can then be at mains voltage.',
      ],
    ],
    // K1 is in while g is open and h shut, so only in the moment after h opens and before it lets go are both sides joined.
    [
      'while a relay lets go',
      at('K1.NO h.NO', {
        parts: 'PS1 g h K1',
        wires:
          'PS1.+ g.COM, g.NO h.COM, h.NC K1.A1, K1.A2 PS1.-, P1.L K1.COM, K1.NO h.NO, P1.N M.N, P1.PE M.PE',
      }),
      ['danger 1 mains-meets-low-voltage: K1 h | K1.NO h.NO | < loop-dead < loose-end'],
      [
        'the link core from K1.NO to h.NO puts mains on the low-voltage loop. It happens with K1 pulled in and g open, h open. Every gate switch and its wire can then be at mains voltage.',
      ],
    ],
    [
      'from an outlet',
      at('X1.L g.NC', {
        more: [P1, M, 'X1: {kind: outlet, pattern: NEMA 5-15}'],
        wires: `${LOOP}, ${LINE}, P1.L X1.L, P1.N X1.N, P1.PE X1.PE, X1.L g.NC`,
      }),
      ['danger 1 mains-meets-low-voltage: X1 g | X1.L g.NC'],
      [
        'the link core from X1.L to g.NC puts mains on the low-voltage loop. It happens with everything at rest (all gates shut). Every gate switch and its wire can then be at mains voltage.',
      ],
    ],
  ])('%s', (_, w, expected, why) => {
    const text = wired(w);
    expect(told(text, /^mains-meets/)).toEqual(expected);
    expect(words(text, /^mains-meets/)).toEqual(why);
  });
});

describe('one cable or box with both', () => {
  const cable = (cores: string, insulation: string) =>
    `{cable: {gauge: 14 AWG, cores: 4, insulation: ${insulation}}, length: 1 m, cores: {${cores}}}`;
  const both = (practice: string, insulation: string): Wired => ({
    practice,
    parts: 'PS1 g K1',
    more: [P1, M],
    wires: 'g.NO K1.A1, K1.A2 PS1.-, K1.NO M.L, P1.N M.N, P1.PE M.PE',
    runs: [cable('1: [PS1.+, g.COM], 2: [P1.L, K1.COM]', insulation)],
    intent: ['M: {runs-on: [g]}'],
  });
  const box = (
    practice: string,
    insulation: string | undefined,
    extra: Partial<{ divider: string; link: boolean; holds: string }> = {},
  ): Wired => ({
    practice,
    parts: 'PS1 g K1',
    more: [P1, M, `B: {kind: box, holds: [${extra.holds ?? 'K1'}], volume: 200 in3${extra.divider ?? ''}}`],
    wires: `K1.A2 PS1.-, K1.NO M.L, P1.N M.N, P1.PE M.PE, P1.L K1.COM${extra.link ? ', g.NO K1.A1' : ''}`,
    runs: [
      `{cable: {gauge: 18 AWG, cores: 2${insulation ? `, insulation: ${insulation}` : ''}}, length: 1 m, cores: {1: [PS1.+, g.COM]${extra.link ? '' : ', 2: [g.NO, K1.A1]'}}}`,
    ],
    intent: ['M: {runs-on: [g]}'],
  });
  it.each<[string, Wired, readonly string[]]>([
    ['a cable of 600 V, nec', both('nec', '600 V'), ['danger 1 sides-share-cable: PS1 g P1 K1']],
    ['a cable of 120 V, iec', both('iec', '120 V'), []],
    [
      'a cable of 119 V, iec',
      both('iec', '119 V'),
      ['danger 1 sides-share-cable: PS1 g P1 K1 | < insulation-too-low'],
    ],
    ['a box, nec', box('nec', '600 V'), ['danger 1 sides-share-box: B K1']],
    ['a box with a divider, nec', box('nec', '600 V', { divider: ', divider: true' }), []],
    ['a box and wire of 120 V, iec', box('iec', '120 V'), []],
    ['a box and wire of 119 V, iec', box('iec', '119 V'), ['danger 1 sides-share-box: B K1']],
    ['a box and wire that says nothing, iec', box('iec', undefined), ['doubt 1 sides-share-box: B K1']],
    [
      'a box with a link inside, iec',
      box('iec', '300 V', { link: true, holds: 'K1, g' }),
      ['danger 1 sides-share-box: B K1 g'],
    ],
    ['a box with a link that leaves it, iec', box('iec', '300 V', { link: true }), []],
    ['a box that holds the gate alone, nec', box('nec', '300 V', { holds: 'g' }), []],
  ])('%s', (_, w, expected) => {
    expect(told(wired(w), /^(sides-|insulation)/)).toEqual(expected);
  });
});
