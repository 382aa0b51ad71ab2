/** What has to be done to the power before each half of a wire list. */

import { isFixedFeed } from '../plan/fixed-feed.ts';
import type { Plan } from '../plan/plan.ts';

export interface SectionNotes {
  readonly 'low voltage': string;
  readonly mains: string;
}

/** `a`, `a and b`, `a, b and c`. */
const joined = (words: readonly string[]): string =>
  words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;

const several = (count: number, one: string, more: string): string => (count === 1 ? one : more);

/** How each source of the plan is made dead, in words: a plug is drawn, a wired feed locked off, a battery disconnected. */
export function sectionNotes(plan: Plan): SectionNotes {
  const parts = [...plan.parts.values()];
  const count = (kind: string) => parts.filter((p) => p.kind === kind).length;
  const wired = parts.filter((p) => p.kind === 'plug' && isFixedFeed(p)).length;
  const plugs = count('plug') - wired;
  const [supplies, batteries] = [count('supply'), count('battery')];
  // A supply whose primary is wired to the plan's own mains goes dead with that.
  const low = [
    ...(supplies > 0 ? [several(supplies, 'the supply unplugged', 'every supply unplugged')] : []),
    ...(batteries > 0 ? [several(batteries, 'the battery disconnected', 'every battery disconnected')] : []),
  ];
  const mains = [
    ...(plugs > 0 ? [several(plugs, 'plug out', 'every plug out')] : []),
    ...(wired > 0 ? ['breaker off', 'locked'] : []),
  ];
  const first = low.length === 0 ? 'with no power on it' : `with ${joined(low)}`;
  // A plug is drawn and the breaker is off as well; a feed that is wired in has the breaker alone, and a lock on it.
  const breaker = plugs > 0 && wired === 0 ? ['breaker off'] : [];
  const off = mains.length === 0 ? ['no power on it'] : [...mains, ...breaker];
  return {
    'low voltage': `Low voltage, ${first}`,
    mains: `Mains, last of all: ${off.join(', ')}, and tested dead with a meter`,
  };
}
