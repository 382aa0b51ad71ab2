/** A timer has a coil as a relay has, and what is told of it was tried in the plan. */
import { expect, it } from 'vitest';
import { check } from '../../../src/repair/check.ts';
import { Study } from '../../../src/study/study.ts';
import { wired } from '../../findings/wired-plans.ts';
import { planOf } from '../../helpers/plan-of.ts';

// Maker's shares: 80 % of 24 V are 19.2 V, of 12 V 9.6 V; the supply gives 11.76 V at least.
it.each(['relay', 'timer, function: off-delay, time: 5 s, supply: none'])(
  'a %s for 24 V on 12 V: another supply, or the same with a coil for 12 V',
  (kind) => {
    const text = wired({
      parts: 'PS1 g',
      more: [
        `KT1: {kind: ${kind}, coil: {rated: 24 V DC, power: 1 W, pull-in: 80 %, tolerance: 0 %, hot-rise: 0 K, suppressor: diode}, contact: {ratings: [5 A 30 V DC]}}`,
      ],
      wires: 'PS1.+ g.COM, g.NO KT1.A1, KT1.A2 PS1.-',
      intent: ['KT1: {runs-on: [g]}'],
    }).replace('practice: nec', 'practice: nec\nambient: 20 °C');
    const [found] = check(Study.of(planOf(text))).findings.filter((f) => f.id === 'coil-too-low');
    expect(found?.fix).toContain('Use a supply of 24 V DC as PS1');
    expect(found?.fix).toContain('KT1 with a coil for 12 V DC');
  },
);
