// Keeps what the tests of tests/claims.json came to in tests/known.json: how many tests and cases, how many failed, and when.
// Takes the reports of the last short and long runs, whichever there are. With --check it writes nothing, and ends with status 1
// where a run came to something else than is written down.
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { claimedFiles, isoDay, testsWritten } from './claims.mjs';

const root = fileURLToPath(new URL('../..', import.meta.url));
const KNOWN = 'tests/known.json';
const checking = process.argv.includes('--check');

const known = JSON.parse(readFileSync(root + KNOWN, 'utf8'));
const claimed = new Set(claimedFiles(root));
const files = {};
for (const [file, was] of Object.entries(known.files)) if (claimed.has(file)) files[file] = was;

const differ = [];
// The long tests may have been shared out among several versions of Node, each with a report of its own.
const reports = readdirSync(`${root}node_modules`).filter((name) =>
  /^\.vitest-(short|long.*)\.json$/.test(name),
);
for (const report of reports) {
  const { startTime, testResults } = JSON.parse(readFileSync(`${root}node_modules/${report}`, 'utf8'));
  for (const { name, assertionResults } of testResults) {
    const file = relative(root, name);
    if (!claimed.has(file)) continue;
    const done = assertionResults.filter((t) => ['passed', 'failed'].includes(t.status));
    const now = {
      tests: done.length,
      cases: done.reduce((sum, t) => sum + (t.meta?.cases ?? 1), 0),
      failed: done.filter((t) => t.status === 'failed').length,
      written: testsWritten(root, file),
    };
    const { on: _, ...was } = files[file] ?? {};
    if (JSON.stringify(was) === JSON.stringify(now)) continue;
    differ.push(`${file}: ${JSON.stringify(was)} is now ${JSON.stringify(now)}`);
    files[file] = { ...now, on: isoDay(startTime) };
  }
}
const sorted = Object.fromEntries(Object.entries(files).sort(([a], [b]) => (a < b ? -1 : 1)));
for (const line of differ) console.log(line);
if (!checking) writeFileSync(root + KNOWN, `${JSON.stringify({ ...known, files: sorted }, null, 2)}\n`);
else if (differ.length > 0) {
  console.log('npm run known writes it down; npm run generate then makes tests/README.md again');
  process.exitCode = 1;
}
