// Bundles the command and the library into dist/. A bundle starts faster than a tree of small modules.

import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { rollup } from 'rollup';
import { dts } from 'rollup-plugin-dts';
import { BUILT, compiled, keep, run } from '../bin/pullin.js';

const root = fileURLToPath(new URL('..', import.meta.url));
rmSync(`${root}dist`, { recursive: true, force: true });
await build({
  absWorkingDir: root,
  entryPoints: {
    cli: 'src/cli/main.ts',
    'check-worker': 'src/cli/many/worker.ts',
    index: 'src/index.ts',
  },
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
/** The parser of command lines can start other programs, which no command here asks of it; Node takes its time to make that ready. */
const withoutChildren = {
  name: 'without child processes',
  setup: (build) => {
    build.onResolve({ filter: /^node:child_process$/ }, ({ path }) => ({ path, namespace: 'none' }));
    build.onLoad({ filter: /./, namespace: 'none' }, () => ({ contents: 'module.exports = {};' }));
  },
};

await checkScript();
await declarations();
licences();
// The manual is made from the help of the command itself.
const { manual } = await import('../dist/cli.js');
writeFileSync(`${root}dist/pullin.1`, await manual());

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

/**
 * `check` as one script in letters of one byte, with what V8 makes of it once it has checked a plan. What it makes on another
 * Node, that one's user keeps; see bin/pullin.js.
 */
async function checkScript() {
  const { outputFiles } = await build({
    absWorkingDir: root,
    entryPoints: ['src/cli/check-main.ts'],
    write: false,
    bundle: true,
    format: 'cjs',
    platform: 'node',
    target: 'node20.12',
    // Of the same package, what a bundler can leave parts of out.
    alias: { yaml: './node_modules/yaml/browser/dist/index.js' },
    supported: { 'dynamic-import': false },
    // Several plans at once and watching are done by the whole command, which bin/pullin.js chooses for them.
    external: ['./many/many.ts', './watch.ts'],
    plugins: [withoutChildren],
    minify: true,
    banner: { js: '(function (exports, require, module, __filename, __dirname) {' },
    footer: { js: '})' },
    logLevel: 'warning',
  });
  const text = outputFiles[0].text.replace(
    /[^\0-\x7f]/g,
    (letter) => `\\u${letter.charCodeAt(0).toString(16).padStart(4, '0')}`,
  );
  writeFileSync(`${root}dist/check-script.js`, `${text}//${createHash('sha256').update(text).digest('hex')}`);
  const { script, digest } = compiled([]);
  const none = { write: () => true };
  const io = { stdin: (async function* () {})(), stdout: none, stderr: none, env: {}, cwd: root };
  const status = await run(script, ['check', 'examples/saltmarsh-lane.yaml'], io);
  if (status !== 0) throw new Error(`the check of an example ended with ${status}`);
  keep(BUILT, digest, script.createCachedData());
}
