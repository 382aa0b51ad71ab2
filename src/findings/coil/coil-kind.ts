import type { FedCoil } from '../../study/fed-coils.ts';
import type { Study } from '../../study/study.ts';
import type { Check, FindingEntry } from '../entry.ts';
import { found } from '../finding.ts';
import type { Finding } from '../report-model.ts';

const entry: FindingEntry = {
  id: 'coil-kind',
  title: 'AC on a DC coil, or DC on an AC coil',
  severity: 'warning',
  question: 4,
  base: 'dc-chain',
  meaning:
    'The coil and the supply are of different kinds. A DC coil on AC hums and lets its contacts chatter until they weld; an AC coil on DC draws several times its current and burns within minutes. Both may seem to work at the bench.',
  wrong: '      rated: 12 V AC',
  right: '      rated: 12 V DC',
  basis: 'relay makers’ application guidance, several agree',
  followsFrom: [],
};

export const coilKind: Check = { entry, find };

function find(study: Study): Finding[] {
  return study.fedCoils.filter((c) => c.source.kind !== c.model.kind).map((c) => otherKind(study, c));
}

function otherKind(study: Study, { part, model, source }: FedCoil): Finding {
  const dcCoil = model.kind === 'dc';
  return found(study.plan, entry, {
    parts: [part.name, source.part],
    at: part.where.get('coil.rated') ?? part.where.get('supply'),
    message: `${part.name} has ${dcCoil ? 'a DC' : 'an AC'} coil and ${source.part} gives ${source.kind.toUpperCase()}`,
    why: dcCoil
      ? 'A DC coil on AC buzzes; its contacts chatter and weld.'
      : 'An AC coil on DC is limited by its copper alone: it draws several times its current and burns.',
    fix: `Use a ${model.kind.toUpperCase()} supply of ${model.rated} V, or a relay with ${source.kind === 'ac' ? 'an AC' : 'a DC'} coil.`,
    basis: entry.basis,
    twin: { alike: `${model.kind} ${source.part}` },
  });
}
