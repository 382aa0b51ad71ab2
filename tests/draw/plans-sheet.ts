/** A plan being written: parts, runs and intent line by line, with the data of parts that drawings do not depend on. */
export type Roll = () => number;

export const pick = <T>(roll: Roll, list: readonly T[]): T => list[Math.floor(roll() * list.length)]!;
export const between = (roll: Roll, least: number, most: number): number =>
  least + Math.floor(roll() * (most - least + 1));
/** True about once in `n` times. */
export const oneIn = (roll: Roll, n: number): boolean => roll() < 1 / n;

const CONTACT = 'contact: {ratings: [10 A 250 V AC, 5 A 30 V DC]}';

/** Data of parts by kind, without the kind's own extras. */
export const data = {
  supply: (output: string) =>
    `{kind: supply, output: ${output}, limit: ${output.endsWith('AC') ? '40 VA' : '1 A'}, class-2: true}`,
  battery: '{kind: battery, output: 12 V DC, lowest: 11 V, highest: 13.8 V}',
  gate: (shut: boolean) => `{kind: gate, pressed-when: ${shut ? 'shut' : 'open'}, ${CONTACT}}`,
  contact: (kind: 'switch' | 'button' | 'cutout') => `{kind: ${kind}, ${CONTACT}}`,
  selector: `{kind: selector, positions: [auto, off, hand], rest: auto, ${CONTACT}}`,
  relay: (volts: string, poles?: string) => `{kind: relay, ${coil(volts)}, ${CONTACT}${polesText(poles)}}`,
  timer: (volts: string) => `{kind: timer, function: off-delay, time: 5 s, ${coil(volts)}, ${CONTACT}}`,
  board: `{kind: board, supply: 12 V DC, input: low, input-current: 4 mA, ${CONTACT}}`,
  diode: '{kind: diode, current: 1 A, reverse: 400 V}',
  led: '{kind: led, forward: 2 V, current: 10 mA}',
  resistor: '{kind: resistor, resistance: 1000 ohm}',
  lamp: (volts: string) => `{kind: lamp, rated: ${volts} 1 W}`,
  fuse: '{kind: fuse, rating: 1 A}',
  joint: '{kind: joint}',
} as const;

function coil(volts: string): string {
  return `coil: {rated: ${volts}, ${volts.endsWith('AC') ? 'power: 7 VA' : 'power: 1 W'}}`;
}

const POLES = {
  two: [
    ['1', '2'],
    ['3', '4'],
  ],
  three: [
    ['1', '2'],
    ['3', '4'],
    ['5', '6'],
  ],
} as const;

function polesText(poles: string | undefined): string {
  return poles === undefined ? '' : `, poles: [${poles}]`;
}

/** Poles that make, with an auxiliary pole on request. */
export function makingPoles(count: 2 | 3, auxiliary = false): string {
  const main = POLES[count === 2 ? 'two' : 'three'].map(([a, b]) => `{form: make, marks: [${a}, ${b}]}`);
  return [...main, ...(auxiliary ? ['{form: make, marks: [13, 14]}'] : [])].join(', ');
}

const COLOURS = ['red', 'white', 'black', 'yellow', 'blue', 'violet', 'grey', 'orange'];
const WIDE = [
  '赤',
  '黄緑',
  'зелёно-жёлтый',
  '白／黒の縞模様',
  'blå',
  '녹색',
  'أحمر',
  'ø',
  'fjällgrön med streck',
];

/** A plan text in the making. */
export class Plot {
  readonly roll: Roll;
  /** core colours in wide and other letters */
  readonly wide: boolean;
  readonly #parts: string[] = [];
  readonly #runs: string[] = [];
  readonly #intents: string[] = [];
  /** terminals that cores may be put on later, by side */
  readonly low: string[] = [];
  readonly mains: string[] = [];

  constructor(roll: Roll, wide: boolean) {
    this.roll = roll;
    this.wide = wide;
  }

  part(name: string, text: string): string {
    this.#parts.push(`${name}: ${text}`);
    return name;
  }

  joint(name: string): string {
    return this.part(name, data.joint);
  }

  /** A cable with a core for each pair of terminals, or a jumper where only one is wanted and chance has it. */
  run(...pairs: readonly (readonly [string, string])[]): void {
    if (pairs.length === 1 && oneIn(this.roll, 3)) this.link(...pairs[0]!);
    else this.#cable('bell', pairs);
  }

  cable(...pairs: readonly (readonly [string, string])[]): void {
    this.#cable('bell', pairs);
  }

  flex(...pairs: readonly (readonly [string, string])[]): void {
    this.mains.push(...pairs.flat());
    this.#cable('flex', pairs);
  }

  link(a: string, b: string): void {
    this.low.push(a, b);
    this.#runs.push(`{link: ['${a}', '${b}']}`);
  }

  #cable(cable: 'bell' | 'flex', pairs: readonly (readonly [string, string])[]): void {
    if (cable === 'bell') this.low.push(...pairs.flat());
    const from = this.wide ? WIDE : COLOURS;
    const first = Math.floor(this.roll() * from.length);
    const cores = pairs.map(([a, b], i) => `"${from[(first + i) % from.length]}": ['${a}', '${b}']`);
    this.#runs.push(
      `{cable: ${cable}, length: ${between(this.roll, 1, 12)} m, cores: {${cores.join(', ')}}}`,
    );
  }

  intent(text: string): void {
    this.#intents.push(text);
  }

  text(title: string): string {
    const rows = (list: readonly string[], lead: string): string[] => list.map((x) => `  ${lead}${x}`);
    return [
      'format: 1',
      `title: ${title}`,
      'stock:',
      '  bell: {kind: cable, gauge: 0.75 mm2, cores: 8, insulation: 300 V}',
      '  flex: {kind: cable, gauge: 2.5 mm2, cores: 5, insulation: 750 V, flexible: true}',
      'parts:',
      ...rows(this.#parts, ''),
      'runs:',
      ...rows(this.#runs, '- '),
      ...(this.#intents.length === 0 ? [] : ['intent:', ...rows(this.#intents, '')]),
      '',
    ].join('\n');
  }
}
