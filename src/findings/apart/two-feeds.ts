import { sayMoved } from '../../circuit/input-words.ts';
import { isFixedFeed } from '../../plan/fixed-feed.ts';
import type { PlugPart } from '../../plan/part-types.ts';
import type { Study } from '../../study/study.ts';
import type { Check, FindingEntry } from '../entry.ts';
import { found } from '../finding.ts';
import type { Finding } from '../report-model.ts';
import { type PlugJoin, plugJoins } from './plug-joins.ts';

const entry: FindingEntry = {
  id: 'two-feeds',
  title: 'one load or circuit is fed by two plugs or circuits',
  severity: 'danger',
  question: 1,
  base: 'two-collectors',
  meaning:
    'Conductors of one load come from two plugs or two circuits: the line from one and the neutral from the other, or lines or neutrals of both joined. Pull one plug and its bare pins are live through the load; switch one circuit off and the wire is still live; no breaker or residual-current device sees the whole current. Take every conductor of a load from one plug.',
  wrong: '{brown: [K1.14, X1.L], blue: [P2.N, X1.N], green-yellow: [B1.PE, X1.PE]}',
  right: '{brown: [K1.14, X1.L], blue: [K1.24, X1.N], green-yellow: [B1.PE, X1.PE]}',
  basis: 'NEC 200.4(A), 300.3(B) (from memory); BS 7671 314.4 (from memory)',
  followsBeside: {},
  followsFrom: ['mains-meets-low-voltage', 'mains-through-gate'],
};

export const twoFeeds: Check = { entry, find };

function find(study: Study): Finding[] {
  return plugJoins(study).map((join) => fedTwice(study, join));
}

function fedTwice(study: Study, join: PlugJoin): Finding {
  const { plan, circuit } = study;
  const { first, second, pins, across, moved } = join;
  const [p, q] = [first.part, second.part];
  const fixed = [p, q].every((name) => isFixedFeed(plan.parts.get(name) as PlugPart));
  const state = moved.length === 0 ? '' : `With ${sayMoved(circuit, moved)}: `;
  const harm = fixed
    ? 'with one circuit switched off, its wire is still live from the other'
    : 'when one of the two plugs is pulled, its bare pins are live from the other';
  return found(plan, entry, {
    parts: [...(across ? [across.part] : []), p, q],
    terminals: pins
      ? [`${p}.${pins[0]}`, `${q}.${pins[1]}`]
      : across
        ? [across.from, across.to].map((t) => `${across.part}.${t}`)
        : [...first.rails.map((r) => `${p}.${r.terminal}`), ...second.rails.map((r) => `${q}.${r.terminal}`)],
    message: meet(join),
    why: `${state}${state === '' ? harm.charAt(0).toUpperCase() : harm.charAt(0)}${harm.slice(1)}, and neither breaker sees the whole current.`,
    fix: `Take every conductor of a load from ${p} alone or from ${q} alone.`,
    basis: entry.basis,
  });
}

function meet({ first, second, pins, across }: PlugJoin): string {
  const [p, q] = [first.part, second.part];
  if (pins) return `${p}.${pins[0]} and ${q}.${pins[1]} are joined: two plugs feed one circuit`;
  if (across)
    return `${across.part} is fed by two plugs: ${across.from} hangs on ${p} and ${across.to} on ${q}`;
  return `${p} and ${q} meet through loads in line: two plugs feed one circuit`;
}
