/** Judging the words of a drawing: each is there as often as it should be, and covers nothing foreign. */

import type { Box, Drawing, DrawnSymbol, Label } from '../../src/draw/drawing.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { overlap, Tiles, within } from './geometry-space.ts';

/** A label as a fault names it. */
export const called = (label: Label): string => `label ${label.what} ${label.of || label.text}`;

type Counted = 'core' | 'mark' | 'name';

function counts(labels: readonly Label[], what: Counted): Map<string, number> {
  const found = new Map<string, number>();
  for (const label of labels) if (label.what === what) found.set(label.of, (found.get(label.of) ?? 0) + 1);
  return found;
}

/** Faults where labels of one sort are fewer or more than `wanted` says, [least, most] by what they belong to. */
function tally(
  labels: readonly Label[],
  what: Counted,
  wanted: ReadonlyMap<string, [number, number]>,
): string[] {
  const found = counts(labels, what);
  const missing = [...wanted]
    .filter(([of, [least]]) => (found.get(of) ?? 0) < least)
    .map(([of, [least]]) => `label ${what} ${of} stands ${found.get(of) ?? 0} times, not ${least}`);
  const spare = [...found]
    .filter(([of, count]) => count > (wanted.get(of)?.[1] ?? 0))
    .map(([of, count]) => `label ${what} ${of} stands ${count} times, not ${wanted.get(of)?.[1] ?? 0}`);
  return [...missing, ...spare];
}

function countFaults({ labels, symbols }: Drawing, plan: Plan): string[] {
  const cores = new Map<string, [number, number]>();
  for (const run of plan.runs)
    for (const i of run.cores.keys()) cores.set(`${run.index}/${i}`, [run.link ? 0 : 1, 1]);
  const marks = new Map<string, [number, number]>();
  for (const { terminals, part } of symbols)
    for (const { key } of terminals) marks.set(key, [plan.parts.get(part)?.kind === 'joint' ? 0 : 1, 1]);
  const names = new Map<string, [number, number]>();
  for (const { part } of symbols) {
    const seen = (names.get(part)?.[0] ?? 0) + 1;
    names.set(part, [seen, seen]);
  }
  const plugged = symbols.flatMap((s) => s.plugged.map((p) => p.part));
  for (const part of plugged) if (!names.has(part)) names.set(part, [0, 1]);
  // What is plugged in may be told in a caption.
  const told = new Set(labels.map((l) => l.of));
  return [
    ...tally(labels, 'core', cores),
    ...tally(labels, 'mark', marks),
    ...tally(labels, 'name', names),
    ...plugged.filter((part) => !told.has(part)).map((part) => `part ${part} has no label`),
  ];
}

/** Half of what a contact takes in the middle of its box, px. */
const ASIDE = 20;

/** True where a label may stand in the box of a symbol: its marks and captions, and all words of what is plugged in. */
function atHome(label: Label, { part, id, terminals, plugged, box, figure }: DrawnSymbol): boolean {
  const { what, of } = label;
  const contact = ['gate', 'switch', 'button', 'cutout', 'pole', 'static-pole'].includes(figure);
  if (what === 'mark' && terminals.some((t) => t.key === of)) return true;
  if (what === 'caption' && (of === part || of === id)) return true;
  // The name of a contact may stand beside the contact itself, which lies in the middle.
  const middle = box.x + box.width / 2;
  const aside = label.x + label.width <= middle - ASIDE || label.x >= middle + ASIDE;
  if ((what === 'name' || what === 'finding') && of === part && contact && aside) return true;
  return plugged.some((p) => (what === 'caption' || what === 'name') && p.part === of);
}

function overSymbols(label: Label, near: Iterable<DrawnSymbol>): string[] {
  const faults: string[] = [];
  for (const symbol of near) {
    if (!atHome(label, symbol) && overlap(label, symbol.box)) {
      faults.push(`${called(label)} overlaps the symbol ${symbol.id}`);
      continue;
    }
    for (const { part, box } of symbol.plugged)
      if (part !== label.of && overlap(label, box)) faults.push(`${called(label)} overlaps the part ${part}`);
  }
  return faults;
}

/** Faults of labels; empty when right. */
export function wordFaults(drawing: Drawing, plan: Plan): string[] {
  const { width, height, labels, symbols } = drawing;
  const sheet: Box = { x: 0, y: 0, width, height };
  const words = new Tiles<Label>(width, height, labels.length);
  const figures = new Tiles<DrawnSymbol>(width, height, symbols.length);
  for (const symbol of symbols) figures.add(symbol, symbol.box);
  const faults = countFaults(drawing, plan);
  for (const label of labels) {
    if (label.text.trim() === '' || label.width <= 0 || label.height <= 0)
      faults.push(`${called(label)} is empty`);
    if (!within(label, sheet)) faults.push(`${called(label)} stands out of the sheet`);
    for (const other of words.near(label))
      if (overlap(label, other)) faults.push(`${called(other)} and ${called(label)} overlap`);
    words.add(label, label);
    faults.push(...overSymbols(label, figures.near(label)));
  }
  return faults;
}
