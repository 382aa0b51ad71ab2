/**
 * Question 1 of loop, boxes, cables and earth, in pairs of plans one core, one field or one step apart: the one has the finding,
 * the other has not.
 */
import { describe, expect, it } from 'vitest';
import {
  base,
  lacks,
  legs,
  link,
  PRACTICES,
  pair,
  phases,
  put,
  severityOf,
  withParts,
  withRuns,
} from '../apart-plans.ts';

const OUTPUT = 'output: 12 V DC, limit: 1 A, regulation: regulated';
const AC_LOOP = [
  ['rated: 12 V DC, resistance: 120 ohm, suppressor: diode', 'rated: 24 V AC, power: 6 VA'],
  ['PS1.+', 'PS1.~1'],
  ['PS1.-', 'PS1.~2'],
] as const;
const SWITCH = '{kind: switch, contact: {ratings: [5 A 250 V AC]}}';
const LAMP = 'H1: {kind: lamp, rated: 120 V AC 3 W}';
const COIL = 'K2: {kind: relay, contact: {ratings: [5 A 250 V AC]}, coil: {rated: 120 V AC, power: 3 VA}}';

it.each(PRACTICES)('%s: the plan that the pairs start from has no finding of question 1', (practice) => {
  for (const plan of [base(practice), legs(practice), phases(practice)])
    for (const id of ['sides-share-box', 'earth-broken', 'line-not-switched', 'phase-order', 'mains-shorted'])
      lacks(plan, id);
});

describe('sides-share-box', () => {
  const open = (practice: string, volts: number) =>
    put(base(practice), ['divider: true', 'divider: false'], ['insulation: 150 V', `insulation: ${volts} V`]);

  it.each(PRACTICES)('%s: a divider', (practice) => {
    pair(
      'sides-share-box',
      'danger',
      open(practice, 119),
      put(open(practice, 119), ['divider: false', 'divider: true']),
    );
  });

  it('iec: or loop cable insulated for the 120 V of the mains', () => {
    pair('sides-share-box', 'danger', open('iec', 119), open('iec', 120));
    const unsaid = put(open('iec', 120), [', insulation: 120 V', '']);
    expect(severityOf(unsaid, 'sides-share-box')).toBe('doubt');
  });

  it('nec: insulation alone does not serve (725.136)', () => {
    expect(severityOf(open('nec', 600), 'sides-share-box')).toBe('danger');
  });
});

describe('insulation-too-low', () => {
  const cord = (practice: string, volts: number) =>
    put(
      base(practice),
      ['insulation: 750 V', 'insulation: 150 V'],
      ['volts: 120 V AC}\n  X1', `volts: ${volts} V AC}\n  X1`],
    );

  it.each(PRACTICES)('%s: 150 V of insulation at 151 V and at 150 V', (practice) => {
    pair('insulation-too-low', 'danger', cord(practice, 151), cord(practice, 150));
    const unsaid = put(cord(practice, 150), ['insulation: 150 V, flexible', 'flexible']);
    expect(severityOf(unsaid, 'insulation-too-low')).toBe('doubt');
  });

  it.each(PRACTICES)('%s: the loop, 12.5 V and 12.6 V of insulation at 12 V and 5 % over', (practice) => {
    const bell = (volts: number) => put(base(practice), ['insulation: 150 V', `insulation: ${volts} V`]);
    pair('insulation-too-low', 'danger', bell(12.5), bell(12.6));
  });
});

describe('supply-over-limits', () => {
  const source = (practice: string, output: string) => put(base(practice), [OUTPUT, `${output}, limit: 1 A`]);
  const ac = (practice: string, volts: number) =>
    put(source(practice, `output: 24 V AC, regulation: transformer, no-load: ${volts} V`), ...AC_LOOP);
  const dc = (practice: string, volts: number) =>
    source(practice, `output: 48 V DC, regulation: unregulated, no-load: ${volts} V`);
  const battery = (practice: string, volts: number) =>
    put(base(practice), [
      `kind: supply, ${OUTPUT}, class-2: true`,
      `kind: battery, output: 48 V DC, highest: ${volts} V`,
    ]);

  it.each(PRACTICES)('%s: 30 V AC and 60 V DC with no load on the supply', (practice) => {
    for (const [plan, limit] of [
      [ac, 30],
      [dc, 60],
      [battery, 60],
    ] as const)
      pair('supply-over-limits', 'danger', plan(practice, limit + 0.1), plan(practice, limit));
  });

  // Where the plan does not say: a transformer of 26 to 29 VA a fifth more, a battery a tenth more.
  it.each(PRACTICES)('%s: the same where the volts with no load are not stated', (practice) => {
    const rated = (volts: number) =>
      put(source(practice, `output: ${volts} V AC, regulation: transformer`), ...AC_LOOP);
    pair('supply-over-limits', 'danger', rated(26), rated(25));
    const of = (volts: number) =>
      put(battery(practice, 1), ['output: 48 V DC, highest: 1 V', `output: ${volts} V DC`]);
    pair('supply-over-limits', 'danger', of(55), of(54));
  });
});

describe('earth-broken', () => {
  it.each(PRACTICES)('%s: the outlet, the metal box, and a fuse in the earth', (practice) => {
    const plan = base(practice);
    pair('earth-broken', 'danger', put(plan, [', green: [P1.PE, X1.PE]', '']), plan);
    const boxless = put(plan, [', green: [X1.PE, B1.PE]', '']);
    pair('earth-broken', 'danger', boxless, put(boxless, ['metal: true', 'metal: false']));
    const through = (part: string, a: string, b: string) =>
      withParts(put(plan, ['[X1.PE, B1.PE]', `[X1.PE, ${a}], grey: [${b}, B1.PE]`]), part);
    pair(
      'earth-broken',
      'danger',
      through('F1: {kind: fuse, rating: 5 A}', 'F1.1', 'F1.2'),
      through('J1: {kind: joint}', 'J1', 'J1'),
    );
  });
});

describe('neutral-earthed and earth-as-return', () => {
  it.each(PRACTICES)('%s: neutral joined to earth behind the plug, also by a switch', (practice) => {
    const plan = base(practice);
    pair(
      'neutral-earthed',
      'danger',
      withRuns(plan, link('X1.N', 'X1.PE')),
      withRuns(plan, link('B1.PE', 'X1.PE')),
    );
    const by = (end: string) =>
      withRuns(withParts(plan, `S1: ${SWITCH}`), link('X1.N', 'S1.COM'), link('S1.NO', end));
    pair('neutral-earthed', 'danger', by('X1.PE'), by('P1.N'));
  });

  it.each(PRACTICES)('%s: a lamp or a coil between line and earth, or line and neutral', (practice) => {
    const lamp = (end: string) =>
      withRuns(withParts(base(practice), LAMP), link('X1.L', 'H1.1'), link('H1.2', end));
    const coil = (end: string) =>
      withRuns(withParts(base(practice), COIL), link('P1.L', 'K2.A1'), link('K2.A2', end));
    pair('earth-as-return', 'danger', lamp('X1.PE'), lamp('X1.N'));
    pair('earth-as-return', 'danger', coil('P1.PE'), coil('P1.N'));
  });
});

describe('low-voltage-earthed', () => {
  it.each(PRACTICES)(
    '%s: not, with the gate in the other conductor, with the gate on the earthed side',
    (practice) => {
      const earthed = (pole: string) => withRuns(base(practice), link(`PS1.${pole}`, 'B1.PE'));
      pair('low-voltage-earthed', 'notice', earthed('-'), base(practice));
      expect(severityOf(earthed('+'), 'low-voltage-earthed')).toBe('warning');
    },
  );
});
