// Which errors may be made where in the sources, and a sample of them.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import ts from 'typescript';
import { isPlainOperator } from './switch.mjs';

const K = ts.SyntaxKind;

// Texts for people and rows of tables: an error there is one of wording or of data, not of logic.
const leftOut = /(^|[\\/-])(explain|words|texts|sentences|tables|defaults)([\\/-].*)?\.ts$/;

const isText = (node) => ts.isTemplateExpression(node) || ts.isStringLiteralLike(node);
const isWords = (node) => isText(node) && /\s|^$|\$/.test(node.getText().slice(1, -1));

/** Bounds of effort: one more or one less that is tried changes what is told of no plan that a test could be written for. */
const isBound = ({ name, initializer }) =>
  /^(MOST|LEAST)_(?!TOLD|NAMED|EXPLAINED)/.test(name.getText()) &&
  initializer &&
  ts.isNumericLiteral(initializer) &&
  Number.isInteger(Number(initializer.text.replaceAll('_', ''))) &&
  Number(initializer.text.replaceAll('_', '')) >= 12;

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
    return made && (ts.isObjectLiteralExpression(made) || ts.isArrayLiteralExpression(made) || isBound(d));
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

/**
 * The mutations of one node: the text that a reader sees change (`from`, `to`), and how the copy holds both: `whole` is what is
 * wrapped, `kind` how (`mutantsIn` of copy.mjs), `becomes` what stands there when the error is switched on.
 */
function mutationsOf(node, text) {
  const of = (n) => text.slice(n.getStart(), n.end);
  const value = (seen, after, whole = seen, becomes = after) => ({
    seen,
    after,
    kind: 'value',
    whole,
    becomes,
  });
  const condition = (whole, becomes, seen = whole, after = String(becomes)) => ({
    ...{ seen, after, kind: 'condition', whole, becomes },
  });
  if (ts.isBinaryExpression(node)) {
    const { left, operatorToken, right } = node;
    if (operatorToken.kind === K.PlusToken && [left, right].some(isText)) return [];
    return (swaps.get(of(operatorToken)) ?? []).map((after) =>
      isPlainOperator(after)
        ? { seen: operatorToken, after, kind: 'binary', whole: node, becomes: after }
        : value(operatorToken, after, node, `${of(left)} ${after} ${of(right)}`),
    );
  }
  if (ts.isPrefixUnaryExpression(node)) {
    if (node.operator === K.ExclamationToken) return [value(node, of(node.operand))];
    return node.operator === K.MinusToken ? [value(node, `(+${of(node.operand)})`)] : [];
  }
  if (ts.isIfStatement(node)) {
    const { expression } = node;
    const never = isGuard(node) ? condition(expression, false, node, ';') : condition(expression, false);
    return [condition(expression, true), never];
  }
  if (ts.isConditionalExpression(node)) return [true, false].map((v) => condition(node.condition, v));
  if (ts.isWhileStatement(node)) return [condition(node.expression, false)];
  if (ts.isNumericLiteral(node) && node.parent.name !== node) return [value(node, `(${node.text} + 1)`)];
  if (node.kind === K.TrueKeyword) return [value(node, 'false')];
  if (node.kind === K.FalseKeyword) return [value(node, 'true')];
  if (ts.isContinueStatement(node) || ts.isBreakStatement(node)) {
    if (isGuard(node.parent) || isGuard(node.parent.parent)) return [];
    return [{ seen: node, after: ';', kind: 'statement', whole: node }];
  }
  if (ts.isPropertyAccessExpression(node) && /^Math\.(max|min)$/.test(of(node))) {
    const other = node.name.text === 'max' ? 'min' : 'max';
    return [value(node.name, other, node, `Math.${other}`)];
  }
  const out = ts.isReturnStatement(node) || ts.isArrowFunction(node) ? (node.expression ?? node.body) : 0;
  if (out && ts.isArrayLiteralExpression(out) && out.elements.length) return [value(out, '[]')];
  if (out && ts.isStringLiteral(out) && !isWords(out)) return [value(out, "''")];
  return [];
}

/** Where a node stands; `sign` is where the operator stands that a binary expression has. */
const placeOf = (node) => ({
  ...{ start: node.getStart(), end: node.end },
  ...(ts.isBinaryExpression(node) && {
    sign: { start: node.operatorToken.getStart(), end: node.operatorToken.end },
  }),
});

function sitesOf(root, file) {
  const text = readFileSync(join(root, file), 'utf8');
  const source = ts.createSourceFile(file, text, ts.ScriptTarget.ES2022, true);
  const sites = [];
  let depth = 0;
  let called = 0;
  const visit = (node) => {
    if (skips(node)) return;
    depth++;
    if (ts.isFunctionLike(node)) called++;
    const found = mutationsOf(node, text).map(({ seen, whole, ...rest }) => ({
      ...rest,
      ...{ file, depth, seen: placeOf(seen), whole: placeOf(whole) },
      // What is worked out while a file is loaded is worked out once, whichever test comes first.
      atLoad: called === 0,
    }));
    if (found.length > 0) sites.push(found);
    ts.forEachChild(node, visit);
    if (ts.isFunctionLike(node)) called--;
    depth--;
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

/** One mutation at each of `count` places, in proportion to the lines of the folders; `says` is told how many there are. */
export function sampleOf(root, folders, count, seed, says) {
  const random = randomOf(seed);
  const read = folders.map((folder) => {
    const names = readdirSync(join(root, 'src', folder), { recursive: true, encoding: 'utf8' });
    const kept = names.filter((n) => n.endsWith('.ts') && !leftOut.test(n)).sort();
    const files = kept.map((n) => sitesOf(root, `src/${folder}/${n}`));
    return { folder, sites: files.flatMap((f) => f.sites), lines: files.reduce((a, f) => a + f.lines, 0) };
  });
  const lines = read.reduce((a, r) => a + r.lines, 0);
  const chosen = read.flatMap(({ folder, sites, lines: own }) => {
    says(`${folder}: ${own} lines, ${sites.length} places, ${sites.flat().length} mutations`);
    const picked = sites.map((s) => ({ key: random(), one: s[Math.floor(random() * s.length)] }));
    picked.sort((a, b) => a.key - b.key);
    return picked
      .slice(0, Math.round((count * own) / lines))
      .map(({ one }) => ({ ...one, folder, key: random() }));
  });
  // Mixed, so that a run cut short still covers every folder.
  chosen.sort((a, b) => a.key - b.key);
  return chosen.map(({ key: _, ...one }, id) => ({ ...one, id }));
}
