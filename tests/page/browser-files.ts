/** The browser's code and look as the build makes them, bundled from the sources. */
import { fileURLToPath } from 'node:url';
import { buildSync } from 'esbuild';
import type { BrowserFiles } from '../../src/page/build.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));

let made: BrowserFiles | undefined;

export function browserFiles(): BrowserFiles {
  made ??= { script: bundle('src/page/script.ts'), style: bundle('src/page/page.css') };
  return made;
}

function bundle(entry: string): string {
  const { outputFiles } = buildSync({
    absWorkingDir: root,
    entryPoints: [entry],
    bundle: true,
    minify: true,
    format: 'iife',
    target: ['es2022', 'chrome105', 'firefox121', 'safari15.4'],
    write: false,
  });
  return outputFiles[0]!.text;
}
