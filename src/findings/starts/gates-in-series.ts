import { sayMoved } from '../../circuit/input-words.ts';
import { type Moved, relaysAt } from '../../logic/verify.ts';
import type { Study } from '../../study/study.ts';
import { listOf } from '../../text/word-list.ts';
import { type Check, extract, type FindingEntry } from '../entry.ts';
import { found } from '../finding.ts';
import type { Finding } from '../report-model.ts';
import { startedThrough } from './departure-words.ts';
import type { DepartureOf } from './departures/departure.ts';
import { departuresOf } from './departures/departures.ts';
import { type ZonesInLine, zonesInLine } from './departures/zones-in-line.ts';

const entry: FindingEntry = {
  id: 'gates-in-series',
  title: 'it takes more than one open gate to start',
  severity: 'fault',
  question: 2,
  base: 'battery',
  meaning:
    'The switches lie in line, one behind the other, so no gate starts the load by itself. Wire them side by side: one core joins all the COM tabs, the other all the NO tabs.',
  wrong: extract(
    '  - {cable: twin, length: 7 m, cores: {red: [barA, bandsaw.COM]}}',
    '  - {cable: twin, length: 9 m, cores: {red: [bandsaw.NO, lathe.COM], black: [barB, lathe.NO]}}',
  ),
  right: extract(
    '  - {cable: twin, length: 7 m, cores: {red: [barA, bandsaw.COM], black: [barB, bandsaw.NO]}}',
    '  - {cable: twin, length: 9 m, cores: {red: [barA, lathe.COM], black: [barB, lathe.NO]}}',
  ),
  basis: 'common practice',
  followsFrom: ['toggle-needs-button'],
  goneByOneMove: true,
};

export const gatesInSeries: Check = { entry, find };

/** The fewest that start it, less what only unblocks; and zones that start it only together, where others start it alone. */
function find(study: Study): Finding[] {
  const some = departuresOf(study, 'dead-entries').flatMap((d) => zonesInLine(study, d));
  return [
    ...departuresOf(study, 'starts-together-only').map((d) => allInLine(study, d)),
    ...some.map((z) => someInLine(study, z)),
  ];
}

function allInLine(study: Study, { wanted, starts, base }: DepartureOf<'starts-together-only'>): Finding {
  const { plan, circuit } = study;
  const { target } = wanted;
  const names = wanted.entries.flatMap((e) => e.refs.map((r) => r.part));
  const called = relaysCalled(study, starts, base);
  return found(plan, entry, {
    parts: [
      ...(called ?? []),
      ...starts.map((i) => circuit.inputs[i]!.part).filter((p) => names.includes(p)),
      target,
    ],
    message: `no gate starts ${target} by itself: it takes ${starts.filter((i) => !base.includes(i)).length} together`,
    why: `The fewest that start it: ${sayMoved(circuit, starts)}. ${
      called ? contactsInLine(called) : 'The switches lie in line, one after the other.'
    }${startedThrough(wanted)}`,
    fix: called
      ? sideBySide(called)
      : 'Wire the gate switches side by side: one core joins all the COM tabs, the other all the NO tabs.',
    basis: entry.basis,
    twin: { name: target, alike: '' },
  });
}

function someInLine({ plan, circuit }: Study, { wanted, zones, dead }: ZonesInLine): Finding {
  const { target } = wanted;
  const relays = zones.map((z) => z.relay);
  const { cause, state } = dead[0]!;
  const together = cause.kind === 'in-line' ? cause.together : state;
  return found(plan, entry, {
    parts: [...relays, ...together.map((i) => circuit.inputs[i]!.part), target],
    message: `no gate of ${listOf(relays)} starts ${target} by itself: it takes ${zones.length} together`,
    why: `The fewest that start it: ${sayMoved(circuit, together)}. ${contactsInLine(relays)}${startedThrough(wanted)}`,
    fix: sideBySide(relays),
    basis: entry.basis,
    twin: { name: relays.join(), alike: target },
  });
}

const contactsInLine = (relays: readonly string[]): string =>
  `Each pulls in a relay of its own, and the contacts of ${listOf(relays)} lie in line.`;

const sideBySide = (relays: readonly string[]): string =>
  `Wire the contacts of ${listOf(relays)} side by side: one core joins their COM tabs, the other their NO tabs.`;

/** The relays that the inputs pull in each by itself; undefined where one of them pulls in none, or two the same. */
function relaysCalled({ verified, circuit }: Study, starts: Moved, base: Moved): string[] | undefined {
  if (!verified) return undefined;
  const rest = relaysAt(verified, base);
  const own = starts
    .filter((i) => !base.includes(i))
    .map((i) => relaysAt(verified, [...base, i]).findIndex((isIn, r) => isIn && !rest[r]));
  if (own.length < 2 || own.includes(-1) || new Set(own).size < own.length) return undefined;
  return own.map((r) => circuit.relays[r]!.part);
}
