import { findSourceMap } from 'node:module';
import fc from 'fast-check';
import { cases } from './helpers/cases.ts';

// The same cases every time, so that a change is judged by what it changed; FC_SEED tries others.
fc.configureGlobal({
  seed: Number(process.env.FC_SEED ?? 20261125),
  // What was tried is counted for tests/README.md; a failure is told as fast-check tells it.
  reporter: (out) => {
    cases(out.numRuns);
    if (out.failed) throw new Error(fc.defaultReportMessage(out), { cause: out.errorInstance });
  },
});

// Vitest tells where a test of its own stands in the TypeScript; here it learns that of what Node loaded (typescript-loader.mjs).
const told = Error.prepareStackTrace;
if (told !== undefined && told.name !== 'inTypeScript')
  Error.prepareStackTrace = function inTypeScript(error, trace) {
    return String(told(error, trace)).replace(/(file:\S+\.ts):(\d+):(\d+)/g, (all, url, line, column) => {
      const at = findSourceMap(url)?.findEntry(Number(line) - 1, Number(column) - 1);
      return at && 'originalLine' in at ? `${url}:${at.originalLine + 1}:${at.originalColumn + 1}` : all;
    });
  };
