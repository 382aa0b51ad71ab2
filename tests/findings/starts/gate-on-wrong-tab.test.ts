/** Which switch is blamed where a core sits on the wrong tab: the odd one first, one among many, and none where nothing mends. */
import { describe, expect, it } from 'vitest';
import { reportOf } from '../contact-plans.ts';
import { findings, loop } from '../threshold-plans.ts';
import { wired } from '../wired-plans.ts';

const wrong = (text: string) =>
  findings(text)
    .filter((f) => f.id === 'gate-on-wrong-tab')
    .map((f) => [f.parts[0], ...f.terminals.map((t) => t.slice(t.indexOf('.') + 1)), f.message]);
const named = (text: string) =>
  findings(text)
    .filter((f) => f.id === 'gate-on-wrong-tab')
    .flatMap((f) => f.parts);

const gate = (name: string, more = '') => `${name}: {kind: gate, ${more}contact: {ratings: [5 A 30 V DC]}}`;

/** Gates side by side, each with a core of its own to the coil; x, the last one, as told. */
function many(count: number, more: string, tab: string): string {
  const names = Array.from({ length: count }, (_, i) => `g${i}`);
  return loop({
    parts: [...names.map((n) => gate(n)), gate('x', more)],
    runs: [
      ...['g', ...names].flatMap((n) => [`{link: [PS1.+, ${n}.COM]}`, `{link: [${n}.NO, K1.A1]}`]),
      '{link: [K1.A2, PS1.-]}',
      '{link: [PS1.+, x.COM]}',
      `{link: [x.${tab}, K1.A1]}`,
    ],
    runsOn: ['g', ...names, 'x'].join(', '),
  });
}

describe('one among more gates than can all be tried', () => {
  // Common practice: a lever pressed by the open slide makes COM-NO, so a core on NC is the odd one.
  it.each([
    ['', 'NC'],
    ['pressed-when: shut, ', 'NO'],
  ])('the odd one is tried first: %s%s', (more, tab) => {
    expect(named(many(70, more, tab))).toEqual(['x']);
  });
  it('of the odd ones the one with cores on both tabs comes first', () => {
    // The others feed K2 while they are shut; of it and of K3 the intent says nothing.
    const names = Array.from({ length: 70 }, (_, i) => `g${i}`);
    const coil = 'coil: {rated: 12 V DC, resistance: 120 ohm, suppressor: diode}';
    const text = loop({
      parts: [
        ...names.map((n) => gate(n)),
        gate('x'),
        ...['K2', 'K3'].map((n) => `${n}: {kind: relay, ${coil}, contact: {ratings: [5 A 30 V DC]}}`),
      ],
      runs: [
        '{link: [PS1.+, g.COM]}',
        '{link: [g.NO, K1.A1]}',
        '{link: [K1.A2, PS1.-]}',
        '{link: [K2.A2, PS1.-]}',
        '{link: [K3.A2, PS1.-]}',
        ...[...names, 'x'].map((n) => `{link: [PS1.+, ${n}.COM]}`),
        ...names.map((n) => `{link: [${n}.NC, K2.A1]}`),
        '{link: [x.NO, K3.A1]}',
        '{link: [x.NC, K1.A1]}',
      ],
      runsOn: 'g, x',
    });
    expect(wrong(text).map((w) => w.slice(0, 3))).toEqual([['x', 'NC', 'NO']]);
  });
});

describe('what is moved', () => {
  it('says the tabs and the colour of the core', () => {
    const text = loop({
      runs: [
        '{cable: {gauge: 20 AWG, cores: 2, insulation: 300 V}, length: 1 m, cores: {red: [PS1.+, g.COM], white: [K1.A1, g.NC]}}',
        '{link: [K1.A2, PS1.-]}',
      ],
    });
    expect(wrong(text)).toEqual([['g', 'NC', 'NO', 'gate g: the white core sits on NC and belongs on NO']]);
  });
  it('all the cores of one tab together where one alone does not mend', () => {
    const text = loop({
      parts: [gate('h')],
      runs: [
        '{link: [PS1.+, g.COM]}',
        '{link: [PS1.+, h.COM]}',
        '{link: [h.NO, g.NC]}',
        '{link: [g.NC, K1.A1]}',
        '{link: [K1.A2, PS1.-]}',
      ],
      runsOn: 'g, h',
    });
    const [found, ...more] = wrong(text);
    expect(found?.[0]).toBe('g');
    expect(found?.[3]).toContain('cores sit on NC and belong on NO');
    expect(more).toEqual([]);
  });
  it('a tab that the switch does not have is not proposed', () => {
    const runs = ['{link: [PS1.+, g.COM]}', '{link: [K1.A1, g.NC]}', '{link: [K1.A2, PS1.-]}'];
    const text = loop({ runs });
    expect(named(text)).toEqual(['g']);
    expect(named(text.replace('g: {kind: gate,', 'g: {kind: gate, terminals: [COM, NC],'))).toEqual([]);
  });
  it('a lamp across the tab is no core on it', () => {
    const text = loop({
      parts: ['X: {kind: lamp, rated: 12 V DC 1 W}'],
      more: ['{link: [X.1, g.NC]}', '{link: [X.2, PS1.-]}'],
    });
    expect(named(text)).toEqual([]);
  });
});

describe('none is blamed', () => {
  it('where all is as meant', () => {
    expect(named(loop({}))).toEqual([]);
  });
  it('where the intent forgot a gate that starts the load', () => {
    const text = loop({
      parts: [gate('h')],
      more: ['{link: [PS1.+, h.COM]}', '{link: [h.NO, K1.A1]}'],
    });
    expect(named(text)).toEqual([]);
  });
  it('where no one move mends', () => {
    expect(named(loop({ runs: ['{link: [PS1.+, g.COM]}', '{link: [K1.A2, PS1.-]}'] }))).toEqual([]);
  });
});

describe('a gate that stands as meant beside those that do not', () => {
  it('is not named, even where its core would do no harm on the other tab', () => {
    const text = loop({
      parts: [gate('h'), gate('i')],
      runs: [
        ...['g', 'h', 'i'].map((n) => `{link: [PS1.+, ${n}.COM]}`),
        '{link: [g.NC, K1.A1]}',
        '{link: [h.NC, K1.A1]}',
        '{link: [i.NO, K1.A1]}',
        '{link: [K1.A2, PS1.-]}',
      ],
      runsOn: 'g, h, i',
    });
    expect(named(text).sort()).toEqual(['g', 'h']);
  });
});

describe('a switch that is no gate', () => {
  // Closed at rest and open when tripped is what a cut-out in the loop is for: it belongs on NC.
  it.each([
    ['cutout', 'blocked-by', 'NO', 'NC'],
    ['button', 'stopped-by', 'NO', 'NC'],
    ['switch', 'blocked-by', 'NC', 'NO'],
  ])('a %s that blocks, on %s', (kind, word, from, to) => {
    const plan = (tab: string) =>
      loop({
        parts: [`X: {kind: ${kind}, contact: {ratings: [5 A 30 V DC], least: 1 mA 5 V DC}}`],
        runs: [
          '{link: [PS1.+, X.COM]}',
          `{link: [X.${tab}, g.COM]}`,
          '{link: [K1.A1, g.NO]}',
          '{link: [K1.A2, PS1.-]}',
        ],
      }).replace('{runs-on: [g]}', `{runs-on: [g], ${word}: [X]}`);
    const text = JSON.stringify(findings(plan(from)));
    expect(text).toContain(`X.${to}`);
    expect(findings(plan(to)).filter((f) => f.question < 4 && f.severity === 'fault')).toEqual([]);
  });
});

/** Gates g and h side by side, each on a tab, with a core of its own to the coil. */
const pair = (g: string, h: string) =>
  loop({
    parts: ['h: {kind: gate, contact: {ratings: [5 A 30 V DC]}}'],
    runs: [
      '{link: [PS1.+, g.COM]}',
      '{link: [g.COM, h.COM]}',
      `{link: [K1.A1, g.${g}]}`,
      `{link: [K1.A1, h.${h}]}`,
      '{link: [K1.A2, PS1.-]}',
    ],
    runsOn: 'g, h',
  });

describe('whether one change is enough', () => {
  const blamed = (text: string) => findings(text).filter((f) => f.id === 'gate-on-wrong-tab');

  // Common practice: the coil is fed while a gate is open, so both cores belong on the tab that is made then.
  it('two gates on the wrong tab are one finding that names both', () => {
    const found = blamed(pair('NC', 'NC'));
    expect(found).toMatchObject([
      {
        parts: ['g', 'h'],
        terminals: ['g.NC', 'g.NO', 'h.NC', 'h.NO'],
        message: 'gates g and h: cores sit on NC and belong on NO',
        why: 'With these changes every load does what is meant in all states; NC is joined to COM while such a gate is shut.',
        cause: { what: 'tab', terminals: ['g.NC', 'g.NO', 'h.NC', 'h.NO'] },
      },
    ]);
  });

  it('one gate on the wrong tab: the one change is enough', () => {
    const found = blamed(pair('NO', 'NC'));
    expect(found.map((f) => f.parts[0])).toEqual(['h']);
    expect(found[0]?.why).toContain('that one change');
  });
});

describe('a gate that has its core on the odd tab on purpose beside those that have it there by mistake', () => {
  it('is not named', () => {
    // With h shut a relay of its own pulls in, of which the intent says nothing; its core would do no harm on the other tab.
    const text = wired({
      parts: 'PS1 K1 K2 g h i j',
      wires: [
        ...['g', 'h', 'i', 'j'].map((n) => `PS1.+ ${n}.COM`),
        ...['g.NC K1.A1', 'i.NC K1.A1', 'j.NO K1.A1', 'h.NC K2.A1', 'K1.A2 PS1.-', 'K2.A2 PS1.-'],
      ].join(', '),
      intent: ['K1: {runs-on: [g, i, j]}'],
    });
    expect(named(text).sort()).toEqual(['g', 'i']);
  });
});

describe('a gate that has nothing but a lamp on the odd tab', () => {
  it('is not named beside a dozen that have their core there by mistake', () => {
    // The lamp shows that h is shut, which says nothing of where the core of the coil belongs.
    const wrongly = ['g', ...Array.from({ length: 11 }, (_, n) => `g${n}`)];
    const text = loop({
      parts: [...wrongly.slice(1).map((n) => gate(n)), gate('h'), 'X: {kind: lamp, rated: 12 V DC 1 W}'],
      runs: [
        ...[...wrongly, 'h'].map((n) => `{link: [PS1.+, ${n}.COM]}`),
        ...wrongly.map((n) => `{link: [${n}.NC, K1.A1]}`),
        ...['{link: [h.NO, K1.A1]}', '{link: [h.NC, X.1]}', '{link: [X.2, PS1.-]}', '{link: [K1.A2, PS1.-]}'],
      ],
      runsOn: [...wrongly, 'h'].join(', '),
    });
    expect(named(text).sort()).toEqual(wrongly.sort());
  });
});

describe('question 3, whether it stays off', () => {
  it('is answered no where a lamp misleads by that tab alone, whatever else is found', () => {
    // K1 is dead, so nothing runs that should not; but the lamp for "a gate is open" is lit while it is shut.
    const report = reportOf(
      wired({
        parts: 'PS1 K1 K2 g',
        more: ['X: {kind: lamp, rated: 12 V DC 1 W}'],
        wires:
          'PS1.+ g.COM, g.NO K2.A1, K2.A2 PS1.-, g.NC K2.COM, K2.NO K1.A1, K1.A2 PS1.-, K2.COM X.1, X.2 PS1.-',
        intent: ['K1: {runs-on: [g]}', 'X: {lit-when: any-open}'],
      }),
    );
    const [moved] = report.findings.filter((f) => f.id === 'gate-on-wrong-tab');
    expect(moved?.also.map((a) => a.id)).toContain('lamp-misleads');
    expect(report.questions[2]).toMatchObject({ answer: 'no', figure: moved?.message });
  });
});

describe('a shop in which all is as meant', () => {
  it('has no zone on the wrong tab, though the relay of one has a core on its break contact on purpose', () => {
    const each = [1, 2, 3].flatMap((n) => [
      ...['g', 'h'].flatMap((g) => [`PS1.+ ${g}${n}.COM`, `${g}${n}.NO K${n}.A1`]),
      ...[`K${n}.A2 PS1.-`, `PS1.+ K${n}.COM`, `K${n}.NO K5.A1`],
    ]);
    // K4 is in while the third zone is out; the intent says nothing of it.
    const text = wired({
      parts: 'PS1 g1 g2 g3 h1 h2 h3 K1 K2 K3 K4 K5',
      wires: [...each, 'K5.A2 PS1.-', 'K3.NC K4.A1', 'K4.A2 PS1.-'].join(', '),
      intent: ['K5: {runs-on: [g1, h1, g2, h2, g3, h3]}'],
    });
    const wiring = findings(text).filter((f) => f.question <= 3 && f.severity !== 'notice');
    expect(wiring.map((f) => f.id)).toEqual([]);
  });
});
