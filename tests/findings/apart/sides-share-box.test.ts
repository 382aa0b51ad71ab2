import { describe, expect, it } from 'vitest';
import { shop } from '../mains-plans.ts';
import { findings } from '../threshold-plans.ts';

describe('sides-share-box', () => {
  const box = (holds: string) => shop({ box: `holds: [${holds}], volume: 400 in3` });

  // NEC 725.136(A): what has to be parted is Class 2 wiring and mains; a box with one of them holds nothing to part.
  it.each([
    ['K1', true],
    ['g', false],
    ['PS1', false],
    ['M', false],
    ['g, M', true],
  ])('a box without divider that holds %s', (holds, expected) => {
    expect(findings(box(holds)).some((f) => f.id === 'sides-share-box')).toBe(expected);
  });
});
