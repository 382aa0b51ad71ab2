/** A folded table says of every gate what the whole table says: its rows are unfolded again and compared. */
import { describe, expect, it } from 'vitest';
import { foldedTable } from '../../src/study/folded-table.ts';
import { Study } from '../../src/study/study.ts';
import { zonesOf } from '../../src/study/zones.ts';
import { zonesOf as zoneShop } from '../bench/zones.mjs';
import { planOf } from '../helpers/plan-of.ts';

const shop = (text: string) => Study.of(planOf(text, 'zones.yaml'));
const right = zoneShop(4, 8);

describe('the table of a shop of zones', () => {
  it.each([
    ['right', right],
    ['with one gate dead', right.replace('white: [z2g3.NO, z2g4.NO]', 'white: [z2g3.NO, z2g4.COM]')],
    ['with one zone on its break contact', right.replace('[Z3.NO, call3]', '[Z3.NC, call3]')],
  ])('%s: each row stands for rows that say the same', (_, text) => {
    const study = shop(text);
    const whole = study.truthTable({ all: false });
    const folded = foldedTable(whole, zonesOf(study));
    expect(
      folded.rows
        .flatMap((r) => r.of)
        .map((r) => r.label)
        .sort(),
    ).toEqual(whole.rows.map((r) => r.label).sort());
    for (const row of folded.rows)
      for (const one of row.of)
        for (const key of ['relays', 'loads', 'expected'] as const) expect(row[key]).toEqual(one[key]);
  });

  it('has a row and a column a zone', () => {
    const study = shop(right);
    const { rows, columns } = foldedTable(study.truthTable({ all: false }), zonesOf(study));
    expect(rows).toHaveLength(6);
    expect(columns.filter((c) => c.startsWith('gates of'))).toHaveLength(4);
    expect(rows[1]!.label).toBe('any gate of Z1 alone');
    expect(rows[1]!.inputs['gates of Z1']).toBe('one open');
  });

  it('leaves a small table as it is', () => {
    const study = shop(zoneShop(2, 3));
    const whole = study.truthTable({ all: false });
    expect(foldedTable(whole, zonesOf(study)).columns).toEqual(whole.columns);
  });
});
