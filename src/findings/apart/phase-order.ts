import type { Consumer, Source } from '../../circuit/circuit.ts';
import type { Verified } from '../../logic/verify.ts';
import { isPlugIn } from '../../study/plug-in.ts';
import type { Study } from '../../study/study.ts';
import type { Check, FindingEntry } from '../entry.ts';
import { found } from '../finding.ts';
import type { Finding } from '../report-model.ts';
import { mainsSources } from './rail-reach.ts';

const entry: FindingEntry = {
  id: 'phase-order',
  title: 'phases change places',
  severity: 'caution',
  question: 1,
  base: 'three-phase',
  meaning:
    'Two of the three phases are exchanged between the feed and the motor, so the fan turns backwards. A fan that turns backwards still blows, weakly and noisily, and may unscrew its wheel. Exchange two cores at the motor and look at the direction at the first start.',
  wrong:
    '{brown: [Q1.2, fan.L1], black: [Q1.4, fan.L3], grey: [Q1.6, fan.L2], green-yellow: [B1.PE, fan.PE]}',
  right:
    '{brown: [Q1.2, fan.L1], black: [Q1.4, fan.L2], grey: [Q1.6, fan.L3], green-yellow: [B1.PE, fan.PE]}',
  basis: 'common practice',
  followsFrom: [],
};

export const phaseOrder: Check = { entry, find };

function find(study: Study): Finding[] {
  const { circuit, verified: v } = study;
  if (!v) return [];
  const threePhase = mainsSources(circuit).filter((s) => s.rails.length >= 3);
  return circuit.consumers
    .filter((c) => !isPlugIn(study, c.part))
    .flatMap((c) =>
      threePhase.flatMap((source) => {
        const order = arriving(v, source, c);
        return order && turnsBackwards(order) ? [outOfOrder(study, c, source, order)] : [];
      }),
    );
}

type Order = readonly [number, number, number];

/** Which pin of the plug each terminal of the load is joined to; undefined unless all three arrive apart. */
function arriving(v: Verified, source: Source, { nets }: Consumer): Order | undefined {
  const reach = v.model.railReach[source.index]!;
  const [a, b, c] = [...nets.values()].map((net) => [0, 1, 2].find((i) => reach[i]!.has(net)));
  if (a === undefined || b === undefined || c === undefined) return undefined;
  return new Set([a, b, c]).size === 3 ? [a, b, c] : undefined;
}

/** All three passed on by a place turn the same way round. */
function turnsBackwards([first, second]: Order): boolean {
  return second !== (first + 1) % 3;
}

function outOfOrder({ plan }: Study, { part, nets }: Consumer, source: Source, order: Order): Finding {
  const terminals = [...nets.keys()];
  return found(plan, entry, {
    parts: [part],
    terminals: terminals.map((t) => `${part}.${t}`),
    message: `the phases change places on the way to ${part}: it will turn backwards`,
    why: `${terminals.map((t, i) => `${t} comes from ${source.rails[order[i]!]!.terminal}`).join(', ')}.`,
    fix: `Exchange two of the three cores at ${part}, and check the direction at the first start.`,
    basis: entry.basis,
    twin: { alike: source.part },
  });
}
