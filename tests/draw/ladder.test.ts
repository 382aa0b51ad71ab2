/** What a controls person expects of a ladder (IEC 61082-1, 5.4: the path of the current from left to right): common practice beyond that. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { cutToHeight } from '../../src/draw/cut-sheets.ts';
import type { Drawing, DrawnSymbol } from '../../src/draw/drawing.ts';
import { layOut } from '../../src/draw/layout/layout.ts';
import { CHARACTERS, PIXELS } from '../../src/draw/layout/measures.ts';
import { readPlan } from '../../src/plan/read.ts';
import { Study } from '../../src/study/study.ts';
import { sampled } from '../helpers/share.ts';
import { figuresOf } from '../tools/drawing-figures.ts';
import { allExamples } from './plans.ts';

const ROOM = { columns: 99, bank: 1000 };

function drawn(name: string, room = ROOM, measures = PIXELS): Drawing {
  const read = readPlan(readFileSync(`examples/${name}.yaml`), name);
  if (!read.ok) throw new Error(name);
  return layOut(Study.of(read.plan), measures, room);
}

const symbol = (drawing: Drawing, id: string): DrawnSymbol => {
  const found = drawing.symbols.find((s) => s.id === id);
  if (found === undefined) throw new Error(id);
  return found;
};

const at = (drawing: Drawing, key: string) => {
  const terminal = drawing.symbols.flatMap((s) => s.terminals).find((t) => t.key === key);
  if (terminal === undefined) throw new Error(key);
  return terminal.ports[0]!;
};

const right = ({ box }: DrawnSymbol) => box.x + box.width;

describe.each([
  ['px', PIXELS],
  ['characters', CHARACTERS],
] as const)('a ladder in %s', (_, measures) => {
  const lane = () => drawn('saltmarsh-lane', ROOM, measures);

  it('has the gates side by side in one column, and the coil in line after them', () => {
    const drawing = lane();
    const gates = ['bandsaw', 'planer', 'router'].map((id) => symbol(drawing, id));
    expect(new Set(gates.map(({ box }) => box.x + box.width / 2)).size).toBe(1);
    expect(gates.map(({ box }) => box.y)).toEqual([...gates.map(({ box }) => box.y)].sort((a, b) => a - b));
    const coil = symbol(drawing, 'K1');
    expect(coil.box.x).toBeGreaterThan(Math.max(...gates.map(right)));
    expect(at(drawing, 'K1.A1').y).toBe(at(drawing, 'bandsaw.NO').y);
  });

  it('has the diode below the coil it belongs to, the other way round', () => {
    const drawing = lane();
    const [coil, diode] = [symbol(drawing, 'K1'), symbol(drawing, 'D1')];
    expect(diode.box.x + diode.box.width / 2).toBeCloseTo(coil.box.x + coil.box.width / 2, 0);
    expect(diode.box.y).toBeGreaterThan(coil.box.y);
    expect(at(drawing, 'D1.K').x).toBeLessThan(at(drawing, 'D1.A').x);
  });

  it('runs each mains conductor level from the plug to what it feeds', () => {
    const drawing = lane();
    expect(at(drawing, 'P1.L').y).toBe(at(drawing, 'K1.COM').y);
    expect(at(drawing, 'K1.NO').y).toBe(at(drawing, 'X1.L').y);
    expect(new Set(['P1.N', 'neutral', 'X1.N'].map((key) => at(drawing, key).y)).size).toBe(1);
    const neutral = drawing.cores.filter((c) => [c.from, c.to].includes('neutral'));
    expect(neutral.map(({ path }) => path.length)).toEqual([2, 2]);
  });

  it('stands fuse, cut-out and timer in line from left to right', () => {
    const drawing = drawn('tern-loft', ROOM, measures);
    const way = ['bin', 'KT1/1', 'Q1'].map((id) => symbol(drawing, id));
    expect(right(way[0]!)).toBeLessThan(way[1]!.box.x);
    expect(right(way[1]!)).toBeLessThan(way[2]!.box.x);
    // Only its break is wired, so that stands level with its common.
    expect(at(drawing, 'bin.COM').y).toBe(at(drawing, 'bin.NC').y);
    expect(at(drawing, 'KT1.NO').y).toBe(at(drawing, 'Q1.A1').y);
  });

  it('lets a core on the wrong tab leave the form', () => {
    const right = drawn('saltmarsh-lane', ROOM, measures);
    const wrong = drawn('wrong/planer-on-break-tab', ROOM, measures);
    expect(at(right, 'planer.NO').y).toBe(at(right, 'planer.COM').y);
    const moved = wrong.cores.filter((c) => [c.from, c.to].includes('planer.NC'));
    expect(moved.length).toBeGreaterThan(0);
    for (const { path } of moved) expect(path.some(({ y }) => y === at(wrong, 'planer.NC').y)).toBe(true);
    expect(at(wrong, 'planer.NC').y).toBeGreaterThan(at(wrong, 'planer.COM').y);
  });
});

it('spreads a bank over a second column only where the height asks for it', () => {
  const columns = (bank: number) => {
    const drawing = drawn('fallow-rise-school', { columns: 99, bank });
    const gates = drawing.symbols.filter(({ figure }) => figure === 'gate');
    return new Set(gates.map(({ box }) => box.x + box.width / 2)).size;
  };
  expect([columns(12), columns(6), columns(4)]).toEqual([1, 2, 3]);
});

it('draws examples with few bends and crossings', () => {
  const figures = sampled(allExamples(), 4).flatMap(({ name, text }) => {
    const read = readPlan(text, name);
    if (!read.ok) return [];
    const drawing = layOut(Study.of(read.plan), PIXELS, ROOM);
    return [{ cores: drawing.cores.length, ...figuresOf(drawing) }];
  });
  const sum = (of: (f: (typeof figures)[0]) => number) => figures.reduce((all, f) => all + of(f), 0);
  // Every part in one column needed 2.5 bends a conductor, 1.9 times the least length and 11 crossings a drawing.
  expect(sum((f) => f.bends) / sum((f) => f.cores)).toBeLessThan(1.6);
  expect(sum((f) => f.length) / sum((f) => f.least)).toBeLessThan(1.47);
  expect(sum((f) => f.crossings) / figures.length).toBeLessThan(5);
});

describe('a drawing cut into sheets', () => {
  const whole = () => drawn('large/brackwater-college', { columns: 4, bank: 40 });
  const length = (drawing: Drawing) => figuresOf(drawing).length;

  it('loses no conductor, symbol or word', () => {
    const drawing = whole();
    const cuts = cutToHeight(drawing, 700)!;
    expect(cuts.length).toBeGreaterThan(2);
    const sum = (of: (d: Drawing) => number) => cuts.reduce((all, cut) => all + of(cut.drawing), 0);
    expect(sum(length)).toBeCloseTo(length(drawing), 6);
    for (const what of ['symbols', 'labels', 'dots'] as const)
      expect(sum((d) => d[what].length)).toBe(drawing[what].length);
    for (const { top, bottom, drawing: own } of cuts) {
      expect(bottom - top).toBeLessThanOrEqual(700);
      for (const { box } of own.symbols) expect(box.y + box.height).toBeLessThanOrEqual(bottom);
    }
  });

  it('names at each end the sheet that the same conductor comes from', () => {
    const cuts = cutToHeight(whole(), 700)!;
    cuts.forEach(({ ends }, i) => {
      for (const end of ends) {
        const there = cuts[end.sheet - 1]!.ends.filter(({ x, sheet }) => x === end.x && sheet === i + 1);
        expect(there.map(({ way }) => way)).toEqual([end.way === 'down' ? 'up' : 'down']);
      }
    });
  });

  it('is left whole where it fits', () => {
    const drawing = drawn('saltmarsh-lane');
    expect(cutToHeight(drawing, drawing.height)).toEqual([
      { drawing, top: 0, bottom: drawing.height, ends: [] },
    ]);
  });
});
