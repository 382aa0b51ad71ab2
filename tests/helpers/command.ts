/** The command built from the sources, with the file of its workers, for tests that need a process of its own. */
import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { buildSync } from 'esbuild';

const root = fileURLToPath(new URL('../..', import.meta.url));

let command: string | undefined;

/** The script to run, bundled once a run into a folder of its own. */
export function builtCommand(): string {
  if (command !== undefined) return command;
  const folder = mkdtempSync(join(tmpdir(), 'pullin-built-'));
  buildSync({
    absWorkingDir: root,
    entryPoints: { cli: 'src/cli/main.ts', 'check-worker': 'src/cli/many/worker.ts' },
    outdir: folder,
    outExtension: { '.js': '.cjs' },
    bundle: true,
    format: 'cjs',
    platform: 'node',
    target: 'node20.12',
    define: { 'import.meta.url': 'here' },
    banner: { js: "const here = require('node:url').pathToFileURL(__filename).href;" },
  });
  command = join(folder, 'start.cjs');
  writeFileSync(
    command,
    "require('./cli.cjs').main(process.argv.slice(2), process).then((status) => (process.exitCode = status));\n",
  );
  return command;
}
