/** Circuits that are deep: every state decided, whatever the length of a chain. */
import { expect, it } from 'vitest';
import { verify } from '../../src/logic/verify.ts';
import { Study } from '../../src/study/study.ts';
import { planOf } from '../helpers/plan-of.ts';

const list = (count: number) => Array.from({ length: count }, (_, i) => i);

const shop = (parts: readonly string[], runs: readonly string[], intent: string) =>
  planOf(`format: 1
practice: iec
parts:
  PS1: {kind: supply, output: 24 V DC, limit: 20 A, regulation: regulated}
  plus: {kind: joint}
  minus: {kind: joint}
${parts.join('\n')}
runs:
  - {link: [PS1.+, plus]}
  - {link: [PS1.-, minus]}
${runs.join('\n')}
intent:
${intent}
`);

const gate = (name: string) =>
  `  ${name}: {kind: gate, pressed-when: open, contact: {ratings: [6 A 30 V DC]}}`;
const relay = (name: string) =>
  `  ${name}: {kind: relay, coil: {rated: 24 V DC, resistance: 2000 ohm}, contact: {ratings: [6 A 30 V DC]}}`;
const link = (a: string, b: string) => `  - {link: [${a}, ${b}]}`;

it.each([
  [
    '5,000 gates in a chain',
    () =>
      shop(
        [relay('K1'), ...list(5000).map((i) => gate(`g${i}`))],
        [
          link('K1.A2', 'minus'),
          ...list(5000).flatMap((i) => [
            link(i === 0 ? 'plus' : `g${i - 1}.COM`, `g${i}.COM`),
            link(i === 0 ? 'K1.A1' : `g${i - 1}.NO`, `g${i}.NO`),
          ]),
        ],
        `  K1: {runs-on: [${list(5000)
          .map((i) => `g${i}`)
          .join(', ')}]}`,
      ),
  ],
  [
    'a chain of 500 relays',
    () =>
      shop(
        [gate('g'), ...list(500).map((i) => relay(`K${i}`))],
        [
          link('plus', 'g.COM'),
          ...list(500).flatMap((i) => [
            link(i === 0 ? 'g.NO' : `K${i - 1}.NO`, `K${i}.A1`),
            link(`K${i}.A2`, 'minus'),
            link(`K${i}.COM`, 'plus'),
          ]),
        ],
        '  K499: {runs-on: [g]}',
      ),
  ],
  [
    '300 zones of 10 gates',
    () =>
      shop(
        [
          relay('Q1'),
          '  call: {kind: joint}',
          ...list(300).flatMap((k) => [relay(`K${k}`), ...list(10).map((i) => gate(`g${k}-${i}`))]),
        ],
        [
          link('call', 'Q1.A1'),
          link('Q1.A2', 'minus'),
          ...list(300).flatMap((k) => [
            link(`K${k}.A2`, 'minus'),
            link(`K${k}.COM`, 'plus'),
            link(`K${k}.NO`, 'call'),
            ...list(10).flatMap((i) => [link('plus', `g${k}-${i}.COM`), link(`K${k}.A1`, `g${k}-${i}.NO`)]),
          ]),
        ],
        `  Q1: {runs-on: [${list(300)
          .flatMap((k) => list(10).map((i) => `g${k}-${i}`))
          .join(', ')}]}`,
      ),
  ],
])('%s', (_, plan) => {
  expect(verify(Study.of(plan()).circuit).deviations).toEqual([]);
});
