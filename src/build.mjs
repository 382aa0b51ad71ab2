// Bundles the command and the library into dist/. A bundle starts faster than a tree of small modules.

import { execFileSync } from 'node:child_process';
import { rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

const root = fileURLToPath(new URL('..', import.meta.url));
rmSync(`${root}dist`, { recursive: true, force: true });
await build({
  absWorkingDir: root,
  entryPoints: { cli: 'src/cli/main.ts', index: 'src/index.ts' },
  outdir: 'dist',
  bundle: true,
  splitting: true,
  format: 'esm',
  platform: 'node',
  target: 'node20.12',
  minify: true,
  legalComments: 'linked',
  // chalk and commander reach for node built-ins through require in their CommonJS form.
  banner: {
    js: "import { createRequire as __cr } from 'node:module'; const require = __cr(import.meta.url);",
  },
  logLevel: 'warning',
});
// What a page takes along; the command reads the two files when it writes one.
await build({
  absWorkingDir: root,
  entryPoints: { 'page-script': 'src/page/script.ts', page: 'src/page/page.css' },
  outdir: 'dist',
  bundle: true,
  format: 'iife',
  platform: 'browser',
  target: ['es2022', 'chrome105', 'firefox121', 'safari15.4'],
  minify: true,
  logLevel: 'warning',
});
const tsc = createRequire(import.meta.url).resolve('typescript/bin/tsc');
execFileSync(process.execPath, [tsc, '-p', 'tsconfig.build.json'], { cwd: root, stdio: 'inherit' });
// The manual is made from the help of the command itself.
const { manual } = await import('../dist/cli.js');
writeFileSync(`${root}dist/pullin.1`, await manual());
