import type { Consumer, Source } from '../../circuit/circuit.ts';
import { sayMoved } from '../../circuit/input-words.ts';
import { FALSE } from '../../logic/bdd.ts';
import { everIn } from '../../logic/entry-states.ts';
import type { Moved, Verified } from '../../logic/verify.ts';
import { isFixedFeed } from '../../plan/fixed-feed.ts';
import type { PlugPart } from '../../plan/part-types.ts';
import { isPlugIn } from '../../study/plug-in.ts';
import type { Study } from '../../study/study.ts';
import { listOf } from '../../text/word-list.ts';
import { type Check, extract, type FindingEntry } from '../entry.ts';
import { found } from '../finding.ts';
import type { Finding } from '../report-model.ts';
import { mainsSources, sideReaches } from './rail-reach.ts';

const entry: FindingEntry = {
  id: 'line-not-switched',
  title: 'the load stays live while it is off',
  severity: 'danger',
  question: 1,
  base: 'battery',
  meaning:
    'The contact breaks the neutral, or fewer than all the live conductors. The motor stops, yet its windings and the outlet are still joined to the line, and whoever opens the motor box finds it live. On two live legs behind a plug one pole is a warning; otherwise it is a danger.',
  wrong: extract(
    '  - {cable: flex, length: 2 m, cores: {brown: [P1.L, X1.L], blue: [P1.N, K1.23], green-yellow: [P1.PE, earth]}}',
    '  - {cable: flex, length: 1 m, cores: {blue: [K1.24, X1.N], green-yellow: [earth, X1.PE]}}',
  ),
  right: extract(
    '  - {cable: flex, length: 2 m, cores: {brown: [P1.L, K1.13], blue: [P1.N, K1.23], green-yellow: [P1.PE, earth]}}',
    '  - {cable: flex, length: 1 m, cores: {brown: [K1.14, X1.L], blue: [K1.24, X1.N], green-yellow: [earth, X1.PE]}}',
  ),
  basis: 'NEC 404.2(B), 430.84, 430.85; BS 7671 clause 132.14 (sub-clauses from memory)',
  followsBeside: {},
  followsFrom: ['line-neutral-swapped'],
};

export const lineNotSwitched: Check = { entry, find };

/** A load that is off and still joined to the line of a plug. */
interface StaysLive {
  readonly consumer: Consumer;
  readonly source: Source;
  /** those of its terminals that stay live */
  readonly terminals: readonly string[];
  /** what is moved when it shows */
  readonly moved: Moved;
}

function find(study: Study): Finding[] {
  const { circuit, verified: v } = study;
  if (!v) return [];
  return circuit.consumers
    .filter((c) => !c.dc)
    .filter((c) => c.kind === 'outlet' || !isPlugIn(study, c.part))
    .flatMap((c) => {
      const stays = staysLive(v, c);
      return stays ? [notSwitched(study, stays)] : [];
    });
}

/** By the first plug that keeps it live; a load that never runs is left to question 2. */
function staysLive(v: Verified, consumer: Consumer): StaysLive | undefined {
  const { bdd, fed: allFed, live } = v.model;
  const fed = allFed.get(consumer.part) ?? FALSE;
  if (!everIn(v, fed)) return undefined;
  for (const source of mainsSources(v.circuit)) {
    const staying = [...consumer.nets].flatMap(([terminal, net]) => {
      const hot = bdd.and(live[source.index]!, sideReaches(v, source, 'line', net));
      const moved = everIn(v, bdd.diff(hot, fed));
      return moved ? [{ terminal, moved }] : [];
    });
    const [first] = staying;
    if (first) return { consumer, source, terminals: staying.map((s) => s.terminal), moved: first.moved };
  }
  return undefined;
}

function notSwitched(study: Study, { consumer: c, source, terminals, moved }: StaysLive): Finding {
  const { plan, circuit } = study;
  const plug = plan.parts.get(source.part) as PlugPart;
  const oneOfTwoLegs = c.nets.size === 2 && c.nets.has('L1') && terminals.length < 2;
  const names = terminals.map((t) => `${c.part}.${t}`);
  return found(plan, entry, {
    severity: oneOfTwoLegs && !isFixedFeed(plug) ? 'warning' : 'danger',
    parts: [c.part, ...switchesOf(study, c)],
    terminals: names,
    message: `${c.part} stays live while it is off: ${listOf(names)} ${names.length > 1 ? 'are' : 'is'} still joined to the line`,
    why: `With ${sayMoved(circuit, moved)} the load is off, yet the contact has not broken every live conductor.`,
    fix: c.nets.has('N')
      ? `Put the contact in the line conductor (L), not the neutral.`
      : `Use a contact with ${c.nets.size} poles and take every live conductor through one of them.`,
    basis: entry.basis,
    twin: { alike: [...c.nets.keys()].join() },
  });
}

/** Parts with a contact of the mains beside the load. */
function switchesOf({ circuit, sides }: Study, consumer: Consumer): string[] {
  const nets = new Set(consumer.nets.values());
  return circuit.contacts
    .filter((c) => c.when.by !== 'always' && sides.mains.has(c.a) && (nets.has(c.a) || nets.has(c.b)))
    .map((c) => c.part);
}
