import { baseState } from '../../logic/entry-states.ts';
import type { Wanted } from '../../logic/intent.ts';
import { type Moved, runsAt } from '../../logic/verify.ts';
import type { Study } from '../../study/study.ts';
import { listOf } from '../../text/word-list.ts';
import type { Check, FindingEntry } from '../entry.ts';
import { type Found, found } from '../finding.ts';
import { deadCauseWords } from './dead-cause-words.ts';
import { startedThrough, zoneWords } from './departure-words.ts';
import type { DeadEntry } from './departures/departure.ts';
import { departuresOf } from './departures/departures.ts';
import { zonesInLine } from './departures/zones-in-line.ts';

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
    'toggle-needs-button',
    'trigger-fed',
    'set-and-reset',
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

/** One finding for each gate; `more` are dead as well and were not looked into. */
function find(study: Study): Found[] {
  return departuresOf(study, 'dead-entries').flatMap((departure) => {
    const { wanted, dead, more } = departure;
    const inLine = new Set(zonesInLine(study, departure).flatMap((z) => z.dead));
    return dead
      .filter((d) => !inLine.has(d))
      .map((d, i) => {
        const gate = report(study, d, wanted);
        return i > 0 || more === 0
          ? gate
          : { ...gate, also: [{ id: entry.id, message: `and ${more} more gates` }] };
      });
  });
}

/** What gates dead of one cause share; undefined where each has its own. */
function sharedCause({ cause }: DeadEntry): string | undefined {
  switch (cause.kind) {
    case 'diode':
      return cause.diode;
    case 'in-line':
      return `${cause.head}`;
    case 'one-conductor':
      return `${cause.net}`;
    case 'stranded':
      return cause.coil;
    case 'no-feed':
    case 'no-return':
    case 'open-loop':
      return '';
    default:
      return undefined;
  }
}

function report(study: Study, dead: DeadEntry, wanted: Wanted): Found {
  const { plan } = study;
  const name = dead.suspect.part;
  const { zone } = dead;
  const { what, why, fix, parts, terminals } = deadCauseWords(study, dead, wanted);
  const [own, ...beside] = [dead.suspect, ...dead.refs.filter((r) => r !== dead.suspect)].map((r) =>
    r.position === undefined ? r.part : `${r.part} at ${r.position}`,
  );
  const label = [own, ...beside].join(' with ');
  const gate =
    plan.parts.get(name)?.kind === 'gate' ? [`opening the ${own} gate`, ...beside].join(' with ') : label;
  const shared = sharedCause(dead);
  const { verified } = study;
  const stopsIt =
    verified !== undefined && runsAt(verified, wanted.target, baseState(verified, wanted)) === true;
  const { kind } = dead.cause;
  // With several loads a gate may start another one.
  const runsNow = (target: string, moved: Moved) =>
    verified !== undefined && runsAt(verified, target, moved) === true;
  const instead = (verified?.intents.wanted ?? [])
    .map((w) => w.target)
    .filter((t) => t !== wanted.target && runsNow(t, dead.state) && !runsNow(t, []));
  const does = stopsIt
    ? `stops ${wanted.target}`
    : instead.length > 0
      ? `starts ${listOf(instead)} and not ${wanted.target}`
      : 'does nothing';
  return found(plan, entry, {
    parts: [...(zone ? [zone.relay, ...zone.gates] : [name]), ...parts, wanted.target],
    terminals,
    at: terminals.length > 0 ? undefined : plan.parts.get(name)?.at,
    message: `${zone ? `opening any ${zoneWords(zone)}` : gate} ${does}: ${what}`,
    why: `${why}${startedThrough(wanted)}`,
    fix,
    basis: entry.basis,
    ...(kind === 'diode' ? { cause: { what: 'diode', terminals } } : {}),
    twin: {
      name: zone?.relay ?? label,
      alike: JSON.stringify([wanted.target, kind, shared ?? what, does, zone !== undefined]),
      // One cause has one remedy, whichever of its gates is looked at.
      ...(shared === undefined || zone ? {} : { several: (names) => ({ fix, ...inLineWords(dead, names) }) }),
    },
  });
}

/** Gates behind one that lies in line, which is one of them or a part that is not meant to start the load. */
function inLineWords({ cause }: DeadEntry, names: readonly string[]): { readonly message?: string } {
  if (cause.kind !== 'in-line') return {};
  const { head, others } = cause;
  return {
    message: names.includes(head)
      ? `opening ${listOf(names)} one at a time does nothing: ${head} lies in line with the others`
      : `opening ${listOf(names)} does nothing: they lie in line with ${listOf(others)}`,
  };
}
