import type { FedCoil } from '../../study/fed-coils.ts';
import type { Study } from '../../study/study.ts';
import { listOf } from '../../text/word-list.ts';
import type { Check, FindingEntry } from '../entry.ts';
import { found } from '../finding.ts';
import type { Finding } from '../report-model.ts';
import { loopCoils } from './loop-coils.ts';

const entry: FindingEntry = {
  id: 'coil-current-unknown',
  title: 'how much the coil draws is not stated',
  severity: 'doubt',
  question: 5,
  base: 'three-phase',
  meaning:
    'Without the current or power of the coil neither the supply nor the switches can be judged. The resistance of an AC coil does not give it: that is only its copper, and the iron does most of the holding back. The VA are printed on the coil or in its sheet.',
  wrong: 'coil: {rated: 24 V AC, resistance: 12 ohm, pull-in: 17 V, drop-out: 6 V, most: 30 V}',
  right:
    'coil: {rated: 24 V AC, power: 7 VA, power-factor: 0.3, inrush: 45 VA, pull-in: 17 V, drop-out: 6 V, most: 30 V}',
  basis: 'a missing figure is never a pass',
  followsFrom: [],
};

export const coilCurrentUnknown: Check = { entry, find };

/** Copper alone looks as if something were said of an AC coil, so that it is asked for whatever it may be. */
function isUnknown({ model, part }: FedCoil): boolean {
  if (part.kind === 'board') return false;
  const typed = (...fields: string[]) => fields.some((f) => part.where.has(`coil.${f}`));
  return (
    model.ohms === undefined || (model.kind === 'ac' && typed('resistance') && !typed('power', 'current'))
  );
}

function find(study: Study): Finding[] {
  return loopCoils(study)
    .filter(isUnknown)
    .map(({ part }) =>
      found(study.plan, entry, {
        parts: [part.name],
        at: part.where.get('coil.rated') ?? part.at,
        message: `how much current ${part.name} draws is not stated`,
        why: 'Without it neither the supply nor the gate switches can be judged.',
        fix: `State coil: {resistance: ...}, {current: ...} or {power: ...} of ${part.name}.`,
        basis: entry.basis,
        twin: {
          alike: '',
          several: (names) => ({
            message: `how much current ${listOf(names)} draw is not stated`,
            fix: `State coil: {resistance: ...}, {current: ...} or {power: ...} of each of ${listOf(names)}.`,
          }),
        },
      }),
    );
}
