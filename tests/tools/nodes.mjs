// The tests on other versions of Node, each from the registry's `node` package:
//   npm run test:nodes                            a share of the short tests on each version
//   npm run test:nodes -- --whole                 all of them on each
//   npm run test:nodes -- --versions 20.12,24     on these only
//   npm run test:nodes -- --long                  the long tests, shared out among the versions
// A version that is not there yet is installed into node_modules/.nodes.
import { execFile, spawn } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs, promisify } from 'node:util';

const root = fileURLToPath(new URL('../..', import.meta.url));
const { values: options } = parseArgs({
  options: {
    versions: { type: 'string', default: '20.12,22,24,latest' },
    whole: { type: 'boolean', default: false },
    long: { type: 'boolean', default: false },
  },
});

const executableOf = (version) =>
  join(
    root,
    ...['node_modules', '.nodes', version, 'node_modules', 'node', 'bin'],
    process.platform === 'win32' ? 'node.exe' : 'node',
  );

/** Installs a version where it is missing. */
async function install(version) {
  if (existsSync(executableOf(version))) return;
  const folder = join(root, 'node_modules', '.nodes', version);
  mkdirSync(folder, { recursive: true });
  writeFileSync(join(folder, 'package.json'), '{"private": true}\n');
  // This package has a script of its own, which puts the executable of this machine's kind in its place.
  const args = ['install', '--no-audit', '--no-fund', '--loglevel=error', `node@${version}`];
  const cli = process.env.npm_execpath;
  const [command, first] = cli === undefined ? ['npm', []] : [process.execPath, [cli]];
  await promisify(execFile)(command, [...first, ...args], { cwd: folder });
}

/** Vitest on one version; whether all went well. */
async function tested(version, project, args) {
  const node = executableOf(version);
  const { stdout } = await promisify(execFile)(node, ['--version']);
  console.log(`\nNode ${stdout.trim()}, ${project} tests${args.length > 0 ? `, ${args.join(' ')}` : ''}`);
  const report = `--outputFile.json=node_modules/.vitest-${project}-${version}.json`;
  const vitest = join(root, 'node_modules', 'vitest', 'vitest.mjs');
  const run = [
    vitest,
    'run',
    `--project=${project}`,
    '--reporter=default',
    '--reporter=json',
    report,
    ...args,
  ];
  const running = spawn(node, run, { cwd: root, stdio: ['ignore', 'inherit', 'inherit'] });
  const [status] = await once(running, 'close');
  return status === 0;
}

const versions = options.versions.split(',');
// All are fetched at the same time, and the tests begin on the first as soon as it is there.
const installed = versions.map((version) => install(version));
// What fails is told where that version is due.
for (const one of installed) one.catch(() => undefined);
process.exitCode = 0;
for (const [i, version] of versions.entries()) {
  await installed[i];
  const shard = options.whole ? [] : [`--shard=${i + 1}/${versions.length}`];
  if (!(await tested(version, options.long ? 'long' : 'short', shard))) process.exitCode = 1;
}
