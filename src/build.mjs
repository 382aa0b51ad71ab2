// Bundles the command and the library into dist/. A bundle starts faster than a tree of small modules.

import { readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { rollup } from 'rollup';
import { dts } from 'rollup-plugin-dts';

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
await declarations();
licences();

/** The types of the library in one file: what it takes from other packages' types is nothing, so that it stands by itself. */
async function declarations() {
  const types = await rollup({
    input: `${root}src/index.ts`,
    plugins: [dts({ tsconfig: `${root}tsconfig.json` })],
  });
  const { output } = await types.generate({ format: 'es' });
  await types.close();
  // The comment at the head of a source file says what the file is for; above the first thing taken from it, it would be a second one.
  const text = output[0].code.replace(/^\/\*\*(?:(?!\*\/)[\s\S])*\*\/\s*(?=\/\*\*)/gm, '');
  writeFileSync(`${root}dist/index.d.ts`, text);
}

/** The licences of the packages of which something stands in the bundles: each asks that its text goes along. */
function licences() {
  const { packages } = JSON.parse(readFileSync(`${root}package-lock.json`, 'utf8'));
  const shipped = Object.entries(packages).filter(
    ([path, about]) => path !== '' && !about.dev && !about.optional,
  );
  const texts = shipped.map(([path, { version, license }]) => {
    const file = readdirSync(root + path).find((name) => /^licen[cs]e(\.|$)/i.test(name));
    const text =
      file === undefined
        ? `${license}; the package has no text of it`
        : readFileSync(`${root}${path}/${file}`, 'utf8');
    return `${path.replace(/^.*node_modules\//, '')} ${version}\n\n${text.trim()}\n`;
  });
  writeFileSync(`${root}dist/licences.txt`, texts.join(`\n${'-'.repeat(80)}\n\n`));
}
