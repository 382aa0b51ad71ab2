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
    bundle: true,
    splitting: true,
    format: 'esm',
    platform: 'node',
    target: 'node20.12',
    banner: {
      js: "import { createRequire as __cr } from 'node:module'; const require = __cr(import.meta.url);",
    },
  });
  writeFileSync(join(folder, 'package.json'), '{"type": "module"}');
  command = join(folder, 'start.js');
  writeFileSync(
    command,
    "import { main } from './cli.js';\nprocess.exitCode = await main(process.argv.slice(2), process);\n",
  );
  return command;
}
