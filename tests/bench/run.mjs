// How long a check takes; prints figures and asserts no time. Needs a built dist/.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { check, readPlan } from '../../dist/index.js';
import { planOf } from './plans.mjs';

const root = fileURLToPath(new URL('../..', import.meta.url));
const RUNS = 15;
const SIZES = [100, 300, 1000];

function median(values) {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[middle] : (sorted[middle - 1] + sorted[middle]) / 2;
}

function timed(work) {
  const start = performance.now();
  const result = work();
  return { result, ms: performance.now() - start };
}

/** Milliseconds of one whole process, from start to end. */
function processTime(args) {
  const { result, ms } = timed(() => spawnSync(process.execPath, args, { cwd: root, encoding: 'utf8' }));
  if (result.status !== 0)
    throw new Error(`node ${args.join(' ')} ended with ${result.status}:\n${result.stderr}`);
  return ms;
}

const bare = [];
const whole = [];
// By turns, so that what else the machine does falls on both alike.
for (let i = 0; i < RUNS; i++) {
  bare.push(processTime(['-e', '0']));
  whole.push(processTime(['bin/pullin.js', 'check', 'examples/saltmarsh-lane.yaml']));
}
const ms = (value) => `${value.toFixed(1)} ms`;
console.log(`Whole processes, median of ${RUNS}:`);
console.log(`  node -e 0                                        ${ms(median(bare))}`);
console.log(`  node bin/pullin.js check saltmarsh-lane.yaml     ${ms(median(whole))}`);
console.log(
  `  ratio                                            ${(median(whole) / median(bare)).toFixed(2)}`,
);

// Drawing includes a check, for the marks in it; what is left of the difference is the drawing.
const folder = mkdtempSync(join(tmpdir(), 'bench-'));
console.log('\nWhole processes, median of 5:');
for (const count of [10, 300]) {
  const file = join(folder, `${count}.yaml`);
  writeFileSync(file, planOf(count, 'chain'));
  const times = { check: [], 'draw -o -': [], draw: [] };
  for (let i = 0; i < 5; i++)
    for (const command of Object.keys(times)) {
      const [name, ...rest] = command.split(' ');
      times[command].push(processTime(['bin/pullin.js', name, file, ...rest]));
    }
  const cells = Object.entries(times).map(([command, list]) => `${command} ${ms(median(list))}`);
  console.log(`  ${String(count).padStart(5)} gates  ${cells.join('  ')}`);
}
rmSync(folder, { recursive: true });

function prepared(count, layout) {
  const read = timed(() =>
    readPlan(new TextEncoder().encode(planOf(count, layout)), `${layout}-${count}.yaml`),
  );
  if (!read.result.ok)
    throw new Error(`the ${layout} of ${count} cannot be read: ${read.result.errors[0].message}`);
  const { plan } = read.result;
  const report = check(plan);
  if (report.verdict !== 'pass') {
    throw new Error(
      `the ${layout} of ${count} ought to pass: ${report.findings.map((f) => f.message).join('; ')}`,
    );
  }
  return { plan, reading: read.ms };
}

console.log('\nIn process, after warm-up, median (growth beside the size before):');
for (const layout of ['chain', 'star']) {
  prepared(SIZES[0], layout);
  let before;
  for (const count of SIZES) {
    const { plan, reading } = prepared(count, layout);
    const checking = median(Array.from({ length: 5 }, () => timed(() => check(plan)).ms));
    const grown =
      before &&
      `, ${(count / before.count).toFixed(1)} times the gates: ${(checking / before.checking).toFixed(1)} times`;
    console.log(
      `  ${layout.padEnd(5)} ${String(count).padStart(5)} gates  read ${ms(reading)}  check ${ms(checking)}${grown ?? ''}`,
    );
    before = { count, checking };
  }
}
