import { coilOf } from '../../study/coil-models.ts';
import type { FedCoil } from '../../study/fed-coils.ts';
import type { Study } from '../../study/study.ts';
import { listOf } from '../../text/word-list.ts';
import type { Check, FindingEntry } from '../entry.ts';
import { found } from '../finding.ts';
import { loopCoils } from '../loop/loop-coils.ts';
import type { Finding } from '../report-model.ts';

const entry: FindingEntry = {
  id: 'coil-unsuppressed',
  title: 'nothing quenches the coil when the switch opens',
  severity: 'caution',
  question: 4,
  base: 'battery',
  meaning:
    'A DC coil kicks back when its current is cut, and the last gate switch to open takes the arc. It works for months; then a switch sticks or stops conducting. A diode at the coil, band to the + side, takes the kick.',
  wrong: 'suppressor: none',
  right: 'suppressor: diode',
  basis: 'relay makers’ application guidance, several agree',
  followsFrom: [],
};

export const coilUnsuppressed: Check = { entry, find };

function find(study: Study): Finding[] {
  return loopCoils(study).flatMap((coil) => (isQuenched(study, coil) ? [] : [unsuppressed(study, coil)]));
}

/** An AC coil needs nothing, a board has what it needs; a solid-state input and that of a timer are no winding. */
function isQuenched({ circuit }: Study, { part, relay, model }: FedCoil): boolean {
  const { suppressor } = coilOf(part);
  if (model.kind !== 'dc' || model.electronic || part.kind !== 'relay' || part.technology === 'solid-state')
    return true;
  if (suppressor !== undefined && suppressor !== 'none') return true;
  const sense = relay.senses[0]!;
  return circuit.diodes.some(
    (d) => !d.load && [d.anode, d.cathode].every((n) => n === sense.a || n === sense.b),
  );
}

function unsuppressed({ plan }: Study, { part }: FedCoil): Finding {
  return found(plan, entry, {
    parts: [part.name],
    message: `nothing quenches the coil of ${part.name} when a gate switch opens`,
    why: 'Each stop then draws an arc that wears the last switch to open.',
    fix: `Fit a diode at the coil, its band to the + side, or a relay with one built in.`,
    basis: entry.basis,
    twin: {
      several: (names) => ({
        message: `nothing quenches the coils of ${listOf(names)} when a gate switch opens`,
        fix: 'Fit a diode at each coil, its band to the + side, or relays with one built in.',
      }),
    },
  });
}
