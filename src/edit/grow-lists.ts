/** Names in lists, and lengths added up, as a grown plan has them. */
import { isScalar, isSeq, type Node } from 'yaml';
import { unitTyped } from '../plan/length-unit.ts';
import { lengthWords } from '../text/lengths.ts';
import { metresText } from './add-core.ts';
import { insertEntry, type NewEntry } from './insert-entry.ts';
import { taken } from './remove-core.ts';
import { type Listed, type PlanText, Refusal, type Splice } from './text-changes.ts';
import { spell } from './yaml-scalar.ts';

const HALF_INCH = 0.0127;

/** Two lengths as one, m: in their unit and with their decimals where both have the same, else as feet and inches or in metres. */
export function sumText(first: string, second: string, metres: number): string {
  const read = (text: string) => /^(\d+(?:\.(\d+))?)( *)([A-Za-z]+)$/.exec(text.trim());
  const [a, b] = [read(first), read(second)];
  if (a === null || b === null || a[4] !== b[4]) {
    const halves = metres / HALF_INCH;
    const isFeet = [first, second].every((text) => unitTyped(text) === 'ft');
    return isFeet && Math.abs(halves - Math.round(halves)) < 1e-6
      ? lengthWords(metres, 'ft')
      : metresText(metres);
  }
  const places = Math.max(a[2]?.length ?? 0, b[2]?.length ?? 0);
  const sum = (Number(a[1]) + Number(b[1])).toFixed(places);
  return `${places === 0 ? sum : sum.replace(/\.?0+$/, '')}${b[3]}${b[4]}`;
}

/** An entry of one line; `dash` stands before it where it has its own. */
export const plainEntry = (text: (flow: boolean) => string, dash: string): NewEntry => ({
  flow: text(true),
  block: () => `${dash}${text(false)}`,
});

/** A list of names with `gate` behind `name`, or without `name` where there is none. */
export function listSplices(
  file: PlanText,
  node: Node,
  name: string,
  gate: string | undefined,
  what: string,
): Splice[] {
  file.own(node, what);
  if (!isSeq(node)) throw new Refusal(`${what} are no list`);
  const list = node as Listed;
  const index = list.items.findIndex((item) => isScalar(file.plain(item)) && file.keyOf(item) === name);
  if (index === -1) throw new Refusal(`${what} do not hold ${name} itself`);
  if (gate !== undefined)
    return insertEntry(
      file,
      list,
      index,
      'behind',
      plainEntry((flow) => spell(gate, flow), '- '),
    );
  if (list.items.length === 1) throw new Refusal(`${name} is the only one in ${what}`);
  return taken(file.text, list, new Set([index]));
}
