/** The least contact for motors and other loads on mains. */

import type { Contact } from '../plan/device-figures.ts';
import type { LoadPart, MotorPart, Part } from '../plan/part-types.ts';
import { combineLoads } from '../ratings/load.ts';
import {
  type ContactPlace,
  type Mark,
  markContact,
  motorMarks,
  placeText,
  plainContact,
} from '../repair/remedies/contact-sizes.ts';
import { sizesWith } from '../repair/remedies/ladder.ts';
import { AC3_AMPS, PLAIN_AMPS } from '../repair/remedies/series.ts';
import type { Study } from '../study/study.ts';
import { rounded } from '../text/numbers.ts';
import { Collected, type Duty, leastContact, ownContacts, ratedAmps } from './contact-ladder.ts';
import type { LeastRatings } from './materials-model.ts';

/** A up to which a making current is tried. */
const MOST_MAKE = 2000;

export const isLoad = (p: Part): p is MotorPart | LoadPart => p.kind === 'motor' || p.kind === 'load';

/** A duty with what its loads ask together. */
interface MainsDuty extends ContactPlace {
  readonly duty: Duty;
  readonly own: readonly Contact[];
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

function addPlain(study: Study, asked: MainsDuty, found: Collected): void {
  const { duty, own, kind } = asked;
  const sizes = sizesWith(PLAIN_AMPS, ratedAmps(own, kind));
  found.add(
    leastContact(study, duty, sizes, (amps) => plainContact(amps, asked)),
    {
      ...{ what: 'contact', unit: 'A', value: (amps) => amps },
      words: (amps) => `contact rated ${rounded(amps, 4)} A at ${placeText(asked)}`,
    },
  );
}

const phaseWords = ({ phases }: MainsDuty): string => (phases === 3 ? ' 3-phase' : '');

function addMotorRating(study: Study, asked: MainsDuty, found: Collected): void {
  const { duty, own, phases } = asked;
  const marks = motorMarks(
    phases,
    own.flatMap((c) => c.motor.filter((m) => m.phases === phases).map((m) => m.horsepower)),
  );
  const contact = (mark: Mark): Contact => markContact(mark, asked);
  found.add(leastContact(study, duty, marks, contact), {
    ...{ what: 'motor rating', unit: 'hp', value: (mark) => mark.horsepower },
    words: ({ label }) => `contact marked ${label} hp at ${placeText(asked)}${phaseWords(asked)}`,
  });
}

function addAc3(study: Study, asked: MainsDuty, found: Collected): void {
  const { duty, own } = asked;
  const sizes = sizesWith(
    AC3_AMPS,
    own.map((c) => c.ac3),
  );
  found.add(
    leastContact(study, duty, sizes, (amps) => ({ ...plainContact(amps, asked), ac3: amps })),
    {
      ...{ what: 'AC-3', unit: 'A', value: (amps) => amps },
      words: (amps) => `AC-3 ${rounded(amps, 4)} A at ${placeText(asked)}${phaseWords(asked)}`,
    },
  );
}

function addMaking(study: Study, asked: MainsDuty, running: number, found: Collected): void {
  const { duty } = asked;
  const sizes = Array.from({ length: MOST_MAKE }, (_, i) => i + 1);
  found.add(
    leastContact(study, duty, sizes, (make) => ({ ...plainContact(running, asked), make })),
    {
      ...{ what: 'making current', unit: 'A', value: (make) => make },
      words: (make) => `contact rated ${running} A that states it makes ${make} A at ${placeText(asked)}`,
    },
  );
}
