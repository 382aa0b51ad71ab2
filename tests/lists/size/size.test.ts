/** Figures of `size` against handbook tables, against `check` and `read`, and against plans typed by hand. */
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import { size } from '../../../src/lists/size/size.ts';
import type { Size } from '../../../src/lists/size/size-model.ts';
import { sizeJsonSchema } from '../../../src/lists/size/size-schema.ts';
import { Study } from '../../../src/study/study.ts';
import { example, exampleNames } from '../../helpers/example-plans.ts';
import { across, planOf } from '../../helpers/plan-of.ts';
import { WHOLE } from '../../helpers/share.ts';
import { type File, fileOf, moved, reportOf, textOf } from './moved-text.ts';

const known = new Map<string, Size>();
function sizeOf(name: string): Size {
  const found = known.get(name) ?? size(Study.of(example(name)));
  known.set(name, found);
  return found;
}

/**
 * m from supply to gate up to which a DC coil still pulls in, by Ohm's law: the warm coil needs so much more than at 20 °C
 * as its copper has more ohms, and the loop may have what is left of the least supply volts at the coil's least ohms.
 */
function farthest(of: {
  /** V, and ohm at 20 °C with its tolerance off */
  readonly supply: number;
  readonly ohms: number;
  /** V at 20 °C */
  readonly pullIn: number;
  /** °C of the warm coil */
  readonly warm: number;
  /** ohm of the gate's contact */
  readonly contact: number;
  /** ohm a metre of one core in the shop's air */
  readonly perMetre: number;
}): number {
  // Copper: 234.5 K below 0 °C it would have no resistance (IEC 60228).
  const factor = (234.5 + of.warm) / 254.5;
  const coil = of.ohms * factor;
  const loop = coil * (of.supply / (of.pullIn * factor) - 1);
  return (loop - of.contact) / (2 * of.perMetre);
}

const metresOf = (of: Size, gauge: string): number => of.reach.figures.find((f) => f.of === gauge)!.value!;

describe('the distance of the farthest gate', () => {
  it.runIf(WHOLE)('is that of Ohm’s law with the resistance of NEC Chapter 9, Table 8', () => {
    // 18, 16 and 14 AWG solid, uncoated copper: ohm per 1000 ft at 75 °C, coefficient 0.00323 (NEC Chapter 9, Table 8).
    const table = { '18 AWG': 7.77, '16 AWG': 4.89, '14 AWG': 3.07 };
    for (const [gauge, at75] of Object.entries(table)) {
      const perMetre = ((at75 / 304.8) * (1 + 0.00323 * (35 - 75))) as number;
      // The lane: 12 V held to 2 %, 155 ohm less 10 %, 75 %, 30 K above 35 °C; an aged switch, 1 ohm (data of makers).
      const by = { supply: 11.76, ohms: 155 * 0.9, pullIn: 9, warm: 65, perMetre };
      const [few, many] = [farthest({ ...by, contact: 2.5 }), farthest({ ...by, contact: 0 })];
      const found = metresOf(sizeOf('saltmarsh-lane'), gauge);
      expect(found, gauge).toBeGreaterThan(few * 0.985);
      expect(found, gauge).toBeLessThan(many * 1.015);
    }
  });

  it.runIf(WHOLE)('grows with the copper of IEC 60228, Table 1', () => {
    // Class 1, ohm/km at 20 °C; what is left for wire is the same for each gauge, so that metres go as the inverse of ohms.
    const table = { '0.5 mm2': 36, '0.75 mm2': 24.5, '1 mm2': 18.1, '1.5 mm2': 12.1, '2.5 mm2': 7.41 };
    const of = sizeOf('wren-cellar');
    const products = Object.entries(table).map(([gauge, ohms]) => metresOf(of, gauge) * ohms);
    // The trunk and the gates before have their share in it, so that it is not quite the same.
    for (const p of products) expect(p / products[0]!).toBeCloseTo(1, 1);
  });
});

describe('the points of the drawing', () => {
  it.each(WHOLE ? exampleNames().filter((_, i) => i % 7 === 0) : ['saltmarsh-lane'])(
    'of %s are what check and read tell',
    (name) => {
      const { plot } = sizeOf(name);
      if (plot === null) return;
      const own = plot.lines.find((l) => l.own)!;
      const report = reportOf(fileOf(name));
      for (const point of own.points.filter((p) => p.gate !== null)) {
        const row = report.coils.find((c) => c.relay === plot.coil && c.gate === point.gate)!;
        expect(Number(point.least.toPrecision(4)), point.gate!).toBe(row.volts.min);
        expect(Number((2 * point.metres).toPrecision(4))).toBe(row.metres);
        const coil = [`${plot.coil}.A1`, `${plot.coil}.A2`] as const;
        const seen = across(example(name), ...coil, [point.gate!]).volts;
        expect(point.read).toBe(seen === null ? null : Math.abs(seen));
      }
    },
  );

  it.runIf(WHOLE)('in other gauges, and beyond the gates, are those of the plan changed so', () => {
    const file = fileOf('saltmarsh-lane');
    const { plot } = sizeOf('saltmarsh-lane');
    for (const { gauge, points } of plot!.lines) {
      const far = points.find((p) => p.gate === 'router')!;
      for (const point of points) {
        const to = moved(file, (f: File) => {
          f.stock!.bell!.gauge = gauge;
          if (point.gate === null) f.runs[3]!.length = `${(3 + point.metres - far.metres).toFixed(9)} m`;
        });
        const row = reportOf(to).coils.find((c) => c.gate === (point.gate ?? 'router'))!;
        expect(Number(point.least.toPrecision(4)), `${gauge} ${point.metres}`).toBe(row.volts.min);
      }
    }
    expect(plot!.lines.map((l) => l.gauge)).toEqual([
      '24 AWG',
      '22 AWG',
      '20 AWG',
      '18 AWG',
      '16 AWG',
      '14 AWG',
    ]);
    expect(plot!.pullIn).toBeCloseTo((9 * (234.5 + 65)) / 254.5, 9);
  });
});

describe('coils side by side', () => {
  const row = (volts: number, kind: string) =>
    sizeOf('saltmarsh-lane').coils.rows.find((r) => r.volts === volts && r.kind === kind)!;

  it('are the plan typed with them: the same power at twice the volts is four times the ohms', () => {
    const file = fileOf('saltmarsh-lane');
    for (const [volts, ohms] of [
      [12, 155],
      [24, 620],
      [48, 2480],
    ] as const) {
      const report = reportOf(
        moved(file, (to) => {
          // At least as many watts as the 12 W of the plan: 0.5 and 0.3 A.
          Object.assign(to.parts.PS1!, {
            output: `${volts} V DC`,
            limit: `${volts === 48 ? 0.3 : 12 / volts} A`,
          });
          Object.assign(to.parts.K1!.coil!, { rated: `${volts} V DC`, resistance: `${ohms} ohm` });
        }),
      );
      const least = Math.min(...report.coils.map((c) => c.volts.min!));
      expect(Number(row(volts, 'dc').least!.toPrecision(4))).toBe(least);
      expect(Number(row(volts, 'dc').pullIn!.toPrecision(4))).toBe(report.coils[0]!.pullIn);
      expect(row(volts, 'dc').amps).toBeCloseTo(volts / ohms, 9);
      const open = report.findings
        .filter((f) => !['caution', 'notice'].includes(f.severity))
        .map((f) => f.id);
      expect(row(volts, 'dc').against.map((l) => l.check)).toEqual(open);
      // The gates are rated for 30 V DC.
      expect(open.length > 0).toBe(volts === 48);
    }
  });

  it('tell the limit of extra-low voltage: 30 V AC (NEC Chapter 9, Table 11(A), from memory)', () => {
    expect(row(48, 'ac').against.map((l) => l.check)).toContain('supply-over-limits');
    expect([row(24, 'ac').against, row(24, 'dc').against]).toEqual([[], []]);
    expect(row(12, 'dc').own).toBe(true);
  });
});

describe('what is told', () => {
  const validate = new Ajv2020({ strict: false }).compile(sizeJsonSchema());

  it.each(WHOLE ? exampleNames().filter((_, i) => i % 5 === 1) : ['saltmarsh-lane'])(
    'of %s is as the schema says',
    (name) => {
      const data = JSON.parse(JSON.stringify(sizeOf(name)));
      expect(validate(data), JSON.stringify(validate.errors)).toBe(true);
    },
  );

  it('of a plan whose wiring is wrong is that the wiring comes first', () => {
    const of = size(Study.of(example('wrong/mains-core-on-coil')));
    expect(of.check.verdict).toBe('fail');
    for (const section of [of.wire, of.reach, of.gates, of.supply, of.contacts, of.contactor, of.mains])
      expect([section.figures, section.untold[0]]).toEqual([
        [],
        expect.stringMatching(/^the wiring comes first/),
      ]);
    expect([of.plot, of.coils.rows]).toEqual([null, []]);
  });

  it.runIf(WHOLE)('of a plan with too thin a wire is the gauge that would do', () => {
    const of = size(Study.of(example('wrong/bell-wire-on-contactor')));
    expect(of.check.verdict).toBe('fail');
    const thicker = of.wire.figures.filter((f) => f.limit?.check === 'coil-too-low');
    expect(thicker.length).toBeGreaterThan(0);
  });

  it.runIf(WHOLE)('of a plan that leaves something out names what has to be told', () => {
    const text = textOf(
      moved(fileOf('saltmarsh-lane'), (to) => {
        delete (to.parts.P1 as { pattern?: string }).pattern;
      }),
    );
    const of = size(Study.of(planOf(text)));
    expect(of.check.verdict).toBe('cannot-tell');
    expect(of.asks.join()).toContain('State pattern: of P1');
    // A figure left out counts at its worse end and never as passed.
    expect(of.reach.figures.length).toBeGreaterThan(0);
  });
});
