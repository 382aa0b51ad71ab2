import { describe, expect, it } from 'vitest';
import { drawnPlan } from '../../../src/bench/drawn-plan.ts';
import { drawnState } from '../../../src/bench/drawn-state.ts';
import type { Plan, TerminalRef } from '../../../src/plan/plan.ts';
import { readPlan } from '../../../src/plan/read.ts';
import { drawCharacters } from '../../../src/report/draw/characters.ts';
import type { Drawing } from '../../../src/report/draw/drawing.ts';
import { layOut } from '../../../src/report/draw/layout.ts';
import { CHARACTERS } from '../../../src/report/draw/measures.ts';
import { type Shown, shownState } from '../../../src/report/draw/shown.ts';
import { printable } from '../../../src/report/escape.ts';
import { columns as columnsOf } from '../../../src/report/wrap.ts';
import { allExamples, generatedPlans, type PlanText } from './plans.ts';
import { cellsOf, Joined, type Page, readBack } from './read-back.ts';

interface Drawn {
  readonly plan: Plan;
  readonly drawing: Drawing;
  readonly shown: Shown;
  readonly lines: readonly string[];
  readonly ascii: boolean;
}

/** A plan in 1 to 3 columns of symbols, Unicode and ASCII, at rest and with its first input moved. */
function drawings({ name, text }: PlanText, widths: readonly number[] = [1, 2, 3]): Drawn[] {
  const read = readPlan(text, name);
  if (!read.ok) throw new Error(name);
  const { plan } = read;
  const input = drawnPlan(plan);
  const { made } = drawnState(plan, []);
  const states = [shownState(input.circuit, { made }), shownState(input.circuit, drawnState(plan, [0]))];
  return widths.flatMap((width) => {
    const drawing = layOut(input, CHARACTERS, width);
    return states.flatMap((shown) =>
      [false, true].map((ascii) => {
        const lines = drawCharacters(drawing, shown, ascii);
        return { plan, drawing, shown, lines, ascii };
      }),
    );
  });
}

const keyOf = ({ part, terminal }: TerminalRef): string =>
  terminal === '' ? part : `${part}.${terminal}`;

function pageOf({ drawing, lines, ascii }: Drawn): Page {
  const marks = drawing.labels.filter((l) => l.what === 'mark');
  const symbols = drawing.symbols.map(({ part, figure, box }) => ({ part, figure, box }));
  return { lines, ascii, symbols, marks };
}

/** What the plan says of the terminals its lines join. */
function wired({ runs }: Plan): string[][] {
  const joined = new Joined();
  for (const { a, b } of runs.flatMap((r) => r.cores)) joined.join(keyOf(a), keyOf(b));
  return joined.sets();
}

function expectWiring(drawn: Drawn): void {
  const { strands, faults } = readBack(pageOf(drawn));
  const page = drawn.lines.join('\n');
  expect({ faults, strands: strands.map((s) => s.terminals) }, page).toEqual({
    faults: [],
    strands: wired(drawn.plan),
  });
  const weights = new Map(strands.flatMap((s) => s.terminals.map((t) => [t, s.weights])));
  for (const core of drawn.drawing.cores)
    expect([...weights.get(core.from)!], `${core.id} in\n${page}`).toEqual([
      drawn.shown.live(core) ? 'heavy' : 'light',
    ]);
}

const CONTROL = /[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]/u;
const isAscii = (text: string): boolean => /^[ -~]*$/.test(text);

function expectWords({ plan, drawing, lines, ascii }: Drawn): void {
  const page = lines.join('\n');
  expect(lines.length).toBeLessThanOrEqual(Math.ceil(drawing.height));
  for (const line of lines) {
    expect(columnsOf(line), page).toBeLessThanOrEqual(Math.ceil(drawing.width));
    expect(line).not.toMatch(CONTROL);
    if (ascii) expect(line).toMatch(/^[ -~]*$/);
  }
  const cells = lines.map(cellsOf);
  for (const label of drawing.labels) {
    const text = printable(label.text);
    if (ascii && !isAscii(text)) continue;
    const row = cells[Math.floor(label.y)] ?? [];
    const from = Math.floor(label.x);
    expect(row.slice(from, from + columnsOf(text)).join(''), `${label.what} ${label.of}\n${page}`).toBe(text);
  }
  for (const name of plan.parts.keys()) if (!ascii || isAscii(name)) expect(page).toContain(printable(name));
}

const examples = allExamples();
const generated = generatedPlans(204, 2);

describe.each([
  ['examples', examples],
  ['generated plans', generated],
])('%s drawn in characters', (_, plans) => {
  it.each(plans)('$name', (plan) => {
    for (const drawn of drawings(plan)) {
      expectWiring(drawn);
      expectWords(drawn);
    }
  });
});
