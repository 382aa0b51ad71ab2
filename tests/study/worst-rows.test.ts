/** Least and most volts at coils on common rails, with their bounds, against an oracle that tries every state. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readPlan } from '../../src/plan/read.ts';
import { statesFeeding } from '../../src/study/coil-rows.ts';
import { Study } from '../../src/study/study.ts';
import { worstRows } from '../../src/study/worst/worst-rows.ts';
import { WHOLE } from '../helpers/share.ts';
import { coilVolts } from '../oracles/coil-volts.ts';
import { loadsOf, randomShop, textOf } from '../oracles/random-zones.ts';

/** Of the volts: what two solvers may differ by, and by which the state found may miss the worst. */
const ROUNDING = 2e-6;
const ALIKE = 1e-4;

function studyOf(text: string): Study {
  const read = readPlan(new TextEncoder().encode(text), 'random.yaml');
  if (!read.ok) throw new Error(`${read.errors.map((e) => e.message).join('\n')}\n${text}`);
  return Study.of(read.plan);
}

describe('coils on common rails', () => {
  it.runIf(WHOLE)(
    'no state goes beyond the bounds, and what is called proved is the worst',
    () => {
      const seen = { rows: 0, proved: 0, plans: 0, without: 0, floors: 0 };
      fc.assert(
        fc.property(
          randomShop().filter((s) => loadsOf(s) <= 12),
          (shop) => {
            const text = textOf(shop);
            const study = studyOf(text);
            const own = study.electrics!;
            const theirs = coilVolts(text);
            seen.plans++;
            for (const relay of own.v.circuit.relays) {
              const states = statesFeeding(own, relay);
              const common = worstRows(own, relay);
              const rows = common?.rows(relay, states);
              if (!rows) seen.without++;
              const floors = (['low', 'nominal'] as const).map((c) => common?.floor(relay, states, c));
              for (const r of theirs.filter((x) => x.relay === relay.part)) {
                if (floors[0] !== undefined) seen.floors++;
                expect(floors[0] ?? 0, text).toBeLessThanOrEqual(r.volts.min * (1 + ROUNDING));
                expect(floors[1] ?? 0, text).toBeLessThanOrEqual(r.volts.nominal * (1 + ROUNDING));
              }
              rows?.forEach((row, k) => {
                const gate = own.v.circuit.inputs[states[k]![0]!]!.part;
                const other = theirs.find((r) => r.relay === relay.part && r.gate === gate);
                if (!other) return;
                const told = `${relay.part} ${gate} ${JSON.stringify({ ...row, leastIn: row.leastIn.moved, mostIn: row.mostIn.moved })} against ${JSON.stringify(other.volts)}\n${text}`;
                seen.rows++;
                expect(row.floor, `floor ${told}`).toBeLessThanOrEqual(other.volts.min * (1 + ROUNDING));
                expect(row.least, `least ${told}`).toBeGreaterThanOrEqual(other.volts.min * (1 - ROUNDING));
                expect(row.ceiling, `ceiling ${told}`).toBeGreaterThanOrEqual(
                  other.volts.max * (1 - ROUNDING),
                );
                expect(row.most, `most ${told}`).toBeLessThanOrEqual(other.volts.max * (1 + ROUNDING));
                if (!row.proved) return;
                seen.proved++;
                expect(row.least - other.volts.min, `proved ${told}`).toBeLessThanOrEqual(
                  ALIKE * other.volts.min,
                );
                expect(other.volts.max - row.most, `proved ${told}`).toBeLessThanOrEqual(
                  ALIKE * other.volts.max,
                );
              });
            }
          },
        ),
        { numRuns: WHOLE ? 16 : 3 },
      );
      console.log(JSON.stringify(seen));
      expect(Math.min(seen.rows, seen.floors)).toBeGreaterThan(0);
    },
    3_600_000,
  );
});
