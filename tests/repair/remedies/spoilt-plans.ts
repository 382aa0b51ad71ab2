/** Right plans with one or two of their figures spoilt. */
import fc from 'fast-check';
import { type PlanTree, type Tree, textOf, treeOf } from './written-plan.ts';

const isMap = (x: unknown): x is Tree => typeof x === 'object' && x !== null && !Array.isArray(x);

/** One way of spoiling a part or run: a field, and what it says then. */
type Spoil = readonly [path: string, to: unknown];

const OF_KIND: Readonly<Record<string, readonly Spoil[]>> = {
  supply: [
    ...['0.1 A', '0.3 A', '6 A'].map((x): Spoil => ['limit', x]),
    ['class-2', false],
    ['regulation', 'unregulated'],
    ['tolerance', '8 %'],
    ...['9 V DC', '12 V DC', '24 V DC', '18 V AC', '24 V AC', '12 V AC'].map((x): Spoil => ['output', x]),
  ],
  battery: [
    ['capacity', '1.2 Ah'],
    ['capacity', '4 Ah'],
    ['lowest', '10 V'],
  ],
  fuse: ['40 mA', '0.1 A', '2 A', '6.3 A', '15 A'].map((x): Spoil => ['rating', x]),
  relay: [
    ...['90 %', '85 %', '80 %'].map((x): Spoil => ['coil.pull-in', x]),
    ...['6 V DC', '12 V DC', '24 V DC', '24 V AC'].map((x): Spoil => ['coil.rated', x]),
    ['coil.suppressor', 'none'],
    ['coil.most', '105 %'],
    ['coil.inrush', '120 VA'],
    ...[
      '{ratings: [16 A 250 V AC]}',
      '{ratings: [3 A 30 V DC]}',
      '{ratings: [10 A 250 V AC], motor: [0.25 hp 120 V AC]}',
    ].map((x): Spoil => ['contact', x]),
    ['technology', 'solid-state'],
  ],
  gate: [
    ['contact', '{ratings: [20 mA 30 V DC, 20 mA 30 V AC]}'],
    ['contact', '{ratings: [5 A 30 V DC, 5 A 250 V AC], least: 0.3 A 5 V DC}'],
  ],
  plug: [
    ...['10 A', '15 A', '32 A', '60 A'].map((x): Spoil => ['breaker', x]),
    ['pattern', 'NEMA 5-15'],
    ['pattern', 'NEMA 6-15'],
    ['pattern', 'fixed'],
  ],
  motor: [
    ['amps', '11 A'],
    ['amps', '22 A'],
    ['protector', 'none'],
    ['locked-rotor', '140 A'],
  ],
  box: [
    ['volume', '9 in3'],
    ['volume', '18 in3'],
  ],
};
const OF_CABLE: readonly Spoil[] = [
  ...['24 AWG', '22 AWG', '18 AWG', '0.25 mm2', '0.5 mm2', '0.75 mm2'].map((x): Spoil => ['gauge', x]),
  ['flexible', true],
];
const TIMES = [3, 6, 12, 25];

function put(at: Tree, path: string, value: unknown): void {
  const keys = path.split('.');
  let here = at;
  for (const key of keys.slice(0, -1)) {
    if (!isMap(here[key])) here[key] = {};
    here = here[key] as Tree;
  }
  here[keys.at(-1)!] = value;
}

/** What could be spoilt in a plan. */
function spoils(tree: PlanTree): ((t: PlanTree) => void)[] {
  const parts = Object.entries(tree.parts).flatMap(([name, part]) =>
    (OF_KIND[String(part.kind)] ?? []).map(
      ([path, to]) =>
        (t: PlanTree) =>
          put(t.parts[name]!, path, to),
    ),
  );
  const cabled = tree.runs.flatMap((r, i) => (isMap(r.cable) ? [i] : []));
  const gauges = new Set(cabled.map((i) => JSON.stringify(tree.runs[i]!.cable)));
  const cables = [...gauges].flatMap((own) =>
    OF_CABLE.map(([path, to]) => (t: PlanTree) => {
      for (const r of t.runs) if (isMap(r.cable) && JSON.stringify(r.cable) === own) put(r.cable, path, to);
    }),
  );
  const far = TIMES.flatMap((times) => [
    (t: PlanTree) => {
      for (const i of cabled) longer(t.runs[i]!, times);
    },
    ...cabled.slice(0, 4).map((i) => (t: PlanTree) => longer(t.runs[i]!, times * 4)),
  ]);
  return [...parts, ...cables, ...cables, ...far, ...far];
}

function longer(run: Tree, times: number): void {
  const found = /^([\d.]+) *(mm|cm|m|ft|in)$/.exec(String(run.length));
  if (found) run.length = `${Number((Number(found[1]) * times).toPrecision(4))} ${found[2]}`;
}

/** Texts of plans that may no longer be read. */
export function spoilt(texts: readonly string[]): fc.Arbitrary<string> {
  return fc
    .record({
      text: fc.constantFrom(...texts),
      picks: fc.array(fc.double({ min: 0, max: 0.9999, noNaN: true }), { minLength: 1, maxLength: 2 }),
    })
    .map(({ text, picks }) => {
      const tree = treeOf(text);
      const ways = spoils(tree);
      for (const p of picks) ways[Math.floor(p * ways.length)]!(tree);
      return textOf(tree);
    });
}
