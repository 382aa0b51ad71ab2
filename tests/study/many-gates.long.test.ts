/** Three hundred gates, near and far: what nominal volts do is decided all the same, and in bounded work. */
import { expect, it } from 'vitest';
import { Study } from '../../src/study/study.ts';
import { across, planOf } from '../helpers/plan-of.ts';

const GATES = Array.from({ length: 300 }, (_, i) => `g${i}`);

/** A cable from gate to gate, or a cable of its own to each, so many metres apart. */
const plan = (layout: 'chain' | 'star', metres: number, gauge: string) =>
  planOf(`format: 1
stock:
  w: {kind: cable, gauge: ${gauge}, cores: 2, insulation: 300 V}
parts:
  PS1: {kind: supply, output: 24 V DC, limit: 1 A, regulation: regulated}
  K1: {kind: relay, coil: {rated: 24 V DC, resistance: 600 ohm}, contact: {ratings: [10 A 250 V AC]}}
  plus: {kind: joint}
  call: {kind: joint}
${GATES.map((g) => `  ${g}: {kind: gate}`).join('\n')}
runs:
  - {link: [PS1.+, plus]}
  - {link: [call, K1.A1]}
  - {link: [K1.A2, PS1.-]}
${GATES.map((g, i) => {
  const from = layout === 'chain' && i > 0 ? [`g${i - 1}.COM`, `g${i - 1}.NO`] : ['plus', 'call'];
  const length = layout === 'chain' ? metres : (i + 1) * metres;
  return `  - {cable: w, length: ${length} m, cores: {red: [${from[0]}, ${g}.COM], white: [${from[1]}, ${g}.NO]}}`;
}).join('\n')}
intent:
  K1: {runs-on: [${GATES.join(', ')}]}
`);

// 600 ohm still get 18 V of 24 V through 200 ohm: 118 gates of 20 m of conductor, 0.0842 ohm a metre (24 AWG, ASTM B258).
it.each([
  ['chain', 1, '16 AWG', 'joins', 300],
  ['chain', 10, '24 AWG', 'volts', 118],
  ['star', 10, '24 AWG', 'some', 118],
] as const)('%s, %d m of %s', (layout, metres, gauge, rests, inAlone) => {
  const study = Study.of(plan(layout, metres, gauge));
  expect(study.nominal!.rests).toBe(rests);
  const { rows } = study.truthTable({ all: false });
  const alone = rows.filter((r) => r.label.endsWith(' alone'));
  expect(alone.filter((r) => r.relays.K1 === 'in').length).toBe(inAlone);
  for (const g of [inAlone - 1, inAlone].filter((i) => i < 300)) {
    const { relays } = across(study.plan, 'K1.A1', 'K1.A2', [`g${g}`]).state;
    expect([g, alone[g]!.relays]).toEqual([g, relays]);
  }
});
