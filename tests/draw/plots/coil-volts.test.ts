import { describe, expect, it } from 'vitest';
import { type CoilVolts, coilVoltsSvg } from '../../../src/draw/plots/coil-volts.ts';
import { columns } from '../../../src/text/wrap.ts';
import { type Element, readSvg } from '../svg-reader.ts';

const SHOP: CoilVolts = {
  coil: 'K1',
  needs: 10.59,
  gates: [
    { name: 'bandsaw', least: 11.72, printed: 11.96 },
    { name: 'planer', least: 11.7, printed: 11.94 },
    { name: 'far <b>end</b> with a very long name', least: 10.2, printed: null },
  ],
};
const plot = (figures: CoilVolts, px = 345): Element => {
  // The reader knows attributes in small letters; the fonts have quotes of their own.
  const svg = coilVoltsSvg(figures, px)!.replace(/<svg [^>]*>/, '<svg>');
  return readSvg(svg).children[0]!;
};
const number = (e: Element, key: string) => Number(e.attributes[key]);
const of = (svg: Element, name: string) => svg.children.filter((e) => e.attributes.class === name);
const texts = (svg: Element) => svg.children.filter((e) => e.name === 'text');

/** Volts at an x, by the axis that is printed below it. */
function axis(svg: Element): (x: number) => number {
  const ticks = texts(svg)
    .filter((e) => e.attributes['text-anchor'] === 'middle' && /^[\d.]+$/.test(e.text))
    .map((e) => [number(e, 'x'), Number(e.text)] as const);
  const [[x1, v1], [x2, v2]] = [ticks[0]!, ticks.at(-1)!];
  return (x) => v1 + ((x - x1) / (x2 - x1)) * (v2 - v1);
}

describe('the plot of coil volts', () => {
  it('has every figure at its volts on the printed axis', () => {
    const svg = plot(SHOP);
    const volts = axis(svg);
    const at = (e: Element) => volts(number(e, 'cx'));
    const near = (found: number[], wanted: number[]) => {
      expect(found).toHaveLength(wanted.length);
      for (const [i, v] of wanted.entries()) expect(found[i]).toBeCloseTo(v, 1);
    };
    near(of(svg, 'least').map(at), [11.72, 11.7, 10.2]);
    near(of(svg, 'printed').map(at), [11.96, 11.94]);
    expect(volts(Number(/^M([\d.]+)/.exec(of(svg, 'needs')[0]!.attributes.d!)![1]))).toBeCloseTo(10.59, 1);
  });

  it('says the figures, and which of them is too low', () => {
    const words = texts(plot(SHOP)).map((e) => e.text);
    expect(words).toContain('needs 10.59 V warm');
    expect(words).toContain('11.72 V');
    expect(words).toContain('10.2 V, too low');
    expect(words.some((w) => w.startsWith('far <b>end</b>') && w.endsWith('…'))).toBe(true);
  });

  it.each([
    [1, 345],
    [3, 345],
    [24, 345],
    [24, 700],
  ])('of %d gates in %d px has no word on another, none outside, and none below 8 points', (count, px) => {
    const gates = Array.from({ length: count }, (_, i) => ({
      name: `gate-${i}`,
      least: 23 - i * 0.01,
      printed: 23.9,
    }));
    const svg = plot({ coil: 'K1', needs: 22.9999, gates }, px);
    const boxes = texts(svg).map((e) => {
      const size = number(e, 'font-size');
      expect(size * 0.75).toBeGreaterThanOrEqual(8);
      const width = columns(e.text) * size * 0.615;
      const anchor = e.attributes['text-anchor'];
      const x = number(e, 'x') - (anchor === 'end' ? width : anchor === 'middle' ? width / 2 : 0);
      return { x, y: number(e, 'y') - size * 0.78, width, height: size, text: e.text };
    });
    for (const [i, a] of boxes.entries()) {
      expect(a.x, a.text).toBeGreaterThanOrEqual(-0.1);
      expect(a.x + a.width, a.text).toBeLessThanOrEqual(px + 0.1);
      for (const b of boxes.slice(i + 1))
        expect(
          a.x + a.width <= b.x + 0.1 ||
            b.x + b.width <= a.x + 0.1 ||
            a.y + a.height <= b.y ||
            b.y + b.height <= a.y,
          `${a.text} / ${b.text}`,
        ).toBe(true);
    }
  });

  it('is none without gates, and stands where all figures are alike', () => {
    expect(coilVoltsSvg({ ...SHOP, gates: [] }, 345)).toBeUndefined();
    const alike = coilVoltsSvg(
      { coil: 'K1', needs: 12, gates: [{ name: 'a', least: 12, printed: 12 }] },
      345,
    )!;
    expect(alike).not.toMatch(/NaN|Infinity/);
  });
});
