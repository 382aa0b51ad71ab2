import { defineConfig } from 'vitest/config';
import { DearestFirst } from './tests/tools/dearest-first.ts';

const LONG = 'tests/**/*.long.test.ts';

export default defineConfig({
  test: {
    // A test that hangs is stopped; one on a busy machine is not.
    testTimeout: 60_000,
    hookTimeout: 60_000,
    setupFiles: ['tests/setup.ts'],
    // No test leaves anything behind for the next, and to load the sources for each file again takes longer than most tests.
    isolate: false,
    maxWorkers: '100%',
    sequence: { sequencer: DearestFirst },
    // All but the tests themselves is loaded by Node, which runs it a quarter faster than Vitest's module runner does.
    server: { deps: { external: [/\/(src|tests)\/.*(?<!\.test|\/setup)\.ts$/] } },
    execArgv: [
      '--enable-source-maps',
      // As bin/pullin.js has it: V8 11 optimises so early that most of it is thrown away again. A thread begins with no such flag, and
      // those of tests/tools/mutate have it from their process.
      ...(process.versions.v8.startsWith('11.') && process.env.PULLIN_MUTANT === undefined
        ? ['--interrupt-budget=1000000']
        : []),
      '--import',
      new URL('tests/tools/typescript-loader.mjs', import.meta.url).href,
    ],
    // What a person waits for, and what takes minutes or a browser: the ending of the file's name says which.
    projects: [
      { extends: true, test: { name: 'short', include: ['tests/**/*.test.ts'], exclude: [LONG] } },
      { extends: true, test: { name: 'long', include: [LONG], env: { PULLIN_TEST_SHARE: '1' } } },
    ],
  },
});
