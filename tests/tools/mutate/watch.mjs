// Appended to the setup of the tests in the copy. Without an error switched on it keeps with each test which errors would have
// changed something in it, and tries those at once on the same test while all is loaded. With one, it leaves out the tests
// in which it would not.
import { writeFileSync } from 'node:fs';
import { afterEach, beforeEach, TestRunner } from 'vitest';
import { state } from './switch.mjs';

/** What an error may cost while all is loaded, ms, in all and in one test; then it gets a process of its own. */
const MOST_TRIED = 4000;
const LONGEST = 1000;

/** The numbers of the places that were reached since this was asked last. */
function reached() {
  const ids = [];
  for (let id = state.hit.indexOf(1); id !== -1; id = state.hit.indexOf(1, id + 1)) ids.push(id);
  state.hit.fill(0);
  return ids;
}

/** Runs the test once more with one error, or with none (-1): what it threw, if anything. */
async function again(test, id, ms) {
  state.on = id;
  state.until = performance.now() + 10_000 + 8 * ms;
  try {
    await test();
    return undefined;
  } catch (error) {
    return error ?? 'nothing';
  } finally {
    state.on = -1;
  }
}

/** Which of the errors the test notices. An error counts only where the test passes again without it. */
async function noticed(task, ids, ms) {
  state.tried ??= new Map(state.asked.spared.map((id) => [id, Infinity]));
  const test = TestRunner.getTestFn(task);
  const seen = [];
  for (const id of ids) {
    const tried = (state.tried.get(id) ?? 0) + ms + 1;
    if (ms > LONGEST || tried > MOST_TRIED) continue;
    state.tried.set(id, tried);
    // Where the process hangs or dies, its parent reads which one it was.
    writeFileSync(state.asked.note, String(id));
    const error = await again(test, id, ms);
    if (error === undefined) continue;
    if ((await again(test, -1, ms)) !== undefined) break;
    state.tried.set(id, Infinity);
    seen.push({ id, why: String(error.message ?? error).slice(0, 200) });
  }
  writeFileSync(state.asked.note, '-1');
  return seen;
}

export function watch() {
  const { on, omits = [] } = state.asked;
  if (on !== -1) {
    const out = new Set(omits);
    if (out.size > 0) beforeEach((context) => out.has(context.task.id) && context.skip());
    return;
  }
  state.hit.fill(0);
  // What a file does while it is loaded and in its hooks bears on all its tests.
  const outside = new Set();
  let begun = 0;
  beforeEach(({ task }) => {
    begun = performance.now();
    for (const id of reached()) outside.add(id);
    task.file.meta.reached = [...outside];
  });
  afterEach(async ({ task }) => {
    task.meta.ms = performance.now() - begun;
    task.meta.reached = reached();
    if (task.result?.errors?.length) return;
    task.meta.noticed = await noticed(task, task.meta.reached, task.meta.ms);
    reached();
  }, 600_000);
}
