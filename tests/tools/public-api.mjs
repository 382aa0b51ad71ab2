// Holds the public API to what was agreed on: its shape is the committed one, every type and field says what it is, and its
// types need no other package. `--accept` takes the shape as it is built. Needs a built dist/.
import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { createTwoFilesPatch } from 'diff';
import ts from 'typescript';

const root = fileURLToPath(new URL('../..', import.meta.url));
const SHAPE = 'tests/library/public-api.txt';
const built = ts.createSourceFile(
  'index.d.ts',
  readFileSync(`${root}dist/index.d.ts`, 'utf8'),
  ts.ScriptTarget.ES2022,
  true,
);

/** The declarations without a word of comment: what a change of them means to whoever uses it. */
function shape() {
  const text = ts.createPrinter({ removeComments: true }).printFile(built);
  return `Shape of the public API; made by \`npm run api:accept\`, which DEVELOPERS.md tells of.\n\n${text}`;
}

const nameOf = (s) => s.name?.text ?? s.declarationList?.declarations[0].name.text;
const isDocumented = (node) => ts.getJSDocCommentsAndTags(node).length > 0;
const isField = (node) =>
  (ts.isPropertySignature(node) ||
    ts.isMethodSignature(node) ||
    ts.isPropertyDeclaration(node) ||
    ts.isMethodDeclaration(node)) &&
  !ts.isPrivateIdentifier(node.name);

/** What is exported without a word on it. */
function silent() {
  const exported = new Set(
    built.statements
      .filter(ts.isExportDeclaration)
      .flatMap((s) => s.exportClause.elements.map((e) => (e.propertyName ?? e.name).text)),
  );
  return built.statements
    .filter((s) => exported.has(nameOf(s)))
    .flatMap((s) => {
      const found = isDocumented(s) ? [] : [nameOf(s)];
      const visit = (node) => {
        if (isField(node) && !isDocumented(node)) found.push(`${nameOf(s)}.${node.name.getText(built)}`);
        ts.forEachChild(node, visit);
      };
      visit(s);
      return found;
    });
}

const problems = [];
const undocumented = silent();
if (undocumented.length > 0) problems.push(`Without a comment in the public API: ${undocumented.join(', ')}`);
const imports = built.statements.filter(ts.isImportDeclaration).map((s) => s.moduleSpecifier.getText(built));
if (imports.length > 0 || /\bimport\(/.test(built.text))
  problems.push(`The types of the library need other packages: ${imports.join(', ')}`);

const now = shape();
if (process.argv.includes('--accept')) writeFileSync(root + SHAPE, now);
const agreed = readFileSync(root + SHAPE, 'utf8');
if (agreed !== now) {
  problems.push(
    createTwoFilesPatch('as agreed', 'as built', agreed, now, '', '', { context: 2 }),
    [
      'The public API has changed. If that is meant: `npm run api:accept`, commit the file it writes, and say in CHANGELOG.md',
      'what changed. What is gone or asks for more is a breaking change (DEVELOPERS.md, "Versions"): a new major version.',
    ].join('\n'),
  );
}
for (const problem of problems) console.log(problem);
if (problems.length > 0) process.exitCode = 1;
else console.log(`the public API is as agreed: ${now.split('\n').length} lines, every field of it explained`);
