/** Promises about the code itself: which stage may know which, how long a file may be, and what no text may say. */
import { readdirSync, readFileSync } from 'node:fs';
import { relative, resolve, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';
import pkg from '../package.json' with { type: 'json' };

const root = fileURLToPath(new URL('..', import.meta.url));

interface Import {
  /** path from src/, such as `plan/plan.ts`; undefined for a package */
  readonly file: string | undefined;
  /** true when nothing of it is left after compilation */
  readonly typesOnly: boolean;
}

interface SourceFile {
  /** path from src/ */
  readonly name: string;
  readonly lines: number;
  readonly text: string;
  readonly imports: readonly Import[];
  readonly anys: readonly number[];
  readonly strings: readonly string[];
}

function isTypeOnly(node: ts.ImportDeclaration | ts.ExportDeclaration): boolean {
  const clause = ts.isImportDeclaration(node) ? node.importClause : node;
  if (clause === undefined) return false;
  if (clause.isTypeOnly) return true;
  const named = ts.isImportClause(clause) ? clause.namedBindings : clause.exportClause;
  if (ts.isImportClause(clause) && clause.name !== undefined) return false;
  if (named === undefined || !(ts.isNamedImports(named) || ts.isNamedExports(named))) return false;
  return named.elements.length > 0 && [...named.elements].every((e) => e.isTypeOnly);
}

function parse(path: string): SourceFile {
  const text = readFileSync(path, 'utf8');
  const source = ts.createSourceFile(path, text, ts.ScriptTarget.ES2022, true);
  const imports: Import[] = [];
  const anys: number[] = [];
  const strings: string[] = [];
  const add = (specifier: ts.Expression | undefined, typesOnly: boolean) => {
    if (specifier === undefined || !ts.isStringLiteral(specifier)) return;
    const local = specifier.text.startsWith('.');
    const file = relative(`${root}src`, resolve(path, '..', specifier.text));
    imports.push({ file: local ? file.split(sep).join('/') : undefined, typesOnly });
  };
  const visit = (node: ts.Node): void => {
    if (ts.isImportDeclaration(node) || ts.isExportDeclaration(node)) {
      add(node.moduleSpecifier, isTypeOnly(node));
      return;
    }
    if (ts.isCallExpression(node) && node.expression.kind === ts.SyntaxKind.ImportKeyword)
      add(node.arguments[0], false);
    if (node.kind === ts.SyntaxKind.AnyKeyword)
      anys.push(source.getLineAndCharacterOfPosition(node.getStart()).line + 1);
    if (ts.isStringLiteralLike(node) || ts.isTemplateHead(node) || ts.isTemplateMiddleOrTemplateTail(node))
      strings.push(node.text);
    ts.forEachChild(node, visit);
  };
  visit(source);
  const name = relative(`${root}src`, path).split(sep).join('/');
  return { name, lines: text.replace(/\n$/, '').split('\n').length, text, imports, anys, strings };
}

const files = readdirSync(`${root}src`, { recursive: true, encoding: 'utf8' })
  .filter((name) => name.endsWith('.ts'))
  .sort()
  .map((name) => parse(resolve(root, 'src', name)));

/**
 * What each stage may import beside its own folder: whole folders, or files by path; `types` only as types. The order
 * is that of the work: plan, circuit, electric, logic, ratings, checks, bench, report, page, command line.
 */
const MAY: Readonly<Record<string, { readonly code: readonly string[]; readonly types: readonly string[] }>> =
  {
    plan: { code: [], types: [] },
    circuit: { code: [], types: ['plan'] },
    electric: { code: ['circuit'], types: ['plan'] },
    logic: { code: ['circuit', 'electric'], types: ['plan'] },
    ratings: { code: [], types: ['plan'] },
    checks: {
      code: ['circuit', 'electric', 'logic', 'ratings', 'report/model.ts', 'report/cautions.ts'],
      types: ['plan', 'report'],
    },
    bench: {
      code: ['circuit', 'electric', 'logic', 'ratings', 'checks', 'report/model.ts'],
      types: ['plan', 'report'],
    },
    report: {
      code: ['circuit/circuit.ts', 'circuit/maps.ts'],
      types: ['plan', 'circuit', 'logic', 'checks', 'bench'],
    },
    page: { code: ['circuit', 'logic', 'checks', 'bench', 'report'], types: ['plan'] },
    cli: { code: ['plan', 'checks', 'bench', 'report', 'page', '../package.json'], types: [] },
    'index.ts': { code: ['plan', 'checks', 'bench', 'report'], types: ['plan', 'bench', 'report'] },
  };

const stageOf = (file: string) => file.split('/')[0]!;
const covers = (allowed: readonly string[], file: string) =>
  allowed.some((entry) => entry === file || file.startsWith(`${entry}/`));

describe('stages', () => {
  it('are those that are known here', () => {
    expect([...new Set(files.map((f) => stageOf(f.name)))].sort()).toEqual(Object.keys(MAY).sort());
  });

  it.each(Object.keys(MAY))('%s imports what it may and nothing else', (stage) => {
    const { code, types } = MAY[stage]!;
    const strangers = files
      .filter((f) => stageOf(f.name) === stage)
      .flatMap((f) =>
        f.imports.flatMap(({ file, typesOnly }) => {
          if (file === undefined || stageOf(file) === stage || covers(code, file)) return [];
          if (typesOnly && covers(types, file)) return [];
          return [`${f.name} imports ${typesOnly ? 'types of ' : ''}${file}`];
        }),
      );
    expect(strangers).toEqual([]);
  });

  it('leave the command line alone', () => {
    const users = files.filter((f) => stageOf(f.name) !== 'cli');
    expect(users.filter((f) => f.imports.some((i) => i.file?.startsWith('cli/')))).toEqual([]);
  });
});

describe('source files', () => {
  it('are read', () => expect(files.length).toBeGreaterThan(50));

  it('have 400 lines at most', () => {
    // A catalogue: every type of part.
    const catalogues = ['plan/plan.ts'];
    expect(
      files
        .filter((f) => f.lines > 400 && !catalogues.some((c) => f.name.endsWith(c)))
        .map((f) => `${f.name}: ${f.lines}`),
    ).toEqual([]);
  });

  it('never say `any`', () => {
    expect(files.flatMap((f) => f.anys.map((line) => `${f.name}:${line}`))).toEqual([]);
  });

  it('leave nothing to be done later', () => {
    expect(files.filter((f) => /\b(TODO|FIXME|XXX)\b/.test(f.text)).map((f) => f.name)).toEqual([]);
  });

  it('print no word that promises what a reading of a plan cannot', () => {
    const printed = files.flatMap((f) => f.strings.map((text) => ({ name: f.name, text })));
    const promises = printed.filter(({ text }) => /\b(safe|safely|compliant|approved)\b/i.test(text));
    expect(promises).toEqual([]);
  });
});

describe('the package', () => {
  it('holds what a user needs and nothing else', () => {
    expect(pkg.files).toEqual(['bin', 'dist', 'schemas', 'examples', 'CHANGELOG.md']);
  });

  it('has the folders that the documents describe', () => {
    const folders = readdirSync(root, { withFileTypes: true })
      .filter((entry) => entry.isDirectory() && !entry.name.startsWith('.'))
      .map((entry) => entry.name)
      .filter((name) => !['node_modules', 'dist', 'coverage'].includes(name));
    expect(folders.sort()).toEqual(['bin', 'examples', 'schemas', 'scripts', 'src', 'tests']);
  });

  it('runs with the oldest Node it names', () => {
    expect(pkg.engines.node).toBe('>=20.12.0');
    expect(readFileSync(`${root}scripts/build.mjs`, 'utf8')).toContain("target: 'node20.12'");
  });
});
