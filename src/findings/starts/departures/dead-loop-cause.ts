/** Why nothing at all starts a load: the one thing missing with everything open. */
import { isLanded } from '../../../circuit/terminals.ts';
import type { UnionFind } from '../../../circuit/union-find.ts';
import { FALSE } from '../../../logic/bdd.ts';
import type { Wanted } from '../../../logic/intent.ts';
import { type Moved, relaysAt, stateOf, type Verified } from '../../../logic/verify.ts';
import type { Plan } from '../../../plan/plan.ts';
import type { Study } from '../../../study/study.ts';
import { joinedIn } from './joined-in.ts';
import { wrongTabOfOther } from './proved-moves.ts';
import type { TabMove } from './tab-moves.ts';
import { joinedAsIf, outInOrder } from './waiting-relays.ts';

/** `terminals` are those where something is missing. */
export type DeadLoopCause =
  | { readonly kind: 'wrong-tab'; readonly move: TabMove }
  /** `byItself`: only a relay that this supply works would feed it; `feed` is what its mains come from */
  | {
      readonly kind: 'supply-not-fed';
      readonly supply: string;
      readonly feed: string;
      readonly byItself: boolean;
    }
  | { readonly kind: 'coil-loose'; readonly relay: string; readonly terminals: readonly string[] }
  | { readonly kind: 'fuse-loose'; readonly fuse: string; readonly terminal: string }
  | { readonly kind: 'several-plugs'; readonly plugs: ReadonlyMap<string, string> }
  | { readonly kind: 'mains-open'; readonly terminals: readonly string[] }
  | { readonly kind: 'coil-open'; readonly relay: string; readonly terminals: readonly string[] }
  | { readonly kind: 'coil-on-one-pole'; readonly relay: string; readonly terminals: readonly string[] }
  | { readonly kind: 'coil-not-energised'; readonly relay: string; readonly terminals: readonly string[] }
  | { readonly kind: 'loop-open' };

export function deadLoopCause(study: Study, v: Verified, wanted: Wanted, everything: Moved): DeadLoopCause {
  const move = wrongTabOfOther(study);
  if (move) return { kind: 'wrong-tab', move };
  const loose = supplyNotFed(v, everything) ?? coilLoose(study) ?? fuseLoose(study);
  if (loose) return loose;
  const pulled = relaysAt(v, everything);
  const sets = joinedIn(v, everything);
  return (
    (pulled.includes(true)
      ? mainsOpen(study, wanted.target, sets, asIfAllIn(v, everything, pulled))
      : undefined) ??
    coilOpen(study, outInOrder(v, everything, pulled), sets) ?? { kind: 'loop-open' }
  );
}

/** Nets joined as if every relay that is out were in. */
function asIfAllIn(v: Verified, everything: Moved, pulled: readonly boolean[]): UnionFind {
  return joinedAsIf(v, everything, new Set(pulled.flatMap((isIn, relay) => (isIn ? [] : [relay]))));
}

function supplyNotFed(v: Verified, everything: Moved): DeadLoopCause | undefined {
  const { circuit, model } = v;
  const { bdd } = model;
  const here = stateOf(circuit, bdd, everything);
  for (const source of circuit.sources) {
    if (source.feed.by === 'always') continue;
    const fed = model.live[source.index]!;
    const live = bdd.any([...v.fromRest].map(([mode, set]) => bdd.and(v.settler.at(fed, mode), set)));
    if (bdd.and(live, here) !== FALSE) continue;
    return {
      kind: 'supply-not-fed',
      supply: source.part,
      feed: source.feed.by === 'part' ? source.feed.part : 'its mains terminals',
      byItself: [...bdd.support(fed)].some((x) => x < circuit.relays.length),
    };
  }
  return undefined;
}

/** The terminals that feed a coil; a board has its input besides. */
function coilEnds(plan: Plan, relay: string): readonly string[] {
  return plan.parts.get(relay)?.kind === 'board' ? ['VCC', 'GND'] : ['A1', 'A2'];
}

function coilLoose({ plan, circuit }: Study): DeadLoopCause | undefined {
  for (const { part: relay } of circuit.relays) {
    const board = plan.parts.get(relay)?.kind === 'board';
    const needed = [...coilEnds(plan, relay), ...(board ? ['IN'] : [])];
    const empty = needed.filter((t) => !isLanded(circuit, relay, t));
    if (empty.length > 0) return { kind: 'coil-loose', relay, terminals: empty.map((t) => `${relay}.${t}`) };
  }
  return undefined;
}

function fuseLoose({ plan, circuit }: Study): DeadLoopCause | undefined {
  for (const { name, kind } of plan.parts.values()) {
    const empty = kind === 'fuse' ? ['1', '2'].find((t) => !isLanded(circuit, name, t)) : undefined;
    if (empty) return { kind: 'fuse-loose', fuse: name, terminal: `${name}.${empty}` };
  }
  return undefined;
}

/**
 * A relay is in; then its load, if it is one on the mains, lacks a conductor or gets them from several plugs. A conductor
 * that a relay would bring which is out says nothing: that relay is the cause.
 */
function mainsOpen(
  { circuit }: Study,
  target: string,
  sets: UnionFind,
  allIn: UnionFind,
): DeadLoopCause | undefined {
  const consumer = circuit.consumers.find((c) => c.part === target);
  if (!consumer) return undefined;
  const mains = circuit.sources.filter((s) => s.mains);
  const plugs = new Map<string, string>();
  const open: string[] = [];
  const comes = (joins: UnionFind, net: number) =>
    mains.some((s) => s.rails.some((r) => joins.joined(r.net, net)));
  if ([...consumer.nets.values()].some((net) => !comes(sets, net) && comes(allIn, net))) return undefined;
  for (const [t, net] of consumer.nets) {
    const plug = mains.find((s) => s.rails.some((r) => sets.joined(r.net, net)))?.part;
    if (plug === undefined) open.push(`${target}.${t}`);
    else plugs.set(`${target}.${t}`, plug);
  }
  if (open.length > 0) return { kind: 'mains-open', terminals: open };
  return new Set(plugs.values()).size > 1 ? { kind: 'several-plugs', plugs } : undefined;
}

/** The first of the relays that are out, and which ends of its coil reach no pole, or only one and the same. */
function coilOpen(
  { plan, circuit }: Study,
  out: readonly number[],
  sets: UnionFind,
): DeadLoopCause | undefined {
  const rails = circuit.sources.flatMap((s) => s.rails.map((r) => r.net));
  for (const index of out) {
    const { part: relay, senses } = circuit.relays[index]!;
    const sense = senses.find((s) => s.by === 'volts');
    if (!sense) continue;
    const ends = coilEnds(plan, relay).map((t) => `${relay}.${t}`);
    const open = [sense.a, sense.b].flatMap((n, i) =>
      rails.some((r) => sets.joined(r, n)) ? [] : [ends[i]!],
    );
    if (open.length > 0) return { kind: 'coil-open', relay, terminals: open };
    const onePole = rails.some((r) => sets.joined(r, sense.a) && sets.joined(r, sense.b));
    return { kind: onePole ? 'coil-on-one-pole' : 'coil-not-energised', relay, terminals: ends };
  }
  return undefined;
}
