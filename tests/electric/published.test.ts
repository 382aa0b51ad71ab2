import { describe, expect, it } from 'vitest';
import type { Branch, Emf, Network, Phasor } from '../../src/electric/network.ts';
import { solveNetwork } from '../../src/electric/solve.ts';
import { denseSolve } from '../oracles/dense-network.ts';
import { less, over, size } from './compare.ts';
import { published } from './published.ts';
import type { Case, Elements, Figure, Item, Printed } from './published-item.ts';

/** ohm behind a driven current: so much more than any wire here that the current stays put to nine digits */
const STIFF = 1e9;

interface Built {
  network: Network;
  nodes: string[];
  /** element name -> its place among the branches or the sources */
  branch: Map<string, number>;
  emf: Map<string, number>;
}

function build(x: Elements & { hertz?: number }): Built {
  const omega = 2 * Math.PI * (x.hertz ?? 0);
  const nodes: string[] = [];
  const node = (name: string): number => {
    if (!nodes.includes(name)) nodes.push(name);
    return nodes.indexOf(name);
  };
  const branches: Branch[] = [];
  const emfs: Emf[] = [];
  const branch = new Map<string, number>();
  const emf = new Map<string, number>();
  const impede = (name: string, a: string, b: string, re: number, im: number): void => {
    branch.set(name, branches.push({ a: node(a), b: node(b), re, im }) - 1);
  };
  const hold = (name: string, a: string, b: string, re: number, ohms: number): void => {
    emf.set(name, emfs.push({ a: node(a), b: node(b), re, im: 0, ohms }) - 1);
  };
  for (const [n, [a, b, volts, ohms]] of Object.entries(x.emfs ?? {})) hold(n, a, b, volts, ohms ?? 0);
  for (const [n, [a, b, amps]] of Object.entries(x.held ?? {})) hold(n, a, b, amps * STIFF, STIFF);
  for (const [n, [a, b, ohms]] of Object.entries(x.resistors ?? {})) impede(n, a, b, ohms, 0);
  for (const [n, [a, b, henry]] of Object.entries(x.inductors ?? {})) impede(n, a, b, 0, omega * henry);
  for (const [n, [a, b, farad]] of Object.entries(x.capacitors ?? {}))
    impede(n, a, b, 0, -1 / (omega * farad));
  for (const [n, [a, b, re, im]] of Object.entries(x.impedances ?? {})) impede(n, a, b, re, im);
  return { network: { nodes: nodes.length, branches, emfs, valves: [] }, nodes, branch, emf };
}

interface Volts {
  re: ArrayLike<number>;
  im: ArrayLike<number>;
  emfAmps: readonly Phasor[];
}

const degrees = (p: Phasor): number => (Math.atan2(p.im, p.re) * 180) / Math.PI;

class Measured {
  private readonly built: Built;
  private readonly solution: Volts;
  private readonly item: Item;
  private readonly alternating: boolean;
  constructor(item: Item, variant: Case, solve: (n: Network) => Volts) {
    this.item = item;
    this.alternating = variant.hertz !== undefined;
    this.built = build(variant);
    this.solution = solve(this.built.network);
  }
  private at(n: number): Phasor {
    return { re: this.solution.re[n]!, im: this.solution.im[n]! };
  }
  private place(name: string): { element: Branch | Emf; source: number | undefined } {
    const { network, branch, emf } = this.built;
    const source = emf.get(name);
    const element = source === undefined ? network.branches[branch.get(name)!] : network.emfs[source];
    if (!element) throw new Error(`no element ${name}`);
    return { element, source };
  }
  volts(name: string): Phasor {
    const { a, b } = this.place(name).element;
    return less(this.at(a), this.at(b));
  }
  amps(name: string): Phasor {
    const { element, source } = this.place(name);
    return source === undefined ? over(this.volts(name), element) : this.solution.emfAmps[source]!;
  }
  /** volts times the conjugate of amperes: watts + j VAR */
  power(name: string): Phasor {
    if (name === 'given') return this.sum(this.built.emf);
    if (name === 'taken') return this.sum(this.built.branch);
    const [v, i] = [this.volts(name), this.amps(name)];
    return { re: v.re * i.re + v.im * i.im, im: v.im * i.re - v.re * i.im };
  }
  private sum(names: Map<string, number>): Phasor {
    const all = [...names.keys()].map((n) => this.power(n));
    return { re: all.reduce((s, p) => s + p.re, 0), im: all.reduce((s, p) => s + p.im, 0) };
  }
  node(name: string): number {
    const { nodes } = this.built;
    const against = nodes.indexOf(this.item.reference ?? '');
    if (against < 0 || !nodes.includes(name)) throw new Error(`no node ${name} or no reference`);
    return less(this.at(nodes.indexOf(name)), this.at(against)).re;
  }
  signed(p: Phasor): number {
    return this.alternating ? size(p) : p.re;
  }
}

const quantities: Record<keyof Printed, (m: Measured, name: string) => number> = {
  nodes: (m, n) => m.node(n),
  volts: (m, n) => m.signed(m.volts(n)),
  amps: (m, n) => m.signed(m.amps(n)),
  ampsReal: (m, n) => m.amps(n).re,
  ampsImaginary: (m, n) => m.amps(n).im,
  watts: (m, n) => m.power(n).re,
  vars: (m, n) => m.power(n).im,
  voltAmperes: (m, n) => size(m.power(n)),
  factor: (m, n) => m.power(n).re / size(m.power(n)),
  ohms: (m, n) => size(m.volts(n)) / size(m.amps(n)),
  phaseOfVolts: (m, n) => degrees(m.volts(n)),
  phaseOfAmps: (m, n) => degrees(m.amps(n)),
  lag: (m, n) => degrees(over(m.volts(n), m.amps(n))),
};

const PREFIX: Record<string, number> = { '': 1, m: 1e-3, k: 1e3 };

/** Value and half a unit of the last printed digit, in the base unit. */
function readFigure(figure: Figure): { value: number; half: number } {
  const unit = (typeof figure === 'string' ? figure : figure.printed).split(' ')[1] ?? '';
  const text = typeof figure === 'string' ? figure.split(' ')[0]! : figure.recomputed;
  const found = /^-?\d+(?:\.(\d+))?(?:e(-?\d+))?$/.exec(text);
  const prefix = /^([mk]?)(?:A|V|W|VA|VAR|ohm|deg|)$/.exec(unit);
  if (!found || !prefix) throw new Error(`not a figure: ${text} ${unit}`);
  const scale = PREFIX[prefix[1]!]!;
  const last = 10 ** (Number(found[2] ?? 0) - (found[1]?.length ?? 0));
  return { value: Number(text) * scale, half: (last / 2) * scale };
}

/** The circuit of an item in one state. */
function variantOf(item: Item, state: Case): Case {
  const merge = (key: keyof Elements): object => ({ [key]: { ...item[key], ...state[key] } });
  const kinds = ['emfs', 'held', 'resistors', 'inductors', 'capacitors', 'impedances'] as const;
  return Object.assign({}, item, state, ...kinds.map(merge)) as Case;
}

const variants = Object.values(published).flatMap((items) =>
  items.flatMap((item) =>
    Object.entries(item.cases ?? { '': item }).map(([name, state]) => ({
      name: [item.id, name, item.source.title, item.source.edition, item.source.where]
        .filter(Boolean)
        .join(', '),
      item,
      state,
      variant: variantOf(item, state),
    })),
  ),
);

function dense(n: Network): Volts {
  const found = denseSolve(n);
  if (!found) throw new Error('the oracle found nothing');
  return found;
}

function solver(n: Network): Volts {
  const found = solveNetwork(n);
  expect([found.conflict, found.settled]).toEqual([undefined, true]);
  return found;
}

describe.each([
  ['the solver', solver],
  ['the dense solve it is judged by', dense],
] as const)('%s meets printed answers', (_, solve) => {
  it.each(variants)('$name', ({ item, state, variant }) => {
    const m = new Measured(item, variant, solve);
    let compared = 0;
    for (const key of Object.keys(quantities) as (keyof Printed)[]) {
      for (const [name, figure] of Object.entries(state[key] ?? {})) {
        const { value, half } = readFigure(figure);
        const got = quantities[key](m, name);
        // a hair more than half a unit, for answers that lie exactly there and were rounded up
        const near = Math.abs(got - value) <= half * (1 + 1e-6);
        expect([key, name, figure, got, near]).toEqual([key, name, figure, got, true]);
        compared++;
      }
    }
    expect(compared).toBeGreaterThan(0);
  });
});
