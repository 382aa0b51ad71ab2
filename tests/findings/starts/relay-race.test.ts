/** Two relays of which either may move first: what is told of them, and of the same two where one waits for the other. */
import { expect, it } from 'vitest';
import { findings } from '../threshold-plans.ts';
import { wired } from '../wired-plans.ts';

const TWO =
  'kind: relay, coil: {rated: 12 V DC, resistance: 120 ohm, suppressor: diode}, contact: {ratings: [5 A 30 V DC]}, poles: [{form: changeover, marks: [11, 12, 14]}, {form: changeover, marks: [21, 22, 24]}]';

/** K2 holds itself in by its second pole, K1 by its first; K1 is called by the button, through a break contact of K2 or not. */
const race = (call: string) =>
  findings(
    wired({
      parts: 'PS1 b c',
      more: [`K1: {${TWO}}`, `K2: {${TWO}}`, `Q1: {${TWO}}`],
      wires: [
        ...['PS1.+ c.COM', 'c.NC b.COM', 'b.NO K2.A1', 'K2.A2 PS1.-'],
        ...['c.NC K2.21', 'K2.24 K2.A1', call, 'K1.A2 PS1.-'],
        ...['c.NC K1.11', 'K1.14 K1.A1', 'c.NC K1.21', 'K1.24 Q1.A1', 'Q1.A2 PS1.-'],
      ].join(', '),
      intent: ['Q1: {runs-on: [b], stays-on-after: [b], stopped-by: [c]}'],
    }),
  ).filter((f) => f.id === 'depends-on-order');

it('K1 pulls in where it is quicker than the break contact of K2 in its coil circuit', () => {
  const [found] = race('b.NO K2.11, K2.12 K1.A1').filter((f) => f.message.includes('moves first'));
  expect(found).toBeDefined();
  expect(found!.parts).toEqual(expect.arrayContaining(['K1', 'K2', 'Q1']));
  expect(found!.why).toContain('b pressed');
});

it('where it is called straight nothing depends on which is quicker', () => {
  expect(race('b.NO K1.A1')).toEqual([]);
});
