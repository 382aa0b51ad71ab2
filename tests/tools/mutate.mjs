// Makes one small error at a time in a copy of the sources and asks whether the tests notice:
// `npm run mutate -- --sample 100 --seed 1 --folder logic,electric`. `--list` only prints what would be tried;
// `--minutes 20` stops there, and `--skip 30` goes on with the same sample after its first thirty. `--deep` tries what a
// quick choice of tests lets through on the slow ones too.

import { spawn } from 'node:child_process';
import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import ts from 'typescript';

const root = fileURLToPath(new URL('../..', import.meta.url));
const K = ts.SyntaxKind;

/**
 * What may notice an error in a folder, the cheapest first: its own tests, then those of what is made from it. A name
 * stands for everything that begins so. The long tests come in with `--deep` alone.
 */
const findings = ['tests/findings/'];
const brute = ['tests/oracles/brute'];
const products = ['tests/report/', 'tests/lists/', 'tests/page/', 'tests/cli/'];
const next = {
  text: [products, findings],
  plan: [['tests/edit/'], findings],
  edit: [['tests/repair/']],
  circuit: [brute, findings, ['tests/machine/']],
  electric: [['tests/machine/'], findings],
  logic: [brute, findings],
  ratings: [['tests/lists/'], findings],
  study: [findings, ['tests/machine/', 'tests/meter/']],
  findings: [['tests/repair/', 'tests/report/']],
  machine: [['tests/meter/', 'tests/page/']],
  repair: [findings, ['tests/report/']],
  meter: [['tests/report/', 'tests/cli/']],
  lists: [['tests/report/', 'tests/cli/']],
  draw: [['tests/page/', 'tests/cli/']],
  report: [['tests/cli/']],
  page: [['tests/cli/']],
  cli: [],
};

const { values: options } = parseArgs({
  options: {
    sample: { type: 'string', default: '40' },
    seed: { type: 'string', default: '1' },
    folder: { type: 'string', default: Object.keys(next).join(',') },
    skip: { type: 'string', default: '0' },
    minutes: { type: 'string', default: '1000' },
    list: { type: 'boolean', default: false },
    deep: { type: 'boolean', default: false },
  },
});
const folders = options.folder.split(',');
for (const f of folders) if (!(f in next)) throw new Error(`no such folder: ${f}`);

const short = (filters) => ['--project=short', ...filters];
/** Arguments of the runs that a mutation in the folder has to pass, one run after another. */
function stagesOf(folder) {
  const lists = [[`tests/${folder}/`], ...next[folder]];
  const long = ['--project=long', '--passWithNoTests', 'tests/corpus', 'tests/oracles/', ...lists.flat()];
  return [...lists.map(short), ...(options.deep ? [long] : [])];
}

// Texts for people and rows of tables: an error there is one of wording or of data, not of logic.
const leftOut = /(^|[\\/-])(explain|words|texts|sentences|tables|defaults)([\\/-].*)?\.ts$/;

const isText = (node) => ts.isTemplateExpression(node) || ts.isStringLiteralLike(node);
const isWords = (node) => isText(node) && /\s|^$|\$/.test(node.getText().slice(1, -1));

/** True for what is not run, what only shapes words, and plain data at the top of a file. */
function skips(node) {
  if (ts.isImportDeclaration(node) || ts.isTypeNode(node) || ts.isTemplateExpression(node)) return true;
  if (ts.isInterfaceDeclaration(node) || ts.isTypeAliasDeclaration(node) || ts.isEnumDeclaration(node))
    return true;
  if (ts.isConditionalExpression(node) && (isWords(node.whenTrue) || isWords(node.whenFalse))) return true;
  const called = ts.isCallExpression(node) && ts.isPropertyAccessExpression(node.expression);
  if (called && /^to(Fixed|Precision|LocaleString)$/.test(node.expression.name.text)) return true;
  if (!ts.isVariableStatement(node) || !ts.isSourceFile(node.parent)) return false;
  const unwrap = (e) =>
    e && (ts.isAsExpression(e) || ts.isSatisfiesExpression(e)) ? unwrap(e.expression) : e;
  return node.declarationList.declarations.every((d) => {
    const made = unwrap(d.initializer);
    return made && (ts.isObjectLiteralExpression(made) || ts.isArrayLiteralExpression(made));
  });
}

const swaps = new Map(
  '< <= >=; <= < >; > >= <=; >= > <; === !==; !== ===; + -; - +; * /; / *; % *; ** *; += -=; -= +=; && ||; || &&'
    .split('; ')
    .map((line) => line.split(' '))
    .map(([from, ...to]) => [from, to]),
);

const isExit = (s) => ts.isContinueStatement(s) || ts.isBreakStatement(s) || ts.isReturnStatement(s);
/** A guard is an if without else that does nothing but leave. */
const isGuard = (s) => {
  if (!ts.isIfStatement(s) || s.elseStatement) return false;
  const only = ts.isBlock(s.thenStatement) ? s.thenStatement.statements : [s.thenStatement];
  return only.length === 1 && isExit(only[0]);
};

/** The mutations of one node: [node to replace, its new text]. */
function mutationsOf(node, text) {
  const of = (n) => text.slice(n.getStart(), n.end);
  if (ts.isBinaryExpression(node)) {
    const words = node.operatorToken.kind === K.PlusToken && [node.left, node.right].some(isText);
    return words ? [] : (swaps.get(of(node.operatorToken)) ?? []).map((s) => [node.operatorToken, s]);
  }
  if (ts.isPrefixUnaryExpression(node)) {
    if (node.operator === K.ExclamationToken) return [[node, of(node.operand)]];
    return node.operator === K.MinusToken ? [[node, `(+${of(node.operand)})`]] : [];
  }
  if (ts.isIfStatement(node))
    return [[node.expression, 'true'], isGuard(node) ? [node, ';'] : [node.expression, 'false']];
  if (ts.isConditionalExpression(node)) return ['true', 'false'].map((v) => [node.condition, v]);
  if (ts.isWhileStatement(node)) return [[node.expression, 'false']];
  if (ts.isNumericLiteral(node) && node.parent.name !== node) return [[node, `(${node.text} + 1)`]];
  if (node.kind === K.TrueKeyword) return [[node, 'false']];
  if (node.kind === K.FalseKeyword) return [[node, 'true']];
  if (ts.isContinueStatement(node) || ts.isBreakStatement(node))
    return isGuard(node.parent) || isGuard(node.parent.parent) ? [] : [[node, ';']];
  if (ts.isPropertyAccessExpression(node) && /^Math\.(max|min)$/.test(of(node)))
    return [[node.name, node.name.text === 'max' ? 'min' : 'max']];
  const out = ts.isReturnStatement(node) || ts.isArrowFunction(node) ? (node.expression ?? node.body) : 0;
  if (out && ts.isArrayLiteralExpression(out) && out.elements.length) return [[out, '[]']];
  if (out && ts.isStringLiteral(out) && !isWords(out)) return [[out, "''"]];
  return [];
}

function sitesOf(file) {
  const text = readFileSync(join(root, file), 'utf8');
  const source = ts.createSourceFile(file, text, ts.ScriptTarget.ES2022, true);
  const sites = [];
  const placed = ([node, after]) => ({ file, start: node.getStart(), end: node.end, after });
  const visit = (node) => {
    if (skips(node)) return;
    const found = mutationsOf(node, text).map(placed);
    if (found.length > 0) sites.push(found);
    ts.forEachChild(node, visit);
  };
  visit(source);
  return { sites, lines: text.split('\n').length };
}

/** Mulberry32: the same sample for the same seed on every machine. */
function randomOf(seed) {
  let a = seed >>> 0;
  return () => {
    a = (a + 0x6d2b79f5) >>> 0;
    let t = Math.imul(a ^ (a >>> 15), a | 1);
    t = (t + Math.imul(t ^ (t >>> 7), t | 61)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
}

/** One mutation at each of `count` places, in proportion to the lines of the folders. */
function sampleOf(count, random) {
  const read = folders.map((folder) => {
    const names = readdirSync(join(root, 'src', folder), { recursive: true, encoding: 'utf8' });
    const kept = names.filter((n) => n.endsWith('.ts') && !leftOut.test(n));
    const files = kept.map((n) => sitesOf(`src/${folder}/${n}`));
    return { folder, sites: files.flatMap((f) => f.sites), lines: files.reduce((a, f) => a + f.lines, 0) };
  });
  const lines = read.reduce((a, r) => a + r.lines, 0);
  const chosen = read.flatMap(({ folder, sites, lines: own }) => {
    console.log(`${folder}: ${own} lines, ${sites.length} places, ${sites.flat().length} mutations`);
    const picked = sites.map((s) => ({ key: random(), one: s[Math.floor(random() * s.length)] }));
    picked.sort((a, b) => a.key - b.key);
    return picked
      .slice(0, Math.round((count * own) / lines))
      .map(({ one }) => ({ ...one, folder, key: random() }));
  });
  // Mixed, so that a run cut short still covers every folder.
  return chosen.sort((a, b) => a.key - b.key);
}

let child;
/** Runs test files one after another in one worker: 'pass', 'fail' or 'timeout'. */
function test(copy, stage, limit) {
  // --no-isolate and one thread: starting a process for each file costs more than most of the tests in it.
  const flags = ['--no-isolate', '--pool=threads', '--maxWorkers=1', '--bail', '1', '--testTimeout=30000'];
  const vitest = join(root, 'node_modules/vitest/vitest.mjs');
  return new Promise((done) => {
    child = spawn(process.execPath, [vitest, 'run', ...flags, ...stage], { cwd: copy, stdio: 'ignore' });
    let late = false;
    const timer = setTimeout(() => {
      late = true;
      child.kill('SIGKILL');
    }, limit);
    child.on('exit', (code) => {
      clearTimeout(timer);
      done(late ? 'timeout' : code === 0 ? 'pass' : 'fail');
    });
  });
}

function copied() {
  const copy = mkdtempSync(join(tmpdir(), 'mutate-'));
  const omitted = ['node_modules', '.git'];
  cpSync(root, copy, { recursive: true, filter: (from) => !omitted.includes(basename(from)) });
  symlinkSync(join(root, 'node_modules'), join(copy, 'node_modules'), 'dir');
  return copy;
}

async function judged(copy, mutant, limits) {
  const original = readFileSync(join(copy, mutant.file), 'utf8');
  const { start, end, after } = mutant;
  writeFileSync(join(copy, mutant.file), original.slice(0, start) + after + original.slice(end));
  let outcome = 'survived';
  for (const stage of stagesOf(mutant.folder)) {
    const result = await test(copy, stage, limits.get(stage.join()));
    if (result === 'pass') continue;
    outcome = result === 'fail' ? 'killed' : 'timeout';
    break;
  }
  writeFileSync(join(copy, mutant.file), original);
  const line = original.slice(0, start).split('\n').length;
  const ends = [original.lastIndexOf('\n', start) + 1, original.indexOf('\n', end)];
  const before = original.slice(ends[0], ends[1]).trim();
  const changed = (original.slice(ends[0], start) + after + original.slice(end, ends[1])).trim();
  return { ...mutant, outcome, told: `${mutant.file}:${line}: ${before} -> ${changed}` };
}

function tell(results) {
  console.log('\nfolder    tried  killed timeout survived score');
  for (const name of [...folders, 'all']) {
    const list = results.filter((r) => name === 'all' || r.folder === name);
    const [killed, timeout, survived] = ['killed', 'timeout', 'survived'].map(
      (o) => list.filter((r) => r.outcome === o).length,
    );
    const score = list.length === 0 ? '-' : `${Math.round((100 * (killed + timeout)) / list.length)} %`;
    const cells = [name.padEnd(9), list.length, killed, timeout, survived, score];
    console.log(cells.map((x) => String(x).padStart(7)).join(''));
  }
  for (const r of results) if (r.outcome === 'survived') console.log(r.told);
}

async function main() {
  const sample = sampleOf(Number(options.sample), randomOf(Number(options.seed)));
  if (options.list) return sample.forEach((m) => void console.log(m.file, m.start, m.after));
  const copy = copied();
  process.on('exit', () => rmSync(copy, { recursive: true, force: true }));
  for (const signal of ['SIGINT', 'SIGTERM'])
    process.on(signal, () => {
      child?.kill('SIGKILL');
      process.exit(130);
    });
  const limits = new Map();
  for (const stage of folders.filter((f) => sample.some((m) => m.folder === f)).flatMap(stagesOf)) {
    if (limits.has(stage.join())) continue;
    const from = Date.now();
    if ((await test(copy, stage, 600_000)) !== 'pass') throw new Error(`fails unchanged: ${stage.join(' ')}`);
    limits.set(stage.join(), 20_000 + 4 * (Date.now() - from));
  }
  const end = Date.now() + Number(options.minutes) * 60_000;
  const results = [];
  for (const [i, mutant] of sample.entries()) {
    if (i < Number(options.skip)) continue;
    if (Date.now() > end) break;
    results.push(await judged(copy, mutant, limits));
    console.log(`${i + 1}/${sample.length} ${results.at(-1).outcome} ${results.at(-1).told}`);
  }
  tell(results);
}

await main();
