/** Whether a contact is rated for the load it switches. */
import { categoryVolts, contactAt } from './category-volts.ts';
import { judgeHorsepower, judgeMotorStart } from './contact-motor.ts';
import { isForAcOnly, judgeDcOnAc } from './dc-breaking.ts';
import {
  type ContactDuty,
  type ContactJudgement,
  compare,
  judgement,
  STATED,
  type Verdict,
} from './judgement.ts';
import {
  best,
  carrying,
  type Evidence,
  making,
  makingResistive,
  motorRatingText,
  ratingText,
} from './making.ts';
import { servesClass } from './voltage-class.ts';

/**
 * Judges one contact against the load behind it: voltage and running current always; starting current
 * and, for motors, horsepower where the contact has such ratings; `motor-rated` in place of starting
 * where a motor meets a contact with no figure but a resistive or general-use one. Never a pass for
 * want of a figure.
 */
export function judgeContact(stated: ContactDuty): ContactJudgement[] {
  const duty = { ...stated, contact: contactAt(stated.contact, stated.volts) };
  if (duty.kind === 'dc' && isForAcOnly(duty.contact)) {
    const kind = judgeDcOnAc(duty);
    return kind.verdict === 'fail' || duty.nature !== 'motor'
      ? [kind]
      : [kind, ...judgeMotorStart(duty, undefined, 'pass')];
  }
  const voltage = judgeVoltage(stated);
  const judged = [voltage];
  const horsepower = duty.nature === 'motor' ? judgeHorsepower(duty) : undefined;
  const running = judgeRunning(duty, voltage.verdict, horsepower?.verdict === 'pass');
  if (running !== undefined) judged.push(running);
  if (duty.nature === 'motor') {
    if (horsepower !== undefined) judged.push(horsepower);
    judged.push(...judgeMotorStart(duty, horsepower, voltage.verdict));
  } else if (duty.nature !== 'heater' && voltage.verdict !== 'fail') {
    judged.push(judgeInrush(duty));
  }
  return judged;
}

function judgeVoltage({ contact, volts, kind }: ContactDuty): ContactJudgement {
  const asked = { needed: volts, unit: 'V' as const, basis: STATED };
  const marked = [
    ...contact.ratings.map((r) => ({
      kind: r.kind,
      volts: r.volts,
      text: ratingText(r),
      serves: r.volts >= volts,
    })),
    ...contact.motor.map((m) => ({
      kind: m.kind,
      volts: m.volts,
      text: motorRatingText(m),
      serves: m.volts >= volts || servesClass(m.volts, volts),
    })),
    ...categoryVolts(contact, volts),
  ];
  const own = marked.filter((m) => m.kind === kind);
  const serving = own.find((m) => m.serves);
  if (serving !== undefined)
    return judgement('voltage', 'pass', { ...asked, found: serving.volts, ratingUsed: serving.text });
  if (marked.length === 0)
    return judgement('voltage', 'cannot-tell', {
      ...asked,
      basis: 'no rating stated',
      missing: 'contact.ratings',
    });
  const nearest = own.reduce<(typeof own)[number] | undefined>(
    (a, b) => (a && a.volts >= b.volts ? a : b),
    undefined,
  );
  if (nearest !== undefined)
    return judgement('voltage', 'fail', { ...asked, found: nearest.volts, ratingUsed: nearest.text });
  const other = marked[0]!;
  if (kind === 'ac' && namesAc(contact))
    return judgement('voltage', 'cannot-tell', {
      ...asked,
      basis: 'no AC voltage stated',
      missing: 'contact.ratings',
    });
  return judgement('voltage', 'fail', {
    ...asked,
    found: 0,
    ratingUsed: other.text,
    basis: `stated for ${other.kind.toUpperCase()} only, used on ${kind.toUpperCase()}`,
  });
}

/**
 * A category (AC-3 of IEC 60947-4-1, AC-15 of IEC 60947-5-1) or a pilot-duty code of alternating current: the contact is made
 * for it, at volts that are not stated.
 */
function namesAc({ ac3, ac15, pilot }: ContactDuty['contact']): boolean {
  return ac3 !== undefined || ac15 !== undefined || (pilot !== undefined && !/^[QR]/.test(pilot));
}

function judgeRunning(duty: ContactDuty, voltage: Verdict, covered: boolean): ContactJudgement | undefined {
  const { contact, currents, volts, kind } = duty;
  const running = currents.running;
  // a motor counts against the AC-3 rating where there is one, not against the larger resistive one
  const motorOnly = duty.nature === 'motor' && contact.ac3 !== undefined && !covered;
  // where no rating reaches the voltage, more current than any of them has is still a failure
  const ratings = carrying(contact, voltage === 'fail' ? 0 : volts, kind, motorOnly);
  const most = best(ratings);
  if (running === undefined || most === undefined) {
    if (voltage === 'fail') return undefined;
    return judgement('running', 'cannot-tell', {
      needed: running?.amps,
      found: most?.amps,
      ratingUsed: most?.ratingUsed ?? '',
      basis: running?.basis ?? 'running current not stated',
      missing: most === undefined ? 'contact.ratings' : 'amps',
    });
  }
  const verdict = compare(running, most.amps!);
  if (voltage === 'fail' && verdict !== 'fail') return undefined;
  return judgement('running', verdict, {
    needed: running.amps,
    found: most.amps,
    ratingUsed: most.ratingUsed,
    basis: `${running.basis}; ${most.basis}`,
    missing: 'amps',
  });
}

/** Lamps, transformers and electronics: rule-of-thumb inrush against everything the contact can make. */
function judgeInrush({ contact, currents, volts, kind, practice, nature }: ContactDuty): ContactJudgement {
  const starting = currents.starting;
  const resistive = makingResistive(contact, volts, kind);
  const most: Evidence | undefined = best([
    ...making(contact, volts, kind, practice),
    ...(resistive === undefined ? [] : [resistive]),
  ]);
  const shown = {
    needed: starting?.amps,
    found: most?.amps,
    ratingUsed: most?.ratingUsed ?? '',
    multiple: most?.multiple ?? 1,
    basis: [starting?.basis, most?.basis].filter((b) => b !== undefined).join('; '),
  };
  if (starting === undefined || most === undefined) {
    const missing = most === undefined ? 'contact.ratings' : nature === 'unknown' ? 'type' : 'amps';
    return judgement('starting', 'cannot-tell', { ...shown, missing });
  }
  return judgement('starting', compare(starting, most.amps!), { ...shown, missing: 'contact.make' });
}
