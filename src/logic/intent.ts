import type { Circuit } from '../circuit/circuit.ts';
import { edgesBetween } from '../circuit/ways.ts';
import type { InputRef, Intent, Plan } from '../plan/plan.ts';
import { type Bdd, FALSE, type Fn } from './bdd.ts';
import { inputVariable } from './conduction.ts';
import { BLOCKS_WHEN } from './kinds.ts';

/** What one load (or relay) is meant to do, as functions of the inputs. */
export interface Wanted {
  readonly target: string;
  /** the intent it came from; undefined for the default "any gate" */
  readonly intent?: Intent;
  /** set when the intent names a relay and this is the load behind it */
  readonly through?: string;
  readonly entries: readonly { readonly refs: readonly InputRef[]; readonly works: Fn }[];
  /** the load may stay off though it is called: hand contacts that the intent does not name lie on the way */
  readonly loose?: boolean;
  readonly blocked: Fn;
  /** the inputs' own lists, with the function that says "is blocking" */
  readonly blockers: readonly { readonly ref: InputRef; readonly blocks: Fn }[];
  readonly latches: readonly { readonly ref: InputRef; readonly pressed: Fn }[];
  /** buttons of which each press starts what is off and stops what is on; undefined where there are none */
  readonly alternating: { readonly parts: ReadonlySet<string>; readonly pressed: Fn } | undefined;
  readonly stops: Fn;
  readonly ifSupplyFails: 'stopped' | 'running';
  /** s that it must go on at least once the last entry has gone back; 0 where none is asked for */
  readonly runOn: number;
}

export interface Intents {
  readonly wanted: readonly Wanted[];
  /** loads that no intent speaks of */
  readonly unspoken: readonly string[];
}

/** Working position of an input as a function; a selector's resting position is "none of the others". */
export function working(circuit: Circuit, bdd: Bdd, ref: { part: string; position?: string }): Fn {
  const own = circuit.inputs.filter((i) => i.part === ref.part);
  const variable = (i: { index: number }) => bdd.variable(inputVariable(circuit, i.index));
  if (ref.position === undefined) return own[0] ? variable(own[0]) : FALSE;
  const named = own.find((i) => i.position === ref.position);
  return named ? variable(named) : bdd.not(bdd.any(own.map(variable)));
}

function blocking(circuit: Circuit, bdd: Bdd, ref: { part: string; position?: string }): Fn {
  const works = working(circuit, bdd, ref);
  const input = circuit.inputs.find((i) => i.part === ref.part);
  return input !== undefined && BLOCKS_WHEN[input.kind] === 'resting' ? bdd.not(works) : works;
}

/** `arming` picks the second reading of a start button that `runs-on` does not name, see `fromIntent`. */
export function readIntents(circuit: Circuit, bdd: Bdd, arming = false): Intents {
  const { plan } = circuit;
  if (plan.intents === undefined) return { wanted: defaultIntents(circuit, bdd), unspoken: [] };
  const wanted: Wanted[] = plan.intents.map((intent) =>
    fromIntent(circuit, bdd, intent.target, intent, arming),
  );
  const named = new Set(plan.intents.map((i) => i.target));
  const unspoken: string[] = [];
  for (const load of loadNames(plan)) {
    const part = plan.parts.get(load);
    const outlet = part && 'pluggedInto' in part ? part.pluggedInto : undefined;
    if (named.has(load) || (outlet !== undefined && named.has(outlet))) continue;
    const starter = startedBy(circuit, load, named);
    const intent = plan.intents.find((i) => i.target === starter?.relay);
    if (starter && intent)
      wanted.push({
        ...fromIntent(circuit, bdd, load, intent, arming),
        through: intent.target,
        loose: !starter.alone,
      });
    else if (isSwitched(circuit, load)) unspoken.push(load);
  }
  return { wanted, unspoken };
}

/** Entries of an intent that are blocked in every state in which they work, so that nothing is ever asked for them. */
export function blockedForGood({ entries, blocked }: Wanted, bdd: Bdd, valid: Fn): Wanted['entries'] {
  const open = bdd.diff(valid, blocked);
  return entries.filter(({ works }) => bdd.and(works, open) === FALSE);
}

function fromIntent(circuit: Circuit, bdd: Bdd, target: string, intent: Intent, arming: boolean): Wanted {
  const parts = new Set(
    intent.staysOnAfter.filter((r) => intent.stoppedBy.some((x) => x.part === r.part)).map((r) => r.part),
  );
  const alternates = (ref: InputRef) => parts.has(ref.part);
  // A button that only stays-on-after names: it starts the load by itself, or (`arming`) every entry asks for it.
  const unnamed = intent.staysOnAfter.filter(
    (ref) => !intent.runsOn.some((refs) => refs.some((r) => r.part === ref.part)),
  );
  const alone = unnamed.filter((ref) => !alternates(ref));
  const presses = unnamed.filter(alternates);
  const armed = presses.length === 0 ? [[]] : presses.map((ref) => [ref]);
  const lists = arming
    ? intent.runsOn.flatMap((refs) => armed.map((press) => [...alone, ...press, ...refs]))
    : [...intent.runsOn, ...[...alone, ...presses].map((ref) => [ref])];
  const stopping = intent.stoppedBy.filter((ref) => !alternates(ref));
  const pressed = (ref: InputRef) => working(circuit, bdd, ref);
  const entries = lists.map((refs) => ({
    refs,
    works: bdd.every(refs.map((r) => working(circuit, bdd, r))),
  }));
  const blockers = intent.blockedBy.map((ref) => ({ ref, blocks: blocking(circuit, bdd, ref) }));
  const stops = stopping.map((ref) => blocking(circuit, bdd, ref));
  return {
    target,
    intent,
    entries,
    blockers: [
      ...blockers,
      ...stopping
        .filter((r) => !intent.blockedBy.some((x) => x.part === r.part && x.position === r.position))
        .map((ref) => ({ ref, blocks: blocking(circuit, bdd, ref) })),
    ],
    blocked: bdd.any([...blockers.map((b) => b.blocks), ...stops]),
    latches: intent.staysOnAfter
      .filter((ref) => !alternates(ref))
      .map((ref) => ({ ref, pressed: pressed(ref) })),
    alternating:
      parts.size === 0
        ? undefined
        : { parts, pressed: bdd.any(intent.staysOnAfter.filter(alternates).map(pressed)) },
    stops: bdd.any(stops),
    ifSupplyFails: intent.ifSupplyFails,
    runOn: intent.runOn ?? 0,
  };
}

function defaultIntents(circuit: Circuit, bdd: Bdd): Wanted[] {
  const gates = circuit.inputs.filter((i) => i.kind === 'gate');
  const loads = loadNames(circuit.plan);
  const outlets = circuit.consumers.filter((c) => c.kind === 'outlet').map((c) => c.part);
  return (loads.length > 0 ? loads : outlets).map((target) => ({
    target,
    entries: gates.map((g) => ({
      refs: [{ part: g.part, at: circuit.plan.parts.get(g.part)!.at }],
      works: bdd.variable(inputVariable(circuit, g.index)),
    })),
    blocked: FALSE,
    blockers: [],
    latches: [],
    alternating: undefined,
    stops: FALSE,
    ifSupplyFails: 'stopped',
    runOn: 0,
  }));
}

function loadNames(plan: Plan): string[] {
  return [...plan.parts.values()].filter((p) => p.kind === 'motor' || p.kind === 'load').map((p) => p.name);
}

/**
 * The one relay with an intent that starts this load: its own contacts carry the load, or it feeds the coil of the
 * relay that does, and so on outwards. `alone` is false when hand contacts lie on the way as well, so that the load
 * may stay off while the relay is in. Undefined when no named relay starts it, or several do at the same distance.
 */
function startedBy(
  circuit: Circuit,
  load: string,
  named: ReadonlySet<string>,
): { readonly relay: string; readonly alone: boolean } | undefined {
  let ring = switchedBy(circuit, load);
  let alone = true;
  const seen = new Set<string>();
  const inputs = new Set(circuit.inputs.map((i) => i.part));
  while (ring.size > 0) {
    if ([...ring].some((part) => inputs.has(part))) alone = false;
    const hits = [...ring].filter((r) => named.has(r));
    if (hits.length > 0) return hits.length === 1 ? { relay: hits[0]!, alone } : undefined;
    for (const r of ring) seen.add(r);
    const next = new Set<string>();
    for (const relay of circuit.relays) {
      if (!ring.has(relay.part)) continue;
      const nets = relay.senses.flatMap((s) => [s.a, s.b]);
      for (const part of contactsOnTheWay(circuit, nets)) if (!seen.has(part)) next.add(part);
    }
    ring = next;
  }
  return undefined;
}

function isSwitched(circuit: Circuit, load: string): boolean {
  return switchedBy(circuit, load).size > 0;
}

/** Parts whose contacts carry the load's current. */
export function switchedBy(circuit: Circuit, load: string): Set<string> {
  const consumer = circuit.consumers.find((c) => c.part === load);
  return consumer ? contactsOnTheWay(circuit, [...consumer.nets.values()]) : new Set();
}

/**
 * Parts whose contacts lie on a way from these nets to a pole of a supply. A branch that leads to no pole, such as that of
 * another load behind the same fuse, carries none of their current.
 */
function contactsOnTheWay(circuit: Circuit, nets: readonly number[]): Set<string> {
  const rails = new Set(circuit.sources.flatMap((s) => s.rails.map((r) => r.net)));
  const ways = [...edgesBetween(circuit.contacts, new Set(nets), rails)];
  return new Set(ways.filter((c) => c.when.by !== 'always').map((c) => c.part));
}
