/** The page's drawing in fewer letters is the same drawing: every path ends up at the same points. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { line, shape } from '../../src/draw/strokes.ts';
import { compactSvg } from '../../src/page/html/compact-svg.ts';

/** Points of a path of absolute M and relative h, v and l, walked by the rules of SVG 1.1 section 8.3. */
function walked(d: string): [number, number][] {
  const points: [number, number][] = [];
  let [x, y] = [0, 0];
  for (const [, command, numbers] of d.matchAll(/([Mhvl])([-\d. ]+)/g)) {
    const n = (numbers!.match(/-?\d*\.?\d+/g) ?? []).map(Number);
    if (command === 'M') [x, y] = [n[0]!, n[1]!];
    else if (command === 'h') x += n[0]!;
    else if (command === 'v') y += n[0]!;
    else [x, y] = [x + n[0]!, y + n[1]!];
    points.push([x, y]);
  }
  return points;
}

const coordinate = fc.integer({ min: -99_999, max: 2_999_999 }).map((n) => n / 100);
const points = fc.array(fc.record({ x: coordinate, y: coordinate }), { minLength: 2, maxLength: 6 });

describe('a compact drawing', () => {
  it('goes through the same points', () => {
    fc.assert(
      fc.property(points, fc.boolean(), (through, closed) => {
        const svg = closed ? shape(through) : line(through);
        const d = / d="([^"]*)"/.exec(compactSvg(svg))![1]!;
        expect(d.endsWith('Z')).toBe(closed);
        const found = walked(d);
        const expected = through.filter(
          (p, i) => i === 0 || through.length === 2 || p.x !== through[i - 1]!.x || p.y !== through[i - 1]!.y,
        );
        expect(found).toHaveLength(expected.length);
        for (const [i, [x, y]] of found.entries()) {
          expect(x).toBeCloseTo(expected[i]!.x, 6);
          expect(y).toBeCloseTo(expected[i]!.y, 6);
        }
      }),
    );
  });

  it('draws what is drawn many times once', () => {
    const arm = '<g class="made"><path stroke-width="3" d="M1 2L3 4"/></g>';
    const many = compactSvg(arm.repeat(30));
    expect(many.match(/<use class="made" href="#s0"\/>/g)).toHaveLength(30);
    expect(many.match(/M1 2l2 2/g)).toHaveLength(1);
    expect(compactSvg(arm)).not.toContain('<use');
  });
});
