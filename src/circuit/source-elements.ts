/** Supplies, batteries and plugs: their rails, and where they get their power. */

import type { BatteryPart, Midpoint, PlugPart, SupplyPart } from '../plan/part-types.ts';
import type { Plan } from '../plan/plan.ts';
import type { Rail, Source } from './circuit.ts';
import type { CircuitDraft } from './circuit-draft.ts';
import { isMainsOutput } from './thresholds.ts';

export function addSupply(part: SupplyPart, draft: CircuitDraft): void {
  const { volts, kind } = part.output;
  const [p, q] = kind === 'dc' ? (['+', '-'] as const) : (['~1', '~2'] as const);
  const rails = [draft.rail(part, p, volts), draft.rail(part, q, 0)];
  const { feed, winding } = supplyFeed(part, draft);
  draft.source(part, {
    kind,
    mains: isMainsOutput(part.output),
    rails,
    feed,
    ...(winding !== undefined && { winding }),
  });
  if (feed.by === 'nets') draft.passive(part, 'primary', feed.a, feed.b);
}

/** Where it gets its power, and the volts that this way in is made for. */
function supplyFeed(part: SupplyPart, draft: CircuitDraft): Pick<Source, 'feed' | 'winding'> {
  const { fedFrom, taps } = part;
  const stated = part.input?.volts ?? taps?.at(-1);
  const winding = stated === undefined ? {} : { winding: stated };
  if (fedFrom !== undefined && fedFrom !== 'always-live')
    return { feed: { by: 'part', part: fedFrom }, ...winding };
  if (taps !== undefined) {
    const [first, ...others] = ['0', ...taps.map(String)].filter((t) => draft.used(part, t));
    if (first === undefined) return { feed: { by: 'always' } };
    // One core on the winding feeds nothing; the end it lacks is taken as the far one, with nothing on it.
    const last = others.at(-1) ?? (first === '0' ? String(taps.at(-1)) : '0');
    const feed = { by: 'nets' as const, a: draft.net(part, first), b: draft.net(part, last) };
    return { feed, winding: Math.abs(Number(last) - Number(first)) };
  }
  for (const [a, b] of [
    ['L', 'N'],
    ['L1', 'L2'],
  ] as const) {
    if (draft.used(part, a) || draft.used(part, b))
      return { feed: { by: 'nets', a: draft.net(part, a), b: draft.net(part, b) }, ...winding };
  }
  return { feed: { by: 'always' } };
}

export function addBattery(part: BatteryPart, draft: CircuitDraft): void {
  const rails = [draft.rail(part, '+', part.output.volts), draft.rail(part, '-', 0)];
  draft.source(part, { kind: 'dc', mains: false, rails, feed: { by: 'always' } });
}

export function addPlug(part: PlugPart, draft: CircuitDraft): void {
  const rails = plugRails(part, draft);
  const earthed = part.feed === 'two-leg' && rails.length > 1 && midpointOf(part, draft.plan) === 'earthed';
  draft.source(part, {
    kind: part.volts.kind,
    mains: true,
    rails,
    feed: { by: 'always' },
    ...(earthed && { earthed: true as const }),
  });
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
  if (!isOfStar(v)) return [draft.rail(part, 'L1', v / 2), draft.rail(part, 'L2', -v / 2), ...neutral];
  // Two phases of a star lie a third of a turn apart.
  const [up, aside] = [v / 2 / Math.sqrt(3), v / 2];
  return [draft.rail(part, 'L1', up, aside), draft.rail(part, 'L2', up, -aside), ...neutral];
}

/** V between two phases of a star: 208Y/120 in North America, 380 to 415 V elsewhere; common practice, from memory. */
const STARS = [
  [198, 216],
  [346, 440],
] as const;

const isOfStar = (volts: number): boolean => STARS.some(([least, most]) => volts >= least && volts <= most);

/** V between two legs for which the middle is earthed where nobody says otherwise, in North America: 208 and 240 V. */
const EARTHED = { least: 198, most: 254 } as const;

/** What the plug says of its two legs, else an outlet of the plan, else what its practice takes for granted. */
function midpointOf(plug: PlugPart, { parts, practice }: Plan): Midpoint | undefined {
  const outlets = [...parts.values()].flatMap((p) =>
    p.kind === 'outlet' && p.feed === 'two-leg' ? [p] : [],
  );
  const said = plug.midpoint ?? outlets.find((o) => o.midpoint !== undefined)?.midpoint;
  const { volts } = plug.volts;
  return (
    said ?? (practice === 'nec' && volts >= EARTHED.least && volts <= EARTHED.most ? 'earthed' : undefined)
  );
}
