import { takesKind } from '../../ratings/coil.ts';
import type { FedCoil } from '../../study/fed-coils.ts';
import type { Study } from '../../study/study.ts';
import { ampsText, rounded } from '../../text/numbers.ts';
import { withArticle } from '../../text/word-list.ts';
import type { Check, FindingEntry } from '../entry.ts';
import { found } from '../finding.ts';
import { copperOnDc } from '../loop/loop-coils.ts';
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
  return study.fedCoils.filter((c) => !takesKind(c.model, c.source.kind)).map((c) => otherKind(study, c));
}

function otherKind(study: Study, coil: FedCoil): Finding {
  const { part, model, source } = coil;
  const copper = copperOnDc(coil);
  const dcCoil = model.kind === 'dc';
  return found(study.plan, entry, {
    parts: [part.name, source.part],
    at: part.where.get('coil.rated') ?? part.where.get('supply'),
    message: `${part.name} has ${withArticle(model.kind)} coil and ${source.part} gives ${source.kind.toUpperCase()}`,
    why: dcCoil
      ? 'A DC coil on AC buzzes; its contacts chatter and weld.'
      : `An AC coil on DC is limited by its copper alone: it draws ${copper === undefined ? 'several times its current' : `${ampsText(source.rails[0]!.re / copper)} through its ${rounded(copper)} ohm`} and burns.`,
    fix: `Use ${withArticle(model.kind)} supply of ${model.rated} V, or a relay with ${withArticle(source.kind)} coil.`,
    basis: entry.basis,
    twin: { alike: `${model.kind} ${source.part}` },
  });
}
