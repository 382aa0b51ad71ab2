/** Writes one drawn gate loop as plan text (format 1). */
import type { SourceKind } from './random-loop-parts.ts';

export interface Way {
  cable: number;
  length: string;
  /** a bare jumper in place of the cable */
  link: boolean;
}

export interface Gate {
  shut: boolean;
  contact: string;
  feeds: 'K1' | 'K2' | 'both';
  /** 0..1, chooses what it hangs on in a mixed loop */
  parent: number;
  way: Way;
}

export interface Draw {
  kind: SourceKind;
  source: string;
  practice: string;
  ambient: number | null;
  cables: string[];
  gates: Gate[];
  /** part text of each coil */
  relays: string[];
  shape: 'chain' | 'star' | 'ring' | 'mixed';
  closing: Way;
  fuse: boolean;
  cutout: 'none' | 'numbers' | 'tabs';
  stop: 'none' | 'button' | 'switch';
  indicator: 'none' | 'lamp' | 'led' | 'led and resistor';
  lamp: string;
  led: string;
  resistor: string;
  diode: 'none' | 'beside' | 'inside';
  /** contact data of the cut-out and of the stop */
  inLine: [string, string];
  hops: Way[];
}

/** Terminals a gate's switch joins when the gate is open, or the two joints where a line begins. */
type Pair = readonly [string, string];
type Join = (a: string, b: string) => string;

const core = (w: Way, ends: readonly Pair[]): string => {
  const colours = ['red', 'white'];
  const cores = ends.map(([a, b], i) => `${colours[i]}: [${a}, ${b}]`).join(', ');
  return `  - {cable: w${w.cable}, length: ${w.length}, cores: {${cores}}}`;
};

const tab = (d: Draw, i: number): string => `g${i + 1}.${d.gates[i]!.shut ? 'NC' : 'NO'}`;

/** Runs of the gates that share one call line, in the loop's shape. */
function branch(d: Draw, members: readonly number[], home: Pair): string[] {
  const pairs: Pair[] = members.map((i) => [`g${i + 1}.COM`, tab(d, i)]);
  const link = (w: Way, from: Pair, to: Pair): string =>
    core(w, [
      [from[0], to[0]],
      [from[1], to[1]],
    ]);
  const runs = members.map((i, k) => {
    const { parent, way: w } = d.gates[i]!;
    const on = d.shape === 'star' ? 0 : d.shape === 'mixed' ? Math.floor(parent * (k + 1)) : k;
    return link(w, on === 0 ? home : pairs[on - 1]!, pairs[k]!);
  });
  const last = pairs.at(-1);
  return d.shape === 'ring' && last && pairs.length > 1 ? [...runs, link(d.closing, last, home)] : runs;
}

/** The source's feed through fuse, cut-out and stop to the joint `plus`. */
function feed(d: Draw, join: Join, first: string): string[] {
  const steps: Pair[] = [];
  if (d.fuse) steps.push(['F1.1', 'F1.2']);
  if (d.cutout !== 'none') steps.push(d.cutout === 'tabs' ? ['bin.COM', 'bin.NC'] : ['bin.95', 'bin.96']);
  if (d.stop !== 'none') steps.push(['stop.COM', 'stop.NC']);
  let from = first;
  const runs = steps.map(([into, out]) => {
    const run = join(from, into);
    from = out;
    return run;
  });
  return [...runs, join(from, 'plus')];
}

function sharedGate(d: Draw, join: Join, i: number): string[] {
  const [a, b] = [`D${i + 1}a`, `D${i + 1}b`];
  return [
    core(d.gates[i]!.way, [
      ['plus', `g${i + 1}.COM`],
      [tab(d, i), `${a}.A`],
    ]),
    join(`${a}.A`, `${b}.A`),
    `  - {link: [${a}.K, line1]}`,
    join(`${b}.K`, 'line2'),
  ];
}

function indicatorRuns(d: Draw, join: Join): string[] {
  if (d.indicator === 'none') return [];
  if (d.indicator === 'lamp') return [join('line1', 'H1.1'), join('H1.2', 'minus')];
  const front = d.indicator === 'led' ? [] : [join('line1', 'R1.1')];
  return [...front, join(d.indicator === 'led' ? 'line1' : 'R1.2', 'H1.A'), join('H1.K', 'minus')];
}

function partLines(d: Draw, members: (feeds: Gate['feeds']) => number[]): string[] {
  const diode = '{kind: diode, current: 1 A, reverse: 400 V}';
  const lines = [`S1: ${d.source}`, 'plus: {kind: joint}', 'minus: {kind: joint}'];
  d.relays.forEach((r, i) => {
    lines.push(`K${i + 1}: ${r}`, `line${i + 1}: {kind: joint}`);
    if (d.diode === 'beside') lines.push(`D0${i + 1}: ${diode}`);
  });
  d.gates.forEach((g, i) => {
    lines.push(`g${i + 1}: {kind: gate, pressed-when: ${g.shut ? 'shut' : 'open'}, contact: ${g.contact}}`);
  });
  for (const i of members('both')) lines.push(`D${i + 1}a: ${diode}`, `D${i + 1}b: ${diode}`);
  if (d.fuse) lines.push('F1: {kind: fuse, rating: 1 A}');
  if (d.cutout !== 'none') lines.push(`bin: {kind: cutout, contact: ${d.inLine[0]}}`);
  if (d.stop !== 'none') lines.push(`stop: {kind: ${d.stop}, contact: ${d.inLine[1]}}`);
  if (d.indicator !== 'none') lines.push(`H1: ${d.indicator === 'lamp' ? d.lamp : d.led}`);
  if (d.indicator === 'led and resistor') lines.push(`R1: ${d.resistor}`);
  return lines.map((l) => `  ${l}`);
}

function runLines(d: Draw, members: (feeds: Gate['feeds']) => number[]): string[] {
  let used = 0;
  const join: Join = (a, b) => {
    const w = d.hops[used++]!;
    return w.link ? `  - {link: [${a}, ${b}]}` : core(w, [[a, b]]);
  };
  const [p, n] = d.kind === 'transformer' ? ['~1', '~2'] : ['+', '-'];
  const coils = d.relays.flatMap((_, i) => {
    const k = `K${i + 1}`;
    const beside = [`  - {link: [D0${i + 1}.K, ${k}.A1]}`, `  - {link: [D0${i + 1}.A, ${k}.A2]}`];
    return [
      join(`line${i + 1}`, `${k}.A1`),
      join(`${k}.A2`, 'minus'),
      ...(d.diode === 'beside' ? beside : []),
    ];
  });
  return [
    ...feed(d, join, `S1.${p}`),
    join('minus', `S1.${n}`),
    ...coils,
    ...branch(d, members('K1'), ['plus', 'line1']),
    ...branch(d, members('K2'), ['plus', 'line2']),
    ...members('both').flatMap((i) => sharedGate(d, join, i)),
    ...indicatorRuns(d, join),
  ];
}

/** The plan of a draw. */
export function planText(d: Draw): string {
  const members = (feeds: Gate['feeds']): number[] =>
    d.gates.flatMap((g, i) => (g.feeds === feeds ? [i] : []));
  const blocks = [d.cutout === 'none' ? [] : ['bin'], d.stop === 'button' ? ['stop'] : []].flat();
  const intents = d.relays.map((_, i) => {
    const k = i === 0 ? 'K1' : 'K2';
    const gates = d.gates.flatMap((g, j) => (g.feeds === k || g.feeds === 'both' ? [`g${j + 1}`] : []));
    const blocked = blocks.length > 0 ? `, blocked-by: [${blocks.join(', ')}]` : '';
    return `  ${k}: {runs-on: [${gates.join(', ')}]${blocked}}`;
  });
  const lines = ['format: 1', `practice: ${d.practice}`];
  if (d.ambient !== null) lines.push(`ambient: ${d.ambient} °C`);
  lines.push('stock:', ...d.cables.map((c, i) => `  w${i + 1}: ${c}`));
  lines.push('parts:', ...partLines(d, members), 'runs:', ...runLines(d, members), 'intent:', ...intents);
  return `${lines.join('\n')}\n`;
}
