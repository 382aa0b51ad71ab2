// The hooks that `typescript-loader.mjs` registers: types are taken off by esbuild, with a source map; nothing is checked.
import { createHash } from 'node:crypto';
import { mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { transform, version } from 'esbuild';

const project = new URL('../..', import.meta.url).href;
const options = {
  loader: 'ts',
  format: 'esm',
  target: 'node20.12',
  sourcemap: 'inline',
  sourcesContent: false,
  tsconfigRaw: { compilerOptions: { verbatimModuleSyntax: true } },
};

/** Files of the project are named in full where they are imported, so nothing has to be looked for. */
export function resolve(specifier, context, next) {
  if (!/^\.\.?\/.*\.(ts|json)$/.test(specifier) || !context.parentURL?.startsWith(project))
    return next(specifier, context);
  const { href } = new URL(specifier, context.parentURL);
  return { url: href, format: 'module', importAttributes: context.importAttributes, shortCircuit: true };
}

export async function load(url, context, next) {
  if (!url.startsWith(project) || url.includes('/node_modules/')) return next(url, context);
  if (!/\.(ts|json)$/.test(url)) return next(url, context);
  const file = fileURLToPath(url);
  const text = readFileSync(file, 'utf8');
  const source = url.endsWith('.ts') ? await withoutTypes(file, text) : `export default ${text}`;
  return { format: 'module', source, shortCircuit: true };
}

/** What was made of a text once is kept: each run of the tests loads every file several times. */
const KEPT = fileURLToPath(new URL('node_modules/.cache/pullin-tests/', project));
mkdirSync(KEPT, { recursive: true });

async function withoutTypes(file, text) {
  const key = createHash('sha256')
    .update(JSON.stringify([version, options, file]))
    .update(text)
    .digest('hex');
  const kept = join(KEPT, `${key}.js`);
  try {
    return readFileSync(kept, 'utf8');
  } catch {
    const { code } = await transform(text, { ...options, sourcefile: file });
    // Whole or not at all: another worker may read it at the same time.
    const part = `${kept}.${process.pid}.${Math.random().toString(36).slice(2)}`;
    writeFileSync(part, code);
    renameSync(part, kept);
    return code;
  }
}
