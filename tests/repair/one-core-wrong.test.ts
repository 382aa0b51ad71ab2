/**
 * One core wrong in shops of several kinds, as a person gets it wrong: the first repair undoes it. What the mistake is, is known because
 * it was made here; what is right, because the shop passes without it.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Edit } from '../../src/edit/edits.ts';
import { planAfter } from '../../src/edit/expected-plan.ts';
import { judgeAsTaken } from '../../src/findings/judge.ts';
import { check } from '../../src/repair/check.ts';
import { mend } from '../../src/repair/mend.ts';
import { Study } from '../../src/study/study.ts';
import { planOf } from '../helpers/plan-of.ts';
import { sampled, WHOLE } from '../helpers/share.ts';

const rig = (name: string) => readFileSync(new URL(`rigs/${name}.yaml`, import.meta.url), 'utf8');

/** Text with one thing in it replaced, which stands there once. */
function instead(text: string, from: string, to: string): string {
  expect(text.split(from)).toHaveLength(2);
  return text.replace(from, to);
}

/** Without one core; a run with no other is left out. */
function without(text: string, core: string): string {
  const lines = text.split('\n').flatMap((line) => {
    if (!line.includes(core)) return [line];
    const left = line
      .replace(new RegExp(`(, )?[\\w-]+: \\[${core.replaceAll('.', '\\.')}\\]`), '')
      .replace('{, ', '{');
    return left.includes('cores: {}') ? [] : [left];
  });
  expect(lines.join('\n')).not.toContain(core);
  return lines.join('\n');
}

const told = (text: string) => mend(Study.of(planOf(text)), { thorough: true, quick: true }).repairs;
const short = (edit: Edit | undefined) =>
  edit?.do === 'move'
    ? `to ${edit.to}`
    : edit?.do === 'add'
      ? [edit.from, edit.to].sort().join(' - ')
      : edit?.do;
const first = (text: string) => told(text)[0]?.edits.map(short).join(', ');

it.each(
  sampled(
    [
      'van',
      'contactor-24-vac',
      'two-legs',
      'two-collectors',
      'sealed-lamps',
      'board-contactor',
      'four-wires',
      'led-with-resistor',
    ],
    6,
  ),
)('%s passes as it is', (name) => {
  const report = judgeAsTaken(Study.of(planOf(rig(name))));
  expect(report.findings.filter((f) => !['caution', 'notice'].includes(f.severity))).toEqual([]);
});

describe('a core left out comes back where it was', () => {
  it.each(
    sampled(
      [
        // A transformer that lost one line is not thereby mended that the other is taken off it.
        ['contactor-24-vac', 'KM.3, T.N', ['KM.3 - T.N']],
        ['contactor-24-vac', 'FP.2, T.L', ['FP.2 - T.L']],
        // The other pole of a battery to the body, and not through the wire of the coil.
        ['van', 'BAT.-, chassis', ['BAT.- - chassis']],
        // A core of the mains where only cables of the loop have one to spare.
        ['two-collectors', 'K2.NO, dustfan.L', ['K2.NO - dustfan.L']],
        ['sealed-lamps', 'STOP.NC, START.COM', ['START.COM - STOP.NC', 'CR.11 - STOP.NC']],
        ['sealed-lamps', 'GR.14, open.1', ['GR.14 - open.1']],
        // Behind the isolator, as all else, and not ahead of it or past it.
        ['two-legs', 'QS.2.NO, KM.3', ['KM.3 - QS.2.NO', 'F2.1 - QS.2.NO']],
        ['two-legs', 'KM.1, F1.1', ['F1.1 - KM.1', 'F1.1 - QS.1.NO']],
        // Behind the fuse of the control circuit, and not beside it or from the other leg.
        ['four-wires', 'FC.2, K1.COM', ['FC.2 - K1.COM']],
        ['four-wires', 'FC.2, PS.L', ['FC.2 - PS.L']],
        // A trunk at its contact, and not at the terminal of a small transformer.
        ['contactor-24-vac', 'P1.N, KM.3', ['KM.3 - P1.N']],
        // Through the resistor of the indicator.
        ['led-with-resistor', 'RL.2, led.A', ['RL.2 - led.A']],
      ],
      4,
    ),
  )('%s without [%s]', (name, core, expected) => {
    const text = without(rig(name), core);
    expect(expected).toContain(first(text));
    // None of those told leads a line past the isolator, or to the loop.
    const all = told(text).flatMap((r) => r.edits.map(short));
    expect(all.filter((e) => /QS\.[12]\.COM|OL\.(COM|NO|NC|97|98)/.test(e ?? ''))).toEqual([]);
  });
});

describe('an end on the terminal beside goes back', () => {
  it.each(
    sampled(
      [
        ['van', '[K1.85, chassis]', '[K1.86, chassis]', 'K1.A2'],
        ['van', '[t.NO, K1.86]', '[t.NO, K1.85]', 'K1.A1'],
        ['van', '[t.NO, K1.86]', '[t.NO, K1.30]', 'K1.A1'],
        ['two-collectors', '[K2.NO, dustfan.L]', '[K2.A1, dustfan.L]', 'K2.NO'],
        // The neutral of a coil on the other leg, where no other core lies on the neutral pin.
        ['four-wires', '[P1.N, KM.A2]', '[P1.L2, KM.A2]', 'P1.N'],
        ['four-wires', '[FC.2, PS.L]', '[KM.2, PS.L]', 'FC.2'],
        ['four-wires', '[OL.96, KM.A1]', '[OL.96, KM.3]', 'KM.A1'],
      ],
      4,
    ),
  )('%s with %s on %s', (name, right, wrong, to) => {
    expect(first(instead(rig(name), right, wrong))).toBe(`to ${to}`);
  });
});

describe('where every load runs as it is meant and the plan fails by its figures, the end that lies wrong is told', () => {
  it.each(
    sampled(
      [
        // The fan's start through the gate switches, the coil or the diode.
        ['van', '[K1.87, fan.+]', '[K1.86, fan.+]', 'to K1.NO'],
        ['van', '[t.NO, K1.86]', '[t.NO, K1.87]', 'to K1.A1'],
        ['van', '[D1.K, K1.86]', '[D1.K, K1.30]', 'to K1.A1'],
        ['van', '[D1.K, K1.86]', '[D1.K, K1.85]', 'to K1.A1'],
        // Past a fuse.
        ['van', '[BAT.+, FM.1]', '[BAT.+, FM.2]', 'to FM.1'],
        ['van', '[BAT.+, FC.1]', '[BAT.+, FC.2]', 'to FC.1'],
        // The motor on the contact of the board, in place of the contactor's.
        ['board-contactor', '[P1.L, KM.1]', '[P1.L, KM.A1]', 'to KM.1'],
        // A lamp on the coil's other end, through which the contactor holds itself in.
        ['contactor-24-vac', '[on.2, KM.A2]', '[on.2, KM.A1]', 'to KM.A2'],
      ],
      4,
    ),
  )('%s with %s as %s', (name, right, wrong, edits) => {
    const text = instead(rig(name), right, wrong);
    expect(first(text)).toBe(edits);
    const report = check(Study.of(planOf(text)));
    const grave = report.findings.filter((f) => ['danger', 'warning', 'fault'].includes(f.severity));
    expect(grave.length).toBeGreaterThan(0);
    // One thing to do for all of it, and no size of the wrong part.
    expect(new Set(grave.map((f) => f.fix)).size).toBe(1);
    expect(grave[0]!.fix).toMatch(/^Move the /);
  });

  it.runIf(WHOLE)('a plan that is right and short of something gets no core moved', () => {
    const weak = instead(
      rig('van'),
      'ratings: [40 A 14 V DC], make: 200 A',
      'ratings: [10 A 14 V DC], make: 50 A',
    );
    expect(mend(Study.of(planOf(weak)))).toMatchObject({ needed: false, repairs: [] });
  });
});

describe.runIf(WHOLE)('a jumper across a fuse', () => {
  it.each([
    ['contactor-24-vac', 'F2', 5],
    ['contactor-24-vac', 'FP', 7],
  ])('%s, %s: is told, and taken out', (name, fuse, question) => {
    const text = rig(name).replace('intent:', `  - {link: [${fuse}.1, ${fuse}.2]}\nintent:`);
    const report = check(Study.of(planOf(text)));
    const [told] = report.findings.filter((f) => f.id === 'fuse-bypassed');
    expect(told).toMatchObject({ severity: 'warning', question, parts: [fuse] });
    expect(told!.fix).toMatch(new RegExp(`^Take out the link between ${fuse}\\.1 and ${fuse}\\.2`));
  });
});

it('what no wiring mends bars no repair of the wiring', () => {
  const apart = instead(rig('led-with-resistor'), 'divider: true', 'divider: false');
  const { findings } = check(Study.of(planOf(without(apart, 'RL.2, led.A'))));
  expect(findings.map((f) => f.id)).toContain('sides-share-box');
  expect(findings.find((f) => f.id === 'lamp-misleads')?.fix).toMatch(/^Join .*RL\.2/);
});

it.runIf(WHOLE)('a new core is in no colour of the earth, and that of the earth in no other', () => {
  const flex = rig('contactor-24-vac');
  const live = without(flex, 'KM.2, fan.L');
  const after = (text: string) => planAfter(planOf(text), told(text)[0]!.edits)!;
  const added = (text: string) =>
    after(text)
      .runs.at(-1)!
      .cores.map((c) => c.colour);
  expect(added(live).join()).not.toMatch(/green|bare/);
  expect(added(without(flex, 'P1.PE, fan.PE')).join()).toBe('green-yellow');
});

it('an earth core on the loop makes none of the loop the earth', () => {
  const wrong = instead(rig('four-wires'), '[P1.PE, fan.PE]', '[P1.PE, bin.NC]');
  const { findings } = check(Study.of(planOf(wrong)));
  expect(findings.map((f) => f.id)).toContain('earth-broken');
  expect(findings.map((f) => f.id)).not.toContain('colour-of-earth');
});

it.runIf(WHOLE)('a figure that shows only once the circuit lives bars no repair, and is told with it', () => {
  const small = instead(rig('four-wires'), 'FC: {kind: fuse, rating: 2 A', 'FC: {kind: fuse, rating: 20 mA');
  const [repair] = told(instead(small, '[KM.A2, PS.N]', '[KM.A2, PS.L]'));
  expect(repair?.edits.map(short)).toEqual(['to PS.N']);
  expect(repair?.uncovers.join()).toContain('fuse FC of 20 mA');
});

it('a terminal is named by the marks that the plan uses for its part', () => {
  const words = (text: string) => told(text)[0]!.words.join(' ');
  expect(words(instead(rig('van'), '[K1.85, chassis]', '[K1.86, chassis]'))).toMatch(
    /from K1\.86 to K1\.85\.$/,
  );
  expect(words(instead(rig('van'), '[K1.87, fan.+]', '[K1.86, fan.+]'))).toMatch(/from K1\.86 to K1\.87\.$/);
  expect(words(without(rig('four-wires'), 'FC.2, K1.COM'))).toContain('Join K1.COM to FC.2');
});

it.runIf(WHOLE)(
  'brown and blue changed over at two poles of one contactor change places again, and nothing else moves',
  () => {
    const text = rig('sealed-lamps');
    const wrong = instead(instead(text, '[KM.2, fan.L]', '[KM.4, fan.L]'), '[KM.4, fan.N]', '[KM.2, fan.N]');
    expect(first(wrong)).toBe('swap');
  },
);

it.runIf(WHOLE)(
  'a holding contact that is left out goes to a splice of the stop, and not over the spare tab of the button',
  () => {
    const text = rig('sealed-lamps');
    const all = told(without(text, 'START.COM, CR.11')).flatMap((r) => r.edits.map(short));
    expect(all.length).toBeGreaterThan(0);
    expect(all[0]).toMatch(/START\.COM|STOP\.NC/);
    expect(all.join()).not.toContain('START.NC');
  },
);

describe('the numbers of an overload relay and the tabs of a switch are one contact', () => {
  const text = rig('contactor-24-vac');
  const verdict = (t: string) =>
    judgeAsTaken(Study.of(planOf(t))).findings.flatMap((f) =>
      ['danger', 'warning', 'fault'].includes(f.severity) ? [f.id] : [],
    );
  it('95 with NC is its break contact', () => {
    expect(verdict(instead(text, '[OL.96, STOP.COM]', '[OL.NC, STOP.COM]'))).toEqual([]);
  });
  it('mains on NC beside the loop on 96 meets it', () => {
    const both = `${text.trimEnd()}\n`.replace(
      'intent:',
      '  - {cable: one, length: 30 cm, cores: {brown: [FP.2, OL.NC]}}\nintent:',
    );
    expect(verdict(both)).toContain('mains-meets-low-voltage');
  });
});
