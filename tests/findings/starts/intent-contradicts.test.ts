/** An intent by which a load never has to run: a proof of nothing is no yes. By the meaning of the plan format, no outside source. */
import { describe, expect, it } from 'vitest';
import { judgeAsTaken } from '../../../src/findings/judge.ts';
import { mend } from '../../../src/repair/mend.ts';
import { Study } from '../../../src/study/study.ts';
import { planOf } from '../../helpers/plan-of.ts';

/** A relay that nothing feeds, since its minus is missing, or with it. */
const shop = (intent: string, minus: boolean): string =>
  [
    'format: 1',
    'practice: nec',
    'parts:',
    '  PS1: {kind: supply, output: 12 V DC, limit: 1 A, regulation: regulated, class-2: true}',
    '  g: {kind: gate, pressed-when: open}',
    '  STOP: {kind: button}',
    '  MODE: {kind: selector, positions: [auto, off, hand], rest: auto}',
    '  K1: {kind: relay, coil: {rated: 12 V DC, resistance: 120 ohm}}',
    'runs:',
    '  - {link: [PS1.+, STOP.COM]}',
    '  - {link: [STOP.NC, MODE.COM]}',
    '  - {link: [MODE.auto, g.COM]}',
    '  - {link: [g.NO, K1.A1]}',
    '  - {link: [MODE.hand, K1.A1]}',
    ...(minus ? ['  - {link: [K1.A2, PS1.-]}'] : []),
    'intent:',
    `  K1: {${intent}}`,
    '',
  ].join('\n');

const idsOf = (text: string) =>
  judgeAsTaken(Study.of(planOf(text))).findings.flatMap((f) =>
    ['fault', 'doubt'].includes(f.severity) && f.question === 2 ? [f.id] : [],
  );

describe.each([
  ['a button among what starts and what blocks', 'runs-on: [g, STOP], blocked-by: [STOP, MODE.off]'],
  [
    'one that holds the load in and blocks it',
    'runs-on: [g], blocked-by: [STOP, MODE.off], stays-on-after: [STOP], stopped-by: [MODE.off]',
  ],
  ['two positions of a selector together', 'runs-on: [[MODE.hand, MODE.auto]], blocked-by: [STOP]'],
  ['every position of a selector blocks', 'runs-on: [g], blocked-by: [STOP, MODE.auto, MODE.off, MODE.hand]'],
  [
    'a position that starts together with a gate, and blocks',
    'runs-on: [[g, MODE.off]], blocked-by: [STOP, MODE.off]',
  ],
])('%s', (_, intent) => {
  it.each([true, false])('is asked about, whether the coil is fed (%s) or not', (minus) => {
    expect(idsOf(shop(intent, minus))).toContain('intent-contradicts');
  });
});

it('an intent that can be met is not asked about', () => {
  const right = 'runs-on: [[g, MODE.auto], MODE.hand], blocked-by: [STOP, MODE.off]';
  expect(idsOf(shop(right, true))).toEqual([]);
  expect(idsOf(shop(right, false))).toEqual(['loop-dead']);
});

it('no repair says of a stop that it holds the load in', () => {
  const text = shop('runs-on: [[g, MODE.auto], MODE.hand], blocked-by: [STOP, MODE.off]', true).replace(
    '[STOP.NC, MODE.COM]',
    '[STOP.NO, MODE.COM]',
  );
  const { repairs } = mend(Study.of(planOf(text)));
  expect(repairs.length).toBeGreaterThan(0);
  expect(JSON.stringify(repairs)).not.toContain('stays-on-after');
});
