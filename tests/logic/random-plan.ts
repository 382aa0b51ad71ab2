/**
 * Whole plans from a tape of small numbers. Each choice takes the next number; past the end every choice is the
 * plainest one, so that a shorter tape, and smaller numbers on it, give a plainer plan.
 */
type Pick = (n: number) => number;

const SWITCHES = ['gate', 'gate', 'gate', 'shut', 'switch', 'button', 'cutout', 'selector'] as const;
type Kind = (typeof SWITCHES)[number];

interface Input {
  readonly name: string;
  readonly kind: Kind;
}

const STOCK = `format: 1
stock:
  wire: {kind: cable, gauge: 14 AWG, cores: 3, insulation: 600 V}
  small:
    kind: relay
    coil: {rated: 12 V DC, power: 1 W, most: 130 %, suppressor: none}
    contact: {ratings: [30 A 240 V AC, 10 A 30 V DC], motor: [2 hp 120 V AC]}
  snap: {kind: gate, pressed-when: open, contact: {ratings: [5 A 250 V AC, 3 A 30 V DC]}}
`;

class Builder {
  readonly parts: string[] = [];
  readonly joins: [string, string][] = [];
  readonly inputs: Input[] = [];
  readonly nodes: string[] = [];
  readonly poles: string[][] = [];
  dc = true;
  private made = 0;

  constructor(readonly pick: Pick) {}

  one<T>(list: readonly T[]): T {
    return list[this.pick(list.length)]!;
  }
  node(): string {
    const name = `n${this.made++}`;
    this.parts.push(`${name}: {kind: joint}`);
    this.nodes.push(name);
    return name;
  }
  join(a: string, b: string): void {
    if (a !== b) this.joins.push([a, b]);
  }
  input(kind: Kind): Input {
    const name = `i${this.inputs.length}`;
    const made = { name, kind };
    this.inputs.push(made);
    if (kind === 'gate') this.parts.push(`${name}: {from: snap}`);
    else if (kind === 'shut') this.parts.push(`${name}: {from: snap, pressed-when: shut}`);
    else if (kind === 'selector')
      this.parts.push(`${name}: {kind: selector, positions: [auto, off, hand], rest: auto}`);
    else this.parts.push(`${name}: {kind: ${kind}}`);
    return made;
  }
  /** the contact that closes in the working position, or the one that opens */
  contact(x: Input, make: boolean): [string, string] {
    if (x.kind === 'selector') return [`${x.name}.COM`, `${x.name}.${make ? 'hand' : 'auto'}`];
    return [`${x.name}.COM`, `${x.name}.${make === (x.kind !== 'shut') ? 'NO' : 'NC'}`];
  }
  pole(relay: number): string {
    const list = this.poles[relay]!;
    list.push('{form: changeover}');
    return `K${relay}.${list.length}`;
  }
  between(from: string, [a, b]: [string, string], to: string): void {
    const turned = this.pick(2) === 1;
    this.join(from, turned ? b : a);
    this.join(turned ? a : b, to);
  }
  element(kind: 'diode' | 'lamp', from: string, to: string, ohms = 240): void {
    const name = `e${this.made++}`;
    this.parts.push(
      `${name}: ${kind === 'diode' ? '{kind: diode}' : `{kind: lamp, resistance: ${ohms} ohm}`}`,
    );
    if (kind === 'diode') this.between(from, [`${name}.A`, `${name}.K`], to);
    else this.between(from, [`${name}.1`, `${name}.2`], to);
  }
  leaf(from: string, to: string): void {
    const what = this.pick(10);
    if (what < 7) this.between(from, this.contact(this.one(this.inputs), this.pick(4) !== 3), to);
    else if (what === 9 && this.dc) this.element('diode', from, to);
    else {
      const p = this.pole(this.pick(this.poles.length));
      this.between(from, [`${p}.COM`, `${p}.${this.pick(3) === 2 ? 'NC' : 'NO'}`], to);
    }
  }
  network(from: string, to: string, depth: number): void {
    const shape = depth <= 0 ? 0 : this.pick(10);
    if (shape < 2) this.leaf(from, to);
    else if (shape < 5) {
      this.network(from, to, depth - 1);
      this.network(from, to, depth - 1);
    } else if (shape < 7) {
      const mid = this.node();
      this.network(from, mid, depth - 1);
      this.network(mid, to, depth - 1);
    } else if (shape === 7) this.bridge(from, to);
    else if (shape === 8) this.changeover(from, to);
    else {
      const mid = this.node();
      this.element('lamp', from, mid, this.one([10, 40, 240, 2000]));
      this.network(mid, to, depth - 1);
    }
  }
  bridge(from: string, to: string): void {
    const a = this.node();
    const b = this.node();
    for (const [x, y] of [
      [from, a],
      [from, b],
      [a, b],
      [a, to],
      [b, to],
    ] as const)
      this.leaf(x, y);
  }
  changeover(from: string, to: string): void {
    const x = this.one(this.inputs);
    const y = this.one(this.inputs);
    const p = this.node();
    const q = this.node();
    const turned = this.pick(2) === 1;
    this.join(from, `${x.name}.COM`);
    this.join(this.contact(x, true)[1], p);
    this.join(this.contact(x, false)[1], q);
    this.join(this.contact(y, true)[1], turned ? q : p);
    this.join(this.contact(y, false)[1], turned ? p : q);
    this.join(`${y.name}.COM`, to);
  }
}

const working = (x: Input): string => (x.kind === 'selector' ? `${x.name}.hand` : x.name);
const list = (names: readonly string[]): string => `[${names.join(', ')}]`;

/** A plan whose wiring comes from what it is meant to do; `spoil` mistakes are then made. */
function tidy(b: Builder): string[] {
  const callers = Array.from({ length: 1 + b.pick(4) }, () =>
    b.input(b.one(['gate', 'shut', 'switch', 'button'] as const)),
  );
  const blockers = Array.from({ length: b.pick(3) }, () =>
    b.input(b.one(['cutout', 'button', 'switch'] as const)),
  );
  const entries: Input[][] = [];
  for (const x of callers) {
    const last = entries.at(-1);
    if (last && b.pick(4) === 3) last.push(x);
    else entries.push([x]);
  }
  const seal = b.pick(5) === 4 ? b.input('button') : undefined;
  const stop = seal ? b.input('button') : undefined;
  let feed = b.node();
  b.join('plus', feed);
  for (const x of [...blockers, ...(stop ? [stop] : [])]) {
    const next = b.node();
    b.between(feed, b.contact(x, x.kind === 'switch'), next);
    feed = next;
  }
  const coil = b.node();
  for (const entry of entries) {
    let at = feed;
    entry.forEach((x, i) => {
      const next = i === entry.length - 1 ? coil : b.node();
      b.between(at, b.contact(x, true), next);
      at = next;
    });
  }
  if (seal) {
    const p = b.pole(0);
    b.between(feed, b.contact(seal, true), coil);
    b.between(feed, [`${p}.COM`, `${p}.NO`], coil);
    if (entries.length > 0 && b.pick(2) === 1) b.element('lamp', coil, 'minus');
  }
  b.join(coil, 'K0.A1');
  b.join('K0.A2', 'minus');
  if (b.poles.length > 1) {
    const p = b.pole(0);
    const mid = b.node();
    b.between('plus', [`${p}.COM`, `${p}.NO`], mid);
    b.join(mid, 'K1.A1');
    b.join('K1.A2', 'minus');
  }
  if (b.pick(3) === 2) b.element('lamp', coil, 'minus');
  const on = entries.map((e) => (e.length === 1 ? working(e[0]!) : list(e.map(working))));
  const fields = [`runs-on: ${list(on)}`];
  if (blockers.length > 0) fields.push(`blocked-by: ${list(blockers.map((x) => x.name))}`);
  if (seal) fields.push(`stays-on-after: ${seal.name}`, `stopped-by: ${stop!.name}`);
  return fields;
}

function wild(b: Builder): string[] | undefined {
  const count = 1 + b.pick(6);
  for (let i = 0; i < count; i++) b.input(b.one(SWITCHES));
  for (let k = 0; k < b.poles.length; k++) {
    const a = b.node();
    b.network('plus', a, 1 + b.pick(3));
    b.join(a, `K${k}.A1`);
    if (b.pick(5) === 4) {
      const m = b.node();
      b.join(`K${k}.A2`, m);
      b.network(m, 'minus', b.pick(2));
    } else b.join(`K${k}.A2`, 'minus');
    if (b.pick(4) === 3) b.element('lamp', a, 'minus');
  }
  if (b.pick(6) === 5) b.element('lamp', b.one([...b.nodes, 'plus']), b.one(['minus', ...b.nodes]));
  if (b.pick(3) === 0) return undefined;
  const mayCall = b.inputs.filter((x) => x.kind !== 'cutout');
  const on = mayCall.filter(() => b.pick(3) !== 2).map(working);
  const rest = b.inputs.filter((x) => x.kind !== 'gate' && x.kind !== 'shut' && !on.includes(working(x)));
  const blocked = rest
    .filter(() => b.pick(2) === 0)
    .map((x) => (x.kind === 'selector' ? `${x.name}.off` : x.name));
  if (on.length === 0) return undefined;
  return [`runs-on: ${list(on)}`, ...(blocked.length > 0 ? [`blocked-by: ${list(blocked)}`] : [])];
}

/** Two ends of two cores changed over, an end elsewhere, a core more or a core less. */
function spoil(b: Builder): void {
  const at = b.pick(b.joins.length);
  const other = b.pick(b.joins.length);
  switch (b.pick(4)) {
    case 0: {
      const [x, y] = [b.joins[at]!, b.joins[other]!];
      if (x[1] === y[0] || y[1] === x[0]) return;
      b.joins[at] = [x[0], y[1]];
      b.joins[other] = [y[0], x[1]];
      return;
    }
    case 1:
      b.joins.splice(at, 1);
      return;
    case 2:
      b.join(b.joins[at]![0], b.joins[other]![1]);
      return;
    default:
      for (const end of [0, 1] as const) {
        const ref = b.joins[at]![end];
        if (!/\.(NO|NC)$/.test(ref)) continue;
        b.joins[at]![end] = ref.endsWith('NO') ? ref.replace(/NO$/, 'NC') : ref.replace(/NC$/, 'NO');
        return;
      }
  }
}

export function randomPlan(tape: readonly number[]): string {
  let at = 0;
  const b = new Builder((n) => (tape[at++] ?? 0) % n);
  const isTidy = b.pick(3) < 2;
  // An AC loop has no diodes: half waves are not what is compared here.
  const ac = b.pick(10) === 9;
  const feed = b.pick(8) === 7 ? ', fed-from: P1' : b.pick(20) === 19 ? ', fed-from: X1' : '';
  b.dc = !ac;
  const poles = ac ? ['PS1.~1', 'PS1.~2'] : ['PS1.+', 'PS1.-'];
  const relays = 1 + (b.pick(3) === 2 ? 1 : 0) + (b.pick(12) === 11 ? 1 : 0);
  const coils = Array.from({ length: relays }, () => b.pick(4));
  for (let k = 0; k < relays; k++) b.poles.push([]);
  const fields = isTidy ? tidy(b) : wild(b);
  if (isTidy)
    for (let k = 2; k < relays; k++) {
      b.join('plus', `K${k}.A1`);
      b.join('minus', `K${k}.A2`);
    }
  const crossed = b.pick(12) === 11;
  b.join(poles[crossed ? 1 : 0]!, 'plus');
  b.join(poles[crossed ? 0 : 1]!, 'minus');
  const last = isTidy && relays > 1 ? 1 : b.pick(relays);
  const main = b.pole(last);
  const tab = b.pick(8) === 7 ? 'NC' : 'NO';
  b.join('P1.L', `${main}.COM`);
  b.join(`${main}.${tab}`, 'X1.L');
  b.join('P1.N', 'X1.N');
  b.join('P1.PE', 'X1.PE');
  if (!ac && b.pick(3) === 0) {
    b.element('diode', 'minus', 'K0.A1');
  }
  const mistakes = [0, 0, 0, 1, 2][b.pick(5)]!;
  for (let i = 0; i < mistakes; i++) spoil(b);
  const target = b.pick(4) === 3 ? `K${last}` : 'fan';
  // In a plan with no intent every gate starts the load; a tidy plan says so where it has gates alone.
  const runs = b.joins.map(([x, y]) => `  - {cable: wire, length: 1 m, cores: {red: [${x}, ${y}]}}`);
  const relayLines = b.poles.map((own, k) => {
    const c = ac
      ? ', coil: {rated: 24 V AC, power: 2 VA, suppressor: none}'
      : coils[k]! === 3
        ? ', coil: {suppressor: diode}'
        : '';
    return `  K${k}: {from: small${c}, poles: ${list(own.length > 0 ? own : ['{form: changeover}'])}}`;
  });
  return [
    `${STOCK}parts:`,
    ac
      ? `  PS1: {kind: supply, output: 24 V AC, limit: 60 VA, regulation: transformer, class-2: true${feed}}`
      : `  PS1: {kind: supply, output: 12 V DC, limit: 3 A, regulation: regulated, class-2: true${feed}}`,
    '  plus: {kind: joint}',
    '  minus: {kind: joint}',
    ...relayLines,
    ...b.parts.map((p) => `  ${p}`),
    '  P1: {kind: plug, pattern: NEMA 5-20, breaker: 20 A, volts: 120 V AC}',
    '  X1: {kind: outlet, pattern: NEMA 5-20}',
    '  fan: {kind: motor, power: 1 hp, volts: 120 V AC, amps: 10 A, plugged-into: X1}',
    'runs:',
    ...runs,
    ...(fields ? ['intent:', `  ${target}: {${fields.join(', ')}}`] : []),
    '',
  ].join('\n');
}
