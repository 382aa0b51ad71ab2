// How long a check takes; prints figures and asserts no time. Needs a built dist/.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { check, Hunt, readPlan, study } from '../../dist/index.js';
import { planOf } from './plans.mjs';
import { zonesOf } from './zones.mjs';

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

/** Milliseconds of one whole process, from start to end; what it prints goes nowhere. */
function processTime(args) {
  const stdio = ['ignore', 'ignore', 'pipe'];
  const { result, ms } = timed(() =>
    spawnSync(process.execPath, args, { cwd: root, encoding: 'utf8', stdio }),
  );
  // A plan that is to be mended fails; that is status 1.
  if (result.status !== 0 && !(args[1] === 'mend' && result.status === 1))
    throw new Error(`node ${args.join(' ')} ended with ${result.status}:\n${result.stderr}`);
  return ms;
}

const ms = (value) => `${value.toFixed(1)} ms`;

/**
 * Medians of whole processes, by name, and how many times the first they take: by turns, so that what else the machine
 * does falls on all alike, and the ratio is that of the pairs.
 */
function compared(title, runs, processes) {
  const times = Object.keys(processes).map(() => []);
  for (let i = 0; i < runs; i++)
    Object.values(processes).forEach((args, k) => {
      times[k].push(processTime(args));
    });
  console.log(`${title}, median of ${runs}, and how many times the first:`);
  Object.keys(processes).forEach((name, k) => {
    const ratio = median(times[k].map((t, i) => t / times[0][i]));
    console.log(`  ${name.padEnd(46)}${ms(median(times[k])).padStart(11)}${ratio.toFixed(2).padStart(8)}`);
  });
}

/** User CPU of one run of a command a file, told by the shell that started it, and how many times the first. */
function metered(title, files, command = 'meter') {
  console.log(`\n${command}: ${title}, user CPU of one run, and how many times the first:`);
  let first;
  for (const [name, file] of Object.entries(files)) {
    const line = 'node bin/pullin.js "$2" "$1" >/dev/null && times';
    const { stdout } = spawnSync('sh', ['-c', line, 'sh', file, command], { cwd: root, encoding: 'utf8' });
    // The second line of `times` is what ended children took: user, then system.
    const [, minutes, seconds] = /^(\d+)m([\d.]+)s/.exec(stdout.trim().split('\n').at(-1)) ?? [];
    const user = 1000 * (60 * Number(minutes) + Number(seconds));
    first ??= user;
    console.log(`  ${name.padEnd(46)}${ms(user).padStart(11)}${(user / first).toFixed(2).padStart(8)}`);
  }
}

/** Peak memory of one process, MiB: what the kernel says of it at its end. */
function peakMemory(args) {
  const told =
    "process.on('exit', () => require('node:fs').writeSync(3, String(process.resourceUsage().maxRSS)))";
  const preload = join(folder, 'peak.cjs');
  writeFileSync(preload, told);
  const done = spawnSync(process.execPath, ['--require', preload, ...args], {
    cwd: root,
    encoding: 'utf8',
    stdio: ['ignore', 'ignore', 'pipe', 'pipe'],
  });
  return Number(done.output[3]) / 1024;
}

const NOTHING = ['-e', '0'];
const folder = mkdtempSync(join(tmpdir(), 'bench-'));
const written = (count) => {
  const file = join(folder, `${count}.yaml`);
  writeFileSync(file, planOf(count, 'chain'));
  return file;
};
const [ten, threeHundred] = [10, 300].map(written);
const pullin = (command, file, ...rest) => ['bin/pullin.js', command, file, ...rest];
compared('Whole processes', RUNS, {
  'node -e 0': NOTHING,
  'check saltmarsh-lane.yaml': pullin('check', 'examples/saltmarsh-lane.yaml'),
});
const memory = [NOTHING, pullin('check', 'examples/saltmarsh-lane.yaml')].map(peakMemory);
console.log(
  `  peak memory: ${memory.map((mib) => `${mib.toFixed(0)} MiB`).join(' and ')}, ${(memory[1] / memory[0]).toFixed(2)} times`,
);
compared('\nWhat needs no plan', RUNS, {
  'node -e 0': NOTHING,
  '--version': ['bin/pullin.js', '--version'],
  'check --help': ['bin/pullin.js', 'check', '--help'],
});
compared('\nTen gates', RUNS, {
  'node -e 0': NOTHING,
  check: pullin('check', ten),
  'sheet -o -': pullin('sheet', ten, '-o', '-'),
  materials: pullin('materials', ten),
});
// Drawing includes a check, for the marks in it; what is left of the difference is the drawing.
for (const [count, file] of [
  [10, ten],
  [300, threeHundred],
])
  compared(`\n${count} gates`, 5, {
    check: pullin('check', file),
    'draw -o -': pullin('draw', file, '-o', '-'),
    draw: pullin('draw', file),
  });
const shopOf = (zones, gates, options) => {
  const file = join(folder, `${zones}-${gates}-${Object.values(options).join('-')}.yaml`);
  writeFileSync(file, zonesOf(zones, gates, options));
  return file;
};
const SHOPS = [
  [1, 10, {}],
  [12, 10, {}],
  [12, 10, { trunk: 'ring', current: 'ac', lamps: 'lamp' }],
  [12, 10, { trunk: 'star', lamps: 'led' }],
  [20, 15, {}],
  [20, 15, { lamps: 'lamp' }],
  [60, 20, {}],
];
/** One core of the middle zone on the break contact of its relay. */
const wrongIn = (zones, gates) => {
  const k = Math.ceil(zones / 2);
  const file = join(folder, `wrong-${zones}-${gates}.yaml`);
  writeFileSync(file, zonesOf(zones, gates).replace(`[Z${k}.NO, call${k}]`, `[Z${k}.NC, call${k}]`));
  return file;
};
// Drawing and page have a check in them; what they take beyond it is the difference.
for (const [zones, gates] of [
  [1, 15],
  [20, 15],
]) {
  const file = shopOf(zones, gates, {});
  compared(`\n${zones} x ${gates}`, 3, {
    check: pullin('check', file),
    'draw -o -': pullin('draw', file, '-o', '-'),
    'page -o -': pullin('page', file, '-o', '-'),
  });
}
compared(
  "\nmend: one core on the wrong contact of a zone's relay",
  3,
  Object.fromEntries(
    [
      [1, 10],
      [6, 10],
      [20, 15],
    ].map(([zones, gates]) => [`${zones} x ${gates}`, pullin('mend', wrongIn(zones, gates))]),
  ),
);
for (const command of ['check', 'materials', 'wirelist', 'draw'])
  compared(
    `\n${command}: zones on a trunk`,
    3,
    Object.fromEntries(
      SHOPS.map(([zones, gates, options]) => [
        `${zones} x ${gates} ${Object.values(options).join(' ')}`,
        pullin(command, shopOf(zones, gates, options)),
      ]),
    ),
  );
// One zone first, so that the others are so many times as much in the same run.
metered('zones on a trunk', {
  '2 x 10': shopOf(2, 10, {}),
  '6 x 10': shopOf(6, 10, {}),
  '20 x 15': shopOf(20, 15, {}),
});

/** The sheet itself: user CPU, steps, cover, and by how much the time grows for a doubling of the gates. */
console.log(
  '\nmeter: gates on one relay, user CPU of one run, steps, faults shown of those that can be, growth per doubling:',
);
let smaller;
for (const count of [3, 12, 30, 60, 100, 200, 300]) {
  const line = 'node bin/pullin.js meter --json "$1" >"$2" 2>/dev/null && times';
  const answer = join(folder, 'sheet.json');
  const { stdout } = spawnSync('sh', ['-c', line, 'sh', written(count), answer], {
    cwd: root,
    encoding: 'utf8',
  });
  const [, minutes, seconds] = /^(\d+)m([\d.]+)s/.exec(stdout.trim().split('\n').at(-1)) ?? [];
  const user = 60 * Number(minutes) + Number(seconds);
  const { steps, detected, detectable } = JSON.parse(readFileSync(answer, 'utf8'));
  const growth = smaller && 2 ** (Math.log2(user / smaller.user) / Math.log2(count / smaller.count));
  console.log(
    `  ${String(count).padStart(3)} gates ${user.toFixed(2).padStart(7)} s ${String(steps.length).padStart(5)} steps  ${detected} of ${detectable}${growth === undefined ? '' : `  ${growth.toFixed(2)} times a doubling`}`,
  );
  smaller = { count, user };
}
metered('gates on one relay', { 12: written(12), 60: written(60), 200: written(200) }, 'faults');

/** What would be answered with one fault in the circuit, once a question is chosen; the time is that of choosing. */
function hunted(count) {
  const read = readPlan(new TextEncoder().encode(planOf(count, 'chain')), `${count}.yaml`);
  const hunt = new Hunt(study(read.plan), { worked: true });
  const breaks = hunt.all.filter((s) => s.faults[0].mode === 'core-open');
  const truth = breaks[breaks.length >> 1];
  const times = [];
  for (;;) {
    const { result, ms: taken } = timed(() => hunt.next());
    if (result === undefined) break;
    times.push(taken);
    hunt.answer(result, hunt.predictor.answer(truth, result));
  }
  return { questions: times.length, first: times[0], middle: median(times) };
}
console.log('\nhunt: one broken core, ms to choose the first question and the median one:');
hunted(12);
for (const count of [12, 60, 200]) {
  const { questions, first, middle } = hunted(count);
  console.log(
    `  ${String(count).padStart(3)} gates  ${questions} questions  first ${ms(first)}  median ${ms(middle)}`,
  );
}
rmSync(folder, { recursive: true });

function prepared(count, layout) {
  const read = timed(() =>
    readPlan(new TextEncoder().encode(planOf(count, layout)), `${layout}-${count}.yaml`),
  );
  if (!read.result.ok)
    throw new Error(`the ${layout} of ${count} cannot be read: ${read.result.errors[0].message}`);
  const { plan } = read.result;
  const report = check(study(plan));
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
    const checking = median(Array.from({ length: 5 }, () => timed(() => check(study(plan))).ms));
    const grown =
      before &&
      `, ${(count / before.count).toFixed(1)} times the gates: ${(checking / before.checking).toFixed(1)} times`;
    console.log(
      `  ${layout.padEnd(5)} ${String(count).padStart(5)} gates  read ${ms(reading)}  check ${ms(checking)}${grown ?? ''}`,
    );
    before = { count, checking };
  }
}
