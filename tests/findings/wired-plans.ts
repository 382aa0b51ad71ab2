/** Plans written as a list of parts and a list of wires, and findings written as one line each. */
import { findings } from './threshold-plans.ts';

const SNAP = 'contact: {ratings: [5 A 250 V AC, 5 A 30 V DC], least: 1 mA 5 V DC}';
const COIL = 'coil: {rated: 12 V DC, resistance: 120 ohm, suppressor: diode}';

/** What a part is where only its name is told: its first letters say it. */
const USUAL: readonly (readonly [RegExp, string])[] = [
  [/^PS/, 'kind: supply, output: 12 V DC, limit: 2 A, regulation: regulated, tolerance: 2 %, class-2: true'],
  [/^K/, `kind: relay, ${COIL}, contact: {ratings: [5 A 30 V DC]}`],
  [/^[g-n]/, `kind: gate, pressed-when: open, ${SNAP}`],
  [/^s/, `kind: switch, ${SNAP}`],
  [/^b/, `kind: button, ${SNAP}`],
  [/^c/, `kind: cutout, ${SNAP}`],
];

export interface Wired {
  readonly practice?: string;
  /** names parted by spaces; each is what its first letter says */
  readonly parts: string;
  /** further parts, each with its fields */
  readonly more?: readonly string[];
  /** pairs of terminals parted by commas: 'PS1.+ g.COM, g.NO K1.A1' */
  readonly wires: string;
  /** further runs, such as cables */
  readonly runs?: readonly string[];
  readonly intent?: readonly string[];
}

/** The text of a plan with links only, but for `runs`. */
export function wired(w: Wired): string {
  const usual = w.parts.split(' ').map((name) => `${name}: {${USUAL.find(([like]) => like.test(name))![1]}}`);
  const links = w.wires.split(', ').map((pair) => `{link: [${pair.replace(' ', ', ')}]}`);
  return [
    'format: 1',
    `practice: ${w.practice ?? 'nec'}`,
    'parts:',
    ...[...usual, ...(w.more ?? [])].map((p) => `  ${p}`),
    'runs:',
    ...[...links, ...(w.runs ?? [])].map((r) => `  - ${r}`),
    ...(w.intent === undefined ? [] : ['intent:', ...w.intent.map((i) => `  ${i}`)]),
    '',
  ].join('\n');
}

/**
 * Every finding of a plan as `severity question id: parts | terminals | figures`, what is empty left out; what is
 * folded under it follows as `< id`. With `ids` only the findings that match.
 */
export function told(text: string, ids = /./): string[] {
  return findings(text)
    .filter((f) => ids.test(f.id))
    .map((f) => {
      const figures = f.figures.map((x) => `${x.name} ${x.value} ${x.unit}`).join(', ');
      const also = f.also.map((a) => `< ${a.id === f.id ? a.message : a.id}`).join(' ');
      const head = `${f.severity} ${f.question} ${f.id}: ${f.parts.join(' ')}`;
      return [head, f.terminals.join(' '), figures, also].filter((x) => x !== '').join(' | ');
    });
}

/** Message and reason of the findings that match, which name the state in which it happens. */
export const words = (text: string, ids: RegExp): string[] =>
  findings(text)
    .filter((f) => ids.test(f.id))
    .map((f) => `${f.message}. ${f.why}`);
