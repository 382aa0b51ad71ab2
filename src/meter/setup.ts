/** What must be so before the readings of each stage: which plugs are out, which supplies on. */

import { isFixedFeed } from '../plan/fixed-feed.ts';
import type { Part } from '../plan/part-types.ts';
import type { Plan } from '../plan/plan.ts';
import { listOf } from '../text/word-list.ts';
import { type InRole, inRole } from './kinds.ts';
import type { CheckStep, StageSetup } from './sheet/sheet-model.ts';

/** The parts that the text is about. */
interface PartsToSetUp {
  /** supplies that go into an outlet of the plan, and the others */
  readonly socketed: readonly InRole<'supply'>[];
  readonly switched: readonly InRole<'supply'>[];
  readonly batteries: readonly InRole<'battery'>[];
  /** plugs with pins, and those that are wired in for good */
  readonly pinned: readonly InRole<'plug'>[];
  readonly fixed: readonly InRole<'plug'>[];
  /** loads with a plug of their own, and those that are wired in */
  readonly loose: readonly InRole<'load'>[];
  readonly wired: readonly InRole<'load'>[];
  readonly outlets: readonly InRole<'outlet'>[];
}

const names = (parts: readonly Part[]) => listOf(parts.map((p) => p.name));
const be = (parts: readonly Part[]) => (parts.length === 1 ? 'is' : 'are');
/** `word` of one thing or of several: `stays`, `stay`. */
const does = (parts: readonly Part[], word: string) => (parts.length === 1 ? `${word}s` : word);
const it = (parts: readonly Part[]) => (parts.length === 1 ? 'it' : 'them');
const breakers = (parts: readonly Part[]) => (parts.length === 1 ? 'the breaker' : 'the breakers');

/** The adjustment of the switch at each gate; nothing is measured. */
export function gateChecks(plan: Plan): Omit<CheckStep, 'number'>[] {
  return inRole(plan, 'gate').map((gate) => ({
    stage: 1,
    kind: 'check',
    part: gate.name,
    text: `Move the slide of ${gate.name} slowly from shut to open and back: its switch trips between a quarter and three quarters of the travel both ways, and the slide comes to rest on its own stop, not on the plunger or lever of the switch.`,
  }));
}

/** What the readings ask for beyond what the plan tells. */
export interface ReadingsNeed {
  /** a low-voltage supply gets its power through a plug of the plan */
  readonly loopNeedsMains: boolean;
  /** last stage in which readings are taken with pins joined by a clip lead */
  readonly lead: 0 | 1 | 2;
  /** in the second stage, some are in ohms */
  readonly lineOhms: boolean;
}

export function setups(plan: Plan, need: ReadingsNeed): StageSetup[] {
  const plugs = inRole(plan, 'plug');
  const loads = inRole(plan, 'load');
  const supplies = inRole(plan, 'supply');
  const inSocket = (s: InRole<'supply'>) => plan.parts.get(s.fedFrom ?? '')?.kind === 'outlet';
  const cast: PartsToSetUp = {
    socketed: supplies.filter(inSocket),
    switched: supplies.filter((s) => !inSocket(s)),
    batteries: inRole(plan, 'battery'),
    pinned: plugs.filter((p) => !isFixedFeed(p)),
    fixed: plugs.filter(isFixedFeed),
    loose: loads.filter((l) => l.pluggedInto !== undefined),
    wired: loads.filter((l) => l.pluggedInto === undefined),
    outlets: inRole(plan, 'outlet').filter((o) => loads.some((l) => l.pluggedInto === o.name)),
  };
  return [
    { stage: 1, text: [...dead(cast), ...(need.lead > 0 ? [LEAD] : [])], after: [] },
    {
      stage: 2,
      text: [
        ...(need.lead === 1 ? [LEAD_OFF] : []),
        ...loop(cast, need.loopNeedsMains),
        ...(need.lineOhms ? [OHMS] : []),
      ],
      after: [],
    },
    {
      stage: 3,
      text: [...(need.lead === 2 ? [LEAD_OFF] : []), ...mains(cast, need.loopNeedsMains)],
      after: plugs.length > 0 ? [PROVE_AGAIN] : [],
    },
  ];
}

/** A meter that has failed shows nothing, as a dead line does; common practice in proving dead, no source. */
const PROVE =
  'Prove the meter before the first reading: with these probes on this range, read a source that is known to be live, of the same kind and about the same volts, such as a socket that works. A meter that has failed shows nothing, as a dead line does.';
const PROVE_AGAIN =
  'After the last reading, prove the meter on the same source once more. Where it fails there, no reading of this stage counts, and nothing is taken for dead.';

const LEAD =
  'Where a step says so, clip leads join the terminals it names while that step is read. No plug goes into the wall and no breaker is switched on while a lead is on.';
const LEAD_OFF = 'Every clip lead is off and put away; count them.';
const OHMS =
  'The line is still dead here, also with its relay in: where a step says so, the meter goes on ohms, and only at the terminals that step names.';

function dead({ socketed, switched, batteries, pinned, fixed, loose }: PartsToSetUp): string[] {
  const text: string[] = [];
  if (pinned.length > 0) text.push(`Unplug ${names(pinned)} and keep the pins in sight.`);
  for (const p of fixed)
    text.push(
      `${p.name} is wired in: an electrician switches its breaker off, locks it and proves it dead, with a tester proved on a live source before and after, before anything is opened. Its terminals are the ends of its cores at that breaker or isolator, where other parts may stay live: what is read there, the electrician reads.`,
    );
  if (loose.length > 0) text.push(`Unplug ${names(loose)}${pinned.length > 0 ? ' too' : ''}.`);
  for (const s of socketed)
    text.push(`Unplug ${s.name} from ${s.fedFrom} and take the loop's cores off its output.`);
  if (switched.length > 0)
    text.push(`Switch off ${names(switched)} and take the loop's cores off the output.`);
  if (batteries.length > 0) text.push(`Take the loop's cores off the poles of ${names(batteries)}.`);
  if (socketed.length + switched.length + batteries.length > 0)
    text.push(
      'Cores that share a terminal stay twisted together; where a step names that terminal, the probe goes on them.',
    );
  text.push('Touch the probes together first, and take what the meter shows then off every reading in ohms.');
  return text;
}

function loop(
  { socketed, switched, batteries, pinned, fixed, loose, wired }: PartsToSetUp,
  needsMains: boolean,
): string[] {
  if (socketed.length + switched.length + batteries.length === 0)
    return ['There is no low-voltage supply in this plan; nothing is read here.'];
  const text: string[] = [];
  if (batteries.length > 0) text.push(`Put the loop's cores back on the poles of ${names(batteries)}.`);
  for (const s of socketed) text.push(`Put the cores back on ${s.name} and plug it into ${s.fedFrom}.`);
  if (switched.length > 0)
    text.push(`Put the cores back on ${names(switched)} and switch ${it(switched)} on.`);
  if (!needsMains) {
    if (pinned.length > 0) text.push(`${names(pinned)} ${does(pinned, 'stay')} out of the wall.`);
    if (fixed.length > 0)
      text.push(`${names(fixed)} ${does(fixed, 'stay')} dead, ${breakers(fixed)} off and locked.`);
    if (loose.length > 0) text.push(`${names(loose)} ${does(loose, 'stay')} unplugged.`);
    return text;
  }
  text.push(
    `The loop gets its power through ${names([...pinned, ...fixed])}, so mains is in the box as well: from here on this is work for a competent person, and the probes touch low-voltage terminals only.`,
  );
  if (wired.length > 0)
    text.push(
      `${names(wired)} ${be(wired)} wired in: part ${it(wired)} from the line before that, so that nothing can start.`,
    );
  if (loose.length > 0) text.push(`${names(loose)} ${does(loose, 'stay')} unplugged.`);
  if (pinned.length > 0)
    text.push(
      `Then ${names(pinned)} ${pinned.length === 1 ? 'goes' : 'go'} into the wall, for this stage only.`,
    );
  if (fixed.length > 0)
    text.push(`Then ${breakers(fixed)} of ${names(fixed)} ${be(fixed)} switched on, for this stage only.`);
  text.push('What a relay feeds is live while it is in: nothing is plugged in there, and nobody touches it.');
  return text;
}

function mains({ pinned, fixed, loose, wired, outlets }: PartsToSetUp, needsMains: boolean): string[] {
  const plugs = [...pinned, ...fixed];
  if (plugs.length === 0) return ['There is no mains in this plan; nothing is read here.'];
  const text = [
    'Only a competent person does this stage, with probes and a meter made for mains, one hand at a time, the box closed except while reading.',
    PROVE,
  ];
  if (needsMains && pinned.length > 0)
    text.push(`${names(pinned)} ${pinned.length === 1 ? 'comes' : 'come'} out of the wall again first.`);
  if (needsMains && fixed.length > 0)
    text.push(
      `${breakers(fixed)} of ${names(fixed)} ${be(fixed)} switched off, locked and proved dead again first.`,
    );
  const three = plugs.some((p) => p.feed === 'three-phase');
  // no lamp is made for the volts between two lines: two in series share them, and equal ones share them equally
  const pair = three || plugs.some((p) => p.feed === 'two-leg');
  const lamp = pair ? 'two equal lamps in series between two lines' : 'a lamp';
  const loads = [...loose, ...wired];
  const place =
    loads.length === 0 ? '' : `, in place of ${names(loads)}, which ${does(loads, 'stay')} parted from it`;
  text.push(
    `The first load is ${lamp} for the volts of ${names(plugs)}${pair ? ', each for half of them or more' : ''}${place}.`,
  );
  if (wired.length > 0)
    text.push(
      `${names(wired)} ${be(wired)} wired in: take the cores off ${it(wired)} with everything dead, and end them in a covered terminal block for ${pair ? 'the lamps' : 'the lamp'}; the earth core stays on.${
        needsMains
          ? ''
          : ' With them off and the relay in by the loop alone, there is no way through between any two of them, nor to earth.'
      }`,
    );
  if (loose.length > 0 && outlets.length > 0)
    text.push(
      `Where a step has probes on ${names(outlets)}, an adapter with two sockets takes the plug of the ${pair ? 'lamps' : 'lamp'} and the probes.`,
    );
  if (pinned.length > 0)
    text.push(`Then ${names(pinned)} ${pinned.length === 1 ? 'goes' : 'go'} into the wall.`);
  if (fixed.length > 0) text.push(`Then ${breakers(fixed)} of ${names(fixed)} ${be(fixed)} switched on.`);
  if (loads.length > 0)
    text.push(`${names(loads)} ${does(loads, 'come')} last, when every step has read as it should.`);
  if (wired.length > 0)
    text.push(
      `For ${names(wired)} all is made dead again. Each terminal gets the one core that the wire list names, and nothing else: two cores on one terminal short the line, and no reading through a winding tells that.`,
    );
  if (three)
    text.push('Before the motor turns for good, its direction of rotation is tried with a short start.');
  return text;
}
