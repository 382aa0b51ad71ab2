import { netAt } from '../../circuit/terminals.ts';
import { push } from '../../plan/map-entries.ts';
import type { Part } from '../../plan/part-types.ts';
import type { Run } from '../../plan/plan.ts';
import { type EarthLimit, leastEarth } from '../../ratings/conductor-protection.ts';
import { SAME_AREA } from '../../ratings/wire.ts';
import { neighbours, paralleled, reachable } from '../../study/mains/motor-path.ts';
import type { Study } from '../../study/study.ts';
import { numberText, rounded } from '../../text/numbers.ts';
import { listOf } from '../../text/word-list.ts';
import { type Check, extract, type FindingEntry } from '../entry.ts';
import { found } from '../finding.ts';
import type { Finding } from '../report-model.ts';
import { deviceWords, type GuardedSource, guardedSources, type MainsGuard } from './mains-guards.ts';

const entry: FindingEntry = {
  id: 'earth-too-thin',
  title: 'earth core thinner than its circuit asks for',
  severity: 'warning',
  question: 7,
  base: 'iec-star',
  meaning:
    'When a line touches the metal, the earth core carries all the current of the fault until the breaker opens. A core much thinner than the lines burns off first, and the metal stays live. In one cable all cores are alike, so it comes about where the earth is run on its own: with a spare core of bell wire, say.',
  wrong: extract(
    '  - {cable: flex, length: 2.5 m, cores: {brown: [P1.L, Q1.1], blue: [P1.N, Q1.3]}}',
    '  - {cable: {gauge: 0.5 mm2, cores: 1, insulation: 750 V}, length: 2.5 m, cores: {green-yellow: [P1.PE, B1.PE]}}',
  ),
  right:
    '  - {cable: flex, length: 2.5 m, cores: {brown: [P1.L, Q1.1], blue: [P1.N, Q1.3], green-yellow: [P1.PE, B1.PE]}}',
  basis: 'NEC 250.122; IEC 60364-5-54 clause 543.1, Table 54.2',
  followsFrom: [],
};

export const earthTooThin: Check = { entry, find };

/** A line that lands on what an earth core earths. */
interface Line {
  readonly part: string;
  readonly run: Run;
  readonly guard: MainsGuard;
}

interface ThinEarth {
  readonly run: Run;
  readonly earthed: readonly string[];
  readonly line: Line;
  readonly limit: EarthLimit;
}

function find(study: Study): Finding[] {
  return guardedSources(study).flatMap((from) => {
    const groups = new Map<string, ThinEarth[]>();
    for (const thin of thinEarths(study, from)) {
      const key = [thin.run.cable!.gauge, thin.limit.area, thin.limit.basis].join('/');
      push(groups, key, thin);
    }
    return [...groups.values()].map((thin) => tooThin(study, thin));
  });
}

/** The runs with an earth core that is thinner than what it earths asks for, each once. */
function thinEarths(study: Study, from: GuardedSource): ThinEarth[] {
  const { wired, plan } = study;
  const pin = netAt(wired, from.plug.name, 'PE');
  if (pin === undefined) return [];
  const around = neighbours({ ...wired, contacts: [] });
  const whole = reachable([pin], around, undefined);
  const lines = linesBehind(study, from);
  const thickest = Math.max(0, ...lines.map(({ run }) => run.cable!.area));
  const beside = paralleled(wired);
  const areaOf = (wire: number) => plan.runs[wired.wires[wire]!.run]!.cable?.area ?? 0;
  const thin = new Map<Run, ThinEarth>();
  wired.wires.forEach((wire, index) => {
    const run = plan.runs[wire.run]!;
    if (!whole.has(wire.a) || !run.cable || run.cable.area * SAME_AREA >= thickest || thin.has(run)) return;
    const left = reachable([pin], around, beside(index));
    const earthed = [...plan.parts.values()].filter((p) => {
      const net = netAt(wired, p.name, 'PE');
      // A double-insulated machine has no use for it.
      const hasUse = !('class2Insulated' in p && p.class2Insulated);
      return net !== undefined && hasUse && whole.has(net) && !left.has(net);
    });
    const asked = askedBy(study, earthed, lines);
    // Cores side by side share the fault.
    const area = [...beside(index)].reduce((sum, i) => sum + areaOf(i), 0);
    if (asked && area * SAME_AREA < asked.limit.area)
      thin.set(run, { run, earthed: earthed.map((p) => p.name), ...asked });
  });
  return [...thin.values()];
}

/** Every core of the live side of a plug, at each part it lands on. */
function linesBehind({ wired, plan }: Study, from: GuardedSource): Line[] {
  return plan.runs.flatMap((run) =>
    run.cable === undefined
      ? []
      : run.cores.flatMap(({ a, b }) =>
          [a, b].flatMap(({ part, terminal }) => {
            const guard = from.live.get(netAt(wired, part, terminal) ?? -1);
            return guard === undefined ? [] : [{ part, run, guard }];
          }),
        ),
  );
}

/** The most that any of some parts asks of their earth; undefined where no line lands on them. */
function askedBy(
  { plan }: Study,
  parts: readonly Part[],
  lines: readonly Line[],
): Pick<ThinEarth, 'line' | 'limit'> | undefined {
  const asked = parts
    .flatMap((part) => circuitOf(part, lines))
    .map((line) => ({
      line,
      limit: leastEarth({ line: line.run.cable!, ahead: line.guard.device?.amps }, plan.practice),
    }));
  return asked.length === 0 ? undefined : asked.reduce((a, b) => (b.limit.area > a.limit.area ? b : a));
}

/** Of a box the lines on all that it holds; of a machine its thinnest alone, for that is its circuit. */
function circuitOf(part: Part, lines: readonly Line[]): readonly Line[] {
  if (part.kind === 'box') return lines.filter((l) => part.holds.includes(l.part));
  const own = lines.filter((l) => l.part === part.name);
  return own.length === 0 ? [] : [own.reduce((a, b) => (b.run.cable!.area < a.run.cable!.area ? b : a))];
}

function tooThin({ plan }: Study, thin: readonly ThinEarth[]): Finding {
  const { run, line, limit } = thin[0]!;
  const ends = [...new Set(thin.flatMap((t) => t.run.cores.flatMap((c) => [c.a.part, c.b.part])))];
  const earthed = [...new Set(thin.flatMap((t) => t.earthed))];
  const own = line.run.cable!.gauge;
  const least =
    limit.awg !== undefined
      ? `${limit.awg} AWG`
      : limit.area < line.run.cable!.area / SAME_AREA
        ? `${numberText(limit.area * 1e6)} mm2`
        : own;
  const counts = plan.practice === 'nec' && line.guard.device !== undefined;
  const ahead = counts ? ` behind ${deviceWords(line.guard)}` : '';
  return found(plan, entry, {
    parts: ends,
    at: run.at,
    message: `the earth of ${listOf(earthed)} is a core of ${run.cable!.gauge}, too thin beside lines of ${own}${ahead}: ${least} at least`,
    why: 'When a line touches the metal, this core carries the fault until the breaker opens; burnt off, it leaves the metal live.',
    fix: `Run the earth in the cable of the lines, or as a core of ${least} or thicker, before anything is plugged in.`,
    figures: [
      { name: 'earth', value: rounded(run.cable!.area * 1e6), unit: 'mm2' },
      { name: 'needs', value: rounded(limit.area * 1e6), unit: 'mm2' },
    ],
    basis: limit.basis,
    twin: { name: listOf(earthed), alike: `${run.cable!.gauge}/${least}` },
  });
}
