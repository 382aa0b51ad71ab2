/**
 * Promises about the code itself that no tool keeps: how long a file and a function may be, what may be called where,
 * and what no text may say. Which file may import which stands in .dependency-cruiser.cjs, what nobody uses in .knip.json.
 */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';
import pkg from '../package.json' with { type: 'json' };

const MOST_FILES = 40;
const MOST_LINES = 300;
const MOST_LINES_OF_A_FUNCTION = 80;

const root = fileURLToPath(new URL('..', import.meta.url));
const under = (folder: string): string[] =>
  readdirSync(`${root}${folder}`, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => `${entry.parentPath.slice(root.length)}/${entry.name}`)
    .sort();

interface Source {
  /** path from the top, such as `src/plan/plan.ts` */
  readonly name: string;
  readonly tree: ts.SourceFile;
  readonly nodes: readonly ts.Node[];
}

function parse(name: string): Source {
  const tree = ts.createSourceFile(name, readFileSync(root + name, 'utf8'), ts.ScriptTarget.ES2022, true);
  const nodes: ts.Node[] = [];
  const visit = (node: ts.Node): void => {
    nodes.push(node);
    ts.forEachChild(node, visit);
  };
  visit(tree);
  return { name, tree, nodes };
}

const sources = under('src')
  .filter((name) => name.endsWith('.ts'))
  .map(parse);
const lineOf = (tree: ts.SourceFile, at: number): number => tree.getLineAndCharacterOfPosition(at).line + 1;
const linesOf = ({ tree }: Source): number => tree.text.replace(/\n$/, '').split('\n').length;

/** What `pick` gives for every node, with the place of the node before it. */
function found(among: readonly Source[], pick: (node: ts.Node) => string | undefined): string[] {
  return among.flatMap(({ name, tree, nodes }) =>
    nodes.flatMap((node) => {
      const what = pick(node);
      return what === undefined ? [] : [`${name}:${lineOf(tree, node.getStart(tree))}: ${what}`];
    }),
  );
}

/** A value that does nothing by itself. A function of one expression is a short way to write rows. */
function isTable(value: ts.Expression): boolean {
  if (ts.isAsExpression(value) || ts.isSatisfiesExpression(value)) return isTable(value.expression);
  if (ts.isArrowFunction(value)) return !ts.isBlock(value.body);
  return (
    ts.isObjectLiteralExpression(value) ||
    ts.isArrayLiteralExpression(value) ||
    ts.isLiteralExpression(value) ||
    ts.isIdentifier(value)
  );
}

const holdsTables = (s: ts.Statement): boolean =>
  ts.isVariableStatement(s) &&
  s.declarationList.declarations.every((d) => d.initializer !== undefined && isTable(d.initializer));
const isType = (s: ts.Statement): boolean => ts.isInterfaceDeclaration(s) || ts.isTypeAliasDeclaration(s);

/** Data: nothing but tables and the types of their rows, and tables for the most part. */
function isData({ tree }: Source): boolean {
  const lengthOf = (s: ts.Statement) => s.getText(tree).length;
  const tables = tree.statements.filter(holdsTables).reduce((sum, s) => sum + lengthOf(s), 0);
  const others = tree.statements.filter((s) => !holdsTables(s));
  return (
    others.every((s) => ts.isImportDeclaration(s) || isType(s)) &&
    tables > others.reduce((sum, s) => sum + lengthOf(s), 0)
  );
}

describe('size', () => {
  it('leaves a folder that can be read', () => {
    const files = new Map<string, number>();
    for (const name of [...under('src'), ...under('tests')])
      files.set(dirname(name), (files.get(dirname(name)) ?? 0) + 1);
    expect(files.size).toBeGreaterThan(20);
    expect([...files].filter(([, count]) => count > MOST_FILES)).toEqual([]);
  });

  it('leaves a file that can be read, or a table', () => {
    expect(sources.length).toBeGreaterThan(300);
    const long = sources.filter((s) => linesOf(s) > MOST_LINES && !isData(s));
    expect(long.map((s) => `${s.name}: ${linesOf(s)}`)).toEqual([]);
  });

  it('leaves a function that can be read', () => {
    const long = found(sources, (node) => {
      if (!ts.isFunctionLike(node)) return undefined;
      const [from, to] = [node.getStart(), node.end].map((at) => lineOf(node.getSourceFile(), at));
      return to! - from! + 1 > MOST_LINES_OF_A_FUNCTION ? `${to! - from! + 1} lines` : undefined;
    });
    expect(long).toEqual([]);
  });
});

describe('a plan', () => {
  /** What only a study may do, and the folder in which it is done. */
  const ONCE = { buildCircuit: 'src/circuit/', buildWiredCircuit: 'src/circuit/', verify: 'src/logic/' };

  it.each(Object.entries(ONCE))('is given to %s by its study alone', (name, home) => {
    const others = sources.filter((s) => ![home, 'src/study/'].some((folder) => s.name.startsWith(folder)));
    const users = found(others, (node) => {
      if (!ts.isImportSpecifier(node) && !ts.isExportSpecifier(node)) return undefined;
      return (node.propertyName ?? node.name).text === name ? name : undefined;
    });
    expect(users).toEqual([]);
  });
});

describe('prose', () => {
  const SEARCHES = /^(match|matchAll|search|replace|replaceAll|split|includes|startsWith|endsWith|indexOf)$/;
  const isProse = (node: ts.Node | undefined): boolean =>
    node !== undefined && ts.isPropertyAccessExpression(node) && /^(message|why|fix)$/.test(node.name.text);
  /** Folders that stand before findings/ cannot know one. */
  const before = /^src\/(text|plan|edit|circuit|electric|logic|ratings|study)\//;

  it('of a finding is for people: nothing searches it', () => {
    const searched = found(
      sources.filter((s) => !before.test(s.name)),
      (node) => {
        if (!ts.isCallExpression(node) || !ts.isPropertyAccessExpression(node.expression)) return undefined;
        const { name, expression } = node.expression;
        const searches = SEARCHES.test(name.text) && isProse(expression);
        const tests = /^(exec|test)$/.test(name.text) && isProse(node.arguments[0]);
        return searches || tests ? node.getText() : undefined;
      },
    );
    expect(searched).toEqual([]);
  });

  it('that is printed promises nothing that a reading of a plan cannot keep', () => {
    const promises = found(sources, (node) => {
      const text =
        ts.isStringLiteralLike(node) || ts.isTemplateHead(node) || ts.isTemplateMiddleOrTemplateTail(node);
      return text && /\b(safe|safely|compliant|approved)\b/i.test(node.text) ? node.text : undefined;
    });
    expect(promises).toEqual([]);
  });

  it('of the sources leaves nothing to be done later', () => {
    expect(sources.filter((s) => /\b(TODO|FIXME|XXX)\b/.test(s.tree.text)).map((s) => s.name)).toEqual([]);
  });
});

describe('the network', () => {
  it('is never asked for anything', () => {
    const asks = found(sources, (node) => {
      if (ts.isImportDeclaration(node) && ts.isStringLiteral(node.moduleSpecifier))
        return /^(node:)?(net|http|https|http2|tls|dgram|dns)(\/|$)/.test(node.moduleSpecifier.text)
          ? node.moduleSpecifier.text
          : undefined;
      if (!ts.isCallExpression(node) && !ts.isNewExpression(node)) return undefined;
      return ts.isIdentifier(node.expression) &&
        /^(fetch|WebSocket|XMLHttpRequest|EventSource)$/.test(node.expression.text)
        ? node.expression.text
        : undefined;
    });
    expect(asks).toEqual([]);
  });
});

describe('the documents', () => {
  /** Words of a path that is written out: not a pattern, not what a step has the reader put in. */
  const PATH = /`((?:src|tests|schemas|examples|bin|\.ci)\/[\w./-]+)`/g;

  it.each(['DEVELOPERS.md', 'README.md', 'CHANGELOG.md'])('%s names files that exist', (document) => {
    const text = readFileSync(`${root}${document}`, 'utf8');
    const named = [...new Set([...text.matchAll(PATH)].map(([, path]) => path!))];
    if (document === 'DEVELOPERS.md') expect(named.length).toBeGreaterThan(50);
    expect(named.filter((path) => !existsSync(root + path))).toEqual([]);
  });

  it('DEVELOPERS.md names files by their folder that are there', () => {
    const text = readFileSync(`${root}DEVELOPERS.md`, 'utf8');
    const short = [...text.matchAll(/`([\w-]+\/(?:[\w-]+\/)*[\w-]+\.(?:ts|json|css))`/g)].map(
      ([, path]) => path!,
    );
    const all = [...under('src'), ...under('tests'), ...under('examples'), ...under('schemas')];
    const gone = [...new Set(short)].filter((path) => !all.some((file) => `/${file}`.endsWith(`/${path}`)));
    expect(gone).toEqual([]);
  });

  it('DEVELOPERS.md names single files that are there', () => {
    const text = readFileSync(`${root}DEVELOPERS.md`, 'utf8');
    const single = [...text.matchAll(/`([\w-]+\.(?:ts|mjs|py))`/g)].map(([, name]) => name!);
    const all = new Set([...under('src'), ...under('tests')].map((file) => file.replace(/^.*\//, '')));
    expect([...new Set(single)].filter((name) => !all.has(name))).toEqual([]);
  });
});

describe('the package', () => {
  it('holds what a user needs and nothing else', () => {
    // A report beside an example is what anyone gets who runs it.
    expect(pkg.files).toEqual([
      ...['bin', 'dist', '!dist/*.cache', 'schemas', 'examples', '!examples/**/*.report.txt', 'CHANGELOG.md'],
    ]);
  });

  it('has the folders that the documents describe', () => {
    const folders = readdirSync(root, { withFileTypes: true })
      .filter((entry) => entry.isDirectory() && !entry.name.startsWith('.'))
      .map((entry) => entry.name)
      .filter((name) => !['node_modules', 'dist', 'coverage'].includes(name));
    expect(folders.sort()).toEqual(['bin', 'examples', 'schemas', 'src', 'tests']);
  });

  it('runs with the oldest Node it names', () => {
    expect(pkg.engines.node).toBe('>=20.12.0');
    expect(readFileSync(`${root}src/build.mjs`, 'utf8')).toContain("target: 'node20.12'");
  });
});
