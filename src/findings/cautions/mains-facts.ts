/** The mains side: how it is fed, and what stays live. */
import { isMainsPart } from '../../circuit/sides.ts';
import { isFixedFeed } from '../../plan/fixed-feed.ts';
import type { PlugPart } from '../../plan/part-types.ts';
import { splitTerminalKey } from '../../plan/terminal-key.ts';
import type { Study } from '../../study/study.ts';
import type { Finding } from '../report-model.ts';
import type { Stands } from './stands.ts';

export interface MainsFacts {
  /** a plug, outlet, motor or load is in the plan */
  readonly hasMains: boolean;
  /** some feed is wired for good */
  readonly fixedFeed: boolean;
  /** some feed is a plug that can be pulled */
  readonly plug: boolean;
  /** A, the largest breaker behind a plug that can be pulled; 0 where none is stated */
  readonly plugBreaker: number;
  /** the neutral is broken and the line left whole */
  readonly neutralBroken: boolean;
  /** fewer than all of two legs or three phases are broken */
  readonly legLeftLive: boolean;
  readonly earthBroken: boolean;
  /** flexible mains cord longer than a machine's lead */
  readonly cordAsWiring: boolean;
}

export function mainsFacts({ plan }: Study, findings: readonly Finding[], stands: Stands): MainsFacts {
  const parts = [...plan.parts.values()];
  const feeds = parts.filter((p): p is PlugPart => p.kind === 'plug');
  const plugs = feeds.filter((p) => !isFixedFeed(p));
  const live = findings
    .filter((f) => f.id === 'line-not-switched')
    .flatMap((f) => f.terminals.map((key) => splitTerminalKey(key).terminal));
  return {
    hasMains: parts.some(isMainsPart),
    fixedFeed: plugs.length < feeds.length,
    plug: plugs.length > 0,
    plugBreaker: Math.max(0, ...plugs.map((p) => p.breaker ?? 0)),
    neutralBroken: live.includes('L'),
    legLeftLive: live.some((terminal) => terminal !== 'L'),
    earthBroken: stands('earth-broken'),
    cordAsWiring: stands('cord-as-fixed-wiring'),
  };
}
