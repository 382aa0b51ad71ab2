import type { PlugPart } from './part-types.ts';

/** A feed wired for good, with no plug to pull. */
export function isFixedFeed(plug: Pick<PlugPart, 'pattern'>): boolean {
  return plug.pattern?.toLowerCase() === 'fixed';
}
