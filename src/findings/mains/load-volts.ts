/** The volts that a load gets between its own two conductors, by what they are joined to. */
import type { Consumer, Source } from '../../circuit/circuit.ts';
import { difference } from '../../circuit/rail-volts.ts';
import { FALSE } from '../../logic/bdd.ts';
import type { Verified } from '../../logic/verify.ts';
import type { LoadPart, MotorPart } from '../../plan/part-types.ts';
import type { Study } from '../../study/study.ts';

/** A load on volts that it is not made for. */
export interface WrongVolts {
  readonly load: MotorPart | LoadPart;
  readonly source: Source;
  /** terminals of the source that the two conductors reach */
  readonly poles: readonly [string, string];
  /** V between them */
  readonly volts: number;
}

/** Shares of the volts that it gets between which a load may be made for; common practice. */
const SUITS = { least: 0.8, most: 1.15 } as const;

/** Whether a load is made for volts near enough to these. */
export function suits(madeFor: number, gets: number): boolean {
  return madeFor >= SUITS.least * gets && madeFor <= SUITS.most * gets;
}

/** Loads of two conductors that some state of the contacts puts on other volts than theirs. */
export function loadsOnWrongVolts(study: Study): WrongVolts[] {
  const { verified: v, circuit, plan } = study;
  if (!v) return [];
  return circuit.consumers.flatMap((consumer) => {
    const load = plan.parts.get(consumer.part);
    if (load?.kind !== 'motor' && load?.kind !== 'load') return [];
    const wrong = polesOf(v, circuit.sources, consumer).find((p) => !suits(load.volts.volts, p.volts));
    return wrong ? [{ load, ...wrong }] : [];
  });
}

/** Every two poles of one source that the two conductors reach together, through wires and contacts. */
function polesOf(
  v: Verified,
  sources: readonly Source[],
  { nets, dc }: Consumer,
): Omit<WrongVolts, 'load'>[] {
  const { bdd, railReach, valid } = v.model;
  const [x, y, ...more] = nets.values();
  if (x === undefined || y === undefined || more.length > 0 || x === y) return [];
  return sources
    .filter((s) => (s.kind === 'dc') === (dc === true))
    .flatMap((source) =>
      source.rails.flatMap((p, i) =>
        source.rails.flatMap((q, j) => {
          const [from, to] = [railReach[source.index]![i]!.get(x), railReach[source.index]![j]!.get(y)];
          const volts = difference(p, q);
          if (i === j || volts === 0 || from === undefined || to === undefined) return [];
          if (bdd.every([from, to, valid]) === FALSE) return [];
          return [{ source, poles: [p.terminal, q.terminal] as const, volts }];
        }),
      ),
    );
}
