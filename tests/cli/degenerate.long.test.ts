/** Plans that are nothing but many of one thing, under 100 kB: `check` comes to an end. The limit is our own promise. */
import { expect, it } from 'vitest';
import { STAGES } from '../../src/cli/stages.ts';
import { pullin } from './fake-io.ts';

/** s of CPU that one check may take: ten on a machine that does nothing else, and here another test runs beside it */
const MOST = 20;

const many = (count: number, of: (i: number) => string) =>
  Array.from({ length: count }, (_, i) => of(i)).join('\n');
const plan = (parts: string, runs = 'runs: []') =>
  `format: 1\ntitle: Many\npractice: nec\nparts:\n  PS1: {kind: supply, output: 12 V DC, limit: 1 A}\n${parts}\n${runs}\n`;
const RELAY = '{kind: relay, coil: {rated: 12 V DC, resistance: 155 ohm}}';
const alone = (count: number, what: string) => plan(many(count, (i) => `  P${i}: ${what}`));

it.each([
  ['supplies', alone(500, '{kind: supply, output: 12 V DC}')],
  ['gates', alone(500, '{kind: gate, pressed-when: open}')],
  ['relays', alone(500, '{kind: relay, coil: {rated: 12 V DC, resistance: 155 ohm}}')],
  ['boards', alone(500, '{kind: board, supply: 5 V DC, input: low}')],
  ['plugs', alone(500, '{kind: plug, volts: 240 V AC}')],
  [
    'loops of their own, with nothing said of them',
    plan(
      many(200, (i) => `  P${i}: {kind: supply, output: 12 V DC}\n  K${i}: ${RELAY}`),
      `runs:\n${many(200, (i) => `  - {link: [P${i}.+, K${i}.A1]}\n  - {link: [P${i}.-, K${i}.A2]}`)}`,
    ),
  ],
  [
    'coils on one supply',
    plan(
      many(300, (i) => `  K${i}: ${RELAY}`),
      `runs:\n${many(300, (i) => `  - {link: [PS1.+, K${i}.A1]}\n  - {link: [PS1.-, K${i}.A2]}`)}`,
    ),
  ],
  ['selectors', alone(300, '{kind: selector, positions: [a, b, c]}')],
  [
    'joints in a row',
    plan(
      many(900, (i) => `  j${i}: {kind: joint}`),
      `runs:\n  - {link: [PS1.+, j0]}\n${many(899, (i) => `  - {link: [j${i}, j${i + 1}]}`)}`,
    ),
  ],
])(
  '%s',
  async (_, text) => {
    const before = process.cpuUsage();
    const { status } = await pullin(['check', '-'], { stages: STAGES, stdin: [text] });
    const { user } = process.cpuUsage(before);
    // None of them says enough to pass.
    expect([1, 3]).toContain(status);
    expect(user / 1e6).toBeLessThan(MOST);
  },
  120_000,
);
