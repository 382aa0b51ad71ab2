// The tests on other versions of Node, each from the registry's `node` package:
//   npm run test:nodes                            a share of the short tests on each version
//   npm run test:nodes -- --whole                 all of them on each
//   npm run test:nodes -- --versions 20.12,24     on these only
//   npm run test:nodes -- --long                  the long tests, shared out among the versions
// A version that is not there yet is installed into node_modules/.nodes.
import { execFileSync, spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';

const root = fileURLToPath(new URL('../..', import.meta.url));
const { values: options } = parseArgs({
  options: {
    versions: { type: 'string', default: '20.12,22,24,latest' },
    whole: { type: 'boolean', default: false },
    long: { type: 'boolean', default: false },
  },
});

/** The executable of a version, installed where it is missing. */
function nodeOf(version) {
  const folder = join(root, 'node_modules', '.nodes', version);
  const node = join(
    folder,
    'node_modules',
    'node',
    'bin',
    process.platform === 'win32' ? 'node.exe' : 'node',
  );
  if (!existsSync(node)) {
    mkdirSync(folder, { recursive: true });
    writeFileSync(join(folder, 'package.json'), '{"private": true}\n');
    // This package has a script of its own, which puts the executable of this machine's kind in its place.
    const args = ['install', '--no-audit', '--no-fund', '--loglevel=error', `node@${version}`];
    const cli = process.env.npm_execpath;
    const [command, first] = cli === undefined ? ['npm', []] : [process.execPath, [cli]];
    execFileSync(command, [...first, ...args], { cwd: folder, stdio: ['ignore', 'ignore', 'inherit'] });
  }
  return { node, is: execFileSync(node, ['--version'], { encoding: 'utf8' }).trim() };
}

/** Vitest on one version; whether all went well. */
function tested(version, project, args) {
  const { node, is } = nodeOf(version);
  console.log(`\nNode ${is}, ${project} tests${args.length > 0 ? `, ${args.join(' ')}` : ''}`);
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
  const { status } = spawnSync(node, run, { cwd: root, stdio: ['ignore', 'inherit', 'inherit'] });
  return status === 0;
}

const versions = options.versions.split(',');
const all = versions.map((version, i) =>
  tested(
    version,
    options.long ? 'long' : 'short',
    options.whole ? [] : [`--shard=${i + 1}/${versions.length}`],
  ),
);
process.exitCode = all.every(Boolean) ? 0 : 1;
