/** The drawing of a page: as wide as its place, every core in it, every word where the layout puts it. */
import { describe, expect, it } from 'vitest';
import { shownState } from '../../src/draw/current-shown.ts';
import { drawingSvg } from '../../src/draw/svg.ts';
import { withMarksAtSymbols } from '../../src/page/html/marks-at-symbols.ts';
import { drawingBeside } from '../../src/page/room.ts';
import { Study } from '../../src/study/study.ts';
import { example, exampleNames } from '../helpers/example-plans.ts';
import { sampled } from '../helpers/share.ts';

/** px beside the controls at 1400 px, and a tenth more. */
const BESIDE = 1100;

/** Every word of an SVG with the place of its baseline, moved by the symbols that hold it. */
function words(svg: string): string[] {
  const found: string[] = [];
  const corners: (readonly [number, number])[] = [[0, 0]];
  for (const [tag, end, x, y, at, text] of svg.matchAll(
    /<(\/?)g\b(?:[^>]*translate\(([-\d.]+) ([-\d.]+)\))?[^>]*>|<text([^>]*)>([^<]*)<\/text>/g,
  )) {
    const [left, top] = corners.at(-1)!;
    if (tag!.startsWith('<text')) {
      const of = (name: string) => Number(new RegExp(` ${name}="([-\\d.]+)"`).exec(at!)![1]);
      found.push(`${(of('x') + left).toFixed(1)} ${(of('y') + top).toFixed(1)} ${text}`);
    } else if (end === '/') corners.pop();
    else corners.push([left + Number(x ?? 0), top + Number(y ?? 0)]);
  }
  return found.sort();
}

describe('the drawing of a page', () => {
  it.each(sampled(exampleNames(), 3))('stands beside the controls, with every core: %s', (name) => {
    const { plan, circuit, sides } = Study.of(example(name));
    const drawing = drawingBeside({ circuit, sides });
    expect(drawing.width).toBeLessThanOrEqual(BESIDE);
    const ids = plan.runs.flatMap((run) => run.cores.map((_, i) => `${run.index}/${i}`));
    expect(drawing.cores.map((c) => c.id).sort()).toEqual(ids.sort());
  });

  it.each(sampled(exampleNames(), 3))('has its marks where they were: %s', (name) => {
    const { plan, circuit, sides } = Study.of(example(name));
    const drawing = drawingBeside({ circuit, sides });
    const shown = shownState(circuit, { made: () => false });
    const svg = (d: typeof drawing) => drawingSvg(d, { plan, shown, both: true });
    // A hundredth is lost in each of two roundings.
    const close = (all: string[]) => all.map((w) => w.replace(/\.\d /g, ' '));
    expect(close(words(withMarksAtSymbols(drawing, svg))).length).toBe(words(svg(drawing)).length);
    expect(
      words(withMarksAtSymbols(drawing, svg))
        .map((w) => w.split(' ').slice(2).join(' '))
        .sort(),
    ).toEqual(
      words(svg(drawing))
        .map((w) => w.split(' ').slice(2).join(' '))
        .sort(),
    );
    for (const word of words(withMarksAtSymbols(drawing, svg))) {
      const [x, y, ...text] = word.split(' ');
      const there = words(svg(drawing)).some((w) => {
        const [wx, wy, ...wt] = w.split(' ');
        return wt.join() === text.join() && Math.abs(+wx! - +x!) < 0.11 && Math.abs(+wy! - +y!) < 0.11;
      });
      expect(there, word).toBe(true);
    }
  });
});
