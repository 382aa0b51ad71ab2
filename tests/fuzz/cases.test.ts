/** What the fuzzer found, each as the least plan that showed it; tests/fuzz-log.json names the cases. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { sampled, WHOLE } from '../helpers/share.ts';
import type { Call } from '../tools/fuzz/commands.ts';
import { tryPlan } from '../tools/fuzz/trial.ts';

const many = (count: number, of: (i: number) => string) =>
  Array.from({ length: count }, (_, i) => of(i)).join('\n');
const transformer = '{kind: supply, output: 24 V AC, input: 120 V AC}';

const CASES: readonly (readonly [string, string, readonly Call[]])[] = [
  [
    'a ring of transformers, each fed by the one before',
    `format: 1
practice: nec
parts:
  P0: ${transformer}
  P1: ${transformer}
  P2: ${transformer}
runs:
  - {link: [P0.~1, P1.L]}
  - {link: [P0.~2, P1.N]}
  - {link: [P1.~1, P2.L]}
  - {link: [P1.~2, P2.N]}
  - {link: [P2.~1, P0.L]}
  - {link: [P2.~2, P0.N]}
`,
    [
      ['mend', '-'],
      ['size', '-'],
      ['sheet', '-', '-o', '-'],
    ],
  ],
  [
    'three hundred supplies in a ring of cores',
    `format: 1
practice: nec
parts:
${many(300, (i) => `  P${i}: {kind: supply, output: 12 V DC}`)}
runs:
${many(300, (i) => `  - {link: [P${i}.+, P${(i + 1) % 300}.-]}`)}
`,
    [],
  ],
  [
    'five hundred supplies that nothing goes to',
    `format: 1\nparts:\n${many(500, (i) => `  PS${i}: {kind: supply, output: 12 V DC}`)}\nruns: []\n`,
    WHOLE
      ? [
          ['meter', '-'],
          ['faults', '-'],
          ['page', '-', '-o', '-'],
        ]
      : [],
  ],
  [
    'three hundred lamps side by side, whose cores could all be changed over with each other',
    `format: 1\nparts:\n  PS1: {kind: supply, output: 12 V DC, limit: 1 A}\n${many(300, (i) => `  L${i}: {kind: lamp, rated: 12 V DC 2 W}`)}\nruns:\n${many(300, (i) => `  - {link: [PS1.+, L${i}.1]}\n  - {link: [PS1.-, L${i}.2]}`)}\n`,
    WHOLE ? [['meter', '-']] : [],
  ],
  [
    'a selector of five hundred positions',
    `format: 1\nparts:\n  S1: {kind: selector, positions: [${Array.from({ length: 500 }, (_, i) => `p${i}`).join(', ')}]}\nruns: []\n`,
    [],
  ],
];

it.each(sampled(CASES, 3))('%s', async (_, text, calls) => {
  const cwd = mkdtempSync(join(tmpdir(), 'pullin-case-'));
  const { findings, readable } = await tryPlan(text, calls, cwd, { measured: false });
  rmSync(cwd, { recursive: true });
  expect(findings).toEqual([]);
  expect(readable).toBe(true);
});
