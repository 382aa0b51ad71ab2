import type { Wanted } from '../../logic/intent.ts';
import { push } from '../../plan/map-entries.ts';
import type { Study } from '../../study/study.ts';
import type { Check, FindingEntry } from '../entry.ts';
import { found } from '../finding.ts';
import type { Finding } from '../report-model.ts';
import { deadCauseWords } from './dead-cause-words.ts';
import { startedThrough } from './departure-words.ts';
import type { DeadEntry } from './departures/departure.ts';
import { departuresOf } from './departures/departures.ts';

const entry: FindingEntry = {
  id: 'gate-dead',
  title: 'opening this gate does nothing',
  severity: 'fault',
  question: 2,
  base: 'dc-chain',
  meaning:
    'Opened by itself, this gate does not start its load, while others do. The message says why: the two outer tabs were used, both cores sit on one conductor, the feed or the return ends on the way, or a diode points the wrong way. The switch still clicks, so the fault is easily missed until that machine is used alone.',
  wrong: '{red: [planer.COM, router.NO], white: [planer.NO, router.NC]}',
  right: '{red: [planer.COM, router.COM], white: [planer.NO, router.NO]}',
  basis: 'common practice',
  followsFrom: [
    'diode-backwards',
    'polarity-reversed',
    'coil-shorted',
    'coil-too-low',
    'coil-in-series',
    'chatters',
    'mains-shorted',
    'supply-shorted',
    'mains-meets-low-voltage',
  ],
  goneByOneMove: true,
};

export const gateDead: Check = { entry, find };

/** One finding for each cause; gates dead of one cause are named together. */
function find(study: Study): Finding[] {
  return departuresOf(study, 'dead-entries').flatMap(({ wanted, dead, more }) => {
    const groups = new Map<string, Finding[]>();
    for (const d of dead) push(groups, sameCause(d), report(study, d, wanted));
    return [...groups.values()].map((group, i) => together(group, i === 0 ? more : 0));
  });
}

/** Gates dead of one cause share this. */
function sameCause({ refs, cause }: DeadEntry): string {
  switch (cause.kind) {
    case 'diode':
      return `${cause.kind} ${cause.diode}`;
    case 'in-line':
      return `${cause.kind} ${cause.head}`;
    case 'one-conductor':
      return `${cause.kind} ${cause.net}`;
    case 'stranded':
      return `${cause.kind} ${cause.coil}`;
    case 'no-feed':
    case 'no-return':
    case 'open-loop':
      return cause.kind;
    default:
      return `${cause.kind} ${refs[0]!.part}`;
  }
}

function report(study: Study, dead: DeadEntry, wanted: Wanted): Finding {
  const { plan } = study;
  const name = dead.refs[0]!.part;
  const { what, why, fix, parts, terminals } = deadCauseWords(study, dead, wanted.target);
  const label = dead.refs
    .map((r) => (r.position === undefined ? r.part : `${r.part} at ${r.position}`))
    .join(' with ');
  const gate = plan.parts.get(name)?.kind === 'gate';
  return found(plan, entry, {
    parts: [name, ...parts, wanted.target],
    terminals,
    at: terminals.length > 0 ? undefined : plan.parts.get(name)?.at,
    message: `${gate ? `opening the ${label} gate` : label} does nothing: ${what}`,
    why: `${why}${startedThrough(wanted)}`,
    fix,
    basis: entry.basis,
    ...(dead.cause.kind === 'diode' ? { cause: { what: 'diode', terminals } } : {}),
  });
}

/** The first of a group speaks for all; `more` are dead as well and were not looked into. */
function together(group: readonly Finding[], more: number): Finding {
  const [first, ...rest] = [group[0]!, ...group.slice(1)] as const;
  return {
    ...first,
    parts: [
      ...new Set([...first.parts.slice(0, 1), ...rest.map((f) => f.parts[0]!), ...first.parts.slice(1)]),
    ],
    terminals: [...new Set(group.flatMap((f) => f.terminals))],
    also: [
      ...rest.map(({ id, message }) => ({ id, message })),
      ...(more > 0 ? [{ id: entry.id, message: `and ${more} more gates` }] : []),
    ],
  };
}
