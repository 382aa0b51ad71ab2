/** Right drawings broken one rule at a time, with the fault that a judge must find. */
import type { Point } from '../../src/draw/drawing.ts';
import type { Loose } from './geometry-sample.ts';

/** Looks up what to break in a drawing. Throws where it is not there. */
export function finder(d: Loose) {
  const one = <T>(list: readonly T[], is: (item: T) => boolean): T => {
    const found = list.find(is);
    if (found === undefined) throw new Error('nothing to break');
    return found;
  };
  const terminals = d.symbols.flatMap((s) => s.terminals);
  const label = (what: string, of: string) => one(d.labels, (l) => l.what === what && l.of === of);
  return {
    core: (id: string) => one(d.cores, (c) => c.id === id),
    symbol: (id: string) => one(d.symbols, (s) => s.id === id),
    terminal: (key: string) => one(terminals, (t) => t.key === key),
    label,
    without: (what: string, of: string) => d.labels.splice(d.labels.indexOf(label(what, of)), 1),
  };
}

export type Find = ReturnType<typeof finder>;
export type Break = (d: Loose, find: Find) => void;

/** A path from `x,y x,y`. */
export const route = (text: string): Point[] =>
  text.split(' ').map((p) => {
    const [x, y] = p.split(',').map(Number);
    return { x: x!, y: y! };
  });

export function shift(box: { x: number; y: number }, x: number, y: number): void {
  box.x += x;
  box.y += y;
}

/** Moves the upright pieces of a core from one x to another. */
function bend(core: Loose['cores'][number], from: number, to: number): void {
  for (const p of core.path) if (p.x === from) p.x = to;
}

const course = (f: Find, id: string, text: string): void => {
  f.core(id).path = route(text);
};

type Breaks = Readonly<Record<string, readonly [fault: RegExp, Break]>>;

const cores: Breaks = {
  'a core left out': [/^core 2\/0 is not drawn/, (d) => d.cores.splice(4, 1)],
  'a core drawn twice': [/^core 0\/0 is drawn twice/, (d) => d.cores.push(structuredClone(d.cores[0]!))],
  'a core of no run': [
    /^core 9\/0 is not in the plan/,
    (_, f) => Object.assign(f.core('3/0'), { id: '9/0' }),
  ],
  'a link as a core': [
    /^core 2\/0 has run, core or link wrong/,
    (_, f) => Object.assign(f.core('2/0'), { link: false }),
  ],
  'another end': [
    /^core 4\/0 joins P1.L to X1.N, not P1.L to X1.L/,
    (_, f) => {
      f.core('4/0').to = 'X1.N';
      course(f, '4/0', '80,340 190,340 190,360 200,360');
    },
  ],
  'a slanting piece': [/^core 4\/0 has a slanting/, (_, f) => course(f, '4/0', '80,340 150,350 200,340')],
  'a piece of no length': [
    /^core 4\/0 has a piece of no length/,
    (_, f) => course(f, '4/0', '80,340 150,340 150,340 200,340'),
  ],
  'a path of one point': [/^core 4\/0 has a path of 1 points/, (_, f) => course(f, '4/0', '80,340')],
  'a path that stops short': [
    /^core 4\/0 does not end on a port of X1.L/,
    (_, f) => course(f, '4/0', '80,340 190,340'),
  ],
  'a path from the wrong end': [
    /^core 4\/0 does not end on a port of P1.L/,
    (_, f) => course(f, '4/0', '200,340 80,340'),
  ],
};

const parts: Breaks = {
  'a tab of a gate left out': [
    /^terminal g2.NC is not drawn/,
    (_, f) => {
      f.symbol('g2').terminals.pop();
      f.without('mark', 'g2.NC');
    },
  ],
  'a terminal drawn twice': [
    /^terminal g1.NC is drawn 2 times/,
    (_, f) => {
      f.terminal('g2.NC').key = 'g1.NC';
      f.without('mark', 'g2.NC');
    },
  ],
  'a terminal that is none': [
    /^terminal H1.9 is drawn at H1, whose part has no such terminal/,
    (_, f) => f.symbol('H1').terminals.push({ key: 'H1.9', mark: '9', side: 'left', ports: route('400,95') }),
  ],
  'a port inside its symbol': [
    /^terminal g1.NC has a port at .* not on the (left|right) edge/,
    (_, f) => shift(f.terminal('g1.NC').ports[0]!, -5, 0),
  ],
  'a port on the other side': [
    /^terminal g1.NC has a port at .* not on the (left|right) edge/,
    (_, f) => shift(f.terminal('g1.NC').ports[0]!, -60, 0),
  ],
  'a terminal without ports': [/^terminal g1.NC has no port/, (_, f) => f.terminal('g1.NC').ports.pop()],
  'two terminals at one port': [
    /^terminals g1.NO and g1.NC share a port/,
    (_, f) => shift(f.terminal('g1.NC').ports[0]!, 0, -20),
  ],
  'a plugged part left out': [/^part M1 is not drawn/, (_, f) => f.symbol('X1').plugged.pop()],
  'a plugged part twice': [
    /^part M1 is plugged in twice/,
    (_, f) => f.symbol('X1').plugged.push(f.symbol('X1').plugged[0]!),
  ],
  'an unwired part left out': [/^part spare is not drawn/, (d) => d.symbols.splice(3, 1)],
  'a symbol of no part': [
    /^part Z9 is not in the plan/,
    (_, f) => Object.assign(f.symbol('spare'), { part: 'Z9' }),
  ],
  'two symbols by one id': [
    /^symbol g1 stands twice/,
    (_, f) => Object.assign(f.symbol('spare'), { id: 'g1' }),
  ],
  'one symbol over another': [
    /^symbols g1 and spare overlap/,
    (_, f) => shift(f.symbol('spare').box, -310, -140),
  ],
  'a joint over another symbol': [/^symbols J and H1 overlap/, (_, f) => shift(f.symbol('H1').box, -90, 0)],
  'a symbol out of the sheet': [
    /^symbol spare stands out of the sheet/,
    (_, f) => shift(f.symbol('spare').box, 40, 0),
  ],
  'a plugged part out of its outlet': [
    /^part M1 stands out of X1/,
    (_, f) => shift(f.symbol('X1').plugged[0]!.box, 30, 0),
  ],
};

const twin = (f: Find, change: { of?: string }) => ({ ...f.label('core', '3/0'), x: 350, ...change });

const labels: Breaks = {
  'a label over another': [
    /^label mark X1.N and label name M1 overlap/,
    (_, f) => shift(f.label('name', 'M1'), -11, -8),
  ],
  'a label out of the sheet': [
    /^label name spare stands out of the sheet/,
    (_, f) => shift(f.label('name', 'spare'), 40, 0),
  ],
  'a label over a symbol': [
    /^label core 4\/0 overlaps the symbol P1/,
    (_, f) => shift(f.label('core', '4/0'), -30, 0),
  ],
  'a name in its own symbol': [
    /^label name X1 overlaps the symbol X1/,
    (_, f) => shift(f.label('name', 'X1'), 0, 8),
  ],
  'a caption in a foreign symbol': [
    /^label caption spare overlaps the symbol H1/,
    (_, f) => Object.assign(f.label('caption', 'H1'), { of: 'spare' }),
  ],
  'a mark over a plugged part': [
    /^label mark X1.L overlaps the part M1/,
    (_, f) => shift(f.label('mark', 'X1.L'), 50, 0),
  ],
  'a core without a label': [/^label core 3\/0 stands 0 times, not 1/, (_, f) => f.without('core', '3/0')],
  'a core with two labels': [/^label core 3\/0 stands 2 times, not 1/, (d, f) => d.labels.push(twin(f, {}))],
  'a link with two labels': [
    /^label core 2\/0 stands 2 times, not 1/,
    (d, f) => d.labels.push(twin(f, { of: '2/0' }), { ...twin(f, { of: '2/0' }), x: 400 }),
  ],
  'a label of no core': [
    /^label core 7\/7 stands 1 times, not 0/,
    (d, f) => d.labels.push(twin(f, { of: '7/7' })),
  ],
  'a terminal without a mark': [
    /^label mark g1.NC stands 0 times, not 1/,
    (_, f) => f.without('mark', 'g1.NC'),
  ],
  'a symbol without a name': [/^label name g1 stands 0 times, not 1/, (_, f) => f.without('name', 'g1')],
  'a plugged part without a word': [/^part M1 has no label/, (_, f) => f.without('name', 'M1')],
  'a label without text': [
    /^label core 3\/0 is empty/,
    (_, f) => Object.assign(f.label('core', '3/0'), { text: ' ' }),
  ],
};

const clear: Breaks = {
  'a core through a symbol': [
    /^core 0\/1 passes through the symbol g1/,
    (_, f) => bend(f.core('0/1'), 140, 230),
  ],
  'a core along the edge of a symbol': [
    /^core 0\/1 passes through the symbol g1/,
    (_, f) => bend(f.core('0/1'), 140, 200),
  ],
  'a foreign core through a joint': [
    /^core 3\/0 passes through the symbol J/,
    (_, f) => bend(f.core('3/0'), 480, 325),
  ],
  'a core through a foreign label': [
    /^core 3\/0 passes through the label core 0\/1/,
    (_, f) => bend(f.core('3/0'), 170, 150),
  ],
  'a core through a mark': [
    /^core 3\/0 passes through the label mark H1.2/,
    (_, f) => shift(f.label('mark', 'H1.2'), 20, 0),
  ],
  'a core out of the sheet': [/^core 3\/0 leaves the sheet/, (_, f) => bend(f.core('3/0'), 480, 610)],
};

const meetings: Breaks = {
  'cores of different terminals on one line': [
    /^cores (0\/1 and 3\/0|3\/0 and 0\/1) lie over each other/,
    (_, f) => bend(f.core('3/0'), 170, 140),
  ],
  'cores of one terminal that merge on the way': [
    /^cores (1\/0 and 1\/1|1\/1 and 1\/0) lie over each other/,
    (_, f) => course(f, '1/0', '260,60 300,60 300,125 310,125 310,108 320,108'),
  ],
  'a core that turns back': [
    /^core 0\/1 lies over itself/,
    (_, f) => course(f, '0/1', '80,60 140,60 140,180 140,160 200,160'),
  ],
  'a core whose corners meet': [
    /^core 0\/1 touches itself/,
    (_, f) =>
      course(f, '0/1', '80,60 140,60 140,130 120,130 120,180 160,180 160,130 140,130 140,160 200,160'),
  ],
  'a corner on a foreign core': [
    /^core 3\/0 turns or ends on core 0\/1/,
    (_, f) => course(f, '3/0', '440,110 480,110 480,130 170,130 170,160 110,160 110,100 80,100'),
  ],
  'corners of cores of one terminal that meet': [
    /^core 1\/[01] turns or ends on core 1\/[01]/,
    (_, f) => {
      course(f, '1/0', '260,60 290,60 290,110 310,110 310,108 320,108');
      course(f, '1/1', '260,160 310,160 310,112 290,112 290,110 288,110 288,130 320,130 320,112');
    },
  ],
  'a core that runs on over the end of another': [
    /^cores 0\/0 and 0\/1 are one line as far as one of them goes/,
    (_, f) => course(f, '0/1', '80,60 200,60 200,36 190,36 190,160 200,160'),
  ],
  'a parting without a dot': [/^cores 0\/0 and 0\/1 part at .* without a dot/, (d) => d.dots.pop()],
  'a dot on a crossing': [/^dot at .* where no cores of one/, (d) => d.dots.push(...route('170,160'))],
  'a dot on a corner': [/^dot at .* where no cores of one/, (d) => d.dots.push(...route('290,60'))],
  'a dot on nothing': [/^dot at .* where no cores of one/, (d) => d.dots.push(...route('500,60'))],
  'a dot twice': [/^two dots at/, (d) => d.dots.push(...route('140,60'))],
};

const barrier: Breaks = {
  'a barrier through a symbol': [
    /^the barrier cuts the symbol P1/,
    (d) => Object.assign(d, { barrier: 330 }),
  ],
  'a barrier through a label': [
    /^the barrier cuts the label name P1/,
    (d) => Object.assign(d, { barrier: 310 }),
  ],
  'a core along the barrier': [/^core 3\/0 runs along/, (d) => Object.assign(d, { barrier: 240 })],
  'a barrier off the sheet': [/^the barrier is not on the sheet/, (d) => Object.assign(d, { barrier: 500 })],
  'a place that is no number': [
    /^core 3\/0 has a place that is no number/,
    (_, f) => Object.assign(f.core('3/0').path[2]!, { x: Number.NaN }),
  ],
};

/** Every broken rule: how it is broken, the fault, and the change that breaks it. */
export const breaks = [cores, parts, labels, clear, meetings, barrier].flatMap((group) =>
  Object.entries(group).map(([how, [fault, damage]]) => ({ how, fault, damage })),
);
