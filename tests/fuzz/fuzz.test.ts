/**
 * A taste of `npm run fuzz`: so many plans of a fixed seed through the reader and the commands, without the guide of what
 * code they reach, so that they are the same each time. What must not be is our own promise: no crash, statuses as documented,
 * output that parses and does not act, twice the same.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { share, WHOLE } from '../helpers/share.ts';
import { taskOf } from '../tools/fuzz/inputs.ts';
import { judgedFinding } from '../tools/fuzz/judged.ts';
import { type Finding, tryPlan } from '../tools/fuzz/trial.ts';

const SEED = 20261130;
const INPUTS = 110;

it.runIf(WHOLE)(
  'finds nothing in plans and commands nobody would write',
  async () => {
    const cwd = mkdtempSync(join(tmpdir(), 'pullin-fuzz-test-'));
    const found: (Finding & { index: number })[] = [];
    let readable = 0;
    for (let index = 0; index < share(INPUTS); index++) {
      const { text, calls, judged } = taskOf(SEED, index, [], 1);
      const done = judged
        ? { findings: judgedFinding(judged.file, judged.seed), readable: true }
        : await tryPlan(text, calls, cwd, { measured: false });
      if (done.readable) readable++;
      found.push(...done.findings.map((f) => ({ ...f, index })));
    }
    rmSync(cwd, { recursive: true });
    expect(found).toEqual([]);
    // Most of a run would be wasted on what the reader refuses.
    expect(readable).toBeGreaterThan(share(INPUTS) / 5);
  },
  300_000,
);
