/**
 * What people meet with a circuit that was planned right and built wrong, or that went wrong later: what they see first is typed as
 * they would type it, what the tool then asks is answered by what the cause does, and the hunt must end at the cause. Causes and
 * complaints: common practice, no source.
 */
import { describe, expect, it } from 'vitest';
import { PlainForm } from '../../../src/meter/hunt/plain-form.ts';
import type { Suspect } from '../../../src/meter/hunt/predict.ts';
import { tellHunt } from '../../../src/meter/hunt/tell.ts';
import { Study } from '../../../src/study/study.ts';
import { example } from '../../helpers/example-plans.ts';
import { planOf } from '../../helpers/plan-of.ts';
import { sampled, WHOLE } from '../../helpers/share.ts';
import { Person } from './person.ts';
import { TWO_GATES } from './small-plans.ts';

interface Situation {
  readonly gist: string;
  /** name of an example, or none for the small plan */
  readonly plan?: string;
  /** it never worked as it is wired now */
  readonly never?: true;
  /** what the person sees or reads first */
  readonly says: readonly string[];
  /** how the cause is called */
  readonly cause: RegExp;
  /** cures that do not help before it; none where it is left out */
  readonly cures?: number;
}

const SITUATIONS: readonly Situation[] = [
  {
    gist: 'a core of the chain landed on the break tab: that gate does nothing, and those beyond work while it is shut',
    plan: 'saltmarsh-lane',
    never: true,
    says: ['planer open: off', 'router open: runs', 'planer open, router open: off'],
    cause: /^planer: the red core from bandsaw\.COM is on NC instead of COM/,
  },
  {
    gist: 'one switch mounted the other way: runs with all shut, stops when that gate alone is opened',
    plan: 'saltmarsh-lane',
    never: true,
    says: ['all shut: runs', 'planer open: off', 'router open: runs'],
    cause: /^planer: the switch is mounted the wrong way round/,
  },
  {
    gist: 'the two outer tabs used and COM left empty: the gate does nothing',
    plan: 'saltmarsh-lane',
    never: true,
    says: ['router open: off', 'planer open: runs', 'bandsaw open: runs', 'all shut: off'],
    cause: /^router: the red core from planer\.COM is on NC instead of COM/,
  },
  {
    gist: 'the return is not carried on past one box: everything after it is dead',
    plan: 'saltmarsh-lane',
    never: true,
    says: ['bandsaw open: runs', 'planer open: off', 'router open: off'],
    cause: /^the white core from bandsaw\.NO to planer\.NO is broken/,
  },
  {
    gist: 'both cores of a spur on the same bar: that gate never works',
    plan: 'ferrier-mews',
    never: true,
    says: ['bandsaw open: off', 'jointer open: runs'],
    cause: /^barB: the blue core from bandsaw\.NO is on barA instead of barB/,
  },
  {
    gist: 'the pair crossed at one joint of the ring',
    plan: 'hollin-bank',
    never: true,
    says: [],
    cause: /the red and the black core from .* are changed over$/,
  },
  {
    gist: 'a core broke under the bench after years: the far gate stopped calling',
    says: ['lathe open: off', 'saw open: runs'],
    cause: /^the white core from saw\.NO to lathe\.NO is broken/,
  },
  {
    gist: 'the collector hangs on the break side of the relay: runs while nothing is open',
    plan: 'saltmarsh-lane',
    never: true,
    says: ['all shut: runs', 'bandsaw open: off', 'planer open: off', 'router open: off'],
    cause: /^K1: the black core from X1\.L is on NC instead of NO/,
  },
  {
    gist: 'an adapter of fewer volts from the drawer: no click from any gate',
    never: true,
    says: ['saw open: off', 'lathe open: off', 'saw open: K1 out'],
    cause: /^PS1 is one of \d+ V DC/,
  },
  {
    gist: 'the transformer is on too low a tap: the contactor comes in, by a hair',
    plan: 'gorse-barn',
    never: true,
    says: ['big-lathe open: runs', 'Q1.A1 Q1.A2 = 17.6 V AC with big-lathe open'],
    cause: /^T1 is one of 18 V AC/,
  },
  {
    gist: 'an adapter that sags under load: volts at the coil with no load and none to speak of with it',
    says: ['saw open: off', 'lathe open: off'],
    cause: /^PS1 lets its volts fall under load/,
  },
  {
    gist: 'the battery is flat: nothing at all any more',
    plan: 'ropewalk-barge',
    says: [],
    cause: /^BAT gives nothing/,
  },
  {
    gist: 'a bad joint that passes every test without load',
    says: ['saw open: off', 'lathe open: off'],
    cause: /^the blue core from PS1\.- to K1\.A2 has a bad joint/,
  },
  {
    gist: 'a staple shorts the pair to the far gate: it runs whatever is shut',
    says: ['all shut: runs', 'saw open: runs'],
    cause: /^the red and the white core from saw\.COM and saw\.NO to lathe\.COM and lathe\.NO touch/,
  },
  {
    gist: 'the contact of the relay has welded: it runs on with the relay out',
    says: ['all shut: runs', 'all shut: K1 out'],
    cause: /^K1: contact COM-NO never breaks/,
  },
  {
    gist: 'the fuse of the loop has blown',
    says: ['saw open: off', 'lathe open: off', 'saw open: K1 out'],
    cause: /^F1 has blown/,
  },
  {
    gist: 'the overload relay has tripped and waits for its reset',
    plan: 'kiln-street',
    says: ['band-saw open: off', 'spindle open: off'],
    cause: /^OL has tripped/,
  },
  {
    gist: 'chips in the slot: the blade does not come home and the lever stays pressed',
    says: ['all shut: runs', 'saw open: runs'],
    cause: /^lathe: shut, its switch stays as when it is open/,
  },
  {
    gist: 'the lever is not reached when the gate is open',
    says: ['lathe open: off', 'saw open: runs', 'lathe open by finger: runs'],
    cause: /^lathe: open, it does not move the lever/,
  },
  {
    gist: 'the diode across the coil is the wrong way round: no gate starts anything',
    plan: 'saltmarsh-lane',
    never: true,
    says: ['bandsaw open: off', 'planer open: off', 'bandsaw open: K1 out'],
    cause: /^D1 is the wrong way round/,
    // A shorted one comes before it: for a meter whose ohms range opens no diode the two are alike but in one reading.
    cures: 1,
  },
  {
    gist: 'the diode of a shared gate is the wrong way round: it starts one collector alone',
    plan: 'harrow-sheds',
    never: true,
    says: [],
    cause: /^D1 is the wrong way round/,
  },
  {
    gist: 'somebody pulled the plug',
    says: ['saw open: off', 'saw open: K1 in'],
    cause: /^P1 is out of its socket/,
  },
  {
    gist: 'one phase is missing at a three-phase fan',
    plan: 'heron-slip',
    says: ['spindle open: off'],
    cause: /^P1: no volts come in on L2/,
  },
  {
    gist: 'the motor gets its mains and does not turn',
    says: ['saw open: off', 'saw open: X1 live'],
    cause: /^fan is fed but does not turn/,
  },
  {
    gist: 'the timer that staggers two fans is stuck: the second never follows',
    plan: 'larch-hall',
    says: ['saw open: fan1 runs, fan2 off'],
    cause: /^K2 does not move although its coil is fed/,
  },
];

/** Plans that the short run hunts in as well. */
const SMALL: readonly (string | undefined)[] = [undefined, 'saltmarsh-lane'];

const studies = new Map<string | undefined, Study>();
const people = new Map<string, Person>();
/** One person for each plan and history, so that nothing is worked out twice. */
function personFor({ plan, never }: Situation): Person {
  const study = studies.get(plan) ?? Study.of(plan === undefined ? planOf(TWO_GATES) : example(plan));
  studies.set(plan, study);
  const key = `${plan} ${never}`;
  const person = people.get(key) ?? new Person(study, never !== true);
  people.set(key, person);
  return person;
}

describe('a hunt ends at the cause where', () => {
  it.each(
    sampled(
      SITUATIONS.filter(({ plan }) => WHOLE || SMALL.includes(plan)),
      4,
    ),
  )('$gist', (situation) => {
    const person = personFor(situation);
    const form = new PlainForm(person.study);
    const cause = person.suspects.find((s: Suspect) => situation.cause.test(s.faults[0]!.text));
    if (cause === undefined) throw new Error(`no such fault: ${situation.cause}`);
    const hunt = person.afresh();
    for (const line of situation.says) {
      const read = line.includes('=') ? form.reading(line) : form.saw(line);
      if (!read.ok) throw new Error(read.problem);
      for (const { observation, answer } of [read.value].flat()) {
        // What is typed as the complaint has to be what the cause does.
        expect([line, person.hunt.predictor.agrees(cause, observation, answer!)]).toEqual([line, true]);
        hunt.answer(observation, answer);
      }
    }
    const walk = person.go(hunt, cause);
    const told = tellHunt(hunt);
    expect([walk.found, walk.cures]).toEqual([true, situation.cures ?? 0]);
    expect(
      told.suspects.filter((s) => s.alike || s === told.suspects[0]).map((s) => s.faults[0]!.text),
    ).toContain(cause.faults[0]!.text);
    expect(told.end!.cure.length).toBeGreaterThan(0);
  });
});
