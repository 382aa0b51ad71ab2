/**
 * The wire list of a plan: cores in the order of wiring, pieces of cable to cut, labels for both ends. This folder knows
 * what is bought, cut and wired, and must not judge: which ratings pass is asked of the findings.
 */

import { toldOf } from '../findings/verdict-line.ts';
import { lengthUnit } from '../plan/length-unit.ts';
import type { Core, Plan } from '../plan/plan.ts';
import type { Study } from '../study/study.ts';
import type { LengthUnit } from '../text/lengths.ts';
import { runMark, runText } from '../text/run-names.ts';
import { type CableGroup, cableGroups, cutFromReels, exactCm, pieceCm } from './cuts.ts';
import { type OverloadWay, overloadWays } from './overload-ways.ts';
import { endOf } from './wire-ends.ts';
import type { CableCuts, WireLabel, WireList, WireOverload, WireRow } from './wirelist-model.ts';
import { wiringOrder } from './wiring-order.ts';
import type { Placed } from './wiring-section.ts';

/** Lengths of reels to be had, cm: for one cable by its name, else for every cable. */
export interface Reels {
  readonly any: readonly number[];
  readonly own: ReadonlyMap<string, readonly number[]>;
}

/** A piece that is longer than every reel it could come from. */
export interface TooLong {
  readonly cable: string;
  /** `run 3`, `run 3 piece 2` */
  readonly run: string;
  /** m */
  readonly piece: number;
  readonly reel: number;
  readonly unit: LengthUnit;
}

const metres = (cm: number): number => Math.round(cm * 100) / 10_000;

interface Found {
  readonly names: ReadonlyMap<number, string>;
  readonly ways: ReadonlyMap<Core, OverloadWay>;
}

function overloadOf({ core, from }: Placed, way: OverloadWay | undefined): WireOverload | null {
  return way === undefined ? null : { ...way, end: core[way.end] === from ? 'from' : 'to' };
}

function rowOf(plan: Plan, { names, ways }: Found, placed: Placed, index: number): WireRow {
  const { run, core } = placed;
  const cm = run.link ? undefined : pieceCm(run);
  return {
    number: index + 1,
    section: placed.section,
    from: endOf(plan, run, placed.from),
    to: endOf(plan, run, placed.to),
    colour: run.link
      ? null
      : core.marked === undefined
        ? core.colour
        : `${core.colour} (marked ${core.marked})`,
    gauge: run.cable?.gauge ?? null,
    cable: names.get(run.index) ?? null,
    length: run.link ? (run.length ?? null) : cm === undefined ? null : metres(cm),
    unit: run.unit ?? lengthUnit(plan),
    run: run.index + 1,
    mark: runMark(run),
    name: run.name ?? null,
    route: run.route ?? null,
    loose: placed.loose,
    overload: overloadOf(placed, ways.get(core)),
  };
}

/** `Q1.2`; `OL1 2/T1, not Q1.2` for the end that lands on an overload relay. */
function landing(row: WireRow, end: 'from' | 'to'): string {
  const { overload } = row;
  const { terminal } = row[end];
  if (overload?.end !== end) return terminal;
  return `${overload.relays.join(' or ')} ${overload.lands}, not ${terminal}`;
}

/** Two for every core of a cable; a bare link takes none. */
function labelsOf(rows: readonly WireRow[]): WireLabel[] {
  return rows.flatMap((row) =>
    row.colour === null
      ? []
      : (['from', 'to'] as const).map((end) => ({
          wire: row.number,
          end,
          text: `${row.number} ${row.colour} > ${landing(row, end)}`,
        })),
  );
}

function cutsOf(plan: Plan, group: CableGroup, sizes: readonly number[]): CableCuts | TooLong {
  const known = group.pieces.flatMap((p) =>
    p.cm === undefined ? [] : [{ run: plan.runs[p.run - 1]!, cm: p.cm }],
  );
  const cutting =
    sizes.length === 0
      ? undefined
      : cutFromReels(
          known.map((p) => p.cm),
          sizes,
        );
  if (cutting !== undefined && 'tooLong' in cutting) {
    const { run, cm } = known[cutting.tooLong]!;
    return {
      cable: group.name,
      run: runText(run),
      piece: metres(cm),
      reel: metres(Math.max(...sizes)),
      unit: run.unit ?? lengthUnit(plan),
    };
  }
  const reels = cutting?.reels.map((r) => ({
    length: metres(r.cm),
    pieces: r.pieces.map((i) => {
      const { run, cm } = known[i]!;
      return { run: run.index + 1, mark: runMark(run), length: metres(cm) };
    }),
    waste: metres(r.wasteCm),
  }));
  return {
    cable: group.name,
    gauge: group.cable.gauge,
    cores: group.cable.cores,
    pieces: group.pieces.map((p) => ({
      run: p.run,
      mark: runMark(plan.runs[p.run - 1]!),
      name: plan.runs[p.run - 1]!.name ?? null,
      route: plan.runs[p.run - 1]!.route ?? null,
      length: p.cm === undefined ? null : metres(p.cm),
      unit: plan.runs[p.run - 1]!.unit ?? lengthUnit(plan),
      colours: p.colours,
      spare: p.spare,
    })),
    total: metres(known.reduce((sum, p) => sum + p.cm, 0)),
    reels: reels ?? null,
    waste: cutting === undefined ? null : metres(cutting.reels.reduce((sum, r) => sum + r.wasteCm, 0)),
  };
}

/** Every core of the plan in its turn, and the labels of its ends. */
export function wireRows(study: Study): {
  wires: readonly WireRow[];
  labels: readonly WireLabel[];
} {
  const { plan, circuit, sides } = study;
  const names = new Map(cableGroups(plan).flatMap((g) => g.runs.map((r) => [r.index, g.name] as const)));
  const found = { names, ways: overloadWays(study) };
  const wires = wiringOrder(circuit, sides).map((p, i) => rowOf(plan, found, p, i));
  return { wires, labels: labelsOf(wires) };
}

/** The names by which reel lengths can be given. */
export function cableNames(plan: Plan): string[] {
  return cableGroups(plan).map((g) => g.name);
}

/** The wire list, or the first piece that no reel can give. Pure. */
export function wireList(study: Study, reels: Reels): WireList | { readonly tooLong: TooLong } {
  const { plan } = study;
  const cuts: CableCuts[] = [];
  for (const group of cableGroups(plan)) {
    const cut = cutsOf(plan, group, reels.own.get(group.name) ?? reels.any);
    if ('piece' in cut) return { tooLong: cut };
    cuts.push(cut);
  }
  const wasted = cuts.flatMap((c) => (c.waste === null ? [] : [exactCm(c.waste * 100)]));
  return {
    format: 1,
    check: toldOf(study),
    unit: lengthUnit(plan),
    ...wireRows(study),
    cuts,
    waste: wasted.length === 0 ? null : metres(wasted.reduce((a, b) => a + b, 0)),
  };
}
