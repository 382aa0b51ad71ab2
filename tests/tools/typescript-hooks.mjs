// The hooks that `typescript-loader.mjs` registers: types are taken off by esbuild, with a source map; nothing is checked.
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { transform } from 'esbuild';

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
  const source = url.endsWith('.ts')
    ? (await transform(text, { ...options, sourcefile: file })).code
    : `export default ${text}`;
  return { format: 'module', source, shortCircuit: true };
}
