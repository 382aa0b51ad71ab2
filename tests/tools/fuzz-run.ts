/** `npm run fuzz -- --minutes N --seed S`: tries plans and commands until the time is up, and keeps what goes wrong. */
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { callsFor } from './fuzz/commands.ts';
import { Dice } from './fuzz/dice.ts';
import { taskOf } from './fuzz/inputs.ts';
import { Thread } from './fuzz/pool.ts';
import type { Finding } from './fuzz/trial.ts';
import type { Task } from './fuzz/worker.ts';

const of = (name: string, usual: string): string => {
  const at = process.argv.indexOf(`--${name}`);
  return at < 0 ? usual : (process.argv[at + 1] ?? usual);
};
const minutes = Number(of('minutes', '10'));
const most = Number(of('inputs', 'Infinity'));
const seed = Number(of('seed', '1'));
const commands = Number(of('commands', '2'));
const folder = of('out', join('node_modules', '.fuzz'));
/** One plan to be tried alone, with every command. */
const only = of('plan', '');
const patience = Number(of('patience', '180'));

const known = new Map<string, number>();
const started = Date.now();

function tell(task: Task, found: Finding): void {
  const key = `${found.kind}: ${found.where}`;
  const count = (known.get(key) ?? 0) + 1;
  known.set(key, count);
  if (count > 3) return;
  console.log(`\n${key}\n  ${JSON.stringify(found.call)} ${found.told.slice(0, 300)}`);
  const name = key.replace(/[^\w]+/g, '-').slice(0, 80);
  writeFileSync(join(folder, `${name}-${count}.yaml`), task.judged ? found.told : task.text);
  writeFileSync(join(folder, `${name}-${count}.json`), `${JSON.stringify({ ...found, seed }, null, 1)}\n`);
}

/** Whether what took too long or too much does so in a thread that does nothing but that, without coverage. */
async function holds(task: Task, found: Finding): Promise<boolean> {
  if (!['slow', 'hangs', 'memory'].includes(found.kind)) return true;
  // An oracle may take its time.
  if (task.judged) return false;
  const alone = new Thread(patience, false);
  const again = await alone.ask({ text: task.text, calls: found.call[0] === 'check' ? [] : [found.call] });
  await alone.close();
  return again.findings.some(({ kind }) => ['slow', 'hangs', 'memory'].includes(kind));
}

async function main(): Promise<void> {
  mkdirSync(folder, { recursive: true });
  if (only !== '') {
    const text = readFileSync(only, 'utf8');
    const thread = new Thread(patience, false);
    const { findings } = await thread.ask({ text, calls: callsFor(text, new Dice(seed, 0), 99) });
    await thread.close();
    for (const found of findings) tell({ text, calls: [] }, found);
    console.log(`${findings.length} findings`);
    return;
  }
  const thread = new Thread(patience, true);
  // The oracles count every state, and would take thrice as long with coverage.
  const judge = new Thread(patience, false);
  const kept: string[] = [];
  const count = { inputs: 0, readable: 0, functions: 0, judged: 0 };
  let told = 0;
  while (count.inputs < most && Date.now() - started < minutes * 60_000) {
    const task = taskOf(seed, count.inputs, kept, commands);
    const done = await (task.judged ? judge : thread).ask(task);
    count.inputs++;
    if (task.judged) count.judged++;
    else if (done.readable) count.readable++;
    count.functions = Math.max(count.functions, done.functions);
    if (done.news > 0 && !task.judged) kept.push(task.text);
    for (const found of done.findings) if (await holds(task, found)) tell(task, found);
    if (Date.now() - told > 60_000) {
      told = Date.now();
      const { user, system } = process.cpuUsage();
      console.log(
        `${new Date().toISOString()} ${JSON.stringify({ ...count, kept: kept.length, cpuMinutes: Math.round((user + system) / 6e7) })}`,
      );
    }
  }
  await thread.close();
  await judge.close();
  const { user, system } = process.cpuUsage();
  console.log(
    JSON.stringify(
      {
        seed,
        minutes: Math.round((Date.now() - started) / 60_000),
        cpuHours: Number(((user + system) / 3.6e9).toFixed(2)),
        ...count,
        kept: kept.length,
        findings: Object.fromEntries(known),
      },
      null,
      1,
    ),
  );
}

await main();
