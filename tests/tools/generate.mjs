// Writes what is made from the code: the JSON Schemas and the types of what they describe, the reports and two drawings beside the examples, and the
// lists and blocks of real output in the documents. With --check it writes nothing, names each stale file and ends with status 1.
// It runs what is built: `npm run build` comes first.
import { existsSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { register } from 'node:module';
import { basename, dirname } from 'node:path';
import { fileURLToPath } from 'node:url';
import { rebuild } from './blocks.mjs';
import { howWeKnow } from './claims.mjs';
import { typeFiles } from './types-of-schemas.mjs';

const root = fileURLToPath(new URL('../..', import.meta.url));
const checking = process.argv.includes('--check');
if (!existsSync(`${root}dist/cli.cjs`)) {
  console.error('dist/cli.cjs is missing: npm run build first');
  process.exit(1);
}
const { main } = await import('../../dist/cli.cjs');
const { allCautions, explanations, planJsonSchema } = await import('../../dist/index.js');
// No bundle has these schemas, so they are loaded from the sources.
register('./typescript-hooks.mjs', import.meta.url);
const { JSON_SCHEMAS } = await import('./json-schemas.ts');

const PROGRESS = /^(trying faults:|trying failures:|working out the meter sheet)( \d+ %)?\n$/;

const ran = new Map();

/** As `run`, once for what several documents show. */
function pullin(args, cwd = root) {
  const key = JSON.stringify([args, cwd]);
  if (!ran.has(key)) ran.set(key, run(args, cwd));
  return ran.get(key);
}

/** Runs the command in this process, as on a pipe: 80 columns, no colour, paths relative to the root. */
async function run(args, cwd) {
  let text = '';
  let out = '';
  const stream = { columns: 80, isTTY: false, write: (part) => (text += part) };
  const stdout = {
    ...stream,
    write: (part) => {
      out += part;
      text += part;
    },
  };
  const io = {
    stdin: (async function* () {})(),
    stdout,
    // How far a piece of work is hangs on the machine, and is in no document.
    stderr: { ...stream, write: (part) => (text += PROGRESS.test(part) ? '' : part) },
    env: { SOURCE_DATE_EPOCH: '1795564800' },
    cwd,
  };
  const status = await main(args, io);
  if (status === 70) throw new Error(`pullin ${args.join(' ')} stopped:\n${text}`);
  return { status, text, out };
}

const files = new Map();
const json = (value) => `${JSON.stringify(value, null, 2)}\n`;
for (const [name, schema] of Object.entries(JSON_SCHEMAS))
  files.set(`schemas/${name}.schema.json`, json(schema()));

for (const [file, text] of await typeFiles()) files.set(file, text);
files.set('tests/README.md', howWeKnow(root));

const named = (folder, end) =>
  readdirSync(`${root}${folder}`)
    .filter((name) => name.endsWith(end))
    .sort()
    .map((name) => `${folder}/${name}`);
const folders = ['examples', 'examples/large', 'examples/large/wrong', 'examples/wrong'];
// Those take long; golden and zone-shops in tests/findings hold their reports.
const SLOW = ['examples/wrong', 'examples/large/wrong'];
for (const plan of folders.flatMap((folder) => named(folder, '.yaml'))) {
  if (checking && SLOW.includes(dirname(plan))) continue;
  const { status, text } = await pullin(['check', plan]);
  if (status === 2) throw new Error(`${plan} cannot be read:\n${text}`);
  files.set(`${dirname(plan)}/${basename(plan, '.yaml')}.report.txt`, text);
}
// One sheet of each kind: a right plan, and a wrong one with its marks.
for (const plan of ['examples/saltmarsh-lane.yaml', 'examples/wrong/planer-on-break-tab.yaml']) {
  const { text } = await pullin(['draw', plan, '-o', '-']);
  files.set(plan.replace(/yaml$/, 'svg'), text);
}
const runs = await pullin(['draw', '--runs', 'examples/saltmarsh-lane.yaml', '-o', '-']);
files.set('examples/saltmarsh-lane-runs.svg', runs.text);
// A plan made from answers, which names the schema as seen from its own folder.
const answers = 'examples/answers';
const { out } = await pullin(
  ['new', '--answers', 'rookery-lane.answers.yaml', '-o', '-'],
  `${root}${answers}`,
);
files.set(`${answers}/rookery-lane.yaml`, out);
const sources = { explanations, cautions: allCautions(), planSchema: planJsonSchema() };
for (const document of ['README.md', 'DEVELOPERS.md', 'examples/README.md', 'schemas/README.md']) {
  if (!existsSync(`${root}${document}`)) continue;
  const text = readFileSync(`${root}${document}`, 'utf8');
  files.set(document, await rebuild(text, document, pullin, sources));
}

const stale = [];
for (const [file, text] of files) {
  const path = `${root}${file}`;
  if (existsSync(path) && readFileSync(path, 'utf8') === text) continue;
  stale.push(file);
  if (!checking) writeFileSync(path, text);
}
for (const file of folders.flatMap((folder) => named(folder, '.report.txt'))) {
  if (files.has(file) || (checking && SLOW.includes(dirname(file)))) continue;
  stale.push(`${file} (its plan is gone)`);
  if (!checking) rmSync(`${root}${file}`);
}

for (const file of stale) console.log(`${checking ? 'stale' : 'written'}: ${file}`);
console.log(`${files.size} generated files, ${stale.length} ${checking ? 'stale' : 'changed'}`);
if (checking && stale.length > 0) {
  console.log('npm run generate writes them again');
  process.exitCode = 1;
}
