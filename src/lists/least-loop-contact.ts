/** The least contact of a switch in the loop. */

import { reachOf } from '../circuit/sides.ts';
import type { Check } from '../findings/entry.ts';
import { switchKindUnrated } from '../findings/loop/switch-kind-unrated.ts';
import { switchOverloaded } from '../findings/loop/switch-overloaded.ts';
import { switchUnderloaded } from '../findings/loop/switch-underloaded.ts';
import { findWeighed } from '../findings/unsaid/weigh.ts';
import type { Contact, CurrentKind } from '../plan/device-figures.ts';
import { placeText } from '../repair/remedies/contact-sizes.ts';
import { leastOf, sizesWith } from '../repair/remedies/ladder.ts';
import { withContact, withParts } from '../repair/remedies/put.ts';
import { LEAST_AMPS, LOOP_AMPS } from '../repair/remedies/series.ts';
import type { Study } from '../study/study.ts';
import { rounded } from '../text/numbers.ts';
import { Collected, ownContacts, ratedAmps } from './contact-ladder.ts';
import type { LeastRatings } from './materials-model.ts';

interface LoopVolts {
  readonly volts: number;
  readonly kind: CurrentKind;
}

/** Volts of the loop a switch lies in, from the sources that reach its terminals. */
function loopVolts(study: Study, name: string): LoopVolts | undefined {
  const reach = reachOf(study.circuit, study.sides);
  const nets = [...study.circuit.landed.keys()]
    .filter((key) => key.startsWith(`${name}.`))
    .flatMap((key) => study.circuit.netOf.get(key) ?? []);
  const found = study.circuit.sources
    .filter((s) => !s.mains && nets.some((n) => reach(s).has(n)))
    .map((s) => ({ volts: s.rails[0]!.re, kind: s.kind }));
  return found.reduce<LoopVolts | undefined>((a, b) => (a && a.volts >= b.volts ? a : b), undefined);
}

/** Amperes a switch of the loop has to be rated for, and the least current it may need. */
export function leastLoopContact(study: Study, names: readonly string[]): LeastRatings {
  const own = names.filter((n) => loopVolts(study, n) !== undefined);
  const at = own[0] === undefined ? undefined : loopVolts(study, own[0]);
  // A switch that carries no coil's current is not judged, so nothing limits it.
  if (at === undefined || study.fedCoils.length === 0 || !carriesCoil(study, own))
    return { least: [], untold: [] };
  const judge =
    (...checks: readonly Check[]) =>
    (s: Study, inWords: boolean) =>
      findWeighed(s, checks, inWords, (part) => own.includes(part));
  const { volts, kind } = at;
  const found = new Collected();
  const rating = (amps: number) => [{ amps, volts, kind }];
  const plan = (contact: Contact) => withParts(study.plan, own, (p) => withContact(p, contact));
  found.add(
    leastOf(study, {
      sizes: sizesWith(LOOP_AMPS, ratedAmps(ownContacts(study, own), kind)),
      plan: (amps) => plan({ ratings: rating(amps), motor: [] }),
      judge: judge(switchOverloaded, switchKindUnrated),
    }),
    {
      ...{ what: 'contact', unit: 'A', value: (amps) => amps },
      words: (amps) => `contact rated ${rounded(amps, 4)} A at ${placeText({ volts, kind })}`,
    },
  );
  const least = ownContacts(study, own).map((c) => c.least?.amps);
  found.add(
    leastOf(study, {
      sizes: sizesWith(LEAST_AMPS, least).reverse(),
      plan: (amps) => plan({ ratings: rating(100), motor: [], least: { amps, volts, kind } }),
      judge: judge(switchUnderloaded),
    }),
    {
      ...{ what: 'least current', unit: 'A', value: (amps) => amps, more: '' },
      words: (amps) => `least current of ${rounded(amps * 1000, 4)} mA or less`,
    },
  );
  return found.done();
}

/** Whether the check judges any of these switches: without a rating it has to say so. */
function carriesCoil(study: Study, names: readonly string[]): boolean {
  const plan = withParts(study.plan, names, (p) => withContact(p, { ratings: [], motor: [] }));
  const found = switchKindUnrated.find(study.withFigures(plan));
  return found.some((f) => f.parts.some((p) => names.includes(p)));
}
