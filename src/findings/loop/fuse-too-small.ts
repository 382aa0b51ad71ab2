import type { Source } from '../../circuit/circuit.ts';
import { isRatedFuse, type RatedFuse } from '../../plan/part-types.ts';
import type { Study } from '../../study/study.ts';
import { ampsText } from '../../text/numbers.ts';
import { listOf } from '../../text/word-list.ts';
import type { Check, FindingEntry } from '../entry.ts';
import { finding, found } from '../finding.ts';
import { heldBy, mainsFuses, runningOn } from '../mains/mains-fuses.ts';
import type { Load } from '../mains/plug-loads.ts';
import { startOn } from '../mains/start-trips.ts';
import type { Finding } from '../report-model.ts';
import { ampsFigure } from './amps-figure.ts';
import { ampsThrough, busiestFlows } from './busiest-flows.ts';
import { primaryAmps } from './supply-draws.ts';

const entry: FindingEntry = {
  id: 'fuse-too-small',
  title: 'the loop itself blows the fuse',
  severity: 'fault',
  question: 5,
  base: 'battery',
  meaning:
    'With every coil in that can be in together, more current flows than the fuse is made for. It holds for a while and blows one day with two gates open. Fit a slow fuse above that current, but not above what the wire carries. On the mains the same is said of a fuse that the motor opens, running or at its start.',
  wrong: '  F1: {kind: fuse, rating: 50 mA}',
  right: '  F1: {kind: fuse, rating: 1 A}',
  basis: 'common practice: wire at least as good as the fuse, fuse above the holding current',
  followsFrom: ['supply-shorted', 'diode-backwards'],
};

export const fuseTooSmall: Check = { entry, find };

function find(study: Study): Finding[] {
  return [...inLoop(study), ...onMains(study)];
}

/** A fuse of the mains below what runs behind it, or that melts whenever that starts. */
function onMains(study: Study): Finding[] {
  return mainsFuses(study).flatMap(({ fuse, loads, coils, supplies }) => {
    if (!isRatedFuse(fuse)) return [];
    const fed = supplies.map((index) => study.circuit.sources[index]!);
    const through = fed.reduce((sum, s) => sum + primaryAmps(study, s), 0);
    const running = (runningOn(study, loads) ?? 0) + heldBy(coils) + through;
    if (running > fuse.rating * (1 + 1e-9)) {
      const names = [
        ...loads.map((l) => l.name),
        ...coils.map((c) => `the coil of ${c.part.name}`),
        ...fed.map((s) => s.part),
      ];
      return [below(study, fuse, loads, running, names)];
    }
    const start = startOn(study, { amps: fuse.rating, kind: 'fuse', class: fuse.class }, loads, undefined);
    if (start?.judged.verdict === 'opens') return [melts(study, fuse, loads, start)];
    return start?.judged.verdict === 'may' ? [mayMelt(study, fuse, loads, start)] : [];
  });
}

const onMainsOf = (fuse: RatedFuse, loads: readonly Load[]) => ({
  parts: [fuse.name, ...loads.map((l) => l.name)],
  at: fuse.where.get('rating') ?? fuse.at,
});

function below(
  { plan }: Study,
  fuse: RatedFuse,
  loads: readonly Load[],
  amps: number,
  names: readonly string[],
): Finding {
  return finding(plan, {
    ...{ id: entry.id, severity: entry.severity, question: 7 },
    ...onMainsOf(fuse, loads),
    message: `fuse ${fuse.name} of ${ampsText(fuse.rating)} has to carry ${ampsText(amps)} for ${listOf(names)} and opens`,
    why: 'A fuse carries its rating for good and no more.',
    fix: `A fuse above ${ampsText(amps)} that holds ${loads.length > 0 ? 'the start' : 'the inrush'} is needed, and conductors behind it that it protects.`,
    figures: [ampsFigure('current', amps), { name: 'fuse', value: fuse.rating, unit: 'A' }],
    basis: 'IEC 60269-1, NEC 430.52(B): a fuse has to carry the load and its start',
    twin: { alike: `${fuse.rating}`, badness: amps },
  });
}

type Melting = NonNullable<ReturnType<typeof startOn>>;

function melts(
  { plan }: Study,
  fuse: RatedFuse,
  loads: readonly Load[],
  { starting, judged }: Melting,
): Finding {
  return finding(plan, {
    ...{ id: entry.id, severity: entry.severity, question: 7 },
    ...onMainsOf(fuse, loads),
    message: `fuse ${fuse.name} of ${ampsText(fuse.rating)} opens whenever ${listOf(loads.map((l) => l.name))} starts at ${ampsText(starting.amps)}`,
    why: `It has melted within 10 ms at ${ampsText(judged.opens!)}.`,
    fix: `A fuse is needed that holds ${ampsText(starting.amps)} through a start, and conductors behind it that it protects.`,
    figures: [ampsFigure('starting', starting.amps), ampsFigure('opens at', judged.opens!)],
    basis: `${starting.basis}; ${judged.basis}`,
    twin: { alike: `${fuse.rating}`, badness: starting.amps },
  });
}

function mayMelt(
  { plan }: Study,
  fuse: RatedFuse,
  loads: readonly Load[],
  { starting, judged }: Melting,
): Finding {
  return finding(plan, {
    ...{ id: entry.id, severity: 'caution', question: 7 },
    ...onMainsOf(fuse, loads),
    message: `fuse ${fuse.name} of ${ampsText(fuse.rating)} may open when ${listOf(loads.map((l) => l.name))} starts at ${ampsText(starting.amps)}`,
    why: `It surely holds ${ampsText(judged.holds!)}; how long a start lasts is not known.`,
    fix:
      fuse.class === undefined
        ? `State class: of ${fuse.name}; a time-delay or gG fuse holds a start longer than a fast one.`
        : 'A fuse of a class and rating made for this start is needed, and conductors behind it that it protects.',
    figures: [ampsFigure('starting', starting.amps), ampsFigure('holds', judged.holds!)],
    basis: `${starting.basis}; ${judged.basis}`,
    twin: { alike: `${fuse.rating}`, badness: starting.amps },
  });
}

/** A fuse that its own loop blows. */
function inLoop(study: Study): Finding[] {
  return busiestFlows(study).flatMap((busiest) =>
    busiest.flows.island.contacts.flatMap((contact) => {
      const fuse = study.plan.parts.get(contact.part);
      if (fuse?.kind !== 'fuse' || !isRatedFuse(fuse)) return [];
      const amps = ampsThrough(busiest, contact);
      return amps > fuse.rating + 1e-9 ? [blows(study, fuse, busiest.source, amps)] : [];
    }),
  );
}

function blows({ plan }: Study, fuse: RatedFuse, source: Source, amps: number): Finding {
  return found(plan, entry, {
    parts: [fuse.name, source.part],
    at: fuse.where.get('rating') ?? fuse.at,
    message: `fuse ${fuse.name} of ${ampsText(fuse.rating)} has to carry ${ampsText(amps)} and blows`,
    why: 'That is the current with every coil pulled in that can be in together.',
    fix: `${fuse.name} is ${ampsText(amps - fuse.rating)} short.`,
    figures: [ampsFigure('current', amps), { name: 'fuse', value: fuse.rating, unit: 'A' }],
    basis: entry.basis,
    twin: { alike: `${fuse.rating}`, badness: amps },
  });
}
