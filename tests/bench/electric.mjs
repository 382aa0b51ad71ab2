// How long the volts at a coil take, for rest and for every gate alone open; prints figures and asserts no time.
import { mkdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { build } from 'esbuild';
import { LuDecomposition, Matrix } from 'ml-matrix';

const root = fileURLToPath(new URL('../..', import.meta.url));
const bundle = `${root}node_modules/.cache/bench-electric.mjs`;
mkdirSync(`${root}node_modules/.cache`, { recursive: true });
await build({
  absWorkingDir: root,
  entryPoints: ['tests/electric/loops.ts'],
  outfile: bundle,
  bundle: true,
  format: 'esm',
  platform: 'node',
  target: 'node20.12',
  logLevel: 'warning',
});
const { BACK, COIL_OHMS, figures, gatesIn, LAYOUTS, MINUS, OUT, PLUS, SUPPLY_VOLTS, sweep } = await import(
  bundle
);

const SIZES = [10, 100, 1000, 5000];
const MOST_RUNS = 41;
/** gates solved in all runs of one size together, more or less */
const WORK = 40_000;
/** gates held at a time when memory is measured, at least */
const LEAST_HELD = 20_000;
/** Gates above which a dense solve is left out, and above which only a few states are solved. */
const MOST_DENSE = 1000;
const MOST_DENSE_WHOLE = 100;
const DENSE_STATES = 3;

setFlagsFromString('--expose-gc');
const collect = runInNewContext('gc');

function timed(work) {
  const start = performance.now();
  const result = work();
  return { result, ms: performance.now() - start };
}

function median(values) {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[sorted.length >> 1];
}

/**
 * Median times of a loop and of one half as large, by turns, so that what else the machine does falls on both, and with
 * nothing left over from the run before, so that none pays for another.
 */
function times(layout, count) {
  const sizes = [count / 2, count];
  const parts = sizes.map((n) => gatesIn(layout, n));
  const runs = Math.min(MOST_RUNS, Math.max(7, Math.ceil(WORK / count)));
  const found = [[], []];
  for (let k = 0; k < runs; k++)
    sizes.forEach((n, i) => {
      collect({ type: 'minor' });
      found[i].push(timed(() => sweep(parts[i], n)).ms);
    });
  return found.map(median);
}

/** Bytes taken. The memory of arrays is given back only between turns of the event loop. */
async function used() {
  for (let k = 0; k < 3; k++) {
    collect();
    await new Promise(setImmediate);
  }
  const { heapUsed, arrayBuffers } = process.memoryUsage();
  return heapUsed + arrayBuffers;
}

/** Bytes that stay taken while the solver is held, and its volts. Small ones are held many at a time, to be seen. */
async function held(layout, count) {
  const parts = gatesIn(layout, count);
  const copies = Math.ceil(LEAST_HELD / count);
  const kept = new Array(copies);
  sweep(parts, count);
  const before = await used();
  for (let k = 0; k < copies; k++) kept[k] = sweep(parts, count);
  const bytes = ((await used()) - before) / copies;
  return { bytes, solved: kept[0].coil.solver.solved, volts: kept[0].volts };
}

/** V at the coil with one gate open (none where undefined): nodal matrix made and decomposed for this state alone. */
function denseVolts(parts, gate) {
  const unknown = (net) => net - 2;
  const size = parts.netCount - 2;
  const matrix = Matrix.zeros(size, size);
  const into = Matrix.zeros(size, 1);
  const known = new Map([
    [PLUS, SUPPLY_VOLTS],
    [MINUS, 0],
  ]);
  const add = (a, b, siemens) => {
    for (const [x, y] of [
      [a, b],
      [b, a],
    ]) {
      if (known.has(x)) continue;
      const i = unknown(x);
      matrix.set(i, i, matrix.get(i, i) + siemens);
      if (known.has(y)) into.set(i, 0, into.get(i, 0) + siemens * known.get(y));
      else matrix.set(i, unknown(y), matrix.get(i, unknown(y)) - siemens);
    }
  };
  for (const w of parts.wires) add(w.a, w.b, 1 / figures.wire(w));
  if (gate !== undefined) {
    const c = parts.contacts[gate];
    add(c.a, c.b, 1 / figures.contact(c));
  }
  for (const p of parts.passives) add(p.a, p.b, 1 / COIL_OHMS);
  const volts = new LuDecomposition(matrix).solve(into);
  return volts.get(unknown(OUT), 0) - volts.get(unknown(BACK), 0);
}

/** Time of the dense solves, scaled up where only a few states were solved, and the greatest difference in volts. */
function dense(layout, count, volts) {
  if (count > MOST_DENSE) return undefined;
  const parts = gatesIn(layout, count);
  const all = [undefined, ...parts.contacts.keys()];
  const states = count > MOST_DENSE_WHOLE ? [all[1], all[(count >> 1) + 1], all[count]] : all;
  if (states.length < all.length && states.length !== DENSE_STATES) throw new Error('wrong number of states');
  const { result, ms } = timed(() => states.map((gate) => denseVolts(parts, gate)));
  const apart = Math.max(
    ...result.map((v, k) => Math.abs(v - volts[states[k] === undefined ? 0 : states[k] + 1])),
  );
  return { ms: (ms * all.length) / states.length, apart, scaled: states.length < all.length };
}

const fixed = (value, digits = 2) => (value === undefined ? '-' : value.toFixed(digits));

async function row(layout, count, before) {
  const [half, whole] = times(layout, count);
  const memory = await held(layout, count);
  const full = dense(layout, count, memory.volts);
  return {
    count,
    whole,
    bytes: memory.bytes,
    cells: [
      layout,
      `${count}`,
      fixed(whole),
      fixed((1000 * whole) / (count + 1)),
      fixed(whole / half),
      before ? `${fixed(whole / before.whole, 1)} for ${count / before.count}` : '-',
      fixed(memory.bytes / 1e6, 3),
      before ? fixed(memory.bytes / before.bytes, 1) : '-',
      `${memory.solved}`,
      full ? `${fixed(full.ms, 0)}${full.scaled ? '*' : ''}` : '-',
      full ? fixed(full.ms / whole, 0) : '-',
      full ? full.apart.toExponential(0) : '-',
    ],
  };
}

for (const layout of LAYOUTS) for (let k = 0; k < 20; k++) sweep(gatesIn(layout, 300), 300);
const HEAD = [
  'layout',
  'gates',
  'ms',
  'µs/state',
  'twice',
  'step',
  'MB held',
  'step',
  'afresh',
  'dense ms',
  'dense/ms',
  'V apart',
];
const table = [HEAD];
for (const layout of LAYOUTS) {
  let before;
  for (const count of SIZES) {
    before = await row(layout, count, before);
    table.push(before.cells);
  }
}
const widths = HEAD.map((_, i) => Math.max(...table.map((cells) => cells[i].length)));
console.log('\nVolts at the coil, for rest and for every gate alone open, median, parts to volts:');
for (const cells of table)
  console.log(
    `  ${cells.map((text, i) => (i === 0 ? text.padEnd(widths[i]) : text.padStart(widths[i]))).join('  ')}`,
  );
console.log(`
  twice     time of this size over that of half the size, measured by turns
  step      time, and megabytes, over those of the size in the row above
  MB held   what stays taken while the solver is kept
  afresh    states that were not had by a small change
  dense ms  the same states, each with a nodal matrix of its own and a dense LU decomposition
            * ${DENSE_STATES} states solved and their time scaled up to all of them; above ${MOST_DENSE} gates left out
  V apart   greatest difference of the two in the states that both solved`);
