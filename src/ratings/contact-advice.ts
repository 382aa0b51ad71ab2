/** What to look for in a shop in place of a contact that does not serve. */

import type { CurrentKind, PilotCode } from '../plan/device-figures.ts';
import { rounded } from '../text/numbers.ts';
import { nextSwitch } from './branch.ts';
import { WATTS_PER_HORSEPOWER } from './horsepower.ts';
import type { ContactDuty } from './judgement.ts';
import { currentsOfRating } from './making.ts';
import { tableFullLoad } from './motor.ts';
import { type PilotDuty, pilotRating } from './pilot.ts';
import { branchRule, capacityOf, tables } from './tables.ts';

const ROUNDING = 1 - 1e-9;
const at = (volts: number, kind: CurrentKind): string => `${rounded(volts, 4)} V ${kind.toUpperCase()}`;

/** Up to the next multiple of `step`; an exact multiple stays. */
const up = (amps: number, step: number): number =>
  Number((Math.ceil((amps * ROUNDING) / step) * step).toFixed(6));

const FRACTIONS: Readonly<Record<string, string>> = { '1-1/2': '1.5', '7-1/2': '7.5' };

/**
 * Smallest standard horsepower row (UL 508, or NEC Table 430.250 on three phases) that covers the motor's power, its
 * running and its starting current (A). Undefined where neither power nor running current is known.
 */
function horsepowerMark(duty: ContactDuty, horsepower: number | undefined): string | undefined {
  const { volts, kind, phases, currents } = duty;
  if (horsepower === undefined && currents.running === undefined) return undefined;
  const rows: readonly { readonly horsepower: number; readonly label: string }[] =
    phases === 3 ? tables.motorFlcThree().rows : tables.horsepowerRatings().rows;
  const row = rows.find((r) => {
    if (r.horsepower * 1.02 < (horsepower ?? 0)) return false;
    const watts = r.horsepower * WATTS_PER_HORSEPOWER;
    const covers = currentsOfRating({ horsepower: r.horsepower, watts, volts, kind, phases });
    if (covers === undefined) return horsepower !== undefined;
    return (
      covers.running >= (currents.running?.amps ?? 0) * ROUNDING &&
      covers.starting >= (currents.starting?.amps ?? 0) * ROUNDING
    );
  });
  return row === undefined ? undefined : (FRACTIONS[row.label] ?? row.label);
}

/** A in category AC-3 that carry the motor and cover its start, by IEC 60947-4-1 Table 7. */
function ac3Amps({ currents, practice }: ContactDuty): number | undefined {
  if (currents.running === undefined) return undefined;
  const row = capacityOf('AC-3', currents.running.amps);
  const times = practice === 'nec' ? row.break : row.make;
  const least = Math.max(currents.running.amps, (currents.starting?.amps ?? 0) / times);
  return up(least, practice === 'nec' ? 1 : 0.5);
}

/** The contact to buy for a motor or another load, as the end of "Look for ...". */
export function contactAdvice(duty: ContactDuty): string {
  if (duty.nature !== 'motor') return plainAdvice(duty);
  return duty.kind === 'dc' ? directAdvice(duty) : motorAdvice(duty);
}

function plainAdvice({ currents, volts, kind }: ContactDuty): string {
  if (currents.running === undefined) return `a contact rated for the load's amperes at ${at(volts, kind)}`;
  const times = kind === 'ac' ? capacityOf('AC-1', currents.running.amps).make : 1;
  const amps = up(Math.max(currents.running.amps, (currents.starting?.amps ?? 0) / times), 1);
  return `a contact rated at least ${amps} A at ${at(volts, kind)}`;
}

function directAdvice({ currents, volts, kind }: ContactDuty): string {
  if (currents.running === undefined) return `a DC rating above the motor's amperes at ${at(volts, kind)}`;
  const make =
    currents.starting === undefined
      ? ''
      : ` that states it makes at least ${up(currents.starting.amps, 1)} A`;
  return `a DC rating of at least ${up(currents.running.amps, 1)} A at ${at(volts, kind)}${make}`;
}

function motorAdvice(duty: ContactDuty): string {
  const { volts, kind, phases, practice } = duty;
  const horsepower =
    duty.horsepower ?? (duty.watts === undefined ? undefined : duty.watts / WATTS_PER_HORSEPOWER);
  const ac3 = ac3Amps(duty);
  if (practice === 'iec') {
    const watts = duty.watts ?? (horsepower === undefined ? undefined : horsepower * WATTS_PER_HORSEPOWER);
    const about = watts === undefined ? '' : ` (about ${rounded(watts / 1000, 2)} kW)`;
    return ac3 === undefined
      ? `a contactor with AC-3 above the amperes on the motor's plate${about} at ${rounded(volts, 4)} V`
      : `a contactor with AC-3 of at least ${ac3} A${about} at ${rounded(volts, 4)} V`;
  }
  const row = horsepowerMark(duty, horsepower);
  const mark =
    row === undefined
      ? `a contact marked in horsepower for this motor at ${at(volts, kind)}`
      : `a contact marked at least ${row} hp at ${at(volts, kind)}`;
  const single = phases === 3 ? ' 3-phase' : ' single-phase';
  const other = ac3 === undefined ? '' : `, or a contactor marked AC-3 ${ac3} A`;
  return `${mark}${single}${other}${snapAdvice(duty, horsepower)}`;
}

/** NEC 430.83(C): the snap switch that would do, for a hand switch. */
function snapAdvice({ device, volts, phases }: ContactDuty, horsepower: number | undefined): string {
  if (device !== 'hand-switch' || horsepower === undefined || phases === 3 || volts > 300) return '';
  if (horsepower > branchRule('snap-switch-horsepower').value) return '';
  const fullLoad = tableFullLoad(horsepower, volts, 1);
  const size = fullLoad === undefined ? undefined : nextSwitch(fullLoad.amps);
  return size === undefined ? '' : `, or an AC snap switch of ${size} A`;
}

/** The control contact to buy for these coils: the smallest pilot-duty code that covers them, or its category. */
export function pilotAdvice({ volts, kind, holding, inrush, holdingVA, practice }: PilotDuty): string {
  const place = at(volts, kind);
  if (holding === undefined) return `a control contact rated for the coil at ${place}`;
  const start = kind === 'dc' ? holding.amps : (inrush?.amps ?? 0);
  const category = kind === 'dc' ? 'DC-13' : 'AC-15';
  const times = kind === 'dc' ? 1 : holdingVA !== undefined && holdingVA > 72 ? 10 : 6;
  const amps = up(Math.max(holding.amps, start / times), 0.1);
  const own = `${category} of at least ${amps} A at ${place}`;
  if (practice === 'iec') return `a control contact with ${own}`;
  const codes: readonly PilotCode[] =
    kind === 'dc' ? ['R300', 'Q300'] : ['E150', 'D300', 'C300', 'C600', 'B300', 'B600', 'A300', 'A600'];
  const code = codes.find((c) => {
    const rating = pilotRating(c, volts, kind);
    return rating !== undefined && rating.make >= start * ROUNDING && rating.break >= holding.amps * ROUNDING;
  });
  return code === undefined
    ? `a control contact with ${own}`
    : `a contact marked pilot duty ${code} or better, or ${own}`;
}
