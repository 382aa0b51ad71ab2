/** What limits a supply and what joins two, in pairs of plans one core, one field or one step apart. */
import { describe, it } from 'vitest';
import { base, link, PRACTICES, pair, put, withParts, withRuns } from '../apart-plans.ts';

const PS2 = 'PS2: {kind: supply, output: 12 V DC, limit: 1 A, regulation: regulated, class-2: true}';

describe('supply-not-limited', () => {
  const bare = (practice: string) => put(base(practice), [', class-2: true', '']);
  const fused = (practice: string, from: string, to: string, rest: string) =>
    withRuns(withParts(put(bare(practice), [from, to]), 'F1: {kind: fuse, rating: 1 A}'), rest);

  it.each(PRACTICES)('%s: Class 2, or a fuse next to the supply and not behind the gate', (practice) => {
    pair('supply-not-limited', 'caution', bare(practice), base(practice));
    pair(
      'supply-not-limited',
      'caution',
      fused(practice, '[K1.A1, g.NO]', '[F1.1, g.NO]', link('F1.2', 'K1.A1')),
      fused(practice, '[PS1.+, g.COM]', '[F1.2, g.COM]', link('PS1.+', 'F1.1')),
    );
  });

  it('nec: no Class 2 supply of 12 V is marked with more than 5 A (Chapter 9 Table 11(B), from memory)', () => {
    const of = (amps: number) => put(base('nec'), ['limit: 1 A', `limit: ${amps} A`]);
    pair('supply-not-limited', 'caution', of(5.1), of(5));
  });
});

describe('supplies-joined', () => {
  it.each(PRACTICES)('%s: both poles, at once or when the gate opens, or one pole in common', (practice) => {
    const common = withRuns(withParts(base(practice), PS2), link('PS2.-', 'PS1.-'));
    for (const to of ['PS1.+', 'g.NO'])
      pair('supplies-joined', 'warning', withRuns(common, link('PS2.+', to)), common);
  });
});
