/** Which contacts the report holds to answer for a coil, and what that coil is said to draw. */
import { describe, expect, it } from 'vitest';
import { contactFindings, pilotPlan, reportOf, severityOf } from '../contact-plans.ts';
import { wired as plain } from '../wired-plans.ts';

const DC = 'rated: 12 V DC, resistance: 120 ohm, suppressor: diode';
const low = pilotPlan({ low: true, contact: 'ratings: [5 A 30 V DC]', coil: DC });

/** Parts besides, and the core from K1 to the coil replaced. */
function wired(text: string, parts: readonly string[], ...runs: readonly string[]): string {
  const swapped = text.replace('  P1: {', `${parts.map((p) => `  ${p}\n`).join('')}  P1: {`);
  return swapped.replace('{link: [K1.NO, Q1.A1]}', runs.map((r) => `{link: [${r}]}`).join('\n  - '));
}

/** Rows of the report for contacts that feed a coil. */
const coilRows = (text: string) =>
  reportOf(text)
    .contacts.filter((c) => c.load !== 'M')
    .map((c) => [c.relay, c.pole, c.load, c.running, c.starting])
    .sort();

describe('current of a coil whose volts are not those of its circuit', () => {
  // A coil is an impedance: 24 VA at 240 V are 0.1 A there. At its own volts it draws most where those are the higher.
  it.each([
    [230, 240, 24, 36, 0.1, 0.15],
    [240, 220, 22, 33, 0.1091, 0.1636],
    [230, 230, 23, 46, 0.1, 0.2],
  ])('on %d V, made for %d V', (volts, rated, hold, start, holding, inrush) => {
    const coil = `rated: ${rated} V AC, power: ${hold} VA, inrush: ${start} VA`;
    expect(coilRows(pilotPlan({ volts, contact: 'ratings: [6 A 250 V AC]', coil }))).toEqual([
      ['K1', 1, 'Q1', holding, inrush],
    ]);
  });
});

describe('what lies between a contact and its coil', () => {
  it.each([
    ['X: {kind: diode}', 'A', 'K', 1],
    ['X: {kind: resistor, resistance: 10 ohm}', '1', '2', 1],
    ['X: {kind: fuse, rating: 1 A}', '1', '2', 1],
    // an indicator in line feeds no coil
    ['X: {kind: led}', 'A', 'K', 0],
  ])('%s', (part, a, k, rows) => {
    const found = coilRows(wired(low, [part], `K1.NO, X.${a}`, `X.${k}, Q1.A1`));
    expect(found).toEqual(rows === 0 ? [] : [['K1', 1, 'Q1', 0.1, null]]);
  });

  it('a contact of another circuit is not charged with the coil', () => {
    // S stands between the same pole and another coil; a walk from Q1 ends at the pole.
    const coil = 'rated: 230 V AC, power: 23 VA, inrush: 23 VA';
    const text = wired(
      pilotPlan({ contact: 'ratings: [6 A 250 V AC]', coil }),
      [
        'S: {kind: switch, contact: {ratings: [6 A 250 V AC]}}',
        `Q2: {kind: relay, coil: {rated: 230 V AC, power: 46 VA, inrush: 46 VA}, contact: {ratings: [6 A 250 V AC]}}`,
      ],
      'K1.NO, Q1.A1',
      'P1.L, S.COM',
      'S.NO, Q2.A1',
      'Q2.A2, P1.N',
    );
    expect(coilRows(text)).toEqual([
      ['K1', 1, 'Q1', 0.1, 0.1],
      ['S', 1, 'Q2', 0.2, 0.2],
    ]);
  });

  it('a coil on the second of two supplies that share their minus has the volts of the second', () => {
    // 12 V on 120 ohm are 0.1 A; on the 24 V of the first they would be 0.2 A.
    const text = plain({
      parts: 'g',
      more: [
        ...[24, 12].map(
          (volts, i) => `PS${i + 1}: {kind: supply, output: ${volts} V DC, limit: 2 A, class-2: true}`,
        ),
        'K1: {kind: relay, coil: {rated: 24 V DC, resistance: 480 ohm, suppressor: diode}, contact: {ratings: [5 A 30 V DC]}}',
        'Q1: {kind: relay, coil: {rated: 12 V DC, resistance: 120 ohm, suppressor: diode}, contact: {ratings: [25 A 250 V AC]}}',
        'P1: {kind: plug, volts: 120 V AC, pattern: fixed, breaker: 20 A}',
        'M: {kind: motor, volts: 120 V AC, amps: 5 A, power: 0.25 hp}',
      ],
      wires:
        'PS1.+ g.COM, g.NO K1.A1, K1.A2 PS1.-, PS2.+ K1.COM, K1.NO Q1.A1, Q1.A2 PS2.-, PS1.- PS2.-, P1.L Q1.COM, Q1.NO M.L, P1.N M.N, P1.PE M.PE',
      intent: ['M: {runs-on: [g]}'],
    });
    expect(coilRows(text).filter(([, , load]) => load === 'Q1')).toEqual([['K1', 1, 'Q1', 0.1, null]]);
  });

  it('a contact behind the coil, on the way to another one, is charged with that one alone', () => {
    const text = wired(
      low,
      ['K2', 'Q2'].map((n) => `${n}: {kind: relay, coil: {${DC}}, contact: {ratings: [5 A 30 V DC]}}`),
      'K1.NO, Q1.A1',
      'Q1.A1, K2.COM',
      'K2.NO, Q2.A1',
      'Q2.A2, PS1.-',
      'g.NO, K2.A1',
      'K2.A2, PS1.-',
    );
    expect(coilRows(text)).toEqual([
      ['K1', 1, 'Q1, Q2', 0.2, null],
      ['K2', 1, 'Q2', 0.1, null],
    ]);
  });

  it('a hand switch on low voltage is left to question 5', () => {
    const S = 'S: {kind: switch, contact: {ratings: [5 A 30 V DC]}}';
    expect(coilRows(wired(low, [S], 'K1.NO, S.COM', 'S.NO, Q1.A1'))).toEqual([['K1', 1, 'Q1', 0.1, null]]);
  });

  it('the same switch on mains is judged, a gate there is not', () => {
    const mains = pilotPlan({
      contact: 'ratings: [6 A 250 V AC]',
      coil: 'rated: 230 V AC, power: 23 VA, inrush: 23 VA',
    });
    const rows = (kind: string) =>
      coilRows(
        wired(
          mains,
          [`S: {kind: ${kind}, contact: {ratings: [6 A 250 V AC]}}`],
          'K1.NO, S.COM',
          'S.NO, Q1.A1',
        ),
      );
    for (const kind of ['switch', 'button', 'cutout'])
      expect(rows(kind)).toEqual([
        ['K1', 1, 'Q1', 0.1, 0.1],
        ['S', 1, 'Q1', 0.1, 0.1],
      ]);
    expect(rows('gate')).toEqual([['K1', 1, 'Q1', 0.1, 0.1]]);
  });

  it('a contact by which a relay holds itself in does not feed another', () => {
    const text = wired(low, [], 'K1.NO, Q1.A1', 'PS1.+, Q1.3', 'Q1.4, Q1.A1').replace(
      'poles: [{form: make, marks: [1, 2]}]',
      'poles: [{form: make, marks: [1, 2]}, {form: make, marks: [3, 4]}]',
    );
    expect(coilRows(text)).toEqual([['K1', 1, 'Q1', 0.1, null]]);
  });

  it('a throw on which nothing lands is no contact in the way', () => {
    // K2 in front of K1: the walk passes K1's common, where its bare break contact hangs too.
    const K2 = `K2: {kind: relay, coil: {${DC}}, contact: {ratings: [5 A 30 V DC]}}`;
    const text = wired(low, [K2], 'K1.NO, Q1.A1', 'PS1.+, K2.COM', 'g.NO, K2.A1', 'K2.A2, PS1.-').replace(
      '{link: [PS1.+, K1.COM]}',
      '{link: [K2.NO, K1.COM]}',
    );
    expect(coilRows(text)).toEqual([
      ['K1', 1, 'Q1', 0.1, null],
      ['K2', 1, 'Q1', 0.1, null],
    ]);
  });
});

describe('several coils on one contact', () => {
  const second = (coil: string) =>
    wired(
      low,
      [`Q2: {kind: relay, coil: {${coil}}, contact: {ratings: [5 A 30 V DC]}}`],
      'K1.NO, Q1.A1',
      'K1.NO, Q2.A1',
      'Q2.A2, PS1.-',
    );
  const row = (text: string) => reportOf(text).contacts.find((c) => c.relay === 'K1');

  it('their currents add up', () => {
    const both = row(second(DC.replace('120', '60')));
    expect(both).toMatchObject({ load: 'Q1, Q2', running: 0.3, verdict: 'yes' });
    expect(both?.basis).not.toContain('more not stated');
  });
  it('one whose copper alone is known leaves it undecided and is counted', () => {
    const coil = 'rated: 230 V AC, power: 23 VA, inrush: 23 VA';
    const text = wired(
      pilotPlan({ contact: 'ratings: [6 A 250 V AC]', coil }),
      ['Q2: {kind: relay, coil: {rated: 230 V AC, resistance: 900 ohm}, contact: {ratings: [6 A 250 V AC]}}'],
      'K1.NO, Q1.A1',
      'K1.NO, Q2.A1',
      'Q2.A2, P1.N',
    );
    expect(row(text)).toMatchObject({
      load: 'Q1, Q2',
      running: 0.1,
      verdict: 'cannot tell',
      basis: expect.stringContaining('1 more not stated'),
    });
  });
  it('the highest of their volts counts: 120 V to neutral and 240 V between the legs', () => {
    const volts = (rated: number) => {
      const coil = (at: number) => `rated: ${at} V AC, power: 12 VA, inrush: 12 VA`;
      const own = pilotPlan({
        practice: 'nec',
        volts: 240,
        contact: `ratings: [6 A ${rated} V AC]`,
        coil: coil(120),
      })
        .replace('kind: plug,', 'kind: plug, legs: 2,')
        .replace('P1.L, K1.COM', 'P1.L1, K1.COM')
        .replace('P1.L, Q1.1', 'P1.L1, Q1.1')
        .replace('kind: motor,', 'kind: motor, legs: 2,')
        .replace('Q1.2, M.L]', 'Q1.2, M.L1]')
        .replace('P1.N, M.N', 'P1.L2, M.L2');
      return wired(
        own,
        [`Q2: {kind: relay, coil: {${coil(240)}}, contact: {ratings: [6 A 250 V AC]}}`],
        'K1.NO, Q1.A1',
        'K1.NO, Q2.A1',
        'Q2.A2, P1.L2',
      );
    };
    expect(severityOf(volts(239), 'contact-voltage')).toBe('danger');
    expect(severityOf(volts(240), 'contact-voltage')).toBeUndefined();
  });
});

it.each([
  ['L1', 'L2'],
  ['L2', 'L3'],
  ['L3', 'L1'],
])('a coil between %s and %s of 400 V stands at 400 V', (from, to) => {
  const volts = (rated: number) =>
    pilotPlan({
      volts: 400,
      contact: `ratings: [6 A ${rated} V AC]`,
      coil: 'rated: 400 V AC, power: 40 VA, inrush: 40 VA',
    })
      .replace('kind: plug,', 'kind: plug, phases: 3,')
      .replace('kind: motor,', 'kind: motor, phases: 3,')
      .replace('P1.L, K1.COM', `P1.${from}, K1.COM`)
      .replace('Q1.A2, P1.N', `Q1.A2, P1.${to}`)
      .replace('P1.L, Q1.1', 'P1.L1, Q1.1')
      .replace('Q1.2, M.L]', 'Q1.2, M.L1]')
      .replace('P1.N, M.N]}', 'P1.L2, M.L2]}\n  - {link: [P1.L3, M.L3]}');
  expect(coilRows(volts(400)).filter(([relay]) => relay === 'K1')).toEqual([['K1', 1, 'Q1', 0.1, 0.1]]);
  expect(severityOf(volts(399), 'contact-voltage')).toBe('danger');
  expect(severityOf(volts(400.1), 'contact-voltage')).toBeUndefined();
});

it('each pole answers with its own rating', () => {
  const text = pilotPlan({ low: true, contact: 'ratings: [5 A 30 V DC]', coil: DC })
    .replace(
      'contact: {ratings: [5 A 30 V DC]}}\n  Q1',
      'contact: {ratings: [5 A 30 V DC]}, poles: [{form: make, marks: [1, 2]}, {form: make, marks: [3, 4], contact: {ratings: [50 mA 30 V DC]}}]}\n  Q1',
    )
    .replace('PS1.+, K1.COM', 'PS1.+, K1.3')
    .replace('K1.NO, Q1.A1', 'K1.4, Q1.A1');
  expect(coilRows(text)).toEqual([['K1', 2, 'Q1', 0.1, null]]);
  expect(severityOf(text, 'contact-running')).toBe('warning');
});

it('a coil on the wrong kind of current is left to question 4', () => {
  const text = pilotPlan({
    low: true,
    contact: 'ratings: [5 A 30 V DC]',
    coil: 'rated: 12 V AC, power: 2 VA, inrush: 4 VA',
  });
  expect(coilRows(text)).toEqual([]);
  expect(contactFindings(text)).toEqual([]);
  expect(reportOf(text).findings.some((f) => f.id === 'coil-kind')).toBe(true);
});
