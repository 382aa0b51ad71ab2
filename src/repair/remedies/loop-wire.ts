/** Thicker wire on the way to a coil: which runs, and how thick. */
import { isShort, lowCoils, THIN } from '../../findings/coil/low-volts.ts';
import { farthest, lostWith, MOST_LOST } from '../../findings/loop/drop-large.ts';
import type { Finding } from '../../findings/report-model.ts';
import type { Cable } from '../../plan/plan.ts';
import { ohmsPerMetre, strandingAllowance, thickerSizes } from '../../ratings/wire.ts';
import type { CoilState } from '../../study/coil-states.ts';
import { figuresFor, type WireSwap } from '../../study/corner-figures.ts';
import { ambientOf } from '../../study/corners.ts';
import type { Electrics } from '../../study/electrics.ts';
import type { Study } from '../../study/study.ts';
import type { Bench } from './bench.ts';
import { gaugeChange, inGauge } from './change.ts';
import { bisected } from './ladder.ts';
import type { Option } from './search.ts';
import { type Fed, type Unit, unitsOn, unitsText } from './way-units.ts';

/** Times the area of the thinnest wire up to which thicker is worth it, for a fault and for a caution. */
const MOST_THICKER = { fault: 7, caution: 2.7 };
/** Ways of feeding a coil that are looked at by themselves. */
const MOST_WAYS = 12;
/** Sizes beyond the thinnest that serves with which fewer runs may do. */
const THICKER_FEWER = 2;

/** Ways that are wanting, and whether each serves with wire swapped. */
interface Wanting {
  readonly ways: readonly Fed[];
  readonly serves: (swap: WireSwap) => boolean;
}

/** For coils with too few volts, with room to spare or else without. */
export function wireForVolts({ study }: Bench, f: Finding): Option[] {
  const own = study.electrics;
  if (!own) return [];
  const lows = lowCoils(study).filter(({ state }) => f.parts.includes(state.fed.part.name));
  const goal = (spare: number): Wanting => {
    const need = (s: CoilState) => s.pullIn + spare * s.fed.model.rated;
    const ways = lows.flatMap(({ state }) =>
      state.rows.filter((row) => row.least < need(state)).map((row) => ({ state, row })),
    );
    const worst = ways.sort((a, b) => lack(b, need) - lack(a, need)).slice(0, MOST_WAYS);
    const serves = (swap: WireSwap) => {
      const figures = figuresFor(study.plan, 'low', swap);
      return worst.every(
        ({ state, row }) => own.coilVoltsWith(state.relay, row.leastIn, figures) >= need(state),
      );
    };
    return { ways: worst, serves };
  };
  const fails = lows.some(({ state }) => state.rows.some((row) => isShort(state, row)));
  const most = fails ? MOST_THICKER.fault : MOST_THICKER.caution;
  const roomy = goal(THIN);
  const drop = f.also.some((a) => a.id === 'drop-large') ? dropOf(study, own, f) : undefined;
  const both: Wanting[] = drop
    ? [{ ways: roomy.ways, serves: (swap) => roomy.serves(swap) && drop.serves(swap) }]
    : [];
  for (const wanting of [...both, roomy, ...(fails ? [goal(0)] : [])]) {
    const found = thicker(own, wanting, most);
    if (found.length > 0) return found;
  }
  return [];
}

const lack = ({ state, row }: Fed, need: (s: CoilState) => number): number =>
  (need(state) - row.least) / state.fed.model.rated;

/** For a coil whose wire takes more than a tenth of the volts. */
export function wireForDrop({ study }: Bench, f: Finding): Option[] {
  const own = study.electrics;
  return own ? thicker(own, dropOf(study, own, f), MOST_THICKER.fault) : [];
}

function dropOf(study: Study, own: Electrics, f: Finding): Wanting {
  const states = study.coilStates.filter((s) => f.parts.includes(s.fed.part.name));
  const ways = states.flatMap((state) => {
    const far = farthest(study, own, state);
    return far ? [{ state, row: far.row }] : [];
  });
  const serves = (swap: WireSwap) => {
    const figures = figuresFor(study.plan, 'nominal', swap);
    return ways.every(({ state, row }) => lostWith(study, own, state, row, figures) <= MOST_LOST + 1e-9);
  };
  return { ways, serves };
}

/** One option whose sizes are sets of runs in one gauge, the least copper first. */
function thicker(own: Electrics, { ways, serves }: Wanting, most: number): Option[] {
  if (ways.length === 0) return [];
  const { plan } = own.study;
  const cableOf = (run: number): Cable => plan.runs[run]!.cable!;
  const units = unitsOn(own, ways);
  const ambient = ambientOf(plan);
  const ohms = (c: Cable) => ohmsPerMetre(c, ambient) * strandingAllowance(c);
  const runs = units.flatMap((u) => u.runs);
  if (runs.length === 0) return [];
  const thinnest = runs.map(cableOf).reduce((x, y) => (ohms(y) > ohms(x) ? y : x));
  const sizes = thickerSizes(thinnest).filter((c) => c.area <= most * thinnest.area);
  const thinner = (us: readonly Unit[], size: Cable) =>
    us.flatMap((u) => u.runs).filter((r) => ohms(cableOf(r)) > ohms(inGauge(cableOf(r), size)) * (1 + 1e-9));
  const does = (us: readonly Unit[], size: Cable): boolean => {
    const changed = new Set(thinner(us, size));
    return serves({ cableOf: (r) => (changed.has(r) ? inGauge(cableOf(r), size) : undefined) });
  };
  const last = sizes.length - 1;
  if (last < 0 || !does(units, sizes[last]!)) return [];
  const first = bisected(0, last, (i) => does(units, sizes[i]!));
  const sets = sizes.slice(first, first + THICKER_FEWER + 1).map((size) => {
    const set = leastSet(units, (us) => does(us, size));
    const changed = new Set(thinner(set, size));
    const copper = [...changed].reduce((sum, r) => sum + (plan.runs[r]!.length ?? 0), 0) * size.area;
    const which = unitsText(
      plan,
      set.flatMap((u) => kept(u, changed)),
    );
    return { copper, change: gaugeChange(changed, size, which) };
  });
  // Thicker wire on fewer runs is less only where it is less copper.
  return [
    {
      sizes: sets.sort((a, b) => a.copper - b.copper).map((s) => [s.change]),
      scan: true,
      serves: () => true,
    },
  ];
}

/** The runs of a piece that are changed; none where it is thick enough already. */
function kept(u: Unit, changed: ReadonlySet<number>): Unit[] {
  const runs = u.runs.filter((r) => changed.has(r));
  return runs.length > 0 ? [{ ...u, runs }] : [];
}

/** The fewest of what loses most, then without whatever is not needed. */
function leastSet(units: readonly Unit[], does: (us: readonly Unit[]) => boolean): readonly Unit[] {
  const count = bisected(1, units.length, (n) => does(units.slice(0, n)));
  let set = units.slice(0, count);
  for (const u of [...set].reverse()) {
    const without = set.filter((x) => x !== u);
    if (without.length > 0 && does(without)) set = without;
  }
  return set;
}
