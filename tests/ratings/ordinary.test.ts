import { describe, expect, it } from 'vitest';
import * as q from '../../src/plan/quantity.ts';
import * as ratings from '../../src/plan/rated-quantity.ts';
import { ordinaryTables } from '../../src/ratings/ordinary.ts';
import { receptacleByName } from '../../src/ratings/pattern-names.ts';
import { tables } from '../../src/ratings/tables.ts';

it.each(Object.entries(ordinaryTables))('%s has a head, and a status for each row', (_, table) => {
  const { title, source, clause, units, rows } = table();
  for (const text of [title, source, clause, units]) expect(text).not.toBe('');
  for (const row of rows) expect(['verified', 'one-source', 'memory']).toContain(row.status);
  expect(Object.isFrozen(rows)).toBe(true);
});

/** Full-load amps of NEC tables 430.248 and 430.250 by volts of the motor. */
const COLUMNS: Readonly<Record<number, 'v115' | 'v208' | 'v230' | 'v460'>> = {
  120: 'v115',
  208: 'v208',
  240: 'v230',
  480: 'v460',
};

describe('switches as they are sold', () => {
  const { rows } = ordinaryTables.parts();

  it('carry the motors that their horsepower ratings name: full-load amps of NEC 430.248 and 430.250', () => {
    let compared = 0;
    for (const row of rows)
      for (const text of row.motor) {
        const rating = ratings.motorRating.parse(text);
        if (!('value' in rating)) throw new Error(text);
        const { horsepower, volts, phases } = rating.value;
        const table = phases === 3 ? tables.motorFlcThree() : tables.motorFlcSingle();
        const amps = table.rows.find((r) => Math.abs(r.horsepower - horsepower) < 0.01)?.[COLUMNS[volts]!];
        expect(amps, text).toBeGreaterThan(0);
        expect(amps, `${text} of ${row.amps} A`).toBeLessThanOrEqual(row.amps);
        if (phases === 3 && row.ac3 !== null)
          expect(amps, `${text} of AC-3 ${row.ac3} A`).toBeLessThanOrEqual(row.ac3);
        compared += 1;
      }
    expect(compared).toBeGreaterThan(30);
  });

  it('grow from row to row of a style', () => {
    for (const style of ['relay', 'contactor'])
      for (const poles of [1, 2, 3]) {
        const own = rows.filter((r) => r.style === style && r.poles === poles).map((r) => r.amps);
        expect(own).toEqual([...own].sort((a, b) => a - b));
      }
  });

  it('draw more of an AC coil while it pulls in than held', () => {
    for (const { acHeld, acPull } of rows) if (acHeld !== null) expect(acPull).toBeGreaterThan(acHeld);
  });
});

it('sizes grow, and plugs are in the table of plugs with their volts', () => {
  for (const { name, sizes } of ordinaryTables.sizes().rows) {
    const read = sizes.map((text) => {
      const of =
        name === 'box'
          ? q.cubicMetres
          : name === 'loop' || name === 'mains'
            ? undefined
            : ratings.supplyLimit;
      if (of === undefined) {
        const gauge = q.gauge.parse(text);
        return 'value' in gauge ? gauge.value.area : Number.NaN;
      }
      const parsed = of.parse(text);
      if (!('value' in parsed)) return Number.NaN;
      return typeof parsed.value === 'number' ? parsed.value : parsed.value.value;
    });
    expect(read, name).toEqual([...read].sort((a, b) => a - b));
    expect(
      read.every((n) => n > 0),
      name,
    ).toBe(true);
  }
  for (const { pattern, volts, phases } of ordinaryTables.plugs().rows)
    expect(receptacleByName(pattern, { volts, phases }), pattern).toMatchObject({ nominal: volts, phases });
});
