// A copy of the project in which every error of a sample stands beside what is right, with a switch between them: so that the
// sources are changed once for all errors.
import {
  appendFileSync,
  copyFileSync,
  cpSync,
  mkdtempSync,
  readFileSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, dirname, join, relative } from 'node:path';

/** Where the copy has, as tests, what `npm test` holds besides those of the project. */
export const GENERATED = 'tests/tools/mutate/generated.test.ts';

/** The changes of text that put one error beside what is right. */
function editsOf({ id, kind, whole, becomes, depth }, text) {
  // At one place the outermost begins first and ends last.
  const before = (at, put) => ({ start: at, end: at, put, order: depth });
  const after = (at, put) => ({ start: at, end: at, put, order: -depth });
  const wrapped = (head, tail) => [before(whole.start, head), after(whole.end, tail)];
  if (kind === 'value') return wrapped(`($mutated(${id}) ? ${becomes} : `, ')');
  if (kind === 'condition') return wrapped(`$condition(${id}, ${becomes}, `, ')');
  if (kind === 'statement') return wrapped(`{ if (!$mutated(${id})) `, ' }');
  const { start, end } = whole.sign;
  const is = text.slice(start, end);
  return [...wrapped(`$binary(${id}, '${is}', '${becomes}', (`, '))'), { start, end, put: '), (', order: 0 }];
}

/** The text of a source file with all errors of the sample that stand in it. */
function mutantsIn(text, mutants) {
  const edits = mutants.flatMap((m) => editsOf(m, text));
  edits.sort((a, b) => a.start - b.start || a.order - b.order);
  let out = '';
  let at = 0;
  for (const { start, end, put } of edits) {
    out += text.slice(at, start) + put;
    at = end;
  }
  return out + text.slice(at);
}

/** @returns the folder of the copy, which the caller removes */
export function copied(root, sample) {
  const copy = mkdtempSync(join(tmpdir(), 'mutate-'));
  const omitted = ['node_modules', '.git'];
  cpSync(root, copy, { recursive: true, filter: (from) => !omitted.includes(basename(from)) });
  symlinkSync(join(root, 'node_modules'), join(copy, 'node_modules'), 'dir');
  for (const file of new Set(sample.map((m) => m.file))) {
    const path = join(copy, file);
    const from = relative(dirname(file), 'tests/tools/mutate/switch.mjs');
    const asked = `import { binary as $binary, condition as $condition, mutated as $mutated } from '${from}'; `;
    const own = sample.filter((m) => m.file === file);
    writeFileSync(path, asked + mutantsIn(readFileSync(path, 'utf8'), own));
  }
  copyFileSync(join(root, 'tests/tools/mutate/generated.ts'), join(copy, GENERATED));
  const watching = "import { watch as $watch } from './tools/mutate/watch.mjs';\n$watch();\n";
  appendFileSync(join(copy, 'tests/setup.ts'), watching);
  return copy;
}
