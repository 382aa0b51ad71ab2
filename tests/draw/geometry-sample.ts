/** Small right drawings made by hand, for judging the judge. */

import type { Box, Drawing, DrawnCore, DrawnSymbol, Label, Point } from '../../src/draw/drawing.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { readPlan } from '../../src/plan/read.ts';

type Writable<T> = T extends object ? { -readonly [K in keyof T]: Writable<T[K]> } : T;
/** A drawing that may be changed. */
export type Loose = Writable<Drawing>;

function planOf(parts: readonly string[], runs: readonly string[]): Plan {
  const contact = '{ratings: [5 A 250 V AC]}';
  const lines = [
    'format: 1',
    'stock:',
    `  snap: {kind: gate, contact: ${contact}}`,
    '  bell: {kind: cable, gauge: 0.5 mm2, cores: 3}',
    'parts:',
    ...parts.map((p) => `  ${p}`),
    'runs:',
    ...runs.map((r) => `  - ${r}`),
  ];
  const read = readPlan(lines.join('\n'), 'sample.yaml');
  if (!read.ok) throw new Error(read.errors.map((e) => e.message).join('\n'));
  return read.plan;
}

/** Two gates between a supply, a joint and a lamp; a plug, an outlet with a motor in it; a gate without wires. */
export function samplePlan(): Plan {
  return planOf(
    [
      'PS1: {kind: supply, output: 12 V DC, limit: 1 A}',
      'g1: {from: snap}',
      'g2: {from: snap}',
      'spare: {kind: fuse, rating: 1 A}',
      'J: {kind: joint}',
      'H1: {kind: lamp, resistance: 100 ohm}',
      'P1: {kind: plug, volts: 230 V AC}',
      'X1: {kind: outlet}',
      'M1: {kind: motor, volts: 230 V AC, amps: 5 A, plugged-into: X1}',
    ],
    [
      '{cable: bell, length: 2 m, cores: {red: [PS1.+, g1.COM], yellow: [PS1.+, g2.COM]}}',
      '{cable: bell, length: 2 m, cores: {red: [g1.NO, J], yellow: [g2.NO, J]}}',
      '{link: [J, H1.1]}',
      '{cable: bell, length: 2 m, cores: {black: [H1.2, PS1.-]}}',
      '{cable: bell, length: 2 m, cores: {brown: [P1.L, X1.L]}}',
    ],
  );
}

const at = (x: number, y: number): Point => ({ x, y });

/** A symbol with its terminals on the two sides, `[mark, y ...]`, the first of which is its side's. */
function symbol(
  id: string,
  figure: DrawnSymbol['figure'],
  [x, y, width, height]: readonly [number, number, number, number],
  left: readonly (readonly [string, ...number[]])[],
  right: readonly (readonly [string, ...number[]])[],
): DrawnSymbol {
  const key = (mark: string): string => (mark === '' ? id : `${id}.${mark}`);
  const side = (list: typeof left, name: 'left' | 'right', at: number) =>
    list.map(([mark, ...ys]) => ({ key: key(mark), mark, side: name, ports: ys.map((y) => ({ x: at, y })) }));
  const terminals = [...side(left, 'left', x), ...side(right, 'right', x + width)];
  return { id, part: id, figure, box: { x, y, width, height }, mirrored: false, terminals, plugged: [] };
}

/** Name above, marks beside their ports within. */
function wordsOf({ id, box, terminals }: DrawnSymbol): Label[] {
  const marks = terminals.flatMap(({ key, mark, side, ports }): Label[] => {
    if (mark === '') return [];
    const x = side === 'left' ? box.x + 2 : box.x + box.width - 18;
    return [{ x, y: ports[0]!.y - 5, width: 16, height: 10, text: mark, what: 'mark', of: key }];
  });
  return [{ x: box.x, y: box.y - 14, width: 40, height: 10, text: id, what: 'name', of: id }, ...marks];
}

function core(run: number, nth: number, from: string, to: string, ...path: Point[]): DrawnCore {
  return { id: `${run}/${nth}`, run, core: nth, link: false, from, to, path };
}

const word = (what: Label['what'], of: string, x: number, y: number): Label => ({
  ...{ x, y, width: 24, height: 10, text: of, what, of },
});

/** A right drawing of the sample plan: a stem with a dot, plain crossings, a joint with two ports on one side. */
export function sampleDrawing(): Loose {
  const joint = symbol('J', 'joint', [320, 105, 10, 10], [['', 108, 112]], []);
  const round = { ...joint.terminals[0]!, ports: [at(320, 108), at(320, 112), at(330, 110)] };
  const motor = { part: 'M1', figure: 'motor' as const, box: { x: 260, y: 330, width: 50, height: 40 } };
  const symbols: DrawnSymbol[] = [
    symbol(
      'PS1',
      'source',
      [20, 40, 60, 80],
      [],
      [
        ['+', 60],
        ['-', 100],
      ],
    ),
    symbol(
      'g1',
      'gate',
      [200, 40, 60, 60],
      [['COM', 60]],
      [
        ['NO', 60],
        ['NC', 80],
      ],
    ),
    symbol(
      'g2',
      'gate',
      [200, 140, 60, 60],
      [['COM', 160]],
      [
        ['NO', 160],
        ['NC', 180],
      ],
    ),
    symbol('spare', 'fuse', [540, 200, 40, 20], [], []),
    { ...joint, terminals: [round] },
    symbol('H1', 'lamp', [400, 90, 40, 40], [['1', 110]], [['2', 110]]),
    symbol('P1', 'plug', [20, 320, 60, 40], [], [['L', 340]]),
    {
      ...symbol(
        'X1',
        'outlet',
        [200, 320, 120, 60],
        [
          ['L', 340],
          ['N', 360],
        ],
        [],
      ),
      plugged: [motor],
    },
  ];
  const cores: DrawnCore[] = [
    core(0, 0, 'PS1.+', 'g1.COM', at(80, 60), at(200, 60)),
    core(0, 1, 'PS1.+', 'g2.COM', at(80, 60), at(140, 60), at(140, 160), at(200, 160)),
    core(1, 0, 'g1.NO', 'J', at(260, 60), at(290, 60), at(290, 108), at(320, 108)),
    core(1, 1, 'g2.NO', 'J', at(260, 160), at(300, 160), at(300, 112), at(320, 112)),
    { ...core(2, 0, 'J', 'H1.1', at(330, 110), at(400, 110)), link: true },
    core(
      3,
      0,
      'H1.2',
      'PS1.-',
      ...[at(440, 110), at(480, 110), at(480, 240)],
      ...[at(170, 240), at(170, 100), at(80, 100)],
    ),
    core(4, 0, 'P1.L', 'X1.L', at(80, 340), at(200, 340)),
  ];
  const labels: Label[] = [
    ...symbols.flatMap(wordsOf),
    ...[word('name', 'M1', 215, 368), word('caption', 'H1', 408, 118)],
    ...[word('core', '0/0', 145, 48), word('core', '0/1', 144, 145)],
    ...[word('core', '1/0', 262, 45), word('core', '1/1', 262, 146)],
    ...[word('core', '3/0', 300, 226), word('core', '4/0', 100, 326)],
    word('barrier', '', 500, 295),
  ];
  const dots = [at(140, 60)];
  const words = labels.map((l) => ({ ...l, text: l.text === '' ? 'mains below' : l.text }));
  return structuredClone({
    width: 600,
    height: 400,
    symbols,
    cores,
    labels: words,
    dots,
    barrier: 300,
  }) as Loose;
}

/** Every box and point of a drawing at another place. */
function moved(d: Loose, box: (b: Box) => Point, point: (p: Point) => Point): Loose {
  return {
    ...d,
    symbols: d.symbols.map((s) => ({
      ...s,
      box: { ...s.box, ...box(s.box) },
      terminals: s.terminals.map((t) => ({ ...t, ports: t.ports.map(point) })),
      plugged: s.plugged.map((p) => ({ ...p, box: { ...p.box, ...box(p.box) } })),
    })),
    cores: d.cores.map((c) => ({ ...c, path: c.path.map(point) })),
    labels: d.labels.map((l) => ({ ...l, ...box(l) })),
    dots: d.dots.map(point),
  };
}

/** The drawing with left and right changed over. */
export function mirrored(d: Loose): Loose {
  const flipped = moved(
    d,
    (b) => at(d.width - b.x - b.width, b.y),
    (p) => at(d.width - p.x, p.y),
  );
  for (const terminal of flipped.symbols.flatMap((s) => s.terminals))
    terminal.side = terminal.side === 'left' ? 'right' : 'left';
  return flipped;
}

/** The drawing with top and bottom changed over. */
export function turnedOver(d: Loose): Loose {
  const flipped = moved(
    d,
    (b) => at(b.x, d.height - b.y - b.height),
    (p) => at(p.x, d.height - p.y),
  );
  return d.barrier === undefined ? flipped : { ...flipped, barrier: d.height - d.barrier };
}

/** Many gates down the sheet, each on two cores from two joints at its top: long stems, and every gate a dot. */
export function bigSample(count: number): { plan: Plan; drawing: Drawing } {
  const gates = Array.from({ length: count }, (_, i) => `g${i}`);
  const plan = planOf(
    ['a: {kind: joint}', 'b: {kind: joint}', ...gates.map((g) => `${g}: {from: snap}`)],
    gates.map((g) => `{cable: bell, length: 2 m, cores: {red: [a, ${g}.COM], white: [b, ${g}.NO]}}`),
  );
  const symbols: DrawnSymbol[] = [
    symbol('a', 'joint', [20, 20, 0, 0], [['', 20]], []),
    symbol('b', 'joint', [400, 20, 0, 0], [], [['', 20]]),
    ...gates.map((g, i) =>
      symbol(
        g,
        'gate',
        [200, 60 + 100 * i, 60, 60],
        [['COM', 80 + 100 * i]],
        [
          ['NO', 80 + 100 * i],
          ['NC', 100 + 100 * i],
        ],
      ),
    ),
  ];
  const cores = gates.flatMap((g, i) => {
    const y = 80 + 100 * i;
    return [
      core(i, 0, 'a', `${g}.COM`, at(20, 20), at(20, y), at(200, y)),
      core(i, 1, 'b', `${g}.NO`, at(400, 20), at(400, y), at(260, y)),
    ];
  });
  const labels = [
    ...symbols.flatMap(wordsOf),
    ...cores.map((c) => word('core', c.id, c.core === 0 ? 100 : 300, c.path[2]!.y - 12)),
  ];
  const dots = gates.slice(0, -1).flatMap((_, i) => [at(20, 80 + 100 * i), at(400, 80 + 100 * i)]);
  return { plan, drawing: { width: 500, height: 100 * count + 100, symbols, cores, labels, dots } };
}
