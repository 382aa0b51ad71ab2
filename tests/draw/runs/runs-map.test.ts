import { describe, expect, it } from 'vitest';
import { renderRuns } from '../../../src/draw/runs/characters.ts';
import { layRuns } from '../../../src/draw/runs/lay-runs.ts';
import { networks } from '../../../src/draw/runs/places.ts';
import { runsPicture } from '../../../src/draw/runs/runs-svg.ts';
import { judgeAsTaken } from '../../../src/findings/judge.ts';
import type { Plan } from '../../../src/plan/plan.ts';
import { Study } from '../../../src/study/study.ts';
import { example, mostExamples } from '../../helpers/example-plans.ts';
import { planOf } from '../../helpers/plan-of.ts';
import { sampled, WHOLE } from '../../helpers/share.ts';
import { asText, readMap, readWords, runsOf } from './map-reader.ts';

const PLANS = sampled(mostExamples(), 12);

const input = (plan: Plan) => {
  const { circuit, sides } = Study.of(plan);
  return { plan, circuit, sides };
};
const picture = (plan: Plan, width = 703) => runsPicture(input(plan), { width, boxes: true })!;

const SHOP = [
  'stock: {bell: {kind: cable, gauge: 1 mm2, cores: 2}}',
  'parts:',
  '  PS1: {kind: supply, output: 12 V DC, limit: 1 A}',
  '  K1: {kind: relay, coil: {rated: 12 V DC, resistance: 150 ohm}, contact: {ratings: [10 A 250 V AC]}}',
  '  D1: {kind: diode}',
  '  one: {kind: gate}',
  '  two: {kind: gate}',
  '  three: {kind: gate}',
  '  B1: {kind: box, holds: [K1, D1]}',
];
const shop = (...runs: string[]) => planOf([...SHOP, 'runs:', ...runs.map((r) => `  - ${r}`)].join('\n'));
const cable = (length: string, cores: string) =>
  `{cable: bell,${length === '' ? '' : ` length: ${length},`} cores: {${cores}}}`;

/** Every law of the picture; the runs it was read to have. */
function judged(plan: Plan, width?: number): string[] {
  const map = readMap(picture(plan, width).svg);
  const { words } = map;
  for (const [i, a] of words.entries()) {
    expect(a.x, a.text).toBeGreaterThanOrEqual(-0.01);
    expect(a.x + a.width, a.text).toBeLessThanOrEqual((width ?? 703) + 0.5);
    for (const b of words.slice(i + 1)) {
      const apart =
        a.x + a.width <= b.x || b.x + b.width <= a.x || a.y + a.height <= b.y || b.y + b.height <= a.y;
      expect(apart, `${a.text} / ${b.text}`).toBe(true);
    }
    for (const [x1, y, x2] of map.levels)
      expect(
        y > a.y + 1 && y < a.y + a.height - 1 && Math.max(x1, x2) > a.x && Math.min(x1, x2) < a.x + a.width,
        `a line through ${a.text}`,
      ).toBe(false);
  }
  for (const { lines, places } of map.sections) {
    let scale: number | undefined;
    for (const { run, level, ends } of lines) {
      const drawn = level.reduce((sum, [x1, , x2]) => sum + Math.abs(x2 - x1), 0);
      const metres = plan.runs.find((r) => asMark(r) === run.mark)!.length;
      if (metres !== undefined) {
        scale ??= drawn / metres;
        // Coordinates are rounded to hundredths of a px.
        expect(Math.abs(drawn / metres / scale - 1), run.mark).toBeLessThan(0.02 + 0.05 / drawn);
      }
      const met = ends.flatMap(([x, y]) => places.filter((p) => Math.hypot(p.x - x, p.y - y) < 0.3));
      const names = new Set(met.map((p) => p.name));
      // A run that ends at a place told of elsewhere has its name there once more.
      expect([run.from, run.to].filter((n) => names.has(n)).length, run.mark).toBeGreaterThanOrEqual(1);
      if (names.size < 2) expect(words.map((w) => w.text).join('|'), run.mark).toMatch(/ again/);
    }
  }
  return map.sections.flatMap((s) => s.lines.map((l) => asText(l.run)));
}
const asMark = (r: Plan['runs'][number]): string =>
  r.piece === undefined ? `${r.entry}` : `${r.entry}.${r.piece}`;

describe('the map of the runs', () => {
  it.each(PLANS)('of %s has each run once, to scale, with no word on another', (name) => {
    const plan = example(name);
    for (const width of [703, 725])
      expect(judged(plan, width).sort()).toEqual(runsOf(plan).map(asText).sort());
  });

  it.each(PLANS)('of %s says the same in characters, at 80 columns and at 200', (name) => {
    const plan = example(name);
    const all = { ...input(plan), report: judgeAsTaken(Study.of(plan)) };
    const wide = renderRuns(all, 250, true);
    const told = [...wide.matchAll(/(?:^|\s)(\d+(?:\.\d+)?) {2}(\S.*, from .*)$/gm)].map((m) =>
      asText(readWords(m[1]!, m[2]!.trim())),
    );
    expect(told.sort()).toEqual(runsOf(plan).map(asText).sort());
    for (const line of renderRuns(all, 80, false).split('\n')) {
      expect(line.length, line).toBeLessThanOrEqual(80);
      expect(line).toMatch(/^[ -~]*$/);
    }
  });

  it('begins at the supply, goes to spurs first, and leaves out what is joined inside a box', () => {
    const plan = shop(
      cable('2 m', 'red: [PS1.+, one.COM], white: [PS1.-, one.NO]'),
      cable('9 m', 'red: [one.COM, two.COM], white: [one.NO, two.NO]'),
      cable('3 m', 'red: [one.COM, K1.A1], white: [one.NO, K1.A2]'),
      '{link: [D1.K, K1.A1]}',
    );
    const [section] = networks(input(plan)).map(layRuns);
    expect(section!.runs.map((r) => `${r.leg.run.entry} ${r.from.name} ${r.to.name}`)).toEqual([
      '1 PS1 one',
      '3 one B1',
      '2 one two',
    ]);
    expect(section!.places.map((p) => [p.place.name, p.at])).toEqual([
      ['PS1', 0],
      ['B1', 5],
      ['one', 2],
      ['two', 11],
    ]);
  });

  it.each([
    ['out and home alike', '4 m', '4 m'],
    ['with a long way home', '4 m', '40 m'],
    ['with a short way home', '9 m', '1 m'],
  ])('closes a ring, %s', (_, out, home) => {
    const plan = shop(
      cable('2 m', 'red: [PS1.+, K1.A1]'),
      cable(out, 'red: [K1.A1, one.COM]'),
      cable('5 m', 'red: [one.NO, two.COM]'),
      cable('3 m', 'red: [two.NO, three.COM]'),
      cable(home, 'red: [three.NO, K1.A2]'),
    );
    judged(plan);
    const [section] = networks(input(plan)).map(layRuns);
    // Round the ring in one direction, and each run ends where a place is drawn.
    expect(section!.runs.map((r) => `${r.from.name} ${r.to.name}`)).toEqual([
      'PS1 B1',
      'B1 one',
      'one two',
      'two three',
      'three B1',
    ]);
    expect(section!.runs.some((r) => r.again)).toBe(false);
  });

  it('parts a cable whose cores part, and counts the cores of each way', () => {
    const plan = shop(cable('2 m', 'red: [PS1.+, one.COM], white: [PS1.-, K1.A2]'));
    expect(judged(plan)).toEqual(['1: 1 B1 - PS1', '1: 1 PS1 - one']);
  });

  it('draws a cable beside another, of the same length and of another', () => {
    const plan = shop(
      cable('2 m', 'red: [PS1.+, one.COM]'),
      cable('2 m', 'red: [PS1.-, one.NO]'),
      cable('3 m', 'red: [PS1.-, one.NC]'),
    );
    expect(judged(plan)).toHaveLength(3);
    const [section] = networks(input(plan)).map(layRuns);
    expect(section!.runs.map((r) => [r.leg.run.entry, r.again])).toEqual([
      [2, false],
      [3, true],
      [1, false],
    ]);
  });

  it('shows a run without a length as one, dashed', () => {
    const { svg } = picture(
      shop('{cable: bell, length: 2 m, cores: {red: [PS1.+, one.COM]}}', '{link: [one.COM, two.COM]}'),
    );
    expect(svg).toContain('length not given, bare link, from one to two');
    expect(svg.match(/stroke-dasharray/g)).toHaveLength(1);
  });

  it.runIf(WHOLE)('stays quick where a stranger has many runs', () => {
    const many = Array.from({ length: 1500 }, (_, i) => `g${i}`);
    const plan = planOf(
      [
        'stock: {bell: {kind: cable, gauge: 1 mm2, cores: 2}}',
        'parts:',
        ...many.map((g) => `  ${g}: {kind: gate}`),
        'runs:',
        ...many
          .slice(1)
          .map((g, i) => `  - {cable: bell, length: 1 m, cores: {red: [${many[i]!}.COM, ${g}.COM]}}`),
      ].join('\n'),
    );
    const [section] = networks(input(plan)).map(layRuns);
    expect(section!.lines).toBe(1500);
    expect(section!.extent).toBeCloseTo(1499, 6);
  });
});
