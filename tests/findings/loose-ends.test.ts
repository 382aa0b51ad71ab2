/** Every kind of part has terminals without which it does nothing: `loose-end` names the ones that are bare. */
import { expect, it } from 'vitest';
import { findings, loop } from './threshold-plans.ts';

const RELAY = 'coil: {rated: 12 V DC, resistance: 120 ohm}, contact: {ratings: [5 A 30 V DC]}';

// What a part cannot do without is common practice: both ends of a two-pole, the common of a switch and one throw.
it.each([
  ['gate', 'NO', ['COM'], ''],
  ['switch', 'NO', ['COM'], ''],
  ['button', 'NO', ['COM'], ''],
  ['switch', 'COM', ['NO'], ''],
  ['button', 'COM', ['NO'], ''],
  ['gate', 'COM', ['NO'], ''],
  ['relay', 'A1', ['A2'], `, ${RELAY}`],
  ['relay', 'A2', ['A1'], `, ${RELAY}`],
  ['diode', 'A', ['K'], ''],
  ['diode', 'K', ['A'], ''],
  ['lamp', '1', ['2'], ', rated: 12 V DC 1 W'],
  ['resistor', '2', ['1'], ', resistance: 1 kohm'],
  ['fuse', '1', ['2'], ', rating: 1 A'],
  ['led', 'A', ['K'], ''],
  ['supply', '~2', ['~1'], ', output: 12 V AC, limit: 1 A, regulation: transformer'],
  ['supply', '+', ['-'], ', output: 12 V DC, limit: 1 A'],
  ['battery', '+', ['-'], ', output: 12 V DC, capacity: 5 Ah'],
])('a %s with only %s landed lacks %s', (kind, landed, bare, more) => {
  const text = loop({ parts: [`X: {kind: ${kind}${more}}`], more: [`{link: [X.${landed}, K1.A1]}`] });
  const found = findings(text).filter((f) => f.id === 'loose-end' && f.parts[0] === 'X');
  expect(found.map((f) => f.terminals)).toEqual([bare.map((t) => `X.${t}`)]);
});

it.each(['switch', 'button'])('a %s with its common and either throw landed lacks nothing', (kind) => {
  for (const pole of ['NO', 'NC']) {
    const more = ['{link: [PS1.+, X.COM]}', `{link: [X.${pole}, K1.A1]}`];
    const found = findings(loop({ parts: [`X: {kind: ${kind}}`], more }));
    expect(found.filter((f) => f.id === 'loose-end' && f.parts[0] === 'X')).toEqual([]);
  }
});
