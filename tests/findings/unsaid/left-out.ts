/** Plans with one figure left out of their text, and what the verdict may then be. */
import { isMap, isScalar, parseDocument } from 'yaml';
import { judge } from '../../../src/findings/judge.ts';
import type { Report } from '../../../src/findings/report-model.ts';
import { readPlan } from '../../../src/plan/read.ts';
import { Study } from '../../../src/study/study.ts';

/** Fields that hold a figure printed on a part, or what stands in for one; `rated` of a coil names AC or DC besides. */
const FIGURES = new Set([
  ...[
    'limit',
    'regulation',
    'tolerance',
    'no-load',
    'internal-resistance',
    'ambient',
    'practice',
    'pressed-when',
  ],
  ...['resistance', 'current', 'power', 'power-factor', 'inrush-power-factor', 'pull-in', 'drop-out', 'most'],
  ...[
    'inrush',
    'hot-rise',
    'contact',
    'ratings',
    'motor',
    'ac-3',
    'locked-rotor',
    'make',
    'volts',
    'breaker',
  ],
  ...['fuse', 'amps', 'code', 'starts-per-hour', 'efficiency', 'terminal-rating', 'insulation', 'strands'],
  ...['volume', 'rating', 'time', 'pattern', 'current', 'lowest', 'highest', 'frequency'],
]);

/** A plan without one field, and the path of that field. */
export interface LeftOut {
  readonly path: string;
  readonly text: string;
}

/** The plan without each of its figures in turn. */
export function leavingOut(text: string): LeftOut[] {
  const paths: string[][] = [];
  const walk = (node: unknown, path: readonly string[]): void => {
    if (!isMap(node)) return;
    for (const { key, value } of node.items) {
      const name = isScalar(key) ? String(key.value) : '';
      const at = [...path, name];
      if (FIGURES.has(name)) paths.push(at);
      if (at[0] !== 'runs' && at[0] !== 'intent') walk(value, at);
    }
  };
  walk(parseDocument(text).contents, []);
  return paths.map((path) => ({
    path: path.join('.'),
    // Written when it is asked for: of many plans only a few figures are left out.
    get text() {
      const doc = parseDocument(text);
      doc.deleteIn(path);
      return String(doc);
    },
  }));
}

/** The report of a plan; throws where it cannot be read. */
function reportOf(text: string): Report {
  const read = readPlan(text, 'left-out.yaml');
  if (!read.ok) throw new Error(read.errors.map((e) => e.message).join('\n'));
  return judge(Study.of(read.plan));
}

/** Fields whose absence turns a fail into a pass or a pass into a fail, keeps the plan from being read, or leaves a gap. */
export function turned(text: string, leftOut: readonly LeftOut[] = leavingOut(text)): string[] {
  const before = reportOf(text).verdict;
  return leftOut.flatMap(({ path, text: without }) => {
    const { verdict: after, questions } = reportOf(without);
    const wrong = (before === 'pass' && after === 'fail') || (before === 'fail' && after === 'pass');
    const gaps = questions.filter((q) => /\b(null|undefined|NaN)\b/.test(q.figure));
    return [
      ...(wrong ? [`${path}: ${before} became ${after}`] : []),
      ...gaps.map((q) => `${path}: ${q.number} is told as "${q.figure}"`),
    ];
  });
}
