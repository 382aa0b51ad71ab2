/** Another breaker, plug, cable, box or protector on the mains side. */
import type { FindingId } from '../../findings/finding-ids.ts';
import { plugFuse } from '../../findings/mains/mains-guards.ts';
import { outletsBehind, plugsOf } from '../../findings/mains/plug-loads.ts';
import type { Finding } from '../../findings/report-model.ts';
import type { Practice } from '../../plan/device-figures.ts';
import type { OutletPart, Part, PlugPart } from '../../plan/part-types.ts';
import type { Cable, TerminalRef } from '../../plan/plan.ts';
import { terminalKey } from '../../plan/terminal-key.ts';
import { CUBIC_INCH } from '../../ratings/box-fill.ts';
import { receptacleByName } from '../../ratings/pattern-names.ts';
import { patternAmps } from '../../ratings/receptacle.ts';
import * as tables from '../../ratings/table-files.ts';
import { SAME_AREA, thickerSizes } from '../../ratings/wire.ts';
import { rounded } from '../../text/numbers.ts';
import { runsText } from '../../text/run-names.ts';
import { listOf } from '../../text/word-list.ts';
import type { Bench } from './bench.ts';
import { type Change, gaugeChange, inGauge, partChange } from './change.ts';
import { withParts } from './put.ts';
import type { Option } from './search.ts';
import { breakerSizes, CURVES, PLUG_FUSE_AMPS, patternsFor } from './series.ts';

/** What a thicker cable does away with. */
const OF_CORDS: ReadonlySet<string> = new Set<FindingId>(['cord-too-thin', 'conductor-unprotected']);

/** What a smaller breaker does away with. */
const OF_BREAKERS: ReadonlySet<string> = new Set<FindingId>([
  'plug-mismatch',
  'breaker-too-large',
  'conductor-unprotected',
]);

function plugsIn({ study }: Bench, f: Finding): PlugPart[] {
  return f.parts.flatMap((name) => {
    const part = study.plan.parts.get(name);
    return part?.kind === 'plug' ? [part] : [];
  });
}

function breaker(plug: PlugPart, amps: number, curve = plug.curve): Change {
  const text = curve === undefined ? `${amps} A` : `${amps} A ${curve}`;
  const words = `fit a breaker of ${text} for ${plug.name}`;
  return partChange(plug.name, { breaker: text }, words, (p) =>
    p.kind === 'plug' ? { ...p, breaker: amps, ...(curve !== undefined && { curve }) } : p,
  );
}

/** A circuit with a larger breaker; the wire in the wall is for the words, since no plan shows it. */
export function largerCircuit(bench: Bench, f: Finding): Option[] {
  const { practice } = bench.study.plan;
  return plugsIn(bench, f).map((plug) => ({
    sizes: breakerSizes(practice)
      .filter((a) => a > (plug.breaker ?? 0))
      .map((amps) => [largerBreaker(plug, amps)]),
    scan: true,
  }));
}

const largerBreaker = (plug: PlugPart, amps: number): Change => ({
  ...breaker(plug, amps),
  words: `put ${plug.name} on a circuit of its own of ${amps} A, its wire in the wall made for that`,
});

/** Runs of cable with a core on mains. */
function mainsCables({ study: { plan, circuit, sides } }: Bench): { index: number; cable: Cable }[] {
  const netOf = (part: string, terminal: string) => circuit.netOf.get(terminalKey(part, terminal)) ?? -1;
  return plan.runs.flatMap((r) =>
    r.cable && r.cores.some((c) => sides.mains.has(netOf(c.a.part, c.a.terminal)))
      ? [{ index: r.index, cable: r.cable }]
      : [],
  );
}

/** The largest breaker that may be, and that no other finding of the circuit speaks against; of a fused plug its fuse. */
export function smallerBreaker(bench: Bench, f: Finding): Option[] {
  const { practice } = bench.study.plan;
  return plugsIn(bench, f).map((plug) => {
    const fuse = plugFuse(plug);
    const devices =
      fuse?.kind === 'plug-fuse'
        ? fusesOfPlug(plug, fuse.amps)
        : breakerSizes(practice)
            .filter((a) => a < (plug.breaker ?? 0) && a <= mostOnSocket(practice, plug))
            .map((a) => breaker(plug, a));
    const sizes = devices.reverse().map((change) => [change]);
    // One size for all that is wrong with this circuit, where there is one.
    const others = bench.before.filter((b) => OF_BREAKERS.has(b.id) && b.parts.includes(plug.name));
    const all = (i: number) => [f, ...others].every((x) => bench.isGone(x, sizes[i]!));
    const together = sizes.length > 0 && others.length > 1 && all(sizes.length - 1);
    return together ? { sizes, serves: all } : { sizes };
  });
}

/** A: outside North America no breaker above the pattern protects the socket, unless it is one that has a fuse. */
function mostOnSocket(practice: Practice, plug: PlugPart): number {
  return practice === 'nec' || plugFuse(plug) !== undefined
    ? Infinity
    : (patternAmps(plug)?.amps ?? Infinity);
}

/** Those smaller than what is in it, smallest first. */
function fusesOfPlug({ name }: PlugPart, own: number): Change[] {
  return PLUG_FUSE_AMPS.filter((a) => a < own).map((amps) =>
    partChange(name, { fuse: `${amps} A` }, `put a fuse of ${amps} A into ${name}`, (p) =>
      p.kind === 'plug' ? { ...p, fuse: amps } : p,
    ),
  );
}

/** A breaker of the same size that holds more at a start. */
export function slowerBreaker(bench: Bench, f: Finding): Option[] {
  return plugsIn(bench, f).flatMap((plug) => {
    const { breaker: amps, curve } = plug;
    if (amps === undefined) return [];
    const sizes = CURVES.slice(CURVES.findIndex((c) => c === (curve ?? 'B')) + 1).map((c) => [
      {
        ...breaker(plug, amps, c),
        words: `fit a breaker of ${amps} A ${c} for ${plug.name}, where the loop impedance allows that`,
      },
    ]);
    return [{ sizes }];
  });
}

/** V and phases that a pattern is looked for at. */
const patternUse = (plug: PlugPart): { readonly volts: number; readonly phases: 1 | 3 } => ({
  volts: plug.volts.volts,
  phases: plug.feed === 'three-phase' ? 3 : 1,
});

/** Plug and outlets of one pattern, in another of its family or of its volts. */
export function otherPattern(bench: Bench, f: Finding): Option[] {
  const { study } = bench;
  const { plan } = study;
  const part = plan.parts.get(f.parts[0] ?? '');
  if ((part?.kind !== 'plug' && part?.kind !== 'outlet') || part.pattern === undefined) return [];
  const plug =
    part.kind === 'plug' ? part : plugsOf(plan).find((p) => outletsBehind(study, p).includes(part));
  if (plug === undefined) return [];
  const use = patternUse({ ...plug, feed: part.feed });
  const row = receptacleByName(part.pattern, use);
  if (!row) return [];
  const names = alikeBehind(bench, plug, part.pattern);
  const sizes = patternsFor(row, use).flatMap(({ names: [pattern] }) =>
    pattern === undefined || pattern === part.pattern ? [] : [names.map((n) => inPattern(n, names, pattern))],
  );
  return [{ sizes, scan: true }];
}

/** The plug and its outlets of one pattern: one step for whoever buys them. */
function alikeBehind({ study }: Bench, plug: PlugPart, pattern: string | undefined): string[] {
  return [plug, ...outletsBehind(study, plug)].filter((p) => p.pattern === pattern).map((p) => p.name);
}

function inPattern(name: string, all: readonly string[], pattern: string): Change {
  const change = (p: Part): Part =>
    p.kind === 'plug' || p.kind === 'outlet' ? ({ ...p, pattern } satisfies PlugPart | OutletPart) : p;
  const words = name === all[0] ? `use ${pattern} for ${listOf(all)}` : '';
  return partChange(name, { pattern }, words, change);
}

/** A larger circuit with a plug and outlets that are made for it; the cable follows where it has to. */
export function circuitAndPattern(bench: Bench, f: Finding): Option[] {
  const { plan } = bench.study;
  return plugsIn(bench, f).flatMap((plug) => {
    const use = patternUse(plug);
    const row = plug.pattern === undefined ? undefined : receptacleByName(plug.pattern, use);
    if (!row) return [];
    const names = alikeBehind(bench, plug, plug.pattern);
    const sizes = breakerSizes(plan.practice)
      .filter((a) => a > (plug.breaker ?? 0))
      .flatMap((amps) => {
        const [pattern] = patternsFor(row, use).find((r) => r.amps >= amps)?.names ?? [];
        if (pattern === undefined || pattern === plug.pattern) return [];
        return [[largerBreaker(plug, amps), ...names.map((n) => inPattern(n, names, pattern))]];
      });
    return [{ sizes, scan: true }];
  });
}

/** Every cable that a finding names, else every one of the mains, where it is thinner, in one thicker gauge. */
export function thickerCord(bench: Bench, f: Finding): Option[] {
  const { plan } = bench.study;
  const cabled = mainsCables(bench);
  const told = cabled.filter(({ index }) =>
    plan.runs[index]!.cores.some((c) => f.parts.includes(c.a.part) && f.parts.includes(c.b.part)),
  );
  const from = told.length > 0 ? told : cabled;
  // What stands ahead is too much for these alone; volts are lost along the whole way.
  const isLocal = f.id === ('conductor-unprotected' satisfies FindingId);
  if (from.length === 0) return [];
  const thinnest = from.map((x) => x.cable).reduce((x, y) => (y.area < x.area ? y : x));
  const sizes = thickerSizes(thinnest).map((size: Cable) => {
    const thin = (isLocal ? from : cabled).filter(
      ({ cable }) => cable.area * SAME_AREA < inGauge(cable, size).area,
    );
    const runs = new Set(thin.map((x) => x.index));
    return [
      gaugeChange(
        runs,
        size,
        `${runsText([...runs].map((r) => plan.runs[r]!))} in place of ${thinnest.gauge}`,
      ),
    ];
  });
  // One size for all that is wrong with these runs, where there is one.
  const cut = new Set(
    from.flatMap(({ index }) => plan.runs[index]!.cores.flatMap((c) => [c.a.part, c.b.part])),
  );
  const others = bench.before.filter((b) => OF_CORDS.has(b.id) && b.parts.some((part) => cut.has(part)));
  const all = (i: number) => [f, ...others].every((x) => bench.isGone(x, sizes[i]!));
  const together = sizes.length > 0 && others.length > 1 && all(sizes.length - 1);
  return together ? [{ sizes, serves: all }] : [{ sizes }];
}

/** The runs that are thin and hold nothing but earth, in a thicker gauge; a spare core of another cable is no earth in any. */
export function thickerEarth({ study: { plan, circuit, sides } }: Bench, f: Finding): Option[] {
  const isEarth = ({ part, terminal }: TerminalRef) =>
    sides.earth.has(circuit.netOf.get(terminalKey(part, terminal)) ?? -1);
  const own = plan.runs.filter(
    (r) =>
      r.cable !== undefined &&
      r.cores.every((c) => isEarth(c.a) && f.parts.includes(c.a.part) && f.parts.includes(c.b.part)),
  );
  const [first] = own;
  if (first === undefined) return [];
  const sizes = thickerSizes(first.cable!).map((size) => {
    const thin = own.filter(({ cable }) => cable!.area * SAME_AREA < inGauge(cable!, size).area);
    const which = `${runsText(thin)} in place of ${first.cable!.gauge}`;
    return [gaugeChange(new Set(thin.map((r) => r.index)), size, which)];
  });
  return [{ sizes }];
}

/** The same cable made for fixed wiring. */
export function fixedWire({ study: { plan } }: Bench, f: Finding): Option[] {
  const runs = plan.runs.filter(
    (r) =>
      r.cable?.flexible && r.cores.every((c) => f.parts.includes(c.a.part) && f.parts.includes(c.b.part)),
  );
  if (runs.length === 0) return [];
  const own = new Set(runs.map((r) => r.index));
  const change: Change = {
    told: { change: 'cable-flexible', runs: [...own].map((r) => r + 1) },
    words: `use building wire in conduit, or a cable made for walls, for ${runsText(runs)}`,
    apply: (p) => ({
      ...p,
      runs: p.runs.map((r) =>
        own.has(r.index) && r.cable ? { ...r, cable: { ...r.cable, flexible: false } } : r,
      ),
    }),
    anew: false,
  };
  return [{ sizes: [[change]] }];
}

/** A box of a listed volume, or of the next ten cubic inches where none is listed. */
export function largerBox({ study: { plan } }: Bench, f: Finding): Option[] {
  const box = plan.parts.get(f.parts[0] ?? '');
  if (box?.kind !== 'box') return [];
  const own = (box.volume ?? 0) / CUBIC_INCH;
  const listed = tables
    .boxVolumes()
    .rows.filter((r) => ['square', 'round', 'device'].includes(r.kind))
    .map((r) => ({ in3: r.in3, name: `a ${r.box} box (${rounded(r.in3)} in3)` }));
  const more = Array.from({ length: 50 }, (_, i) => (i + 1) * 10).map((in3) => ({
    in3,
    name: `a box marked with at least ${in3} in3`,
  }));
  const most = Math.max(...listed.map((x) => x.in3));
  const rows = [...listed, ...more.filter((x) => x.in3 > most)].filter((x) => x.in3 > own);
  const sizes = rows
    .sort((a, b) => a.in3 - b.in3)
    .map(({ in3, name }) => [
      partChange(box.name, { volume: `${in3} in3` }, `use at least ${name} as ${box.name}`, (p) =>
        p.kind === 'box' ? { ...p, volume: in3 * CUBIC_INCH } : p,
      ),
    ]);
  return [{ sizes }];
}

/** The supply of the coil on a feed of its own, away from the cord that sags. */
export function ownOutlet({ study: { plan } }: Bench, f: Finding): Option[] {
  return f.parts.flatMap((name) => {
    const part = plan.parts.get(name);
    if (part?.kind !== 'supply' || part.fedFrom === undefined || part.fedFrom === 'always-live') return [];
    const change: Change = {
      told: { change: 'part', part: name, fields: { 'fed-from': 'always-live' } },
      words: `feed ${name} from an outlet of its own that is always live`,
      apply: (p) => withParts(p, [name], (x) => (x.kind === 'supply' ? { ...x, fedFrom: 'always-live' } : x)),
      anew: true,
    };
    return [{ sizes: [[change]] }];
  });
}
