/** What shows only after several moves: relays that hold, chatter or race. */
import { describe, expect, it } from 'vitest';
import { told, type Wired, wired, words } from '../wired-plans.ts';
import { LOGIC, plan } from './one-supply.ts';

const LATCH =
  'K1: {kind: relay, coil: {rated: 12 V DC, resistance: 120 ohm, suppressor: diode}, contact: {ratings: [5 A 30 V DC]}, poles: [{form: make, marks: [13, 14]}]}';

describe('what shows only later', () => {
  const hold = 'PS1.+ K1.13, K1.14 K1.A1, K1.A2 PS1.-';
  it.each<[string, Wired, readonly string[], readonly string[]]>([
    [
      'holds itself',
      plan('g', `PS1.+ g.COM, g.NO K1.A1, ${hold}`, 'K1: {runs-on: [g]}', [LATCH]),
      ['fault 3 stays-on: K1'],
      [
        'once started, K1 does not stop. Steps: g open; then everything at rest (all gates shut). It ought to be off there and still runs: a relay holds itself in. Holding contact: K1.13 to K1.14.',
      ],
    ],
    [
      'holds itself as meant',
      plan(
        'b c',
        `PS1.+ c.COM, c.NC b.COM, b.NO K1.A1, c.NC K1.13, ${hold.slice(13)}`,
        'K1: {runs-on: [b], stays-on-after: [b], stopped-by: [c]}',
        [LATCH],
      ),
      [],
      [],
    ],
    [
      'the stop is in the start alone',
      plan(
        'b c',
        `PS1.+ c.COM, c.NC b.COM, b.NO K1.A1, ${hold}`,
        'K1: {runs-on: [b], stays-on-after: [b], stopped-by: [c]}',
        [LATCH],
      ),
      ['danger 3 block-ignored: c K1', 'fault 3 stays-on: K1'],
      [
        'once started, K1 keeps running although c ought to stop it. Steps: b pressed; then c tripped.',
        'once started, K1 does not stop. Steps: b pressed; then c tripped; then everything at rest (all gates shut). It ought to be off there and still runs: a relay holds itself in. Holding contact: K1.13 to K1.14.',
      ],
    ],
    [
      'the second of two stops is in the start alone',
      plan(
        'b c cc',
        `PS1.+ c.COM, c.NC b.COM, b.NO cc.COM, cc.NC K1.A1, c.NC K1.13, ${hold.slice(13)}`,
        'K1: {runs-on: [b], stays-on-after: [b], stopped-by: [c, cc]}',
        [LATCH],
      ),
      ['danger 3 block-ignored: cc K1', 'fault 3 stays-on: K1'],
      [
        'once started, K1 keeps running although cc ought to stop it. Steps: b pressed; then cc tripped.',
        'once started, K1 does not stop. Steps: b pressed; then cc tripped; then everything at rest (all gates shut). It ought to be off there and still runs: a relay holds itself in. Holding contact: K1.13 to K1.14.',
      ],
    ],
    [
      'does not hold though it ought to',
      plan(
        'b c',
        'PS1.+ c.COM, c.NC b.COM, b.NO K1.A1, K1.A2 PS1.-',
        'K1: {runs-on: [b], stays-on-after: [b], stopped-by: [c]}',
        [LATCH],
      ),
      ['fault 2 depends-on-order: K1 b'],
      [
        'whether K1 runs depends on the order in which things were moved. Steps: b pressed; then everything at rest (all gates shut). It ought to run there and does not, though the same positions reached otherwise may start it.',
      ],
    ],
    [
      'breaks its own coil',
      plan('g K1', 'PS1.+ g.COM, g.NO K1.COM, K1.NC K1.A1, K1.A2 PS1.-', 'K1: {runs-on: [g]}'),
      ['fault 2 chatters: K1'],
      [
        'K1 never settles: it pulls in, breaks its own coil, drops out and starts again. It buzzes with g open, because a contact that opens when the relay pulls in lies in the path of its coil.',
      ],
    ],
    [
      'two that lock each other out',
      plan(
        'g K1 K2',
        'PS1.+ g.COM, g.NO K1.COM, g.NO K2.COM, K1.NC K2.A1, K2.NC K1.A1, K1.A2 PS1.-, K2.A2 PS1.-',
        'K1: {runs-on: [g]}, K2: {runs-on: [g]}',
      ),
      ['fault 2 depends-on-order: K1 K2', 'fault 2 loop-dead: K2 | K2.A1'],
      [
        'whether K1 runs depends on which relay moves first. With g open the relays K1 and K2 race one another.',
      ],
    ],
    [
      'locked out by one that holds itself',
      plan(
        'g s K2',
        'PS1.+ s.COM, s.NC K1.A1, PS1.+ K1.13, K1.14 K1.A1, K1.A2 PS1.-, PS1.+ K1.21, K1.22 g.COM, g.NO K2.A1, K2.A2 PS1.-',
        'K2: {runs-on: [g], blocked-by: [s]}',
        [LATCH.replace('}]}', '}, {form: break, marks: [21, 22]}]}')],
      ),
      ['fault 2 loop-dead: K2 | K2.A1'],
      [],
    ],
  ])('%s', (_, w, expected, why) => {
    expect(told(wired(w), LOGIC)).toEqual(expected);
    expect(words(wired(w), /^(block|stays|depends|chatters)/)).toEqual(why);
  });
});
