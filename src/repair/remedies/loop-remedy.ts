/** Other gate switches and another battery. */
import { switchCurrents } from '../../findings/loop/switch-currents.ts';
import type { Finding } from '../../findings/report-model.ts';
import type { Rating } from '../../plan/device-figures.ts';
import { ampsText, rounded } from '../../text/numbers.ts';
import type { Bench } from './bench.ts';
import { type Change, partChange } from './change.ts';
import { withContact } from './put.ts';
import type { Option } from './search.ts';
import { AMPERE_HOURS, LEAST_AMPS, LOOP_AMPS } from './series.ts';

const num = (x: number): string => `${rounded(x, 6)}`;
export const ratingText = ({ amps, volts, kind }: Rating): string =>
  `${num(amps)} A ${num(volts)} V ${kind.toUpperCase()}`;

function switchIn({ study }: Bench, f: Finding) {
  return switchCurrents(study).find((s) => s.part.name === f.parts[0]);
}

/** A switch of a higher rating for this kind of current. */
export function strongerSwitch(bench: Bench, f: Finding): Option[] {
  const own = switchIn(bench, f);
  if (!own) return [];
  const { part, kind, volts } = own;
  const sizes = LOOP_AMPS.filter((a) => a > (own.rating ?? 0)).map((amps): Change[] => {
    const rating = { amps, volts, kind };
    const others = part.contact.ratings.filter((r) => r.kind !== kind);
    const contact = { ...part.contact, ratings: [...others, rating] };
    const fields = { 'contact.ratings': `[${contact.ratings.map(ratingText).join(', ')}]` };
    const words = `use a switch rated at least ${ratingText(rating)} as ${part.name}`;
    return [partChange(part.name, fields, words, (p) => withContact(p, contact))];
  });
  return [{ sizes }];
}

/** A switch whose contacts stay clean on less. */
export function cleanerSwitch(bench: Bench, f: Finding): Option[] {
  const own = switchIn(bench, f);
  if (!own) return [];
  const { part, kind, volts } = own;
  const { least, metal } = part.contact;
  if (least === undefined) {
    if (metal === 'gold') return [];
    const words = `use a switch with gold contacts as ${part.name}`;
    const change = partChange(part.name, { 'contact.metal': 'gold' }, words, (p) =>
      withContact(p, { ...part.contact, metal: 'gold' }),
    );
    return [{ sizes: [[change]] }];
  }
  const sizes = LEAST_AMPS.filter((a) => a < least.amps).map((amps): Change[] => {
    const rating = { amps, volts: Math.min(volts, least.volts), kind };
    const words = `use a switch as ${part.name} that needs no more than ${ampsText(amps)} to stay clean`;
    return [
      partChange(part.name, { 'contact.least': ratingText(rating) }, words, (p) =>
        withContact(p, { ...part.contact, least: rating }),
      ),
    ];
  });
  return [{ sizes }];
}

/** A battery that holds more. */
export function largerBattery({ study }: Bench, f: Finding): Option[] {
  return f.parts.flatMap((name) => {
    const part = study.plan.parts.get(name);
    if (part?.kind !== 'battery' || part.capacity === undefined) return [];
    const own = part.capacity;
    const sizes = AMPERE_HOURS.filter((c) => c > own).map((capacity) => [
      partChange(name, { capacity: `${capacity} Ah` }, `use a battery of ${capacity} Ah as ${name}`, (p) =>
        p.kind === 'battery' ? { ...p, capacity } : p,
      ),
    ]);
    return [{ sizes }];
  });
}
