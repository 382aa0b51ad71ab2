// Bundles the command and the library into dist/. One script starts faster than a tree of small modules.

import { createHash } from 'node:crypto';
import { mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { basename } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build, transform } from 'esbuild';
import { rollup } from 'rollup';
import { dts } from 'rollup-plugin-dts';
import { BUILT, compiled, keep, run } from '../bin/pullin.js';

const root = fileURLToPath(new URL('..', import.meta.url));
rmSync(`${root}dist`, { recursive: true, force: true });
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
    build.onResolve({ filter: /^node:child_process$/ }, ({ path, importer }) =>
      importer.includes('/commander/') ? { path, namespace: 'none' } : undefined,
    );
    build.onLoad({ filter: /./, namespace: 'none' }, () => ({ contents: 'module.exports = {};' }));
  },
};

await writeScripts(await modules());
await keepCheck();
await declarations();
licences();
// The manual is made from the help of the command itself.
const { manual } = await import('../dist/cli.cjs');
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

/** The sources and the packages they use as modules without types, parted by who needs what: their text by name, and who imports whom. */
async function modules() {
  const { outputFiles, metafile } = await build({
    absWorkingDir: root,
    entryPoints: {
      check: 'src/cli/check-main.ts',
      cli: 'src/cli/main.ts',
      'check-worker': 'src/cli/many/worker.ts',
      index: 'src/index.ts',
    },
    outdir: 'dist',
    write: false,
    metafile: true,
    bundle: true,
    splitting: true,
    format: 'esm',
    platform: 'node',
    target: 'node20.12',
    // Of the same package, what a bundler can leave parts of out.
    alias: { yaml: './node_modules/yaml/browser/dist/index.js' },
    plugins: [withoutChildren],
    minifySyntax: true,
    logLevel: 'warning',
  });
  const texts = new Map(outputFiles.map(({ path, text }) => [basename(path), text]));
  const imports = new Map(
    Object.entries(metafile.outputs).map(([path, { imports }]) => [
      basename(path),
      imports.filter(({ external }) => !external).map(({ path, kind }) => ({ name: basename(path), kind })),
    ]),
  );
  return { texts, imports };
}

/** Names of the modules that the check of one plan loads. */
function neededByCheck(imports) {
  const needed = new Set();
  const pending = ['check.js'];
  for (let name = pending.pop(); name !== undefined; name = pending.pop()) {
    if (needed.has(name)) continue;
    needed.add(name);
    for (const { name: other, kind } of imports.get(name))
      if (kind === 'import-statement' || other.startsWith('check-')) pending.push(other);
  }
  return needed;
}

/**
 * One script with all that the check of one plan needs, and the others beside it, which take from it what they share with it;
 * `index.js` hands the library on to modules. In letters of one byte, so that the script is read as it stands.
 */
async function writeScripts({ texts, imports }) {
  const needed = neededByCheck(imports);
  const bundle = await rollup({
    input: ['check', 'cli', 'check-worker', 'index'].map((name) => `${name}.js`),
    external: /^node:/,
    // That is done already.
    treeshake: false,
    preserveEntrySignatures: 'allow-extension',
    plugins: [
      {
        name: 'modules in memory',
        resolveId: (source) => (texts.has(basename(source)) ? basename(source) : null),
        load: (id) => texts.get(id) ?? null,
        resolveImportMeta: () => "require('node:url').pathToFileURL(__filename).href",
      },
    ],
  });
  const { output } = await bundle.generate({
    format: 'cjs',
    entryFileNames: '[name].cjs',
    chunkFileNames: '[name].cjs',
    manualChunks: (id) => (needed.has(id) ? 'check' : null),
    generatedCode: 'es2015',
    freeze: false,
    externalLiveBindings: false,
    interop: 'default',
  });
  await bundle.close();
  mkdirSync(`${root}dist`, { recursive: true });
  for (const { fileName, code } of output) {
    const small = await transform(code, { minify: true, target: 'node20.12' });
    const text = small.code
      .trimEnd()
      .replace(/[^\0-\x7f]/g, (letter) => `\\u${letter.charCodeAt(0).toString(16).padStart(4, '0')}`);
    // By its digest what V8 makes of the script is told from what it made of another; see bin/pullin.js.
    const digest = fileName === 'check.cjs' ? `//${createHash('sha256').update(text).digest('hex')}` : '';
    writeFileSync(`${root}dist/${fileName}`, text + digest);
  }
  const { exports } = output.find(({ fileName }) => fileName === 'index.cjs');
  writeFileSync(
    `${root}dist/index.js`,
    `import library from './index.cjs';\nexport const { ${exports.join(', ')} } = library;\n`,
  );
}

/** What V8 makes of the script once it has checked a plan. What it makes on another Node, that one's user keeps; see bin/pullin.js. */
async function keepCheck() {
  const { script, digest } = compiled([]);
  const none = { write: () => true };
  const io = { stdin: (async function* () {})(), stdout: none, stderr: none, env: {}, cwd: root };
  const status = await run(script).main(['check', 'examples/saltmarsh-lane.yaml'], io);
  if (status !== 0) throw new Error(`the check of an example ended with ${status}`);
  keep(BUILT, digest, script.createCachedData());
}
