/** A relay board whose input calls it by plus (`input: high`) is mended as one that is called by minus: by the core that is wrong. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { mend } from '../../src/repair/mend.ts';
import { Study } from '../../src/study/study.ts';
import { planOf } from '../helpers/plan-of.ts';

const shop = readFileSync(new URL('shops/juniper-dock.yaml', import.meta.url), 'utf8');

function put(text: string, from: string, to: string): string {
  expect(text.split(from).length - 1, from).toBe(1);
  return text.replace(from, to);
}

const low = shop;
const high = put(put(shop, 'input: low', 'input: high'), '[mod.GND, rasp.COM]', '[mod.VCC, rasp.COM]');

const repairsOf = (text: string) => mend(Study.of(planOf(text)));

describe.each([
  ['low', low, 'mod.GND', 'mod.VCC'],
  ['high', high, 'mod.VCC', 'mod.GND'],
])('a board with input: %s', (_, right, common, other) => {
  it('wired right needs nothing', () => {
    expect(repairsOf(right).needed).toBe(false);
  });

  it('with the gates on its other pole: their core goes back', () => {
    const { repairs } = repairsOf(put(right, `[${common}, rasp.COM]`, `[${other}, rasp.COM]`));
    // That the board is called by the other pole may be told first: one word in place of a core.
    const first = repairs.slice(0, 2).map((r) => r.edits);
    expect(first).toContainEqual([{ do: 'move', run: 1, core: 1, end: 'a', to: common }]);
  });

  it('with the gates off its input: their core goes back', () => {
    const { repairs } = repairsOf(put(right, '[mod.IN, rasp.NO]', `[${other}, rasp.NO]`));
    expect(repairs[0]!.edits).toEqual([{ do: 'move', run: 1, core: 0, end: 'a', to: 'mod.IN' }]);
  });
});
