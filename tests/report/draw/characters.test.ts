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
import { Joined, readBack, type Strand } from './read-back.ts';
import { cellsOf, type Page } from './read-back-page.ts';

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

const keyOf = ({ part, terminal }: TerminalRef): string => (terminal === '' ? part : `${part}.${terminal}`);

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

/** Strands that are not heavy where their cores are live, and light where they are not. */
function weightFaults({ drawing, shown }: Drawn, strands: readonly Strand[]): string[] {
  return strands.flatMap(({ terminals, weights }) => {
    const own = drawing.cores.filter((c) => terminals.includes(c.from));
    const wanted = new Set(own.map((c) => (shown.live(c) ? 'heavy' : 'light')));
    const [found, right] = [weights, wanted].map((w) => [...w].sort().join(' and '));
    return found === right ? [] : [`lines of ${terminals[0]} are ${found} instead of ${right}`];
  });
}

const CONTROL = /[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]/u;
const isAscii = (text: string): boolean => /^[ -~]*$/.test(text);

/** What is wrong with the words of a page. */
function wordFaults({ plan, drawing, lines, ascii }: Drawn): string[] {
  const faults: string[] = [];
  const expected = (text: string): boolean => !ascii || isAscii(text);
  if (lines.length > Math.ceil(drawing.height)) faults.push('more lines than the drawing is high');
  lines.forEach((line, y) => {
    if (columnsOf(line) > Math.ceil(drawing.width)) faults.push(`line ${y} is wider than the drawing`);
    if (CONTROL.test(line)) faults.push(`line ${y} holds a control character`);
    if (ascii && !isAscii(line)) faults.push(`line ${y} holds more than ASCII`);
  });
  const cells = lines.map(cellsOf);
  for (const { text: raw, what, of, x, y } of drawing.labels) {
    const text = printable(raw);
    const from = Math.floor(x);
    const found = cells[Math.floor(y)]?.slice(from, from + columnsOf(text)).join('');
    if (expected(text) && found !== text) faults.push(`for the ${what} ${text} of ${of} stands ${found}`);
  }
  const page = lines.join('\n');
  for (const name of plan.parts.keys())
    if (expected(name) && !page.includes(name)) faults.push(`the name of ${name} is missing`);
  return faults;
}

const examples = allExamples();
const generated = generatedPlans(204, 2);

describe.each([
  ['examples', examples],
  ['generated plans', generated],
])('%s drawn in characters', (_, plans) => {
  it.each(plans)('$name', (text) => {
    for (const drawn of drawings(text)) {
      const { strands, faults } = readBack(pageOf(drawn));
      const found = [...faults, ...weightFaults(drawn, strands), ...wordFaults(drawn)];
      const joined = strands.map((s) => s.terminals);
      expect({ found, joined }, drawn.lines.join('\n')).toEqual({ found: [], joined: wired(drawn.plan) });
    }
  });
});
