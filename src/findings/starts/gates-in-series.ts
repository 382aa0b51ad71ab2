import { sayMoved } from '../../circuit/input-words.ts';
import { type Moved, relaysAt } from '../../logic/verify.ts';
import type { Study } from '../../study/study.ts';
import { listOf } from '../../text/word-list.ts';
import { type Check, extract, type FindingEntry } from '../entry.ts';
import { found } from '../finding.ts';
import type { Finding } from '../report-model.ts';
import { startedThrough } from './departure-words.ts';
import { departuresOf } from './departures/departures.ts';

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

/** The fewest that start it, less what only unblocks. */
function find(study: Study): Finding[] {
  const { plan, circuit } = study;
  return departuresOf(study, 'starts-together-only').map(({ wanted, starts, base }) => {
    const { target } = wanted;
    const names = wanted.entries.flatMap((e) => e.refs.map((r) => r.part));
    const called = relaysCalled(study, starts, base);
    return found(plan, entry, {
      parts: [...starts.map((i) => circuit.inputs[i]!.part).filter((p) => names.includes(p)), target],
      message: `no gate starts ${target} by itself: it takes ${starts.filter((i) => !base.includes(i)).length} together`,
      why: `The fewest that start it: ${sayMoved(circuit, starts)}. ${
        called
          ? `Each pulls in a relay of its own, and the contacts of ${listOf(called)} lie in line.`
          : 'The switches lie in line, one after the other.'
      }${startedThrough(wanted)}`,
      fix: called
        ? `Wire the contacts of ${listOf(called)} side by side: one core joins their COM tabs, the other their NO tabs.`
        : 'Wire the gate switches side by side: one core joins all the COM tabs, the other all the NO tabs.',
      basis: entry.basis,
      twin: { name: target, alike: '' },
    });
  });
}

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
