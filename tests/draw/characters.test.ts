import { describe, expect, it } from 'vitest';
import { drawCharacters } from '../../src/draw/characters.ts';
import { type Shown, shownState } from '../../src/draw/current-shown.ts';
import type { Drawing } from '../../src/draw/drawing.ts';
import { drawnState } from '../../src/draw/drawn-state.ts';
import { layOut } from '../../src/draw/layout/layout.ts';
import { CHARACTERS } from '../../src/draw/layout/measures.ts';
import type { Plan, TerminalRef } from '../../src/plan/plan.ts';
import { readPlan } from '../../src/plan/read.ts';
import { Study } from '../../src/study/study.ts';
import { printable } from '../../src/text/escape.ts';
import { columns as columnsOf } from '../../src/text/wrap.ts';
import { sampled } from '../helpers/share.ts';
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

/** A plan in so many columns of symbols, Unicode and ASCII, at rest and with its first input moved. */
function drawings({ name, text }: PlanText, widths: readonly number[]): Drawn[] {
  const read = readPlan(text, name);
  if (!read.ok) throw new Error(`${name}\n${read.errors.map((e) => e.message).join('\n')}`);
  const { plan } = read;
  const input = Study.of(plan);
  const { made } = drawnState(Study.of(plan), []);
  const states = [
    shownState(input.circuit, { made }),
    shownState(input.circuit, drawnState(Study.of(plan), [0])),
  ];
  return widths.flatMap((width) => {
    const drawing = layOut(input, CHARACTERS, { columns: width, bank: 1000 });
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
    const text = printable(raw).replace(/[─-╿]/gu, '?');
    const from = Math.floor(x);
    const found = cells[Math.floor(y)]?.slice(from, from + columnsOf(text)).join('');
    if (expected(text) && found !== text) faults.push(`for the ${what} ${text} of ${of} stands ${found}`);
  }
  const page = lines.join('\n');
  for (const name of plan.parts.keys())
    if (expected(name) && !page.includes(name)) faults.push(`the name of ${name} is missing`);
  return faults;
}

/** A drawing says what its plan says, and in the words of its labels. */
function expectRight(drawn: Drawn): void {
  const { strands, faults } = readBack(pageOf(drawn));
  const found = [...faults, ...weightFaults(drawn, strands), ...wordFaults(drawn)];
  const joined = strands.map((s) => s.terminals);
  expect({ found, joined }, drawn.lines.join('\n')).toEqual({ found: [], joined: wired(drawn.plan) });
}

const counted = (count: number, each: (n: number) => string): string =>
  Array.from({ length: count }, (_, n) => each(n)).join('\n');

/** Lamps between two nuts, and nuts on from them: `lamps` cores and more on each nut. */
function nuts(lamps: number): string {
  return `format: 1
stock:
  bell: {kind: cable, gauge: 0.5 mm2, cores: 2}
parts:
  PS1: {kind: supply, output: 12 V DC, limit: 1 A}
  feed: {kind: joint}
  home: {kind: joint}
  third: {kind: joint}
${counted(lamps, (n) => `  H${n}: {kind: lamp, resistance: 100 ohm}`)}
runs:
  - {cable: bell, length: 1 m, cores: {red: [PS1.+, feed], black: [PS1.-, home]}}
  - {link: [home, third]}
  - {link: [feed, home]}
${counted(lamps, (n) => `  - {cable: bell, length: 1 m, cores: {red: [feed, H${n}.1], white: [home, H${n}.2]}}`)}
`;
}

const odd = [
  ...[3, 12, 13, 14, 30].map((lamps) => ({ name: `two nuts, ${lamps} lamps`, text: nuts(lamps) })),
  { name: 'colours of line characters', text: nuts(4).replaceAll('white', '"┼│─┬"') },
];

describe.each([
  ['examples', allExamples(), () => [1, 2, 3]],
  ['generated plans', generatedPlans(136, 2), (nth: number) => [(nth % 4) + 1]],
  ['odd plans', odd, () => [1, 2, 3, 4, 6]],
] as const)('%s drawn in characters', (_, plans, widths) => {
  it.each(
    sampled(
      plans.map((plan, nth) => ({ ...plan, nth })),
      16,
    ),
  )('$name', ({ nth, ...plan }) => {
    for (const drawn of drawings(plan, widths(nth))) expectRight(drawn);
  });
});

describe('the reader', () => {
  const near = { x: 0, y: 0, width: 3, height: 3 };
  const far = { x: 15, y: 0, width: 3, height: 3 };
  const mark = (of: string, x: number, y: number) => ({
    ...{ text: of, what: 'mark' as const, of, x, y, width: 2, height: 1 },
  });
  const read = (ascii: boolean, ...text: string[]) => {
    const lines = text.map((line) => ` ${line}`);
    const symbols = [near, far].map((b, i) => ({ part: `P${i}`, figure: 'box' as const, box: b }));
    const marks = [mark('a1', 1, 0), mark('a2', 1, 2), mark('b1', 15, 0), mark('b2', 15, 2)];
    const { strands, faults } = readBack({ lines, ascii, symbols, marks });
    return [strands.map((s) => s.terminals.join(' ')).join(', '), ...faults];
  };

  it.each([
    ['straight on', false, ['a1────────────b1', '', 'a2            b2'], 'a1 b1'],
    ['a crossing', false, ['a1───┐   ┌────b1', '  ┌──│───┘', 'a2┘  └────────b2'], 'a1 b2, a2 b1'],
    ['a join', false, ['a1───┬────────b1', '     │', 'a2   └────────b2'], 'a1 b1 b2'],
    ['words in a line', false, ['a1──3 WH - K1─b1', '', 'a2            b2'], 'a1 b1'],
    ['a heavy join', false, ['a1━━━┳━━━━━━━━b1', '     ┃', 'a2   ┗━━━━━━━━b2'], 'a1 b1 b2'],
    ['a further line', false, ['a1            b1', ' └─────┐', 'a2     └──────b2'], 'a1 b2'],
    ['straight on', true, ['a1--=======---b1', '', 'a2            b2'], 'a1 b1'],
    ['a crossing', true, ['a1---+   +----b1', '   +-|---+', 'a2-+ +--------b2'], 'a1 b2, a2 b1'],
    ['a join', true, ['a1===+========b1', '     #', 'a2   +========b2'], 'a1 b1 b2'],
    ['words in a line', true, ['a1--3 x-y - K-b1', '', 'a2            b2'], 'a1 b1'],
  ])('sees %s', (_, ascii, lines, joined) => {
    expect(read(ascii, ...lines)).toEqual([joined]);
  });

  it('tells of lines that lead nowhere', () => {
    expect(read(false, 'a1───  ───────b1', '', 'a2            b2').slice(1)).toEqual([
      'a line ends at 6, 0',
      'a line ends at 7, 0',
    ]);
    expect(read(false, 'a1   ────     b1', '', 'a2            b2').slice(1).length).toBe(4);
    expect(read(false, 'a1──┐         b1', '    │', 'a2  └────┘    b2').slice(1).length).toBeGreaterThan(0);
    expect(read(false, 'a1────────────b1', '            ┌─', 'a2──────────┘ b2')[1]).toContain(
      'into a symbol',
    );
  });
});
