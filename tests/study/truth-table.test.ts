/** The table of states: every row is what the plain parallel loop does, worked out by hand. */
import { expect, it } from 'vitest';
import { readPlan } from '../../src/plan/read.ts';
import { Study } from '../../src/study/study.ts';
import { loop } from '../findings/threshold-plans.ts';

// Switch S lies in the feed of gates g and h, which lie side by side: K1 = S and (g or h).
const text = loop({
  parts: ['h: {kind: gate}', 'S: {kind: switch}'],
  runs: [
    '{link: [PS1.+, S.COM]}',
    '{link: [S.NO, g.COM]}',
    '{link: [g.COM, h.COM]}',
    '{link: [g.NO, h.NO]}',
    '{link: [h.NO, K1.A1]}',
    '{link: [K1.A2, PS1.-]}',
  ],
}).replace('{runs-on: [g]}', '{runs-on: [g, h], blocked-by: [S]}');

function table(all: boolean) {
  const read = readPlan(text, 'table.yaml');
  if (!read.ok) throw new Error(read.errors.map((e) => e.message).join('\n'));
  return Study.of(read.plan).truthTable({ all });
}

it('lists all combinations, and in each K1 is what the formula says and what is meant', () => {
  const { columns, rows } = table(true);
  expect(columns).toEqual(['g', 'h', 'S', 'K1']);
  expect(rows).toHaveLength(8);
  expect(new Set(rows.map((r) => JSON.stringify(r.inputs))).size).toBe(8);
  for (const r of rows) {
    const runs = r.inputs.S === 'on' && (r.inputs.g === 'open' || r.inputs.h === 'open');
    expect(r.relays, r.label).toEqual({ K1: runs ? 'in' : 'out' });
    expect(r.expected, r.label).toEqual({ K1: runs ? 'in' : 'out' });
  }
});

it('without --all it lists rest, each gate, all gates, and each thing that blocks', () => {
  const told = table(false).rows.map((r) => [r.label, r.inputs.g, r.inputs.h, r.inputs.S, r.relays.K1]);
  expect(told).toEqual([
    ['all shut', 'shut', 'shut', 'off', 'out'],
    ['all shut, nothing blocking', 'shut', 'shut', 'on', 'out'],
    ['g alone', 'open', 'shut', 'on', 'in'],
    ['h alone', 'shut', 'open', 'on', 'in'],
    ['all gates open', 'open', 'open', 'on', 'in'],
    ['all gates open, S off', 'open', 'open', 'off', 'out'],
  ]);
});
