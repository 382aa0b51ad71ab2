/** Plans with one field of one part or cable set to two values, and everything that is answered of each. */
import { readdirSync, readFileSync } from 'node:fs';
import { type Document, isMap, parseDocument, type YAMLMap } from 'yaml';
import { judge } from '../../../src/findings/judge.ts';
import { materials } from '../../../src/lists/materials.ts';
import { wireRows } from '../../../src/lists/wirelist.ts';
import { readMeter } from '../../../src/machine/read-meter.ts';
import { meterSheet } from '../../../src/meter/meter-sheet.ts';
import { readPlan } from '../../../src/plan/read.ts';
import { Study } from '../../../src/study/study.ts';
import { OWN_PLANS } from './own-plans.ts';

const folder = (path: string): [string, string][] => {
  const url = new URL(path, import.meta.url);
  return readdirSync(url)
    .filter((name) => name.endsWith('.yaml'))
    .map((name) => [name, readFileSync(new URL(name, url), 'utf8')]);
};

/** Small plans first, then the shops. */
export const PLANS: readonly (readonly [string, string])[] = [
  ...Object.entries(OWN_PLANS),
  ...folder('../../findings/bases/'),
  ...folder('../../../examples/'),
  ...folder('../../../examples/wrong/'),
];

/** Answers from the quickest to the slowest; places in the file are left out, since the text itself moves. */
const ANSWERS: readonly ((study: Study) => unknown)[] = [
  judge,
  materials,
  wireRows,
  (study) => readMeter(study, { moved: [], dead: false }),
  (study) => readMeter(study, { moved: study.circuit.inputs.map((i) => i.index).slice(0, 1), dead: false }),
];

/** Whether any quick answer tells two plans apart; the meter sheet is asked last. */
export function tellsApart(a: string, b: string): boolean {
  const [x, y] = [study(a), study(b)];
  if (!x || !y) throw new Error(`cannot be read:\n${x ? b : a}`);
  return [...ANSWERS, meterSheet].some((answer) => said(answer(x)) !== said(answer(y)));
}

function said(value: unknown): string {
  return JSON.stringify(value, (key, inner) =>
    key === 'line' || key === 'column' || key === 'plan' ? undefined : inner,
  );
}

/** Where in a document a field may be set: the parts of a kind, or the cables. */
function places(document: Document, kind: string): (readonly (string | number)[])[] {
  const stock = document.get('stock');
  const kindOf = (node: unknown): unknown => {
    if (!isMap(node)) return undefined;
    const own = (node as YAMLMap).get('kind');
    if (own !== undefined) return own;
    const from = (node as YAMLMap).get('from');
    return isMap(stock) && from !== undefined ? kindOf((stock as YAMLMap).get(String(from))) : undefined;
  };
  const of = (section: string) => {
    const map = document.get(section);
    if (!isMap(map)) return [];
    return (map as YAMLMap).items
      .filter((item) => kindOf(item.value) === kind)
      .map((item) => [section, String(item.key)] as const);
  };
  return kind === 'cable' ? of('stock') : of('parts').slice(0, 3);
}

export type Value = string | number | boolean | readonly unknown[] | Readonly<Record<string, unknown>>;

function study(text: string): Study | undefined {
  const read = readPlan(text, 'use.yaml');
  return read.ok ? Study.of(read.plan) : undefined;
}

export function withField(
  text: string,
  path: readonly (string | number)[],
  value: Value | undefined,
): string {
  const document = parseDocument(text);
  if (value === undefined) document.deleteIn(path);
  else document.setIn(path, document.createNode(value));
  return document.toString();
}

/** A plan in which the field matters, where it matters in few: it is tried before all others. */
const TOLD_BY: Readonly<Record<string, string>> = {
  'supply.frequency': 'control-transformer.yaml',
  'supply.input': 'control-transformer.yaml',
  'supply.taps': 'ac-relay',
  'supply.fed-from': 'coil-diode-backwards.yaml',
  'relay.polarised': 'polarised-coil-reversed.yaml',
  'relay.off-leakage': 'solid-state',
  'timer.polarised': 'timer-reversed',
  'timer.off-leakage': 'solid-state-timer',
  'timer.trigger-current': 'ac-timer',
  'timer.trigger-resistance': 'ac-timer',
  'plug.frequency': 'coil-for-50-hz.yaml',
  'plug.terminal-rating': 'terminals',
  'plug.midpoint': 'ac-contactor.yaml',
  'motor.class': 'no-earth',
  'motor.code': 'ac-contactor.yaml',
  'motor.service-factor': 'overload',
  'motor.efficiency': 'power-alone',
  'motor.power-factor': 'power-alone',
};

/** The two plans in which `field` of a part of `kind` has one value and the other; only those that can be read. */
function* pairs(
  kind: string,
  field: readonly string[],
  a: Value | undefined,
  b: Value,
): Generator<[Study, Study]> {
  const first = TOLD_BY[`${kind}.${field.join('.')}`];
  for (const [, text] of [...PLANS.filter(([name]) => name === first), ...PLANS])
    for (const place of places(parseDocument(text), kind)) {
      const path = [...place, ...field];
      let both: [Study | undefined, Study | undefined];
      try {
        both = [study(withField(text, path, a)), study(withField(text, path, b))];
      } catch {
        // a field inside a list or a plain string of this plan
        continue;
      }
      if (both[0] && both[1]) yield [both[0], both[1]];
    }
}

/** Which answer tells the two values apart, as its place in the list of answers; undefined where none does. */
export function answerThatChanges(
  kind: string,
  field: readonly string[],
  a: Value | undefined,
  b: Value,
): number | undefined {
  let few = 0;
  const slow: [Study, Study][] = [];
  for (const [x, y] of pairs(kind, field, a, b)) {
    const at = ANSWERS.findIndex((answer) => said(answer(x)) !== said(answer(y)));
    if (at >= 0) return at;
    if (few++ < 2) slow.push([x, y]);
  }
  return slow.some(([x, y]) => said(meterSheet(x)) !== said(meterSheet(y))) ? ANSWERS.length : undefined;
}
