/** Why nothing at all starts a load. */

import { sayMoved } from '../../circuit/input-words.ts';
import { isLanded } from '../../circuit/terminals.ts';
import { FALSE } from '../../logic/bdd.ts';
import type { Wanted } from '../../logic/intent.ts';
import { type Moved, relaysAt, stateOf, type Verified } from '../../logic/verify.ts';
import type { Study } from '../../study/study.ts';
import { listOf } from '../../text/word-list.ts';
import { COMMON_PRACTICE, finding } from '../finding.ts';
import type { Finding } from '../report-model.ts';
import { type Cause, joinedIn } from './causes.ts';
import { wrongTabOfOther } from './wrong-tab.ts';

/** `loop-dead`: nothing starts the load; the one cause, found by asking what is missing with everything open. */
export function loopCause(study: Study, v: Verified, w: Wanted, everything: Moved): Finding {
  const tab = wrongTabOfOther(study);
  const cause: Cause = tab
    ? {
        what: `${tab.part} is wired on ${tab.from} where ${tab.to} is wanted`,
        why: `With that core on ${tab.part}.${tab.to} every load does what is meant, in all states.`,
        fix: `Move the core from ${tab.part}.${tab.from} to ${tab.part}.${tab.to}.`,
        parts: [tab.part],
        terminals: [`${tab.part}.${tab.from}`, `${tab.part}.${tab.to}`],
      }
    : whyDead(study, v, w, everything);
  return finding(study.plan, {
    id: 'loop-dead',
    severity: 'fault',
    question: 2,
    parts: [...cause.parts, w.target],
    terminals: cause.terminals,
    message: `no gate starts ${w.target}: ${cause.what}`,
    why: cause.why,
    fix: cause.fix,
    basis: COMMON_PRACTICE,
  });
}

function whyDead(study: Study, v: Verified, w: Wanted, everything: Moved): Cause {
  const { circuit, plan } = study;
  const { model } = v;
  const { bdd } = model;
  const here = stateOf(circuit, bdd, everything);
  for (const source of circuit.sources.filter((s) => !s.mains)) {
    if (source.feed.by === 'always') continue;
    const live = bdd.any(
      [...v.fromRest].map(([mode, set]) => bdd.and(v.settler.at(model.live[source.index]!, mode), set)),
    );
    if (bdd.and(live, here) !== FALSE) continue;
    const feed = source.feed.by === 'part' ? source.feed.part : `its mains terminals`;
    const own = [...bdd.support(model.live[source.index]!)].some((x) => x < circuit.relays.length);
    return own
      ? {
          what: `supply ${source.part} is fed through the contact it has to close`,
          why: `${source.part} takes its mains from ${feed}, which is live only when the relay has pulled in already.`,
          fix: `Feed ${source.part} from the line ahead of the contact.`,
          parts: [source.part],
          terminals: [],
        }
      : {
          what: `supply ${source.part} is not fed`,
          why: `${source.part} takes its mains from ${feed}, and no plug's line and neutral arrive there.`,
          fix: `Bring line and neutral to ${source.part}.`,
          parts: [source.part],
          terminals: [],
        };
  }
  for (const relay of circuit.relays) {
    const part = plan.parts.get(relay.part)!;
    const needed = part.kind === 'board' ? ['VCC', 'GND', 'IN'] : ['A1', 'A2'];
    const empty = needed.filter((t) => !isLanded(circuit, part, t));
    if (empty.length > 0)
      return {
        what: `${listOf(empty.map((t) => `${relay.part}.${t}`))} ${empty.length > 1 ? 'have nothing on them' : 'has nothing on it'}`,
        why: `The coil of ${relay.part} has a loose end.`,
        fix: `Land the missing core on ${relay.part}.${empty[0]}.`,
        parts: [relay.part],
        terminals: [],
      };
  }
  for (const part of plan.parts.values()) {
    if (part.kind !== 'fuse') continue;
    const empty = ['1', '2'].filter((t) => !isLanded(circuit, part, t));
    if (empty.length > 0)
      return {
        what: `fuse ${part.name} is wired at one end only`,
        why: `${part.name}.${empty[0]} has nothing on it.`,
        fix: `Land the core on ${part.name}.${empty[0]}.`,
        parts: [part.name],
        terminals: [],
      };
  }
  const pulled = relaysAt(v, everything);
  const consumer = circuit.consumers.find((c) => c.part === w.target);
  if (consumer && circuit.relays.length > 0 && pulled.some((p) => p)) {
    const sets = joinedIn(v, everything);
    const rails = circuit.sources.filter((s) => s.mains).flatMap((s) => s.rails);
    const owners = [...consumer.nets.values()].map(
      (net) => circuit.sources.find((s) => s.mains && s.rails.some((r) => sets.joined(r.net, net)))?.part,
    );
    if (owners.every((o) => o !== undefined) && new Set(owners).size > 1)
      return {
        what: 'its conductors come from different plugs',
        why:
          [...consumer.nets.keys()].map((t, i) => `${w.target}.${t} comes from ${owners[i]}`).join(', ') +
          '.',
        fix: `Bring every conductor of ${w.target} from one plug.`,
        parts: [w.target],
        terminals: [...consumer.nets.keys()].map((t) => `${w.target}.${t}`),
      };
    const open = [...consumer.nets]
      .filter(([, net]) => !rails.some((r) => sets.joined(r.net, net)))
      .map(([t]) => `${w.target}.${t}`);
    if (open.length > 0)
      return {
        what: `the relay pulls in, yet ${listOf(open)} ${open.length > 1 ? 'do' : 'does'} not reach the plug`,
        why: 'A conductor or contact is missing on the mains side.',
        fix: `Trace ${listOf(open)} back through the contact to the plug.`,
        parts: [w.target],
        terminals: open,
      };
  }
  const sets = joinedIn(v, everything);
  for (const relay of circuit.relays) {
    if (pulled[relay.index]) continue;
    const sense = relay.senses.find((s) => s.by === 'volts');
    if (!sense) continue;
    const rails = circuit.sources.flatMap((s) => s.rails.map((r) => r.net));
    const [a, b] = [sense.a, sense.b].map((n) => rails.some((r) => sets.joined(r, n)));
    const ends = plan.parts.get(relay.part)?.kind === 'board' ? ['VCC', 'GND'] : ['A1', 'A2'];
    const open = [a, b].flatMap((ok, i) => (ok ? [] : [`${relay.part}.${ends[i]}`]));
    if (open.length > 0)
      return {
        what: `${listOf(open)} ${open.length > 1 ? 'do' : 'does'} not reach the supply`,
        why: `With ${sayMoved(circuit, everything)} no path leads from ${listOf(open)} to a pole of the supply.`,
        fix: `Trace the core on ${open[0]} back to the supply and close the gap.`,
        parts: [relay.part],
        terminals: open,
      };
    return {
      what: `${relay.part} is not energised`,
      why: `Both ends of its coil reach the same pole, or too few volts reach it, with ${sayMoved(circuit, everything)}.`,
      fix: `One end of ${relay.part} belongs on each pole of the supply.`,
      parts: [relay.part],
      terminals: ends.map((e) => `${relay.part}.${e}`),
    };
  }
  return {
    what: 'the circuit does not close',
    why: `It stays off with ${sayMoved(circuit, everything)}.`,
    fix: 'Trace the loop from the supply through a gate to the coil and back.',
    parts: [w.target],
    terminals: [],
  };
}
