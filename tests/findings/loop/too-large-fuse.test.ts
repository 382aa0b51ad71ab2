/** A fuse that is to save a pinched wire has to be for no more than the wire bears (IEC 60364-4-43 433.1; NEC 240.4). */
import { expect, it } from 'vitest';
import { judge } from '../../../src/findings/judge.ts';
import { Study } from '../../../src/study/study.ts';
import { planOf } from '../../helpers/plan-of.ts';

const shop = (fuse: string, contact = 'ratings: [25 A 230 V AC]') => `format: 1
practice: iec
stock:
  snap: {kind: gate, pressed-when: open, contact: {ratings: [5 A 250 V AC]}}
  bell: {kind: cable, gauge: 0.5 mm2, cores: 2, insulation: 150 V}
parts:
  T1: {kind: supply, output: 24 V AC, limit: 63 VA, regulation: transformer}
  F1: {kind: fuse, rating: ${fuse}}
  K1: {kind: relay, coil: {rated: 24 V AC, power: 7 VA}, contact: {${contact}}}
  saw: {from: snap}
  planer: {from: snap}
runs:
  - {link: [T1.~1, F1.1]}
  - {cable: bell, length: 2 m, cores: {red: [F1.2, saw.COM], white: [T1.~2, K1.A2]}}
  - {cable: bell, length: 3 m, cores: {red: [saw.COM, planer.COM], white: [saw.NO, planer.NO]}}
  - {cable: bell, length: 2 m, cores: {red: [planer.NO, K1.A1]}}
intent: {K1: {runs-on: [saw, planer]}}
`;
const report = (text: string) => judge(Study.of(planOf(text)));
const unlimited = (fuse: string) =>
  report(shop(fuse))
    .findings.filter((f) => f.id === 'supply-not-limited')
    .map((f) => f.why);

it.each(['1 A', '3 A'])('one of %s saves wire of 0.5 mm2', (fuse) => {
  expect(unlimited(fuse)).toEqual([]);
});

it.each(['4 A', '20 A', '100 A'])('one of %s does not, and what is told says so', (fuse) => {
  const [why, ...more] = unlimited(fuse);
  expect(more).toEqual([]);
  expect(why).toContain(`F1 opens above ${fuse}, and the 0.5 mm2 wire of its loop is good for 3 A`);
});

it('a coil whose contact is rated in AC-3 may draw at pull-in what a contactor does', () => {
  const inrush = (contact: string) =>
    report(shop('3 A', contact)).defaults.find((line) => line.includes('coil inrush'));
  expect(inrush('ratings: [25 A 230 V AC], ac-3: 12 A')).toContain('4 times');
  expect(inrush('ratings: [25 A 230 V AC]')).toContain('1.6 times');
});

it.each(['near', 'far'])('of wires of two sizes the thinner is told, here the %s one', (where) => {
  const [near, far] = where === 'near' ? ['bell', 'thick'] : ['thick', 'bell'];
  const text = shop('20 A')
    .replace('parts:', '  thick: {kind: cable, gauge: 0.75 mm2, cores: 2, insulation: 150 V}\nparts:')
    .replace(
      '{cable: bell, length: 2 m, cores: {red: [F1.2',
      `{cable: ${near}, length: 2 m, cores: {red: [F1.2`,
    )
    .replace('{cable: bell, length: 3 m', `{cable: ${far}, length: 3 m`)
    .replace(
      '{cable: bell, length: 2 m, cores: {red: [planer.NO',
      `{cable: ${far}, length: 2 m, cores: {red: [planer.NO`,
    );
  const [found] = report(text).findings.filter((f) => f.id === 'supply-not-limited');
  expect(found?.why).toContain('the 0.5 mm2 wire of its loop');
});

it('wire that carries too much is told with the ends of every run of it', () => {
  const text = shop('20 A').replace('limit: 63 VA', 'limit: 630 VA').replace('power: 7 VA', 'power: 170 VA');
  const [found, ...more] = report(text).findings.filter((f) => f.id === 'wire-overloaded');
  expect(more).toEqual([]);
  // 170 VA at 24 V are 7.1 A and more while the armature is open.
  expect([...found!.parts].sort()).toEqual(['F1', 'K1', 'T1', 'planer', 'saw']);
});
