/** Hand-made symbols, one or more of every figure, as a layout in pixels would place them. */

import type { DrawnSymbol, DrawnTerminal, Figure, Point, Side } from '../../../src/draw/drawing.ts';
import type { Contact } from '../../../src/plan/device-figures.ts';
import type { Part, Pole } from '../../../src/plan/part-types.ts';

export interface Sample {
  readonly title: string;
  readonly symbol: DrawnSymbol;
  readonly part: Part;
  /** ways that are made, `COM NO` */
  readonly made: readonly string[];
}

const contact: Contact = { ratings: [], motor: [] };
const tabs = ['COM', 'NO', 'NC'] as const;
const coil = { rated: { volts: 24, kind: 'dc' as const } };
const dc = { volts: 24, kind: 'dc' as const };
const ac = { volts: 230, kind: 'ac' as const };

export function base(name: string) {
  return { name, at: { line: 1, column: 1 }, where: new Map<string, { line: number; column: number }>() };
}

export function pole(index: number, common: string, make?: string, rest?: string): Pole {
  return {
    index,
    common,
    ...(make === undefined ? {} : { make }),
    ...(rest === undefined ? {} : { break: rest }),
    contact,
  };
}

/** `[left, right]` terminals row by row. */
export type Rows = readonly (readonly [left?: string | undefined, right?: string | undefined])[];

export interface Shape {
  readonly mirrored?: boolean;
  readonly zone?: number;
  readonly foot?: number;
  readonly gap?: number;
  readonly at?: Point;
  /** ports of each terminal */
  readonly ports?: number;
}

/** A symbol with its rows 24 px apart in a box 48 px wide between the words at its edges. */
export function symbolOf(
  id: string,
  part: string,
  figure: Figure,
  rows: Rows,
  shape: Shape = {},
): DrawnSymbol {
  const { mirrored = false, zone = 30, foot = 12, gap = 24, at = { x: 10, y: 10 }, ports = 1 } = shape;
  const width = 48 + 2 * zone;
  const pitch = gap + (ports - 1) * 16;
  const terminals = rows.flatMap((pair, row): DrawnTerminal[] =>
    (['left', 'right'] as const).flatMap((habit, index) => {
      const name = pair[index];
      if (name === undefined) return [];
      const side: Side = mirrored ? (habit === 'left' ? 'right' : 'left') : habit;
      const x = side === 'left' ? at.x : at.x + width;
      const y = at.y + 18 + row * pitch;
      return [
        {
          key: name === '' ? part : `${part}.${name}`,
          mark: name,
          side,
          ports: Array.from({ length: ports }, (_, n) => ({ x, y: y + n * 16 })),
        },
      ];
    }),
  );
  const height = 18 + Math.max(0, rows.length - 1) * pitch + (ports - 1) * 16 + foot;
  return { id, part, figure, box: { ...at, width, height }, mirrored, terminals, plugged: [] };
}

function sample(
  title: string,
  part: Part,
  figure: Figure,
  rows: Rows,
  options: Shape & { readonly sub?: string; readonly made?: readonly string[] } = {},
): Sample {
  const { sub, made = [], ...shape } = options;
  const id = sub === undefined ? part.name : `${part.name}/${sub}`;
  return { title, symbol: symbolOf(id, part.name, figure, rows, shape), part, made };
}

function relay(
  name: string,
  poles: readonly Pole[],
  technology: 'contact' | 'solid-state' = 'contact',
): Part {
  return { ...base(name), kind: 'relay', coil, poles, technology };
}

function timer(name: string, delay: 'off-delay' | 'on-delay'): Part {
  return {
    ...base(name),
    kind: 'timer',
    coil,
    poles: [pole(1, '15', '18', '16')],
    technology: 'contact',
    function: delay,
    time: 8,
  };
}

const changeover: Rows = [
  ['COM', 'NO'],
  [undefined, 'NC'],
];
const mains3: Rows = [['L1'], ['L2'], ['L3'], ['N'], ['PE']];
const right = (rows: Rows): Rows => rows.map(([name]) => [undefined, name]);

/** Gates, switches, buttons and cutouts: the same contacts, moved by other things. */
function switchLike(kind: 'gate' | 'switch' | 'button' | 'cutout'): Sample[] {
  const part: Part =
    kind === 'gate'
      ? { ...base('G1'), kind, contact, tabs, pressedWhen: 'open' }
      : { ...base('S1'), kind, contact, tabs };
  return [
    sample(`${kind} at rest`, part, kind, changeover, { made: ['COM NC'] }),
    sample(`${kind} worked`, part, kind, changeover, { made: ['COM NO'], mirrored: true }),
    sample(`${kind} between`, part, kind, changeover),
    sample(`${kind} NO open`, part, kind, [['COM', 'NO']]),
    sample(`${kind} NO made`, part, kind, [['COM', 'NO']], { made: ['COM NO'] }),
    sample(`${kind} NC made`, part, kind, [['COM', 'NC']], { made: ['COM NC'] }),
    sample(`${kind} NC open`, part, kind, [['COM', 'NC']], { mirrored: true }),
  ];
}

function contacts(): Sample[] {
  const overload: Part = { ...base('F1'), kind: 'cutout', contact, tabs };
  const rows: Rows = [
    ['95', '96'],
    ['97', '98'],
  ];
  const selector: Part = {
    ...base('S2'),
    kind: 'selector',
    positions: ['hand', 'off', 'auto'],
    rest: 'off',
    contact,
  };
  const hand: Rows = [
    ['COM', 'hand'],
    [undefined, 'auto'],
  ];
  const four: Part = { ...selector, name: 'S3', positions: ['a', 'b', 'c', 'off'] };
  const k = relay('K1', [pole(1, '11', '14', '12'), pole(2, '23', '24'), pole(3, '31', undefined, '32')]);
  const ssr = relay('K2', [pole(1, '1.COM', '1.NO'), pole(2, '2.COM', undefined, '2.NC')], 'solid-state');
  return [
    ...(['gate', 'switch', 'button', 'cutout'] as const).flatMap(switchLike),
    sample('overload at rest', overload, 'cutout', rows, { made: ['95 96'] }),
    sample('overload tripped', overload, 'cutout', rows, { made: ['97 98'] }),
    sample('selector off', selector, 'selector', hand),
    sample('selector auto', selector, 'selector', hand, { made: ['COM auto'] }),
    sample(
      'selector of 3, b',
      four,
      'selector',
      [
        ['COM', 'a'],
        [undefined, 'b'],
        [undefined, 'c'],
      ],
      {
        made: ['COM b'],
      },
    ),
    sample(
      'selector of 3, off',
      four,
      'selector',
      [
        ['COM', 'a'],
        [undefined, 'b'],
        [undefined, 'c'],
      ],
      {
        mirrored: true,
      },
    ),
    sample(
      'pole released',
      k,
      'pole',
      [
        ['11', '14'],
        [undefined, '12'],
      ],
      { sub: '1', made: ['11 12'] },
    ),
    sample(
      'pole pulled in',
      k,
      'pole',
      [
        ['11', '14'],
        [undefined, '12'],
      ],
      { sub: '1', made: ['11 14'] },
    ),
    sample('make pole open', k, 'pole', [['23', '24']], { sub: '2' }),
    sample('make pole made', k, 'pole', [['23', '24']], { sub: '2', made: ['23 24'] }),
    sample('break pole made', k, 'pole', [['31', '32']], { sub: '3', made: ['31 32'] }),
    sample('break pole open', k, 'pole', [['31', '32']], { sub: '3' }),
    sample(
      'pole, far rows',
      k,
      'pole',
      [
        ['11', '14'],
        [undefined, '12'],
      ],
      {
        sub: '1',
        made: ['11 12'],
        ports: 2,
      },
    ),
    sample('pole, common elsewhere', k, 'pole', [[undefined, '24']], { sub: '2' }),
    ...(['on-delay', 'off-delay'] as const).flatMap((delay) => [
      sample(
        `${delay} pole`,
        timer('T1', delay),
        'pole',
        [
          ['15', '18'],
          [undefined, '16'],
        ],
        {
          sub: '1',
          made: ['15 16'],
        },
      ),
      sample(`${delay} make`, timer('T1', delay), 'pole', [['15', '18']], { sub: '1' }),
      sample(`${delay} break`, timer('T1', delay), 'pole', [['15', '16']], { sub: '1', made: ['15 16'] }),
    ]),
    sample('static pole off', ssr, 'static-pole', [['1.COM', '1.NO']], { sub: '1' }),
    sample('static pole on', ssr, 'static-pole', [['1.COM', '1.NO']], { sub: '1', made: ['1.COM 1.NO'] }),
    sample('static break', ssr, 'static-pole', [['2.COM', '2.NC']], { sub: '2', made: ['2.COM 2.NC'] }),
  ];
}

function twoTerminal(): Sample[] {
  const pair = (a: string, b: string): Rows => [[a, b]];
  const k = relay('K1', [pole(1, '11', '14', '12')]);
  const diode: Part = { ...base('D1'), kind: 'diode' };
  const battery: Part = { ...base('BT1'), kind: 'battery', output: dc };
  return [
    sample('coil', k, 'coil', pair('A1', 'A2'), { foot: 18 }),
    sample('coil, one side', k, 'coil', [['A1'], ['A2']], { foot: 18 }),
    sample('on-delay', timer('T1', 'on-delay'), 'timer', pair('A1', 'A2'), { foot: 18 }),
    sample('off-delay', timer('T1', 'off-delay'), 'timer', pair('A1', 'A2'), { foot: 18 }),
    sample(
      'dry trigger',
      timer('T1', 'off-delay'),
      'timer',
      [
        ['A1', 'A2'],
        ['T1', 'T2'],
      ],
      { foot: 18 },
    ),
    sample('diode', diode, 'diode', pair('A', 'K')),
    sample('diode mirrored', diode, 'diode', pair('A', 'K'), { mirrored: true }),
    sample('zener, one side', { ...diode, zener: 12 }, 'diode', [['A'], ['K']]),
    sample('led', { ...base('H1'), kind: 'led' }, 'led', pair('A', 'K'), { foot: 18 }),
    sample('resistor', { ...base('R1'), kind: 'resistor' }, 'resistor', pair('1', '2')),
    sample('lamp', { ...base('H2'), kind: 'lamp' }, 'lamp', pair('1', '2'), { foot: 18 }),
    sample('fuse', { ...base('F2'), kind: 'fuse', rating: 2 }, 'fuse', pair('1', '2')),
    sample('battery', battery, 'source', pair('+', '-')),
    sample('battery, one side', battery, 'source', [
      [undefined, '+'],
      [undefined, '-'],
    ]),
    sample('two rows', { ...base('R1'), kind: 'resistor' }, 'resistor', [['1'], [undefined, '2']]),
  ];
}

function mains(): Sample[] {
  const limit = { amps: 1, printed: 'A' as const, value: 1 };
  const supply: Part = { ...base('PS1'), kind: 'supply', output: dc, limit };
  const transformer: Part = { ...supply, output: { volts: 24, kind: 'ac' } };
  const plug: Part = { ...base('P1'), kind: 'plug', volts: ac, feed: 'single' };
  const outlet: Part = { ...base('X1'), kind: 'outlet', feed: 'single' };
  const motor: Part = { ...base('M1'), kind: 'motor', volts: ac, feed: 'single', class2Insulated: false };
  const load: Part = { ...base('E1'), kind: 'load', volts: ac, feed: 'single', class2Insulated: false };
  const single: Rows = [['L'], ['N'], ['PE']];
  const board: Part = {
    ...base('U1'),
    kind: 'board',
    supply: dc,
    input: 'low',
    poles: [pole(1, 'COM', 'NO', 'NC')],
    technology: 'contact',
  };
  const tall = { foot: 18 };
  return [
    sample('supply', supply, 'source', [['+', '-']]),
    sample('supply, mains', supply, 'primary', [['L'], ['N']], { sub: 'mains' }),
    sample('transformer', transformer, 'source', [['~1', '~2']]),
    sample('transformer, mains', transformer, 'primary', [['L'], ['N']], { sub: 'mains' }),
    sample('board', board, 'board', [['VCC', 'GND'], ['IN']], tall),
    sample('plug', plug, 'plug', right(single)),
    sample('plug, 3 phases', { ...plug, feed: 'three-phase' }, 'plug', right(mains3)),
    sample('outlet', outlet, 'outlet', single),
    sample('outlet, both sides', outlet, 'outlet', [
      ['L', 'N'],
      [undefined, 'PE'],
    ]),
    withPlugged(sample('outlet, plugged', outlet, 'outlet', single), ['motor']),
    withPlugged(sample('outlet, two plugged', { ...outlet, feed: 'three-phase' }, 'outlet', mains3), [
      'motor',
      'load',
    ]),
    sample('motor', motor, 'motor', single, tall),
    sample(
      'motor, both sides',
      motor,
      'motor',
      [
        ['L', 'N'],
        [undefined, 'PE'],
      ],
      tall,
    ),
    sample('motor, 3 phases', { ...motor, feed: 'three-phase' }, 'motor', mains3, tall),
    sample('load', load, 'load', single, tall),
    ...(['lamp', 'heater', 'transformer', 'electronic'] as const).map((type) =>
      sample(`load: ${type}`, { ...load, type }, 'load', [['L'], ['N']], tall),
    ),
    sample('box', { ...base('B1'), kind: 'box', holds: [], metal: true }, 'box', [['PE']]),
    sample('box without earth', { ...base('B1'), kind: 'box', holds: [], metal: false }, 'box', []),
    sample('joint', { ...base('J1'), kind: 'joint' }, 'joint', [['']], { zone: -19, foot: 8 }),
    sample('joint, three ports', { ...base('J1'), kind: 'joint' }, 'joint', [['']], {
      zone: -19,
      foot: 8,
      ports: 3,
    }),
  ];
}

/** An outlet made wider by the machines plugged into it, which stand beside it. */
function withPlugged(outlet: Sample, figures: readonly ('motor' | 'load')[]): Sample {
  const { box } = outlet.symbol;
  const plugged = figures.map((figure, index) => ({
    part: figure === 'motor' ? 'M7' : 'E7',
    figure,
    box: { x: box.x + box.width + 16, y: box.y + 14 + index * 62, width: 44, height: 44 },
  }));
  const height = Math.max(box.height, 14 + figures.length * 62);
  const symbol = { ...outlet.symbol, plugged, box: { ...box, width: box.width + 16 + 60, height } };
  return { ...outlet, symbol };
}

export const SAMPLES: readonly Sample[] = [...contacts(), ...twoTerminal(), ...mains()];
