// Bundles one of the TypeScript tools of this folder and runs it with the arguments given: `npm run corpus -- --sample 500`.

import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

const root = fileURLToPath(new URL('../..', import.meta.url));
const [tool, ...args] = process.argv.slice(2);
const folder = mkdtempSync(join(tmpdir(), 'pullin-tool-'));
const outfile = join(folder, 'tool.mjs');
await build({
  absWorkingDir: root,
  entryPoints: [`tests/tools/${tool}.ts`],
  outfile,
  bundle: true,
  format: 'esm',
  platform: 'node',
  target: 'node20.12',
  banner: {
    js: "import { createRequire as __cr } from 'node:module'; const require = __cr(import.meta.url);",
  },
  logLevel: 'warning',
});
const run = spawnSync(process.execPath, [outfile, ...args], { cwd: root, stdio: 'inherit' });
rmSync(folder, { recursive: true });
process.exit(run.status ?? 1);
