/** The least contact for motors and other loads on mains. */

import type { Contact, CurrentKind } from '../plan/device-figures.ts';
import type { LoadPart, MotorPart, Part } from '../plan/part-types.ts';
import { WATTS_PER_HORSEPOWER } from '../ratings/horsepower.ts';
import { combineLoads } from '../ratings/load.ts';
import { tables } from '../ratings/tables.ts';
import type { Study } from '../study/study.ts';
import { rounded } from '../text/numbers.ts';
import { Collected, type Duty, leastContact, ownContacts, place, ratedAmps } from './contact-ladder.ts';
import { sizesWith } from './least-rating.ts';
import type { LeastRatings } from './materials-model.ts';

/** A, usual sizes; common practice. */
export const AC3_AMPS = [6, 7, 9, 12, 16, 18, 20, 25, 32, 38, 40, 50, 65, 80, 95, 115, 150] as const;
export const PLAIN_AMPS = [1, 2, 3, 5, 6, 8, 10, 12, 15, 16, 20, 25, 30, 32, 40, 50, 63, 80, 100] as const;
/** A up to which a making current is tried. */
const MOST_MAKE = 2000;

export const isLoad = (p: Part): p is MotorPart | LoadPart => p.kind === 'motor' || p.kind === 'load';

/** A duty with what its loads ask together. */
interface MainsDuty {
  readonly duty: Duty;
  readonly own: readonly Contact[];
  readonly volts: number;
  readonly kind: CurrentKind;
  readonly phases: 1 | 3;
}

/** Motor rating, AC-3, and making current for motors; plain amperes for other loads. */
export function leastMainsContact(study: Study, duty: Duty): LeastRatings {
  const loads = duty.loads.filter(isLoad);
  const { practice } = study.plan;
  const { nature, phases, currents } = combineLoads(loads, practice);
  const { volts, kind } = loads.reduce((a, b) => (b.volts.volts > a.volts.volts ? b : a)).volts;
  const asked: MainsDuty = { duty, own: ownContacts(study, duty.names, duty.poles), volts, kind, phases };
  const found = new Collected();
  if (nature !== 'motor' || kind === 'dc') {
    addPlain(study, asked, found);
    return found.done();
  }
  if (practice === 'nec') addMotorRating(study, asked, found);
  addAc3(study, asked, found);
  const running = Math.ceil(currents.running?.amps ?? 0);
  if (running > 0) addMaking(study, asked, running, found);
  return found.done();
}

const plain = (amps: number, { volts, kind }: MainsDuty): Contact => ({
  ratings: [{ amps, volts, kind }],
  motor: [],
});

function addPlain(study: Study, asked: MainsDuty, found: Collected): void {
  const { duty, own, volts, kind } = asked;
  const sizes = sizesWith(PLAIN_AMPS, ratedAmps(own, kind));
  found.add(
    leastContact(study, duty, sizes, (amps) => plain(amps, asked)),
    {
      ...{ what: 'contact', unit: 'A', value: (amps) => amps },
      words: (amps) => `contact rated ${rounded(amps, 4)} A at ${place(volts, kind)}`,
    },
  );
}

interface Mark {
  readonly horsepower: number;
  readonly label: string;
}

function marksWith(listed: readonly Mark[], own: readonly number[]): Mark[] {
  const labels = new Map(listed.map((m) => [m.horsepower, m.label]));
  return sizesWith([...labels.keys()], own).map((horsepower) => ({
    horsepower,
    label: labels.get(horsepower) ?? `${rounded(horsepower, 4)}`,
  }));
}

const phaseWords = ({ phases }: MainsDuty): string => (phases === 3 ? ' 3-phase' : '');

function addMotorRating(study: Study, asked: MainsDuty, found: Collected): void {
  const { duty, own, volts, kind, phases } = asked;
  const listed: readonly Mark[] =
    phases === 3 ? tables.motorFlcThree().rows : tables.horsepowerRatings().rows;
  const marks = marksWith(
    listed,
    own.flatMap((c) => c.motor.filter((m) => m.phases === phases).map((m) => m.horsepower)),
  );
  const contact = ({ horsepower }: Mark): Contact => ({
    ratings: [],
    motor: [{ horsepower, watts: horsepower * WATTS_PER_HORSEPOWER, volts, kind, phases }],
  });
  found.add(leastContact(study, duty, marks, contact), {
    ...{ what: 'motor rating', unit: 'hp', value: (mark) => mark.horsepower },
    words: ({ label }) => `contact marked ${label} hp at ${place(volts, kind)}${phaseWords(asked)}`,
  });
}

function addAc3(study: Study, asked: MainsDuty, found: Collected): void {
  const { duty, own, volts, kind } = asked;
  const sizes = sizesWith(
    AC3_AMPS,
    own.map((c) => c.ac3),
  );
  found.add(
    leastContact(study, duty, sizes, (amps) => ({ ...plain(amps, asked), ac3: amps })),
    {
      ...{ what: 'AC-3', unit: 'A', value: (amps) => amps },
      words: (amps) => `AC-3 ${rounded(amps, 4)} A at ${place(volts, kind)}${phaseWords(asked)}`,
    },
  );
}

function addMaking(study: Study, asked: MainsDuty, running: number, found: Collected): void {
  const { duty, volts, kind } = asked;
  const sizes = Array.from({ length: MOST_MAKE }, (_, i) => i + 1);
  found.add(
    leastContact(study, duty, sizes, (make) => ({ ...plain(running, asked), make })),
    {
      ...{ what: 'making current', unit: 'A', value: (make) => make },
      words: (make) => `contact rated ${running} A that states it makes ${make} A at ${place(volts, kind)}`,
    },
  );
}
