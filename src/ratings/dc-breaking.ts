/** What a contact with AC ratings alone breaks on direct current. */
import type { Contact } from '../plan/device-figures.ts';
import { type ContactDuty, type ContactJudgement, judgement, SLACK } from './judgement.ts';
import { ratingText } from './making.ts';
import * as tables from './table-files.ts';

/** A that such a contact surely breaks, and that it breaks at most, by its largest AC rating. */
export interface DcBreaking {
  readonly sure: number;
  readonly most: number;
  readonly ratingUsed: string;
  readonly basis: string;
}

/** Whether ratings are printed, and all of them for AC. */
export function isForAcOnly({ ratings, motor, dc13, ac3 }: Contact): boolean {
  const printed = [...ratings, ...motor];
  return (
    dc13 === undefined &&
    printed.length + (ac3 === undefined ? 0 : 1) > 0 &&
    printed.every((r) => r.kind === 'ac')
  );
}

/**
 * Bounds by the voltage of the circuit, V: shares of the largest resistive AC rating (table `dc-breaking`, common
 * practice). Undefined where no resistive rating is printed.
 */
export function dcBreaking({ ratings }: Contact, volts: number): DcBreaking | undefined {
  const best = ratings.filter((r) => r.kind === 'ac').sort((a, b) => b.amps - a.amps)[0];
  if (best === undefined) return undefined;
  const row = tables.dcBreaking().rows.find((r) => r.volts === null || volts <= r.volts)!;
  const cap = row.most ?? Number.POSITIVE_INFINITY;
  return {
    sure: Math.min(row.low * best.amps, cap),
    most: Math.min(row.high * best.amps, cap),
    ratingUsed: ratingText(best),
    basis: `stated for AC only, used on DC: at ${volts} V it breaks ${row.low} to ${row.high} of its AC amperes${row.most === null ? '' : `, ${row.most} A at most`}; common practice, from memory`,
  };
}

/** A direct current on a contact whose ratings are all for AC: fails above what such contacts break, is open between. */
export function judgeDcOnAc({ contact, currents, volts }: ContactDuty): ContactJudgement {
  const limit = dcBreaking(contact, volts);
  const running = currents.running;
  const [needed, found] = [running?.amps, limit?.most];
  const shown = {
    needed,
    found,
    ratingUsed: limit?.ratingUsed ?? '',
    basis: limit?.basis ?? 'stated for AC only, used on DC',
    missing: running === undefined ? 'amps' : 'contact.ratings',
  };
  if (running === undefined || limit === undefined) return judgement('kind', 'cannot-tell', shown);
  if (running.amps > limit.most * SLACK) return judgement('kind', 'fail', shown);
  const sure = running.atLeast !== true && running.amps <= limit.sure * SLACK;
  return judgement('kind', sure ? 'pass' : 'cannot-tell', {
    ...shown,
    found: sure ? limit.sure : limit.most,
  });
}
