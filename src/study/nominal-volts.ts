/** What a relay sees at nominal volts after certain moves. */
import type { Relay, Sense } from '../circuit/circuit.ts';
import { relaysByPart } from '../circuit/relays-by-part.ts';
import type { Situation } from '../electric/island.ts';
import { inputVariable } from '../logic/conduction.ts';
import { follow } from '../logic/follow.ts';
import type { Moved } from '../logic/verify.ts';
import { figuresFor } from './corner-figures.ts';
import { withDeltas } from './mains/three-phase.ts';
import { meets, voltsIn } from './seen-volts.ts';
import { senseIsland } from './sense-island.ts';
import { isClosed } from './situations.ts';
import type { Study } from './study.ts';
import { solveLimited } from './supply-limits.ts';

/** V between the two terminals of a sense, and V at which it pulls in. */
export interface SeenAndNeeded {
  readonly what: Extract<Sense, { by: 'volts' }>['what'];
  readonly volts: number;
  readonly needed: number;
}

/**
 * The first sense of a relay that does not see its pull-in; undefined where each does, where its volts are not worked
 * out, and where nothing was decided.
 */
export function unmetSense(study: Study, relay: Relay, steps: readonly Moved[]): SeenAndNeeded | undefined {
  const { plan, nominal } = study;
  if (!nominal) return undefined;
  const { circuit, figures } = withDeltas(plan, study.wired, figuresFor(plan, 'reading'));
  const situation = situationAfter(study, steps);
  for (const sense of circuit.relays[relay.index]!.senses) {
    if (sense.by !== 'volts') continue;
    const solved = solveLimited(plan, senseIsland(circuit, sense, new Set()), figures, situation);
    if (solved.notWorkedOut !== undefined) continue;
    const between = voltsIn([solved]);
    if (meets(sense, between).on) continue;
    return { what: sense.what, volts: between(sense.a, sense.b)?.size ?? 0, needed: sense.pullIn };
  }
  return undefined;
}

function situationAfter({ circuit, nominal }: Study, steps: readonly Moved[]): Situation {
  const { verified } = nominal!;
  const { bdd, live } = verified.model;
  const reached = follow(verified, steps);
  const relays = circuit.relays.map((r) => reached.runs(r.part) === true);
  const inputs = new Set(steps.at(-1));
  const moved = new Set([...inputs].map((i) => inputVariable(circuit, i)));
  const value = (x: number) => (x < relays.length ? relays[x] === true : moved.has(x));
  return {
    closed: (c) => isClosed(c, inputs, relays),
    alive: (s) => s.feed.by === 'always' || bdd.evaluate(live[s.index]!, value),
    pulledIn: (part) =>
      relaysByPart(circuit.relays)
        .get(part)
        ?.some((i) => relays[i] === true) === true,
  };
}
