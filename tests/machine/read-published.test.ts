import { describe, expect, it } from 'vitest';
import type { Plan } from '../../src/plan/plan.ts';
import { published } from '../electric/published.ts';
import type { Case, Elements, Figure, Item } from '../electric/published-item.ts';
import { across, dead, planOf, tables } from '../helpers/plan-of.ts';

/**
 * Printed circuits typed as plans: a battery each source, a joint each node. A driven current is no battery and no ohm
 * is no resistor, so items with either are typed by hand below or left out, and so is what alternates.
 */
const items = [...published.network, ...published.battery, ...published.wire];

/** A millimetre of this is a tenth of a microhm: no printed figure feels it. */
const THICK = '{kind: cable, gauge: 240 mm2, cores: 1}';
const METRES = 1e-3;

/** Part names may not differ only in case, as the small r of an inner resistance does. */
const typedName = (element: string) => (/^[a-z]\d*$/.test(element) ? `inner-${element}` : element);
const joint = (node: string) => `n-${node}`;

/** Each element gets a core at its first terminal, which tells its current; its second end is linked. */
function typed(x: Elements): { plan: Plan; cores: string[] } {
  const parts: string[] = [];
  const runs: string[] = [];
  const nodes = new Set<string>();
  const cores: string[] = [];
  const put = (element: string, spec: string, ends: readonly [string, string], a: string, b: string) => {
    const name = typedName(element);
    parts.push(`  ${name}: ${spec}`);
    for (const n of [a, b]) nodes.add(n);
    cores.push(element);
    runs.push(`  - {cable: ${THICK}, length: ${METRES} m, cores: {red: [${joint(a)}, ${name}.${ends[0]}]}}`);
    runs.push(`  - {link: [${name}.${ends[1]}, ${joint(b)}]}`);
  };
  for (const [name, [a, b, volts, ohms]] of Object.entries(x.emfs ?? {})) {
    const spec = `{kind: battery, output: ${volts} V DC, internal-resistance: ${ohms ?? 0} ohm}`;
    put(name, spec, ['+', '-'], a, b);
  }
  for (const [name, [a, b, ohms]] of Object.entries(x.resistors ?? {}))
    put(name, `{kind: resistor, resistance: ${ohms} ohm}`, ['1', '2'], a, b);
  for (const n of nodes) parts.push(`  ${joint(n)}: {kind: joint}`);
  return { plan: planOf(`parts:\n${parts.join('\n')}\nruns:\n${runs.join('\n')}\n`), cores };
}

const PREFIX: Record<string, number> = { '': 1, m: 1e-3, k: 1e3 };

/** The value in the base unit and half a unit of its last printed digit. */
function read(figure: Figure): { value: number; half: number } {
  const unit = (typeof figure === 'string' ? figure : figure.printed).split(' ')[1]!;
  const text = typeof figure === 'string' ? figure.split(' ')[0]! : figure.recomputed;
  const [, decimals, power] = /^-?\d+(?:\.(\d+))?(?:e(-?\d+))?$/.exec(text)!;
  const scale = PREFIX[/^([mk]?)(?:A|V|W|ohm)$/.exec(unit)![1]!]!;
  return {
    value: Number(text) * scale,
    half: 0.5 * scale * 10 ** (Number(power ?? 0) - (decimals?.length ?? 0)),
  };
}

/** What the core in line may take from a figure that lies half a unit from what is printed. */
const CORE = 1e-7;

function meet(what: string, got: number | null, figure: Figure): void {
  const { value, half } = read(figure);
  const near = got !== null && Math.abs(got - value) <= half * (1 + 1e-6) + CORE * Math.abs(value);
  expect([what, figure, got, near]).toEqual([what, figure, got, true]);
}

const has = (x: Elements) => Object.keys(x.held ?? {}).length === 0;
const cases = items.flatMap((item: Item) =>
  Object.entries(item.cases ?? { '': item }).map(([name, state]) => {
    const elements: Elements = {
      emfs: { ...item.emfs, ...state.emfs },
      held: { ...item.held, ...state.held },
      resistors: { ...item.resistors, ...state.resistors },
    };
    const { title, edition, where } = item.source;
    return { name: [item.id, name, title, edition, where].filter(Boolean).join(', '), item, state, elements };
  }),
);

const ends = (x: Elements, element: string): readonly [string, string] => {
  const name = typedName(element);
  return x.emfs?.[element] !== undefined ? [`${name}.+`, `${name}.-`] : [`${name}.1`, `${name}.2`];
};

/** A resistor of no ohm is a wire, which the format types as a link. */
const plain = (x: Elements) => Object.values(x.resistors ?? {}).every(([, , ohms]) => ohms > 0);

describe('printed circuits, typed as plans, are read as printed', () => {
  it.each(cases.filter((c) => has(c.elements) && plain(c.elements)))('$name', ({ item, state, elements }) => {
    const { plan, cores } = typed(elements);
    const table = tables(plan);
    expect(table.notes).toEqual([]);
    const amps = (name: string) => table.cores[cores.indexOf(name)]!.amps;
    const at = (t: string) => table.nets.find((net) => net.terminals.includes(t))!.volts!;
    const volts = (name: string) => {
      const [a, b] = ends(elements, name);
      const v = at(a) - at(b);
      // The table has no meter in it; a meter of 10 Mohm takes its share off.
      expect(Math.abs(across(plan, a, b).volts! - v)).toBeLessThanOrEqual(2e-4 * Math.abs(v));
      return v;
    };
    // A source gives current out of its plus, against the core's direction.
    const sign = (name: string) => (elements.emfs?.[name] === undefined ? 1 : -1);
    let met = 0;
    const all = (figures: Case['amps'], what: string, get: (name: string) => number | null) => {
      for (const [name, figure] of Object.entries(figures ?? {})) {
        if (name === 'given' || name === 'taken') continue;
        meet(`${what} of ${name}`, get(name), figure);
        met++;
      }
    };
    all(state.nodes, 'volts', (n) => at(joint(n)) - at(joint(item.reference!)));
    all(state.volts, 'volts', volts);
    all(state.amps, 'current', (n) => sign(n) * amps(n)!);
    all(state.watts, 'power', (n) => sign(n) * amps(n)! * volts(n)!);
    all(state.ohms, 'ohms', (n) => Math.abs(volts(n)! / amps(n)!));
    expect(met).toBeGreaterThan(0);
  });

  it('covers every circuit that batteries and resistors can make', () => {
    const left = cases.filter((c) => !has(c.elements) || !plain(c.elements)).map((c) => c.item.id);
    expect([...new Set(left)]).toEqual([
      'bat-li-internal-resistance',
      'bat-up-charging',
      'wire-cp-extension-cord-drop',
      'wire-faa-drop-check',
      'wire-li-14awg-long-run',
      'wire-up-12-gauge-5m',
    ]);
  });
});

describe('printed resistances, read with the power off', () => {
  const ofSource = cases.filter(
    (c) =>
      Object.keys(c.elements.emfs ?? {}).length === 1 &&
      c.state.ohms?.[Object.keys(c.elements.emfs!)[0]!] !== undefined &&
      has(c.elements) &&
      plain(c.elements),
  );
  it.each(ofSource)('$name', ({ state, elements }) => {
    const source = Object.keys(elements.emfs!)[0]!;
    const found = dead(typed(elements).plan, ...ends(elements, source));
    meet(`ohms at ${source}`, found.ohms, state.ohms![source]!);
    expect(found.beeps).toBe(found.ohms! < 50);
  });

  it('finds enough of them', () => expect(ofSource.length).toBeGreaterThanOrEqual(8));
});

describe('what a link alone can say', () => {
  // Lessons In Electric Circuits, Volume I - DC, 5th edition, ch. 11, "Battery construction": 10 V behind 0.2 ohm
  it('a shorted battery gives 50 A, and stands at no volts', () => {
    const plan = planOf(`parts:
  E: {kind: battery, output: 10 V DC, internal-resistance: 0.2 ohm}
  J: {kind: joint}
runs:
  - {cable: ${THICK}, length: ${METRES} m, cores: {red: [E.+, J]}}
  - {link: [J, E.-]}
`);
    meet('current', tables(plan).cores[0]!.amps, '50 A');
    expect(across(plan, 'J', 'E.-').volts).toBe(0);
  });

  // University Physics, Volume 2, section 10.1, Problem 25: 10.0 A driven into 12.0 V behind 0.400 ohm. The charger is
  // the battery and resistance that drive 10 A: 26 V behind 1 ohm.
  it('a battery being charged stands above its own volts', () => {
    const { plan, cores } = typed({
      emfs: { E: ['1', '0', 12, 0.4], charger: ['1', '0', 26, 1] },
      resistors: { meter: ['1', '0', 1e9] },
    });
    meet('terminal volts', across(plan, 'E.+', 'E.-').volts, '16.0 V');
    meet('current', tables(plan).cores[cores.indexOf('E')]!.amps, '10.0 A');
  });

  // Lessons In Electric Circuits, Volume I - DC, ch. 12, "Specific resistance": 5.651 ohm each way, 230 V, a dead short
  it('a short at the far end of a long run is limited by its wire', () => {
    const plan = planOf(`parts:
  V: {kind: battery, output: 230 V DC, internal-resistance: 0 ohm}
  W1: {kind: resistor, resistance: 5.6506 ohm}
  W2: {kind: resistor, resistance: 5.6506 ohm}
runs:
  - {cable: ${THICK}, length: ${METRES} m, cores: {red: [V.+, W1.1]}}
  - {link: [W1.2, W2.1]}
  - {link: [W2.2, V.-]}
`);
    meet('current', tables(plan).cores[0]!.amps, '20.352 A');
    meet('ohms', dead(plan, 'V.+', 'V.-').ohms, '11.301 ohm');
  });
});
