/** Plans to draw: every example, and generated ones, right and wrong, that are the same for the same seed. */
import { readdirSync, readFileSync } from 'node:fs';
import { readPlan } from '../../src/plan/read.ts';
import { dice } from '../oracles/corpus/corpus.ts';
import { distinct } from '../oracles/corpus/mutant.ts';
import { type Sheet, sheetOf } from '../oracles/corpus/sheet.ts';
import { sidesOf } from '../oracles/corpus/terminals.ts';
import { moves } from '../oracles/corpus/wiring.ts';
import { CONTROLS, loop, ORDERS, SOURCES } from './plans-loop.ts';
import { FEEDS, LOADS, mains } from './plans-mains.ts';
import { ODDITIES } from './plans-odd.ts';
import { between, oneIn, Plot, pick, type Roll } from './plans-sheet.ts';

export interface PlanText {
  readonly name: string;
  readonly text: string;
}

/** Tests and tools run in the root of the project. */
const examples = `${process.cwd()}/examples/`;

/** The right examples, and the wrong ones that can be read; named by their path from the folder of examples. */
export function allExamples(): PlanText[] {
  return readdirSync(examples, { recursive: true, encoding: 'utf8' })
    .map((path) => path.replaceAll('\\', '/'))
    .filter((path) => /^(?:wrong\/.*|[^/]*)\.yaml$/.test(path))
    .sort()
    .map((name) => ({ name, text: readFileSync(examples + name, 'utf8') }))
    .filter(({ name, text }) => readPlan(text, name).ok);
}

const MACHINES = [
  'table-saw',
  'planer',
  'router',
  'lathe',
  'bandsaw',
  'sander',
  'moulder',
  'tenoner',
  'drill',
  'mitre',
];

/** Names of gates: short, of forty letters, or in letters twice as wide. */
function gateNames(roll: Roll, count: number): string[] {
  const style = pick(roll, ['plain', 'plain', 'plain', 'long', 'wide', 'mixed'] as const);
  return Array.from({ length: count }, (_, i) => {
    const plain = `${MACHINES[i % MACHINES.length]}-${i + 1}`;
    if (style === 'long' || (style === 'mixed' && i % 3 === 0)) {
      const long = `${plain}-at-the-far-end-of-the-northern-machine-hall`.slice(0, 37);
      return `${long}${i + 100}`;
    }
    return style === 'wide' || (style === 'mixed' && i % 3 === 1) ? `鋸盤第${i + 1}号機ゲート` : plain;
  });
}

/** Mostly few gates, now and then many. */
function gateCount(roll: Roll, turn: number): number {
  if (turn % 9 === 8) return between(roll, 30, 60);
  return turn % 4 === 3 ? between(roll, 9, 20) : between(roll, 3, 8);
}

/** A plan made up of an order of gates, a source, what they call, a mains side and an oddity, each in its turn. */
function composed(nth: number, turn: number, roll: Roll): PlanText {
  const inTurn = <T>(list: readonly T[]): T => list[turn % list.length]!;
  const wide = oneIn(roll, 5);
  const plot = new Plot(roll, wide);
  const gates = gateNames(roll, gateCount(roll, turn));
  const [order, control] = [inTurn(ORDERS), inTurn(CONTROLS)];
  const source = control === 'board' ? 'adapter' : pick(roll, SOURCES);
  const [feed, load] = [pick(roll, FEEDS), inTurn(LOADS)];
  const odd = inTurn(Object.keys(ODDITIES));
  const called = loop(plot, { order, source, control, gates, poles: feed === 'three-phase' ? 3 : 2 });
  mains(plot, called, { feed, load, runsOn: gates });
  ODDITIES[odd]!(plot, gates);
  const name = `${nth}: ${order} of ${gates.length} gates, ${source}, ${control}, ${feed} ${load}, ${odd}`;
  return { name, text: plot.text(`Plan ${nth}`) };
}

/** Reads the right examples once, with the places of their core ends. */
function rightSheets(): { name: string; sheet: Sheet }[] {
  return readdirSync(examples)
    .filter((name) => name.endsWith('.yaml'))
    .sort()
    .map((name) => ({ name, sheet: sheetOf(readFileSync(examples + name, 'utf8')) }));
}

/** A right example with one end of one core on another terminal. */
function misplaced(nth: number, roll: Roll, right: ReturnType<typeof rightSheets>): PlanText {
  const { name, sheet } = pick(roll, right);
  const changes = moves(sheet, sidesOf(sheet.wiring));
  // A move that gives the same circuit, or a core with both ends on one terminal, is no mutant.
  for (;;) {
    const change = pick(roll, changes);
    const [mutant] = distinct(sheet, [change]);
    if (mutant !== undefined) return { name: `${nth}: ${name}, ${change.name}`, text: mutant.text };
  }
}

/**
 * `count` plans of 3 to 60 gates, the same for the same seed: five made up, then one example with a wire moved. All can
 * be read; many hold mistakes.
 */
export function generatedPlans(count: number, seed: number): PlanText[] {
  const roll = dice(seed);
  const right = count > 5 ? rightSheets() : [];
  return Array.from({ length: count }, (_, i) =>
    i % 6 === 5 ? misplaced(i, roll, right) : composed(i, i - Math.floor(i / 6), roll),
  );
}
