/** `pullin table` where there is no table to print. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { STAGES } from '../../src/cli/stages.ts';
import type { TruthTable } from '../../src/study/table-model.ts';
import { pullin } from './fake-io.ts';

const ring = (count: number) => Array.from({ length: count }, (_, i) => i);
const table = (plan: string, ...args: string[]) =>
  pullin(['table', '-', ...args], { stages: STAGES, stdin: [plan] });

/** Gates in a row, and a relay behind them. */
const gates = (count: number) => `format: 1
title: Gates
parts:
  PS1: {kind: supply, output: 12 V DC, limit: 1 A}
  K1: {kind: relay, coil: {rated: 12 V DC, resistance: 144 ohm}, contact: {ratings: [10 A 240 V AC]}}
${ring(count)
  .map((i) => `  g${i}: {kind: gate}`)
  .join('\n')}
runs:
  - {link: [PS1.+, g0.COM]}
${ring(count - 1)
  .map((i) => `  - {link: [g${i}.NO, g${i + 1}.COM]}`)
  .join('\n')}
  - {link: [g${count - 1}.NO, K1.A1]}
  - {link: [K1.A2, PS1.-]}
intent:
  K1: {runs-on: [g0]}
`;

/** Relays of which each is fed through a contact of the one before it, in a circle. */
const relays = (count: number) => `format: 1
title: Relays
parts:
  PS1: {kind: supply, output: 12 V DC, limit: 10 A}
${ring(count)
  .map(
    (i) =>
      `  K${i}: {kind: relay, coil: {rated: 12 V DC, resistance: 144 ohm}, contact: {ratings: [10 A 240 V AC]}}`,
  )
  .join('\n')}
runs:
${ring(count)
  .map(
    (i) => `  - {link: [PS1.+, K${i}.COM]}
  - {link: [K${i}.NO, K${(i + 1) % count}.A1]}
  - {link: [K${i}.A2, PS1.-]}`,
  )
  .join('\n')}
`;

it('ends with 2 where there are too many inputs for every combination', async () => {
  const done = await table(gates(13), '--all');
  expect(done).toEqual({
    status: 2,
    out: '',
    err: 'pullin: --all is for at most 12 inputs; this plan has 13\n',
  });
  expect((await table(gates(13))).status).toBe(0);
  expect((await table(gates(12), '--all')).status).toBe(0);
});

it.each([[[]], [['--json']], [['--all']], [['--format', 'csv']]])(
  'ends with 3 where the circuit is not decided, and says why: %j',
  async (args) => {
    const { status, out, err } = await table(relays(12), ...args);
    expect([status, out]).toEqual([3, '']);
    expect(err).toMatch(/^pullin: this circuit is too involved for a truth table: .*\n$/);
    expect(err).not.toContain('mistake in pullin');
  },
);

describe('a plan that fails', () => {
  // The contact carries 10 A 240 V and the gate leads nowhere near it: the loop does as meant, the coil has 24 V on 12 V.
  const failing = gates(1).replace('output: 12 V DC', 'output: 24 V DC');

  it('is told of first, and not said to be as intended', async () => {
    const { status, out } = await table(failing);
    expect(status).toBe(0);
    expect(out).toMatch(/^Note: this plan fails the check: /);
    expect(out).toContain('The table is of the plan as it stands.');
    expect(out).toContain('The plan fails the check all the same.');
    expect(out).not.toContain('each as intended.');
  });

  it('is told of on standard error beside CSV, and as data in JSON', async () => {
    const csv = await table(failing, '--format', 'csv');
    expect(csv.err).toMatch(/^Note: this plan fails the check: /);
    expect(csv.out).toMatch(/^state,/);
    const json = JSON.parse((await table(failing, '--json')).out);
    expect(json).toMatchObject({ check: { verdict: 'fail' }, rests: 'joins' });
  });
});

it('shows what follows once a start button is let go, with the moves that lead there', async () => {
  const plan = readFileSync(new URL('../corpus/start-stop-arming.yaml', import.meta.url), 'utf8');
  const { rows } = JSON.parse((await table(plan, '--json')).out) as TruthTable;
  const row = (...moves: string[]) => rows.find((r) => r.moves.join() === moves.join())!;
  const armed = ['START pressed', 'START released'];
  expect(row(...armed)).toMatchObject({ relays: { CR: 'in', M: 'out' }, loads: { fan: 'off' } });
  expect(row(...armed, 'g2 open')).toMatchObject({ relays: { CR: 'in', M: 'in' }, loads: { fan: 'runs' } });
  expect(row(...armed, 'g1 open', 'STOP pressed').loads).toEqual({ fan: 'off' });
  expect(row(...armed, 'g1 open', 'STOP pressed', 'STOP released').loads).toEqual({ fan: 'off' });
  expect(row('g1 open and g2 open').loads).toEqual({ fan: 'off' });
});

it('names both in its help', async () => {
  const { out } = await pullin(['table', '--help']);
  expect(out.replace(/\s+/g, ' ')).toContain(
    'Exit status: 0 listed, whatever the check says of the plan; 2 the plan cannot be read, or has too many inputs for --all; 3 the circuit is too involved for a table; 70 a mistake in pullin.',
  );
});
