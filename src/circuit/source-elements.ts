/** Supplies, batteries and plugs: their rails, and where they get their power. */

import type { BatteryPart, PlugPart, SupplyPart } from '../plan/part-types.ts';
import type { Rail, Source } from './circuit.ts';
import type { CircuitDraft } from './circuit-draft.ts';

export function addSupply(part: SupplyPart, draft: CircuitDraft): void {
  const { volts, kind } = part.output;
  const [p, q] = kind === 'dc' ? (['+', '-'] as const) : (['~1', '~2'] as const);
  const rails = [draft.rail(part, p, volts), draft.rail(part, q, 0)];
  const feed = supplyFeed(part, draft);
  draft.source(part, { kind, mains: false, rails, feed });
  if (feed.by === 'nets') draft.passive(part, 'primary', feed.a, feed.b);
}

function supplyFeed(part: SupplyPart, draft: CircuitDraft): Source['feed'] {
  const { fedFrom } = part;
  if (fedFrom !== undefined && fedFrom !== 'always-live') return { by: 'part', part: fedFrom };
  for (const [a, b] of [
    ['L', 'N'],
    ['L1', 'L2'],
  ] as const) {
    if (draft.used(part, a) || draft.used(part, b))
      return { by: 'nets', a: draft.net(part, a), b: draft.net(part, b) };
  }
  return { by: 'always' };
}

export function addBattery(part: BatteryPart, draft: CircuitDraft): void {
  const rails = [draft.rail(part, '+', part.output.volts), draft.rail(part, '-', 0)];
  draft.source(part, { kind: 'dc', mains: false, rails, feed: { by: 'always' } });
}

export function addPlug(part: PlugPart, draft: CircuitDraft): void {
  const rails = plugRails(part, draft);
  draft.source(part, { kind: part.volts.kind, mains: true, rails, feed: { by: 'always' } });
}

/** Potentials of a plug's pins against earth: line at the full voltage, two legs at half each, or three phases. */
function plugRails(part: PlugPart, draft: CircuitDraft): Rail[] {
  const v = part.volts.volts;
  if (part.feed === 'single') return [draft.rail(part, 'L', v), draft.rail(part, 'N', 0)];
  const neutral = draft.used(part, 'N') ? [draft.rail(part, 'N', 0)] : [];
  if (part.feed === 'three-phase') {
    const phase = v / Math.sqrt(3);
    const third = (2 * Math.PI) / 3;
    const phases = ['L1', 'L2', 'L3'].map((t, i) =>
      draft.rail(part, t, phase * Math.cos(-i * third), phase * Math.sin(-i * third)),
    );
    return [...phases, ...neutral];
  }
  const [first, second] = [draft.used(part, 'L1'), draft.used(part, 'L2')];
  // Two legs of a 120/240 V supply lie 240 V apart; a plug of half that with one leg in use and a neutral is plain
  // single-phase whose line pin was called L1.
  if (v <= 150 && neutral.length > 0 && first !== second)
    return [draft.rail(part, first ? 'L1' : 'L2', v), ...neutral];
  return [draft.rail(part, 'L1', v / 2), draft.rail(part, 'L2', -v / 2), ...neutral];
}
