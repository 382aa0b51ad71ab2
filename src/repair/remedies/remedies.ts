/** What could be changed for each finding, and the remedies that were found by changing it. */
import { effort, MOST_EFFORT } from '../../circuit/effort.ts';
import type { FindingId } from '../../findings/finding-ids.ts';
import { effortOf, findingsOf, judge } from '../../findings/judge.ts';
import type { Finding, Remedy } from '../../findings/report-model.ts';
import type { Severity } from '../../findings/report-words.ts';
import type { Study } from '../../study/study.ts';
import { roundedApart } from '../../text/numbers.ts';
import { listOf } from '../../text/word-list.ts';
import { Bench, type Purse } from './bench.ts';
import type { Change } from './change.ts';
import {
  coilOfFrequency,
  coilPullsInLower,
  coilQuenched,
  coilStandsMore,
  coilVersion,
} from './coil-remedy.ts';
import { markedEnds, otherColours } from './colour-remedy.ts';
import { otherContact } from './contact-remedy.ts';
import { directCurrent } from './dc-remedy.ts';
import {
  largerFuse,
  limitedSupply,
  newFuse,
  smallerFuse,
  smallerMainsFuse,
  wireForFuse,
  zoneFuse,
} from './fuse-remedy.ts';
import { cleanerSwitch, largerBattery, strongerSwitch } from './loop-remedy.ts';
import { wireForDrop, wireForVolts } from './loop-wire.ts';
import {
  circuitAndPattern,
  fixedWire,
  largerBox,
  largerCircuit,
  otherPattern,
  ownOutlet,
  slowerBreaker,
  smallerBreaker,
  thickerCord,
  thickerEarth,
} from './mains-remedy.ts';
import { relayBetween } from './relay-between.ts';
import { DEPTH, type Options, type Way, waysOf } from './search.ts';
import { supplyForAmps, supplyForFewerVolts, supplyForVolts } from './supply-remedy.ts';

const LOW_VOLTS: readonly Options[] = [
  wireForVolts,
  supplyForVolts,
  coilVersion,
  coilPullsInLower,
  relayBetween,
  directCurrent,
];
const CONTACT: readonly Options[] = [otherContact];

/** What is tried for a finding, the likeliest to be done first. A finding that is not listed asks for wiring or for a figure. */
const TRIED: { readonly [Id in FindingId]?: readonly Options[] } = {
  'colour-of-earth': [markedEnds, otherColours],
  'colour-of-neutral': [markedEnds, otherColours],
  'coil-too-low': LOW_VOLTS,
  'coil-thin-margin': LOW_VOLTS,
  'coil-drops-at-start': [ownOutlet, thickerCord, directCurrent],
  'coil-too-high': [supplyForFewerVolts, coilVersion, coilStandsMore, directCurrent],
  'coil-frequency': [coilOfFrequency, directCurrent],
  'coil-unsuppressed': [coilQuenched],
  'supply-overloaded': [supplyForAmps, directCurrent],
  'wire-overloaded': [zoneFuse, smallerFuse, newFuse, wireForFuse],
  'supply-not-limited': [newFuse, limitedSupply],
  'fuse-too-small': [largerFuse],
  'drop-large': [wireForDrop],
  'battery-short-lived': [largerBattery],
  'switch-overloaded': [strongerSwitch, relayBetween],
  'switch-underloaded': [cleanerSwitch],
  'contact-voltage': CONTACT,
  'contact-kind': CONTACT,
  'contact-not-motor-rated': CONTACT,
  'contact-horsepower': CONTACT,
  'contact-running': CONTACT,
  'contact-starting': CONTACT,
  'contact-leakage': CONTACT,
  'circuit-overloaded': [largerCircuit, otherPattern, circuitAndPattern],
  'breaker-too-large': [smallerBreaker, smallerMainsFuse],
  'breaker-may-trip': [slowerBreaker, largerCircuit],
  'cord-too-thin': [thickerCord],
  'conductor-unprotected': [thickerCord, smallerBreaker],
  'earth-too-thin': [thickerEarth],
  'transformer-unprotected': [smallerFuse],
  'trips-at-start': [slowerBreaker, largerCircuit],
  'cord-as-fixed-wiring': [fixedWire],
  'box-overfilled': [largerBox],
  'plug-mismatch': [otherPattern, smallerBreaker],
};

const options: Options = (bench, f) => (TRIED[f.id] ?? []).flatMap((of) => of(bench, f));

/** Whether anything but another wiring is tried for a finding. */
export function isTried({ id }: Finding): boolean {
  return TRIED[id] !== undefined;
}

/** Remedies told of one finding. */
const MOST_TOLD = 3;
/** Terminals times judgements that a plan is worth, and the bounds of the number of judgements. */
const WORTH = 12_000;
const LEAST_TRIALS = 4;
const MOST_TRIALS = 120;

/** Remedies of findings that stand, each tried in the plan; a small plan is judged more often than a large one. */
export function remediesOf(study: Study, findings: readonly Finding[]): Map<Finding, readonly Remedy[]> {
  const found = new Map<Finding, readonly Remedy[]>();
  const wanted = findings.filter(isTried);
  if (wanted.length === 0 || !study.verified || effortOf(study) > MOST_EFFORT) return found;
  const terminals = [...study.plan.terminals.values()].reduce((sum, t) => sum + t.names.length, 0);
  const trials = Math.max(LEAST_TRIALS, Math.min(MOST_TRIALS, Math.floor(WORTH / terminals)));
  // Half of it: the judgement of the plan itself may have taken as much before.
  const purse: Purse = { whole: trials, single: 3 * trials, until: effort() + MOST_EFFORT / 2 };
  const bench = new Bench(study, purse);
  for (const f of wanted) {
    const ways = waysOf(bench, f, options, DEPTH, (way) => inWhole(bench, way)).slice(0, MOST_TOLD);
    found.set(
      f,
      ways.map((way) => told(bench, f, way)),
    );
  }
  return found;
}

const AGAINST: readonly Severity[] = ['danger', 'warning', 'fault', 'doubt'];
const subject = ({ id, parts }: Finding): string => JSON.stringify([id, [...parts].sort()]);

/**
 * Another transformer, or direct current in place of one, is judged once more at both ends of what the plan then leaves out:
 * its volts with nothing on it are mostly left out, and on them the coils turn.
 */
function inWhole(bench: Bench, way: Way): Way | undefined {
  const { changes } = way;
  const { plan } = bench.study;
  const isTransformer = ({ told: t }: Change) => {
    const part = t.change === 'part' ? plan.parts.get(t.part) : undefined;
    return part?.kind === 'supply' && part.output.kind === 'ac';
  };
  if (!changes.some(isTransformer)) return way;
  const stood = new Set(judge(bench.study).findings.map(subject));
  const fresh = findingsOf(bench.after(changes)).filter(
    (f) =>
      AGAINST.includes(f.severity) &&
      !stood.has(subject(f)) &&
      !(changes.length === 1 && way.leaves.includes(f.id)),
  );
  if (fresh.length === 0) return way;
  // What the plan itself leaves out may be asked for still, and is then told; of parts that are all exchanged nothing is.
  const open = fresh.every((f) => f.id === 'value-unsaid') && changes.length === 1;
  return open ? { ...way, leaves: [...way.leaves, 'value-unsaid'] } : undefined;
}

function told(bench: Bench, f: Finding, { changes, leaves }: Way): Remedy {
  const words = changes.map((c) => c.words).filter((w) => w !== '');
  const left = [...new Set(leaves)];
  const thin = left.includes('coil-thin-margin') ? ', with little to spare' : '';
  const asked = left.includes('value-unsaid')
    ? '; it is no pass yet, for the check then asks for a value that the plan leaves out (value-unsaid)'
    : '';
  const rest = left.filter((id) => id !== 'coil-thin-margin' && id !== 'value-unsaid');
  const end = `${thin}${rest.length === 0 ? '' : `, which leaves ${listOf(rest)}`}${asked}`;
  return {
    words: `${listOf(words)}${effect(bench, f, changes)}${end}`,
    changes: changes.map((c) => c.told),
    leaves: left,
  };
}

/** What a coil gets with the change, against what it needs. */
function effect(bench: Bench, f: Finding, changes: readonly Change[]): string {
  if (f.id !== 'coil-too-low' && f.id !== 'coil-thin-margin') return '';
  const after = bench.after(changes);
  const states = after.coilStates.filter((s) => f.parts.includes(s.fed.part.name));
  const spare = (s: (typeof states)[number]) => Math.min(...s.rows.map((r) => r.least)) - s.pullIn;
  const [first] = [...states].sort((a, b) => spare(a) - spare(b));
  if (!first) return '';
  const [gets, needs] = roundedApart([Math.min(...first.rows.map((r) => r.least)), first.pullIn]);
  return ` (${first.fed.part.name} then gets ${gets} V and needs ${needs} V)`;
}
