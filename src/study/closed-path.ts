import { type Moved, relaysAt, type Verified } from '../logic/verify.ts';
import { push } from '../plan/map-entries.ts';
import type { Study } from './study.ts';

/**
 * The shortest way by wires, links, fuses and closed contacts from any of the starting terminals to any of the ends,
 * in one settled state, as terminals in order. Undefined when there is none.
 */
function closedPath(
  study: Study,
  v: Verified,
  moved: Moved,
  starts: readonly string[],
  ends: readonly string[],
): readonly string[] | undefined {
  const around = closedNeighbours(study, v, moved);
  const goal = new Set(ends);
  const from = new Map<string, string | undefined>(starts.map((s) => [s, undefined]));
  const queue = [...starts];
  for (let i = 0; i < queue.length; i++) {
    const here = queue[i]!;
    if (goal.has(here)) {
      const path: string[] = [];
      for (let at: string | undefined = here; at !== undefined; at = from.get(at)) path.unshift(at);
      return path;
    }
    for (const to of around.get(here) ?? [])
      if (!from.has(to)) {
        from.set(to, here);
        queue.push(to);
      }
  }
  return undefined;
}

function closedNeighbours(study: Study, v: Verified, moved: Moved): Map<string, string[]> {
  const around = new Map<string, string[]>();
  const join = (a: string, b: string) => {
    push(around, a, b);
    push(around, b, a);
  };
  const key = (end: { part: string; terminal: string }) =>
    end.terminal === '' ? end.part : `${end.part}.${end.terminal}`;
  for (const run of study.plan.runs) for (const core of run.cores) join(key(core.a), key(core.b));
  for (const part of study.plan.parts.values())
    if ('pluggedInto' in part && part.pluggedInto !== undefined)
      for (const t of ['L', 'N', 'L1', 'L2', 'L3']) join(`${part.name}.${t}`, `${part.pluggedInto}.${t}`);
  const on = new Set(moved);
  const relays = relaysAt(v, moved);
  for (const c of study.circuit.contacts) {
    const closed =
      c.when.by === 'always' ||
      (c.when.by === 'input' ? on.has(c.when.input) === c.when.value : relays[c.when.relay] === c.when.value);
    if (closed) join(`${c.part}.${c.terminals[0]}`, `${c.part}.${c.terminals[1]}`);
  }
  return around;
}

/**
 * What keeps a load running in a state: the way to the coil of the relay that is in and carries it, or the mains way
 * to the load itself, as terminals in order. Undefined when neither is found.
 */
export function whatFeeds(
  study: Study,
  v: Verified,
  target: string,
  moved: Moved,
): readonly string[] | undefined {
  const { circuit, plan } = study;
  const low = circuit.sources
    .filter((s) => !s.mains)
    .flatMap((s) => s.rails.slice(0, 1).map((r) => `${s.part}.${r.terminal}`));
  const live = circuit.sources
    .filter((s) => s.mains)
    .flatMap((s) => s.rails.filter((r) => r.live).map((r) => `${s.part}.${r.terminal}`));
  const coil = (name: string) =>
    plan.parts.get(name)?.kind === 'board' ? [`${name}.IN`] : [`${name}.A1`, `${name}.A2`];
  const consumer = circuit.consumers.find((c) => c.part === target);
  const mains = consumer
    ? closedPath(
        study,
        v,
        moved,
        live,
        [...consumer.nets.keys()].map((t) => `${target}.${t}`),
      )
    : undefined;
  const pulled = relaysAt(v, moved);
  const carrying = circuit.relays.filter(
    (r) => pulled[r.index] && (r.part === target || (mains ?? []).some((t) => t.startsWith(`${r.part}.`))),
  );
  for (const relay of carrying) {
    const path = closedPath(study, v, moved, low, coil(relay.part));
    if (path) return path;
  }
  return mains;
}
