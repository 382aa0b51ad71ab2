/** What a supply has to give at one time, against what it can. */

import type { Source } from '../../circuit/circuit.ts';
import { ohmsOf } from '../../logic/ohms.ts';
import { kept } from '../../plan/map-entries.ts';
import type { LoadPart, MotorPart, SupplyPart } from '../../plan/part-types.ts';
import { motorCurrents } from '../../ratings/motor.ts';
import type { FedCoil } from '../../study/fed-coils.ts';
import { mostTogether } from '../../study/fed-together.ts';
import { perStudy } from '../../study/per-study.ts';
import type { Study } from '../../study/study.ts';
import { ampsText } from '../../text/numbers.ts';
import { holdingAmps, inrushAmps } from './loop-coils.ts';

/** The most that a supply has to give at one time. */
export interface Draw {
  readonly source: Source;
  readonly part: SupplyPart;
  readonly coils: readonly FedCoil[];
  /** A while coils pull in */
  readonly amps: number;
  /** A with all of them in */
  readonly settled: number;
  /** motors, loads and supplies that hang on it beside the coils */
  readonly others: readonly string[];
}

/** What is known of a source, and 'open' while it is worked out. */
type Known = Map<Source, { readonly draw: Draw | undefined } | 'open'>;
const knownOf = perStudy(() => new WeakMap<readonly FedCoil[], Known>());

/**
 * Coils that can be in together, lamps and indicators; undefined for a battery, whose limit nobody states. Each supply is
 * worked out once. In a ring of supplies none feeds another, for none of them has power: what comes round to where it began
 * adds nothing.
 */
export function supplyDraw(study: Study, coils: readonly FedCoil[], source: Source): Draw | undefined {
  const known = kept(knownOf(study), coils, (): Known => new Map());
  const found = known.get(source);
  if (found !== undefined) return found === 'open' ? undefined : found.draw;
  known.set(source, 'open');
  const draw = drawOf(study, coils, source);
  known.set(source, { draw });
  return draw;
}

function drawOf(study: Study, coils: readonly FedCoil[], source: Source): Draw | undefined {
  const { plan, circuit } = study;
  const part = plan.parts.get(source.part);
  if (part?.kind !== 'supply') return undefined;
  const volts = part.output.volts;
  const reach = study.verified?.model.railReach[source.index] ?? [];
  const near = (net: number): boolean => reach.some((r) => r.has(net));
  const elements = circuit.passives.filter(
    (p) => p.what !== 'coil' && p.what !== 'load' && p.what !== 'primary',
  );
  const others = elements.filter((p) => near(p.a) || near(p.b)).map((p) => volts / ohmsOf(plan, p));
  const leds = circuit.diodes
    .filter((d) => d.load && (near(d.anode) || near(d.cathode)))
    .map((d) => d.amps ?? 0.02);
  const loads = loadsOn(study, near);
  const running = loads.map((l) => motorCurrents(l, plan.practice).running?.amps ?? 0);
  const fed = suppliesOn(study, source, near);
  const behind = fed.map((s) => ampsOfFed(study, coils, s));
  const extra = [...others, ...leds, ...running, ...behind].reduce((a, b) => a + b, 0);
  const own = coils.filter((c) => c.source === source);
  const before = holdingThemselves(study);
  const settled = mostTogether(study, own, holdingAmps).amps + extra;
  // A relay that holds itself in has pulled in before the others do.
  const rest = mostTogether(study, own, (c) => (before.has(c.part.name) ? holdingAmps(c) : inrushAmps(c)));
  const first = mostTogether(
    study,
    own.filter((c) => before.has(c.part.name)),
    inrushAmps,
  );
  const most = first.amps > rest.amps ? first : rest;
  const hanging = [...loads.map((l) => l.name), ...fed.map((s) => s.part)];
  return { source, part, coils: most.coils, amps: most.amps + extra, settled, others: hanging };
}

/** Relays with a contact in the way of their own coil. */
function holdingThemselves(study: Study): ReadonlySet<string> {
  const relays = study.verified?.settler.memory.relays ?? [];
  return new Set(relays.map((k) => study.circuit.relays[k]!.part));
}

interface DrawWords {
  readonly supply: string;
  readonly limit: string;
  readonly drawn: string;
}

/** For the answer to question 5: supply, its limit and the most that is drawn, in words. */
export function draws(study: Study): DrawWords[] {
  const coils = study.fedCoils;
  return study.circuit.sources.flatMap((source) => {
    const d = supplyDraw(study, coils, source);
    return d?.part.limit
      ? [{ supply: source.part, limit: ampsText(d.part.limit.amps), drawn: ampsText(d.amps) }]
      : [];
  });
}

/** Motors and loads whose conductors a source's poles reach, by which nets are its own. */
function loadsOn({ plan, circuit }: Study, near: (net: number) => boolean): (MotorPart | LoadPart)[] {
  return circuit.consumers.flatMap((c) => {
    const part = plan.parts.get(c.part);
    if (part?.kind !== 'motor' && part?.kind !== 'load') return [];
    return [...c.nets.values()].every(near) ? [part] : [];
  });
}

/** Supplies whose mains side hangs on a source. */
function suppliesOn({ circuit }: Study, source: Source, near: (net: number) => boolean): Source[] {
  return circuit.sources.filter(
    ({ index, feed }) => index !== source.index && feed.by === 'nets' && near(feed.a) && near(feed.b),
  );
}

/** Share of what a supply takes that it gives; common practice for small ones, no source. */
const PASSED_ON = 0.8;

/** A on its mains side with all in that can be in, at least: as if it lost nothing; 0 where its volts are not known. */
export function primaryAmps(study: Study, source: Source): number {
  const draw = supplyDraw(study, study.fedCoils, source);
  const volts = source.feed.by === 'nets' ? source.feed.volts : undefined;
  return draw === undefined || !volts ? 0 : (draw.settled * draw.part.output.volts) / volts;
}

/** A on its mains side for the most that such a supply has to give. */
function ampsOfFed(study: Study, coils: readonly FedCoil[], source: Source): number {
  const draw = supplyDraw(study, coils, source);
  const volts = source.feed.by === 'nets' ? source.feed.volts : undefined;
  if (draw === undefined || !volts) return 0;
  return (draw.amps * draw.part.output.volts) / PASSED_ON / volts;
}
