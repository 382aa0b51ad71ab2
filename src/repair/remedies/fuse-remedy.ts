/** A fuse of another rating, a fuse that is not there yet, a supply that is marked as limited, thicker wire behind a fuse. */

import { thinWires } from '../../findings/loop/thin-wires.ts';
import { headOf, unfusedZones } from '../../findings/loop/zone-fuses.ts';
import type { Finding } from '../../findings/report-model.ts';
import type { FusePart, PlugPart } from '../../plan/part-types.ts';
import type { Plan, Run, TerminalRef } from '../../plan/plan.ts';
import { terminalKey } from '../../plan/terminal-key.ts';
import { Terminals } from '../../plan/terminals.ts';
import { thickerSizes } from '../../ratings/wire.ts';
import { ampsText, rounded } from '../../text/numbers.ts';
import { runsText } from '../../text/run-names.ts';
import type { Bench } from './bench.ts';
import { type Change, gaugeChange, inGauge, partChange } from './change.ts';
import { entryBehind } from './put.ts';
import type { Option } from './search.ts';
import { breakerSizes, FUSE_AMPS } from './series.ts';

const amps = (x: number): string => `${rounded(x, 6)} A`;

function rated(fuse: FusePart, rating: number): Change {
  const kind = fuse.class === undefined || fuse.class === 'time-delay' ? 'slow fuse' : `${fuse.class} fuse`;
  const words = `fit a ${kind} of ${ampsText(rating)} as ${fuse.name}`;
  return partChange(fuse.name, { rating: amps(rating) }, words, (p) =>
    p.kind === 'fuse' ? { ...p, rating } : p,
  );
}

const fusesIn = ({ study }: Bench, f: Finding): FusePart[] =>
  f.parts.slice(0, 1).flatMap((name) => {
    const part = study.plan.parts.get(name);
    return part?.kind === 'fuse' ? [part] : [];
  });

/** The least fuse above what its loop draws. */
export function largerFuse(bench: Bench, f: Finding): Option[] {
  return fusesIn(bench, f).map((fuse) => ({
    sizes: FUSE_AMPS.filter((a) => a > (fuse.rating ?? 0)).map((a) => [rated(fuse, a)]),
  }));
}

/** The largest fuse that its wire bears. */
export function smallerFuse(bench: Bench, f: Finding): Option[] {
  return fusesIn(bench, f).map((fuse) => ({
    sizes: [...FUSE_AMPS]
      .reverse()
      .filter((a) => a < (fuse.rating ?? Infinity))
      .map((a) => [rated(fuse, a)]),
  }));
}

/** The largest fuse ahead of a motor that may be: a part, or the one that the plug of wired-in machines states. */
export function smallerMainsFuse(bench: Bench, f: Finding): Option[] {
  const { plan } = bench.study;
  const sizes = [...breakerSizes(plan.practice)].reverse();
  const below = (now: number | undefined, change: (a: number) => Change): Option => ({
    sizes: sizes.filter((a) => a < (now ?? 0)).map((a) => [change(a)]),
  });
  const plugs = f.parts.flatMap((name) => {
    const part = plan.parts.get(name);
    return part?.kind === 'plug' && part.breaker === undefined ? [part] : [];
  });
  return [
    ...fusesIn(bench, f).map((fuse) => below(fuse.rating, (a) => rated(fuse, a))),
    ...plugs.map((plug) => below(plug.fuse, (a) => plugFused(plug, a))),
  ];
}

function plugFused(plug: PlugPart, fuse: number): Change {
  const text = plug.fuseClass === undefined ? amps(fuse) : `${amps(fuse)} ${plug.fuseClass}`;
  return partChange(plug.name, { fuse: text }, `fit a fuse of ${text} ahead of ${plug.name}`, (p) =>
    p.kind === 'plug' ? { ...p, fuse } : p,
  );
}

/** The thinnest wire that bears what its fuse or its supply lets through; every run of the loop that is thinner. */
export function wireForFuse({ study }: Bench, f: Finding): Option[] {
  const { plan } = study;
  const thin = thinWires(study).filter((t) => f.parts[0] === (t.by ?? t.source.part));
  const runs = [...new Set(thin.flatMap((t) => t.runs))];
  const cables = runs.flatMap((r) => plan.runs[r]!.cable ?? []);
  if (cables.length === 0) return [];
  const thinnest = cables.reduce((x, y) => (y.area < x.area ? y : x));
  const sizes = thickerSizes(thinnest).map((size) => {
    const changed = runs.filter((r) => plan.runs[r]!.cable!.area < inGauge(thinnest, size).area);
    const which = `${runsText(changed.map((r) => plan.runs[r]!))} in place of ${thinnest.gauge}`;
    return [gaugeChange(new Set(changed), size, which)];
  });
  return [{ sizes }];
}

/** A fuse next to the supply, the largest that its wire bears; all that was on that pole goes behind it. */
export function newFuse(bench: Bench, f: Finding): Option[] {
  const { plan } = bench.study;
  const source = [...f.parts]
    .map((p) => plan.parts.get(p))
    .find((p) => p?.kind === 'supply' || p?.kind === 'battery');
  if (!source || (source.kind !== 'supply' && source.kind !== 'battery')) return [];
  const terminal = source.output.kind === 'dc' ? '+' : '~1';
  const name = freeName(plan, 'F');
  const sizes = [...FUSE_AMPS]
    .reverse()
    .map((rating) => [fuseAt({ part: source.name, terminal }, name, rating)]);
  const serves = (i: number) => {
    const after = bench.after(sizes[i]!);
    return bench.isGone(f, sizes[i]!) && !thinWires(after).some((t) => t.by === name);
  };
  return [{ sizes, serves }];
}

/** A fuse at the head of a zone that lacks the one which the others have. */
export function zoneFuse(bench: Bench, f: Finding): Option[] {
  const { study } = bench;
  return thinWires(study).flatMap((thin): Option[] => {
    const zones = f.parts[0] === thin.by ? unfusedZones(study, thin) : undefined;
    const head = zones && headOf(study, thin);
    if (!zones || !head) return [];
    const behind = thin.runs.map((r) => study.plan.runs[r]!);
    const name = freeName(study.plan, `F-${zones.without[0]!.relay}-`);
    const sizes = [...FUSE_AMPS]
      .reverse()
      .filter((a) => a <= thin.carries)
      .map((rating) => [fuseAt(head, name, rating, behind)]);
    return [{ sizes }];
  });
}

export function freeName(plan: Plan, letter: string): string {
  for (let i = 1; ; i++) if (!plan.parts.has(`${letter}${i}`)) return `${letter}${i}`;
}

interface Pole {
  readonly part: string;
  readonly terminal: string;
}

/** `behind`: only these runs go to the far side of the fuse. */
function fuseAt(pole: Pole, name: string, rating: number, behind?: readonly Run[]): Change {
  const at = terminalKey(pole.part, pole.terminal);
  return {
    told: {
      change: 'fuse',
      part: name,
      terminal: at,
      rating: amps(rating),
      ...(behind && { behind: behind.map((r) => r.index + 1) }),
    },
    words: `put a slow fuse of ${ampsText(rating)} next to ${at}${behind ? `, ahead of ${runsText(behind)}` : ''}`,
    apply: (plan) => withFuse(plan, pole, name, rating, behind && new Set(behind.map((r) => r.index))),
    anew: true,
  };
}

function withFuse(plan: Plan, pole: Pole, name: string, rating: number, behind?: ReadonlySet<number>): Plan {
  const { at } = plan.parts.get(pole.part)!;
  const end = (terminal: string): TerminalRef => ({
    part: name,
    terminal,
    written: `${name}.${terminal}`,
    at,
  });
  const moved = (t: TerminalRef) => (t.part === pole.part && t.terminal === pole.terminal ? end('2') : t);
  const runs = plan.runs.map((r) =>
    behind && !behind.has(r.index)
      ? r
      : { ...r, cores: r.cores.map((c) => ({ ...c, a: moved(c.a), b: moved(c.b) })) },
  );
  const index = runs.length;
  const post: TerminalRef = { ...pole, written: `${pole.part}.${pole.terminal}`, at };
  const core = { run: index, colour: 'link', a: post, b: end('1'), at };
  const fuse: FusePart = { kind: 'fuse', name, at, where: new Map(), rating };
  return {
    ...plan,
    parts: new Map([...plan.parts, [name, fuse]]),
    terminals: new Map([...plan.terminals, [name, new Terminals(['1', '2'])]]),
    runs: [...runs, { index, entry: entryBehind(runs), at, cores: [core], link: true }],
  };
}

/** A supply that is limited of itself. */
export function limitedSupply({ study }: Bench, f: Finding): Option[] {
  return f.parts.slice(0, 1).flatMap((name) => {
    const part = study.plan.parts.get(name);
    if (part?.kind !== 'supply' || part.class2) return [];
    const mark = study.plan.practice === 'nec' ? 'marked Class 2' : 'marked as limited (SELV, Class 2)';
    const words = `use a supply ${mark} as ${name}`;
    const change = partChange(name, { 'class-2': 'true' }, words, (p) =>
      p.kind === 'supply' ? { ...p, class2: true } : p,
    );
    return [{ sizes: [[change]] }];
  });
}
