// "How we know": tests/README.md, made from tests/claims.json, which says what each claim is compared with and by which tests, and
// from tests/known.json, which has what those tests came to.
import { existsSync, readFileSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import ts from 'typescript';

const json = (root, file) => JSON.parse(readFileSync(join(root, file), 'utf8'));

export const isoDay = (ms) => new Date(ms).toISOString().slice(0, 10);

/** Every test file that a claim rests on, the long twins of short ones with them. */
export function claimedFiles(root) {
  const named = json(root, 'tests/claims.json').claims.flatMap(({ held }) =>
    held.flatMap(({ tests }) => tests),
  );
  const twins = named.map((file) => file.replace(/(?<!\.long)\.test\.ts$/, '.long.test.ts'));
  return [...new Set([...named, ...twins.filter((file) => existsSync(join(root, file)))])];
}

/** How many tests are written in a file, and in those of its twin: what changes where one is added or taken away. */
export function testsWritten(root, file) {
  const text = readFileSync(join(root, file), 'utf8');
  const tree = ts.createSourceFile(file, text, ts.ScriptTarget.ES2022, false);
  let count = 0;
  const visit = (node) => {
    if (ts.isImportDeclaration(node) && /\.test\.ts$/.test(node.moduleSpecifier.text))
      count += testsWritten(root, relative(root, join(root, dirname(file), node.moduleSpecifier.text)));
    if (ts.isCallExpression(node)) {
      let callee = node.expression;
      while (ts.isPropertyAccessExpression(callee) || ts.isCallExpression(callee)) callee = callee.expression;
      const outer = ts.isIdentifier(callee) && /^(it|test)$/.test(callee.text);
      // `it.each(...)(...)` is one call in another.
      if (outer && node.arguments.length > 1) count++;
    }
    ts.forEachChild(node, visit);
  };
  visit(tree);
  return count;
}

const number = (n) => String(n).replace(/\B(?=(\d{3})+$)/g, ' ');
const cell = (text) => text.replaceAll('|', '\\|');

/** What the tests of one comparison came to, as cells: cases in the short run, in the long run, failed. */
function counts(root, tests, files) {
  const all = claimedOf(root, tests);
  const sum = (of) => {
    const known = of.map((file) => files[file]);
    if (of.length === 0) return '';
    if (known.some((k) => k === undefined)) return 'not counted yet';
    return number(known.reduce((total, k) => total + k.cases, 0));
  };
  const failed = all.reduce((total, file) => total + (files[file]?.failed ?? 0), 0);
  return [
    sum(all.filter((file) => !file.endsWith('.long.test.ts'))),
    sum(all.filter((file) => file.endsWith('.long.test.ts'))),
    String(failed),
  ];
}

function claimedOf(root, tests) {
  const twins = tests.map((file) => file.replace(/(?<!\.long)\.test\.ts$/, '.long.test.ts'));
  return [...new Set([...tests, ...twins.filter((file) => existsSync(join(root, file)))])];
}

const link = (file) =>
  `[${file.replace(/^tests\//, '').replace(/\.test\.ts$/, '')}](${file.replace(/^tests\//, '')})`;

function fuzzed(root) {
  const file = 'tests/fuzz-log.json';
  if (!existsSync(join(root, file))) return [];
  const log = json(root, file);
  const runs = Array.isArray(log) ? log : log.runs;
  const sum = (key) => runs.reduce((total, run) => total + (Number(run[key]) || 0), 0);
  return [
    '',
    '## Random bytes and broken plans',
    '',
    `In ${runs.length} runs, ${number(Math.round(sum('minutes')))} minutes and ${number(sum('inputs'))} inputs, the last on ${runs.at(-1).date}; each run with its seed and`,
    'what it found stands in [fuzz-log.json](fuzz-log.json).',
  ];
}

function mutated(root) {
  const file = 'tests/mutation-log.json';
  if (!existsSync(join(root, file))) return [];
  const { samples } = json(root, file);
  return [
    '',
    '## Small errors made on purpose',
    '',
    'One operator, number, condition or result of the code changed at a time, at places that a seed chooses; an error is noticed where a',
    'short test fails or does not end. What was not noticed stands in [mutation-log.json](mutation-log.json), each with its reason.',
    '',
    '| sample | folders | errors | noticed | not noticed: nothing that could fail | a gap, tested since | a gap still |',
    '|---|---|---|---|---|---|---|',
    ...samples.map(({ date, seed, folders, tried, killed, timeouts, survived }) => {
      const gap = (tested) =>
        survived.filter((s) => s.reason === 'gap' && (s.test !== null) === tested).length;
      const noticed = `${killed + timeouts} (${Math.round((100 * (killed + timeouts)) / tried)} %)`;
      const nothing = survived.filter((s) => s.reason !== 'gap').length;
      const cells = [
        `seed ${seed}, ${date}`,
        folders.join(', '),
        tried,
        noticed,
        nothing,
        gap(true),
        gap(false),
      ];
      return `| ${cells.join(' | ')} |`;
    }),
  ];
}

/** The page as it ought to stand. */
export function howWeKnow(root) {
  const { claims } = json(root, 'tests/claims.json');
  const { files } = json(root, 'tests/known.json');
  const days = Object.values(files)
    .map((f) => f.on)
    .sort();
  const total = Object.values(files).reduce((sum, f) => sum + f.cases, 0);
  const failed = Object.values(files).reduce((sum, f) => sum + f.failed, 0);
  return [
    '# How we know',
    '',
    'What the tool claims, what each claim is held against, and how often that was tried. Nothing here is held against the tool itself:',
    'an oracle reads the plan on its own and shares no code with `src/`; a published figure stands in the test with its source; a law',
    'is one of physics, or says that two ways of asking must agree.',
    '',
    `Counted from ${days[0] ?? 'never'} to ${days.at(-1) ?? 'never'}: ${number(total)} cases, ${failed} that disagree. A disagreement fails the run, so a number other than 0`,
    'stands here only while somebody looks into it. A case is one plan, state, row or random drawing that was compared; where a test',
    'does not count them, it is one case itself. The short run takes a share of what the long one takes whole.',
    '',
    'This page is made from `claims.json` and `known.json` by `npm run generate`; `npm run known` writes down what the last runs came to.',
    ...claims.flatMap(({ claim, words, held }) => [
      '',
      `## ${claim}`,
      '',
      ...(words === undefined ? [] : [words, '']),
      '| held against | cases, short run | long run | disagree | tests |',
      '|---|---|---|---|---|',
      ...held.map(({ against, tests }) =>
        ['', cell(against), ...counts(root, tests, files), claimedOf(root, tests).map(link).join(', '), '']
          .join(' | ')
          .trim(),
      ),
      '',
      `Again: \`npx vitest run --project=short ${[...new Set(held.flatMap(({ tests }) => tests.filter((t) => !t.endsWith('.long.test.ts'))))].join(' ')}\`${
        held.some(({ tests }) => claimedOf(root, tests).some((t) => t.endsWith('.long.test.ts')))
          ? ', and with `--project=long` the whole.'
          : '.'
      }`,
    ]),
    ...fuzzed(root),
    ...mutated(root),
    '',
  ].join('\n');
}
