/** The low-voltage side of a generated plan: gates in some order between two lines, and what the lines call. */
import { between, data, makingPoles, oneIn, type Plot, pick } from './plans-sheet.ts';

export const ORDERS = ['chain', 'star', 'ring', 'tree', 'series', 'spurs'] as const;
export type Order = (typeof ORDERS)[number];
export const SOURCES = ['adapter', 'battery', 'transformer', 'wired transformer'] as const;
export type Source = (typeof SOURCES)[number];
export const CONTROLS = [
  'relay',
  'contactor',
  'two voltages',
  'seal-in',
  'timer',
  'board',
  'shared',
] as const;
export type Control = (typeof CONTROLS)[number];

type Pair = readonly [string, string];

/** Where the gates hang: fed from `feed`, they call `call`; `home` is the other pole of the supply. */
interface Lines {
  readonly feed: string;
  readonly call: string;
  readonly home: string;
}

/** What the mains side needs: the switched poles, and the parts that a box may hold. */
export interface Called {
  readonly poles: readonly Pair[];
  readonly held: readonly string[];
  /** a supply whose mains side is wired in */
  readonly wiredIn?: string;
}

function gateWires(plot: Plot, order: Order, gates: readonly string[], { feed, call }: Lines): void {
  const tab = oneIn(plot.roll, 6) ? 'NC' : 'NO';
  const pair = (g: string): Pair => [`${g}.COM`, `${g}.${tab}`];
  const home: Pair = [feed, call];
  if (order === 'series') {
    const tabs = gates.map(pair);
    tabs.forEach(([into], i) => {
      plot.cable([i === 0 ? feed : tabs[i - 1]![1], into]);
    });
    plot.cable([tabs.at(-1)![1], call]);
    return;
  }
  const spur = between(plot.roll, 2, 4);
  gates.forEach((g, i) => {
    const before = { chain: i - 1, ring: i - 1, star: -1, tree: between(plot.roll, -1, i - 1) };
    const on = order === 'spurs' ? (i % spur === 0 ? -1 : i - 1) : before[order];
    const from = on < 0 ? home : pair(gates[on]!);
    const to = pair(g);
    plot.cable([from[0], to[0]], [from[1], to[1]]);
  });
  const last = pair(gates.at(-1)!);
  if (order === 'ring') plot.cable([last[0], feed], [last[1], call]);
}

/** The supply, with a fuse, cut-out and selector in its feed as chance has it. */
function feedLines(
  plot: Plot,
  source: Source,
  volts: string,
  name: string,
): { lines: Lines; held: string[] } {
  const [plus, minus] = volts.endsWith('AC') ? ['~1', '~2'] : ['+', '-'];
  plot.part(name, source === 'battery' ? data.battery : data.supply(volts));
  const held: string[] = [];
  const keep = (part: string): string => {
    held.push(part);
    return part;
  };
  let from = `${name}.${plus}`;
  const step = (into: string, out: string): void => {
    plot.run([from, into]);
    from = out;
  };
  if (source === 'battery' || oneIn(plot.roll, 3)) {
    keep(plot.part(`F-${name}`, data.fuse));
    step(`F-${name}.1`, `F-${name}.2`);
  }
  if (oneIn(plot.roll, 3)) {
    const bin = plot.part(`bin-${name}`, data.contact('cutout'));
    if (oneIn(plot.roll, 2)) step(`${bin}.95`, `${bin}.96`);
    else step(`${bin}.COM`, `${bin}.NC`);
  }
  const feed = keep(plot.joint(`feed-${name}`));
  const call = keep(plot.joint(`call-${name}`));
  if (oneIn(plot.roll, 4)) {
    const mode = plot.part(`mode-${name}`, data.selector);
    plot.run([from, `${mode}.COM`]);
    plot.cable([`${mode}.auto`, feed], [`${mode}.hand`, call]);
  } else plot.run([from, feed]);
  let home = `${name}.${minus}`;
  if (!oneIn(plot.roll, 3)) {
    home = keep(plot.joint(`home-${name}`));
    plot.run([`${name}.${minus}`, home]);
  }
  return { lines: { feed, call, home }, held };
}

function indicators(plot: Plot, { call, home }: Lines, volts: string): void {
  if (oneIn(plot.roll, 3)) {
    plot.part('H1', data.lamp(volts));
    plot.run([call, 'H1.1']);
    plot.run(['H1.2', home]);
  }
  if (volts.endsWith('DC') && oneIn(plot.roll, 4)) {
    plot.part('R2', data.resistor);
    plot.part('H2', data.led);
    plot.run([call, 'R2.1']);
    plot.run(['R2.2', 'H2.A']);
    plot.run(['H2.K', home]);
  }
}

function coilWires(plot: Plot, relay: string, { call, home }: Lines, dc: boolean): string[] {
  plot.run([call, `${relay}.A1`]);
  plot.run([`${relay}.A2`, home]);
  if (!dc || !oneIn(plot.roll, 3)) return [relay];
  const diode = plot.part(`D-${relay}`, data.diode);
  plot.link(`${diode}.K`, `${relay}.A1`);
  plot.link(`${diode}.A`, `${relay}.A2`);
  return [relay, diode];
}

const mainPoles = (name: string, count: 2 | 3): Pair[] =>
  Array.from({ length: count }, (_, i) => [`${name}.${2 * i + 1}`, `${name}.${2 * i + 2}`]);

/** A second supply at 24 V AC whose contactor the first relay calls. */
function secondVoltage(plot: Plot, lines: Lines, dc: boolean, count: 2 | 3, volts: string): Called {
  plot.part('K1', data.relay(volts));
  plot.part('T9', data.supply('24 V AC'));
  plot.part('Q1', data.relay('24 V AC', makingPoles(count)));
  const held = coilWires(plot, 'K1', lines, dc);
  plot.run(['T9.~1', 'K1.COM']);
  plot.run(['K1.NO', 'Q1.A1']);
  plot.run(['Q1.A2', 'T9.~2']);
  return { poles: mainPoles('Q1', count), held: [...held, 'Q1'] };
}

/** START held in by the contactor's auxiliary contact until STOP. */
function sealIn(plot: Plot, lines: Lines, dc: boolean, count: 2 | 3, volts: string): Called {
  plot.part('STOP', data.contact('button'));
  plot.part('START', data.contact('button'));
  plot.part('Q1', data.relay(volts, makingPoles(count, true)));
  plot.cable([lines.feed, 'STOP.COM'], ['STOP.NC', 'START.COM']);
  plot.cable(['START.COM', 'Q1.13'], ['START.NO', 'Q1.14']);
  plot.run(['Q1.14', 'Q1.A1']);
  return { poles: mainPoles('Q1', count), held: coilWires(plot, 'Q1', lines, dc) };
}

function timed(plot: Plot, { feed, call, home }: Lines, volts: string): Called {
  plot.part('KT', data.timer(volts));
  plot.run([feed, 'KT.A1']);
  plot.run(['KT.A2', home]);
  plot.cable([feed, 'KT.T1'], [call, 'KT.T2']);
  return { poles: [['KT.COM', 'KT.NO']], held: ['KT'] };
}

function boardWires(plot: Plot, { feed, call, home }: Lines): Called {
  plot.part('U1', data.board);
  plot.cable([feed, 'U1.VCC'], [home, 'U1.GND'], [call, 'U1.IN']);
  return { poles: [['U1.COM', 'U1.NO']], held: ['U1'] };
}

/** Two relays on lines of their own; one gate more feeds both through diodes. */
function shared(plot: Plot, lines: Lines, dc: boolean, volts: string): Called {
  const second = { ...lines, call: plot.joint('call-2') };
  plot.part('K1', data.relay(volts));
  plot.part('K2', data.relay(volts));
  plot.part('both', data.gate(false));
  plot.part('D1', data.diode);
  plot.part('D2', data.diode);
  plot.cable([lines.feed, 'both.COM'], ['both.NO', 'D1.A']);
  plot.run(['D1.A', 'D2.A']);
  plot.link('D1.K', lines.call);
  plot.link('D2.K', second.call);
  const held = [...coilWires(plot, 'K1', lines, dc), ...coilWires(plot, 'K2', second, dc)];
  return {
    poles: [
      ['K1.COM', 'K1.NO'],
      ['K2.COM', 'K2.NO'],
    ],
    held,
  };
}

function controlled(plot: Plot, control: Control, lines: Lines, volts: string, count: 2 | 3): Called {
  const dc = volts.endsWith('DC');
  switch (control) {
    case 'relay':
      plot.part('K1', data.relay(volts));
      return { poles: [['K1.COM', 'K1.NO']], held: coilWires(plot, 'K1', lines, dc) };
    case 'contactor':
      plot.part('Q1', data.relay(volts, makingPoles(count)));
      return { poles: mainPoles('Q1', count), held: coilWires(plot, 'Q1', lines, dc) };
    case 'two voltages':
      return secondVoltage(plot, lines, dc, count, volts);
    case 'seal-in':
      return sealIn(plot, lines, dc, count, volts);
    case 'timer':
      return timed(plot, lines, volts);
    case 'board':
      return boardWires(plot, lines);
    case 'shared':
      return shared(plot, lines, dc, volts);
  }
}

/** Writes the low-voltage side; returns what the mains side is switched by. */
export function loop(
  plot: Plot,
  choice: { order: Order; source: Source; control: Control; gates: readonly string[]; poles: 2 | 3 },
): Called {
  const { order, source, control, gates, poles } = choice;
  const ac = source === 'transformer' || source === 'wired transformer';
  const volts = ac ? '24 V AC' : source === 'battery' ? '12 V DC' : pick(plot.roll, ['12 V DC', '24 V DC']);
  const name = ac ? 'T1' : source === 'battery' ? 'BAT' : 'PS1';
  const { lines, held } = feedLines(plot, source, volts, name);
  const shut = order === 'series';
  for (const g of gates) plot.part(g, data.gate(shut));
  gateWires(plot, order, gates, lines);
  indicators(plot, lines, volts);
  const called = controlled(plot, control, lines, volts, poles);
  const all = { poles: called.poles, held: [...held, ...called.held] };
  return source === 'wired transformer' ? { ...all, wiredIn: name } : all;
}
