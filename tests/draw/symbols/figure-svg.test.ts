import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { DrawnSymbol, Figure } from '../../../src/draw/drawing.ts';
import { figureSvg } from '../../../src/draw/symbols/figure-svg.ts';
import type { Part } from '../../../src/plan/part-types.ts';
import { WHOLE } from '../../helpers/share.ts';
import { all, type Element, extent, ofClass, pathPoints, readSvg } from '../svg-reader.ts';
import { base, pole, type Rows, SAMPLES, type Sample, symbolOf } from './figure-samples.ts';

const PRACTICES = ['nec', 'iec'] as const;
type Practice = (typeof PRACTICES)[number];

const FIGURES: Readonly<Record<Figure, true>> = {
  source: true,
  primary: true,
  gate: true,
  switch: true,
  button: true,
  cutout: true,
  selector: true,
  pole: true,
  'static-pole': true,
  coil: true,
  timer: true,
  board: true,
  diode: true,
  led: true,
  resistor: true,
  lamp: true,
  fuse: true,
  joint: true,
  plug: true,
  outlet: true,
  motor: true,
  load: true,
  box: true,
};

function draw({ symbol, part, made }: Sample, practice: Practice, both = false): string {
  return figureSvg(symbol, part, { practice, made: (a, b) => made.includes(`${a} ${b}`), both });
}

/** The sample's symbol with left and right swapped. */
function flipped(sample: Sample): Sample {
  const { symbol } = sample;
  const { box } = symbol;
  const flip = (x: number) => 2 * box.x + box.width - x;
  const terminals = symbol.terminals.map((t) => ({
    ...t,
    side: t.side === 'left' ? ('right' as const) : ('left' as const),
    ports: t.ports.map(({ x, y }) => ({ x: flip(x), y })),
  }));
  const plugged = symbol.plugged.map((p) => ({ ...p, box: { ...p.box, x: flip(p.box.x + p.box.width) } }));
  return { ...sample, symbol: { ...symbol, terminals, plugged, mirrored: !symbol.mirrored } };
}

/** What lies outside the box by more than rounding. */
function outside(root: Element, { box }: DrawnSymbol): string[] {
  const slack = 0.011;
  return all(root)
    .filter((element) =>
      extent(element).some(
        ({ x, y }) =>
          !(x >= box.x - slack && x <= box.x + box.width + slack) ||
          !(y >= box.y - slack && y <= box.y + box.height + slack),
      ),
    )
    .map((element) => JSON.stringify(element.attributes));
}

function wayNames(root: Element): string[] {
  return ofClass(root, 'way').map((way) => way.attributes['data-way']!);
}

const cases = SAMPLES.flatMap((sample) =>
  PRACTICES.flatMap((practice) =>
    [sample, flipped(sample)].map(
      (shown, index) =>
        [`${shown.title}${index === 1 ? ', flipped' : ''}, ${practice}`, shown, practice] as const,
    ),
  ),
);

describe('samples', () => {
  it('have every figure', () => {
    expect(new Set(SAMPLES.map(({ symbol }) => symbol.figure))).toEqual(new Set(Object.keys(FIGURES)));
  });
});

describe.each(cases)('%s', (_, sample, practice) => {
  const root = readSvg(draw(sample, practice));
  const both = readSvg(draw(sample, practice, true));
  const { symbol } = sample;

  it('stays in its box', () => {
    expect(outside(root, symbol)).toEqual([]);
    expect(outside(both, symbol)).toEqual([]);
  });

  it('leads from the ports of its terminals', () => {
    const lines = all(root).filter((e) => e.attributes['data-terminal'] !== undefined);
    for (const { key, ports } of symbol.terminals) {
      const own = lines
        .filter((e) => e.attributes['data-terminal'] === key)
        .map((e) => pathPoints(e.attributes.d!));
      // The lead leaves its first port along the row; further ports lie on a line down the edge.
      const starts = own.filter(([first, second]) => first!.y === second!.y);
      expect(starts.map(([first]) => first)).toEqual([ports[0]]);
      if (ports.length > 1) expect(own).toContainEqual(ports);
    }
  });

  it('leaves the zones of the words to the leads', () => {
    const oneSided = new Set(symbol.terminals.map(({ side }) => side)).size === 1;
    if (symbol.plugged.length > 0 || symbol.figure === 'joint') return;
    const centre = symbol.box.x + symbol.box.width / 2;
    const reach = oneSided && ['motor', 'load'].includes(symbol.figure) ? symbol.box.width / 2 : 22.01;
    for (const element of all(both)) {
      if (element.attributes['data-terminal'] !== undefined) continue;
      for (const { x } of extent(element)) expect(Math.abs(x - centre)).toBeLessThanOrEqual(reach);
    }
    const rows = symbol.terminals.map(({ ports }) => ports[0]!.y);
    for (const element of all(both).filter((e) => e.attributes['data-terminal'] !== undefined))
      for (const { x, y } of pathPoints(element.attributes.d!))
        if (Math.abs(x - centre) > 22.01 && x > symbol.box.x && x < symbol.box.x + symbol.box.width)
          expect(rows).toContain(y);
  });

  it('has a pen of its own and two decimals', () => {
    expect(root.children).toHaveLength(1);
    expect(root.children[0]?.attributes).toMatchObject({
      stroke: 'currentColor',
      fill: 'none',
      'stroke-width': '1.4',
      'data-symbol': symbol.id,
    });
    expect(draw(sample, practice, true)).not.toMatch(/\d\.\d{3}|NaN|undefined|Infinity|-0[" ]/);
  });

  it('shows each way in its state, or in both', () => {
    const ways = ofClass(root, 'way');
    for (const way of ways) {
      const [common, other] = way.attributes['data-way']!.split(' ');
      const bare = (key = '') => key.slice(symbol.part.length + 1);
      const made = sample.made.includes(`${bare(common)} ${bare(other)}`);
      expect([ofClass(way, 'made').length, ofClass(way, 'open').length]).toEqual(made ? [1, 0] : [0, 1]);
    }
    expect(wayNames(both)).toEqual(wayNames(root));
    for (const way of ofClass(both, 'way')) {
      const [made, ...moreMade] = ofClass(way, 'made');
      const [open, ...moreOpen] = ofClass(way, 'open');
      expect([moreMade, moreOpen]).toEqual([[], []]);
      expect(made!.children).not.toEqual(open!.children);
      expect(made!.children.length).toBeGreaterThan(0);
    }
    const contactLike = ['gate', 'switch', 'button', 'cutout', 'selector', 'pole', 'static-pole'];
    expect(ways.length > 0).toBe(contactLike.includes(symbol.figure));
  });
});

function find(title: string): Sample {
  return SAMPLES.find((sample) => sample.title === title)!;
}

describe('ways', () => {
  it.each([
    ['gate at rest', ['G1.COM G1.NO', 'G1.COM G1.NC']],
    ['overload at rest', ['F1.95 F1.96', 'F1.97 F1.98']],
    ['selector off', ['S2.COM S2.hand', 'S2.COM S2.auto']],
    ['pole released', ['K1.11 K1.14', 'K1.11 K1.12']],
    ['break pole made', ['K1.31 K1.32']],
    ['static pole off', ['K2.1.COM K2.1.NO']],
    ['pole, common elsewhere', ['K1.23 K1.24']],
  ])('%s', (title, expected) => {
    for (const practice of PRACTICES)
      expect(wayNames(readSvg(draw(find(title), practice)))).toEqual(expected);
  });

  it.each(['selector off', 'switch between'])('%s: the arm rests on none', (title) => {
    for (const practice of PRACTICES) {
      const sample = find(title);
      const on = { ...sample, made: title.startsWith('selector') ? ['COM auto'] : ['COM NO'] };
      const arms = (s: Sample, both: boolean) => ofClass(readSvg(draw(s, practice, both)), 'neither');
      expect(arms(sample, false)).toHaveLength(1);
      expect(arms(on, false)).toHaveLength(0);
      expect(arms(sample, true).map((g) => g.attributes.display)).toEqual([undefined]);
      expect(arms(on, true).map((g) => g.attributes.display)).toEqual(['none']);
    }
  });

  it('a break contact of a ladder keeps its slash in either state', () => {
    const [open, made] = ['break pole open', 'break pole made'].map((title) => draw(find(title), 'nec'));
    const slashes = (svg: string) =>
      all(readSvg(svg)).filter((e) => {
        const [a, b, ...more] = e.name === 'path' ? pathPoints(e.attributes.d!) : [];
        return a !== undefined && b !== undefined && more.length === 0 && a.x !== b.x && a.y !== b.y;
      });
    expect(slashes(open!)).toHaveLength(1);
    expect(slashes(made!)).toHaveLength(1);
  });
});

describe('what a page can light', () => {
  it.each([
    ['coil', 'coil', 'K1'],
    ['on-delay', 'coil', 'T1'],
    ['dry trigger', 'coil', 'T1'],
    ['board', 'coil', 'U1'],
    ['led', 'lamp', 'H1'],
    ['lamp', 'lamp', 'H2'],
    ['motor', 'load', 'M1'],
    ['load: heater', 'load', 'E1'],
    ['outlet, plugged', 'load', 'M7'],
  ])('%s', (title, name, part) => {
    for (const practice of PRACTICES) {
      const groups = ofClass(readSvg(draw(find(title), practice)), name);
      expect(groups.map((g) => g.attributes['data-part'])).toEqual([part]);
      expect(all(groups[0]!).length).toBeGreaterThan(1);
    }
  });

  it('a machine takes its phases from its own part, else from the outlet', () => {
    const { symbol, part } = find('outlet, two plugged');
    const motor: Part = {
      ...base('M7'),
      kind: 'motor',
      volts: { volts: 230, kind: 'ac' },
      feed: 'single',
      class2Insulated: true,
    };
    const options = { practice: 'iec' as const, made: () => false };
    expect(figureSvg(symbol, part, options)).toContain('>3~<');
    expect(figureSvg(symbol, part, { ...options, partOf: () => motor })).toContain('>1~<');
  });
});

describe('the two practices', () => {
  it('differ, but for what is drawn alike in both', () => {
    // Batteries, joints, enclosures and the windings of a lamp load: one symbol in either tradition.
    const alike = new Set(['joint', 'box']);
    for (const sample of SAMPLES) {
      if (alike.has(sample.symbol.figure) || sample.part.kind === 'battery') continue;
      if (/load: (lamp|transformer|electronic)/.test(sample.title)) continue;
      expect(draw(sample, 'nec'), sample.title).not.toBe(draw(sample, 'iec'));
    }
  });

  it('tell an on-delay from an off-delay, by coil and by contact', () => {
    for (const practice of PRACTICES)
      for (const what of ['', ' pole', ' make', ' break']) {
        const [on, off] = ['on', 'off'].map((way) => draw(find(`${way}-delay${what}`), practice));
        expect(on).not.toBe(off);
      }
  });
});

describe('any layout', () => {
  const shape = fc.record({
    mirrored: fc.boolean(),
    zone: fc.integer({ min: 0, max: 60 }),
    foot: fc.integer({ min: 4, max: 30 }),
    gap: fc.integer({ min: 24, max: 90 }),
    ports: fc.integer({ min: 1, max: 3 }),
    at: fc.record({
      x: fc.integer({ min: -50, max: 900 }),
      y: fc.double({ min: -50, max: 900, noNaN: true }),
    }),
  });
  const relay: Part = {
    ...base('K1'),
    kind: 'relay',
    coil: { rated: { volts: 24, kind: 'dc' } },
    poles: [pole(1, 'COM', 'NO', 'NC')],
    technology: 'contact',
  };
  const rows: fc.Arbitrary<Rows> = fc.constantFrom<Rows>(
    [
      ['COM', 'NO'],
      [undefined, 'NC'],
    ],
    [
      ['COM', 'NC'],
      [undefined, 'NO'],
    ],
    [
      [undefined, 'NO'],
      ['COM', 'NC'],
    ],
    [['COM'], [undefined, 'NO']],
    [['COM', 'NC']],
    [['COM']],
    [[undefined, 'NC']],
    [['COM'], ['NO']],
    [],
  );
  const figure = fc.constantFrom<Figure>('gate', 'switch', 'button', 'cutout', 'pole', 'static-pole');

  it('holds its contacts in the box', () => {
    fc.assert(
      fc.property(shape, rows, figure, fc.constantFrom(...PRACTICES), (where, terminals, kind, practice) => {
        const symbol = symbolOf('K1/1', 'K1', kind, terminals, where);
        const svg = figureSvg(symbol, relay, { practice, made: (_, other) => other === 'NC', both: true });
        const root = readSvg(svg);
        expect(outside(root, symbol)).toEqual([]);
        const drawn = new Set(all(root).map((e) => e.attributes['data-terminal']));
        for (const { key } of symbol.terminals) expect(drawn).toContain(key);
      }),
      { numRuns: WHOLE ? 300 : 30 },
    );
  });
});

describe('hostile names', () => {
  it('reach the fragment as text alone', () => {
    const name = fc.oneof(
      fc.constantFrom(
        '"><script>alert(1)</script>',
        "' onload='x",
        '&amp;',
        ']]>',
        '\u202eK1',
        'a\u0000b',
        '\uffff',
      ),
      fc.string({ unit: 'binary', maxLength: 20 }),
    );
    fc.assert(
      fc.property(
        name,
        fc.constantFrom(...SAMPLES),
        fc.constantFrom(...PRACTICES),
        (hostile, sample, practice) => {
          const { symbol, part } = sample;
          const renamed = (text: string) => text.replace(symbol.part, () => hostile);
          const bad: Sample = {
            ...sample,
            part: { ...part, name: hostile },
            symbol: {
              ...symbol,
              id: renamed(symbol.id),
              part: hostile,
              terminals: symbol.terminals.map((t) => ({ ...t, key: renamed(t.key), mark: hostile })),
              plugged: symbol.plugged.map((p) => ({ ...p, part: hostile })),
            },
          };
          const names = (root: Element) =>
            all(root).map((e) => `${e.name} ${Object.keys(e.attributes)} ${e.text}`);
          const svg = draw(bad, practice, true);
          expect(names(readSvg(svg))).toEqual(names(readSvg(draw(sample, practice, true))));
          // Control, format and other characters that XML 1.0 or a reader's eye must not meet.
          expect(svg).not.toMatch(/[\p{Cc}\p{Cf}\p{Cs}\ufffe\uffff]/u);
        },
      ),
      { numRuns: WHOLE ? 100 : 10 },
    );
  });
});
