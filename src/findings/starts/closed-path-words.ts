import type { Moved } from '../../logic/verify.ts';
import { whatFeeds } from '../../study/closed-path.ts';
import type { Study } from '../../study/study.ts';

const MOST_HOPS = 12;

/** The closed way that keeps a load on, as a sentence; empty when none is found. */
export function fedBy(study: Study, target: string, moved: Moved): string {
  const path = study.verified && whatFeeds(study, study.verified, target, moved);
  return path === undefined ? '' : ` The way that stays closed: ${sayPath(path)}.`;
}

/** "PS1.+ - bandsaw.COM - K1.A1", the middle of a long way left out. */
function sayPath(path: readonly string[]): string {
  if (path.length <= MOST_HOPS) return path.join(' - ');
  return [...path.slice(0, MOST_HOPS / 2), '…', ...path.slice(-MOST_HOPS / 2)].join(' - ');
}
