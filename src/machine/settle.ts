/** How a circuit comes to rest: contacts stand as relays have them, relays move by what they see. The one stepping loop. */
import type { Circuit, ContactEdge, Source } from '../circuit/circuit.ts';

/** Steps for each thing that moves, after which relays that still move are taken to chatter. */
const STEPS_EACH = 4;

/** What a circuit carries over from one position of the inputs to the next. */
export interface Standing {
  /** which relays are in, by number */
  readonly relays: readonly boolean[];
  /** which sources have power, by number */
  readonly alive: readonly boolean[];
}

/**
 * Steps on until nothing moves. `look` tells where relays and sources go next, by what they see while all stands as it
 * does now; how they see, by solved volts or by what is joined, is up to it. `settled` is false where they never rest,
 * and then the standing is one moment of it.
 */
export function settle(
  from: Standing,
  look: (now: Standing) => Standing,
): Standing & { readonly settled: boolean } {
  const most = STEPS_EACH * (1 + from.relays.length + from.alive.length);
  let now = from;
  for (let step = 0; step < most; step++) {
    const next = look(now);
    if (same(next.relays, now.relays) && same(next.alive, now.alive)) return { ...now, settled: true };
    now = next;
  }
  return { ...now, settled: false };
}

function same(a: readonly boolean[], b: readonly boolean[]): boolean {
  return a.every((x, i) => x === b[i]);
}

/** Whether a contact is closed with these inputs moved and these relays in. */
export function closedWith(
  moved: ReadonlySet<number>,
  relays: readonly boolean[],
): (contact: Pick<ContactEdge, 'when'>) => boolean {
  return ({ when }) =>
    when.by === 'always' ||
    (when.by === 'input' ? moved.has(when.input) === when.value : relays[when.relay] === when.value);
}

/** Whether a source gets its power, `fed` telling whether its mains, of so many volts where that is known, lies between two nets. */
export function hasPower(
  circuit: Pick<Circuit, 'sources' | 'consumers'>,
  { feed }: Pick<Source, 'feed'>,
  alive: (s: Source) => boolean,
  fed: (a: number, b: number, volts?: number) => boolean,
): boolean {
  if (feed.by === 'always') return true;
  if (feed.by === 'nets') return fed(feed.a, feed.b, feed.volts);
  const plug = circuit.sources.find((s) => s.part === feed.part);
  if (plug) return alive(plug);
  const outlet = circuit.consumers.find((c) => c.part === feed.part);
  const [a, b] = outlet ? [...outlet.nets.values()] : [];
  return a !== undefined && b !== undefined && fed(a, b);
}
