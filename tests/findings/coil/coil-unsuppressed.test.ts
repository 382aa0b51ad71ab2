/** What quenches a coil. */
import { describe, expect, it } from 'vitest';
import { findings, type Loop, loop, WARM } from '../threshold-plans.ts';

const of = (plan: Loop, id: string) => findings(loop(plan)).filter((f) => f.id === id);

describe('coil-unsuppressed', () => {
  const bare = (more: string, parts: readonly string[] = [], runs: readonly string[] = []): Loop => ({
    coil: `rated: 12 V DC, resistance: 120 ohm, pull-in: 75 %, drop-out: 10 %, most: 200 %${more}, ${WARM}`,
    parts,
    more: runs,
  });
  const found = (plan: Loop) => of(plan, 'coil-unsuppressed').length;

  it.each([
    ['', 1],
    [', suppressor: none', 1],
    [', suppressor: diode', 0],
    [', suppressor: varistor', 0],
  ])('a DC coil%s', (more, expected) => {
    expect(found(bare(more))).toBe(expected);
  });
  it('a diode across the coil quenches it; one elsewhere or an indicator does not', () => {
    const diode = (a: string, k: string, kind = 'diode') =>
      found(bare('', [`D: {kind: ${kind}}`], [`{link: [D.A, ${a}]}`, `{link: [D.K, ${k}]}`]));
    expect(diode('K1.A2', 'K1.A1')).toBe(0);
    expect(diode('PS1.-', 'PS1.+')).toBe(1);
    expect(diode('K1.A2', 'K1.A1', 'led')).toBe(1);
  });
  it('an AC coil needs none', () => {
    const supply = 'kind: supply, output: 24 V AC, limit: 60 VA, regulation: transformer, class-2: true';
    expect(
      found({
        supply,
        contact: 'ratings: [5 A 125 V AC]',
        coil: 'rated: 24 V AC, power: 6 VA, inrush: 30 VA',
      }),
    ).toBe(0);
  });
});
