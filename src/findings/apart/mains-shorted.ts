import type { Source } from '../../circuit/circuit.ts';
import { sayMoved } from '../../circuit/input-words.ts';
import { difference } from '../../circuit/rail-volts.ts';
import type { Fn } from '../../logic/bdd.ts';
import { everIn } from '../../logic/entry-states.ts';
import { type Moved, movedIn, type Verified } from '../../logic/verify.ts';
import type { Study } from '../../study/study.ts';
import type { Check, FindingEntry } from '../entry.ts';
import { found } from '../finding.ts';
import type { Finding } from '../report-model.ts';
import { mainsSources, pinReaches } from './rail-reach.ts';

const entry: FindingEntry = {
  id: 'mains-shorted',
  title: 'line meets neutral, another line or earth',
  severity: 'danger',
  question: 1,
  base: 'dc-chain',
  meaning:
    'In some position of the contacts two mains conductors are joined with no load between them. The breaker trips with a bang, and the contact that closed on it welds or bursts. It may not show at the first switching on: here it happens when the first gate is opened.',
  wrong: '{cable: wire, length: 60 cm, cores: {black: [K1.NO, X1.N]}}',
  right: '{cable: wire, length: 60 cm, cores: {black: [K1.NO, X1.L]}}',
  basis: 'common practice',
  followsFrom: [],
};

export const mainsShorted: Check = { entry, find };

/** Two conductors of one plug, and when they are joined. */
interface Short {
  readonly source: Source;
  readonly between: readonly [string, string];
  readonly when: Fn;
}

/** The first short of every plug. */
function find(study: Study): Finding[] {
  const { circuit, verified: v } = study;
  if (!v) return [];
  return mainsSources(circuit).flatMap((source) => {
    for (const short of shortsOf(study, v, source)) {
      const moved = everShorted(v, short.when);
      if (moved) return [shorted(study, short, moved)];
    }
    return [];
  });
}

function shortsOf({ sides }: Study, v: Verified, source: Source): Short[] {
  return source.rails.flatMap((p, i) => {
    const others = source.rails.slice(i + 1).filter((q) => difference(p, q) > 1);
    const shorts = others.map(
      (q): Short => ({ source, between: [p.terminal, q.terminal], when: pinReaches(v, source, i, [q.net]) }),
    );
    if (!p.live) return shorts;
    return [...shorts, { source, between: [p.terminal, 'PE'], when: pinReaches(v, source, i, sides.earth) }];
  });
}

/** A short can kill what holds the relay that makes it; then no position is settled, and the breaker opens all the same. */
function everShorted(v: Verified, when: Fn): Moved | undefined {
  const { bdd } = v.model;
  return everIn(v, when) ?? movedIn(v.circuit, bdd, bdd.and(when, v.chatter));
}

function shorted(
  { plan, circuit }: Study,
  { source: { part }, between: [p, q] }: Short,
  moved: Moved,
): Finding {
  return found(plan, entry, {
    parts: [part],
    terminals: [`${part}.${p}`, `${part}.${q}`],
    message: `${part}: ${p} and ${q} are joined with nothing between them`,
    why: `This happens with ${sayMoved(circuit, moved)}.`,
    fix: `Trace ${p} and ${q} from ${part} and take away the conductor or contact that joins them.`,
    basis: entry.basis,
  });
}
