// What a check of many plans takes: time a plan, CPU and memory, with one at once and with two, and from how many plans
// workers pay. Prints figures and asserts none. Needs a built dist/. `-- 2000` tries other counts than these.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { planOf } from './plans.mjs';

const root = fileURLToPath(new URL('../..', import.meta.url));
const asked = process.argv.slice(2).filter((word) => /^\d+$/.test(word));
const FEW = [2, 4, 8, 16, 32];
const MANY = [200, 2000];
/** Has the process tell, when it ends, what it took in all its threads. */
const TELL =
  'data:text/javascript,process.on("exit",()=>process.stderr.write("@"+JSON.stringify(process.resourceUsage())))';

const folder = mkdtempSync(join(tmpdir(), 'bench-many-'));
const counts = asked.length > 0 ? asked.map(Number) : [...FEW, ...MANY];
const files = Array.from({ length: Math.max(...counts) }, (_, k) => `p${k}.yaml`);
// Three to ten gates each: what a shop has.
files.forEach((file, k) => {
  writeFileSync(join(folder, file), planOf(3 + (k % 8), 'chain'));
});

function run(count, atOnce, form) {
  const args = ['--import', TELL, `${root}bin/pullin.js`, 'check', ...form, '--at-once', `${atOnce}`];
  const start = performance.now();
  const { status, stderr } = spawnSync(process.execPath, [...args, ...files.slice(0, count)], {
    cwd: folder,
    encoding: 'utf8',
    stdio: ['ignore', 'ignore', 'pipe'],
  });
  if (status !== 0) throw new Error(`it ended with ${status}:\n${stderr}`);
  const { maxRSS, userCPUTime } = JSON.parse(stderr.slice(stderr.lastIndexOf('@') + 1));
  return { wall: performance.now() - start, user: userCPUTime / 1000, megabytes: maxRSS / 1024 };
}

console.log('check of so many plans of 3 to 10 gates:');
console.log('   plans  at once  form    wall ms a plan  user ms a plan  most memory');
for (const count of counts)
  for (const form of [['--json'], ...(count < 100 ? [] : [['--format', 'sarif']])])
    for (const atOnce of [1, 2]) {
      // Of few the best of five: what else the machine does only ever adds.
      const runs = Array.from({ length: count < 100 ? 5 : 1 }, () => run(count, atOnce, form));
      const least = (key) => Math.min(...runs.map((r) => r[key]));
      const cell = (value, width) => (value / count).toFixed(1).padStart(width);
      console.log(
        `  ${String(count).padStart(6)}${String(atOnce).padStart(9)}  ${form.at(-1).padEnd(8)}${cell(least('wall'), 13)}${cell(least('user'), 16)}${least('megabytes').toFixed(0).padStart(10)} MB`,
      );
    }
rmSync(folder, { recursive: true });
