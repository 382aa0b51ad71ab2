import { widestVolts } from '../../circuit/rail-volts.ts';
import type { DiodePart } from '../../plan/part-types.ts';
import { coilAmps } from '../../ratings/coil.ts';
import { SLACK } from '../../ratings/judgement.ts';
import type { FedCoil } from '../../study/fed-coils.ts';
import type { Study } from '../../study/study.ts';
import { ampsText, rounded } from '../../text/numbers.ts';
import { type Check, extract, type FindingEntry } from '../entry.ts';
import { COMMON_PRACTICE, found } from '../finding.ts';
import type { Finding } from '../report-model.ts';
import { busiestFlows } from './busiest-flows.ts';

const entry: FindingEntry = {
  id: 'diode-too-weak',
  title: 'a diode bears less than its coil asks of it',
  severity: 'warning',
  question: 5,
  base: 'dc-chain',
  meaning:
    'A diode across a coil has the volts of the supply against it while the coil is in, and takes the current of the coil when the last switch opens. One that is made for less breaks down one day, and mostly as a short: then the next gate that opens blows the fuse or burns the wire.',
  wrong: extract('  D1: {kind: diode, current: 1 A, reverse: 5 V}'),
  right: extract('  D1: {kind: diode, current: 1 A, reverse: 1000 V}'),
  basis: COMMON_PRACTICE,
  followsFrom: ['diode-backwards'],
};

export const diodeTooWeak: Check = { entry, find };

/** What a diode has to bear, and what for. */
interface Duty {
  readonly volts: number;
  readonly against: string;
  readonly amps: number | undefined;
  readonly through: string;
  readonly also: readonly string[];
}

function find(study: Study): Finding[] {
  const { circuit, plan } = study;
  return circuit.diodes.flatMap((d) => {
    const part = plan.parts.get(d.part);
    if (part?.kind !== 'diode' || d.builtIn || part.zener !== undefined) return [];
    const coils = study.fedCoils.filter(({ relay }) => {
      const sense = relay.senses[0];
      return sense?.by === 'volts' && [d.anode, d.cathode].every((n) => n === sense.a || n === sense.b);
    });
    const duties = coils.length > 0 ? coils.map(acrossCoil) : inLine(study, part.name);
    return duties.flatMap((duty) => weak(study, part, duty));
  });
}

const acrossCoil = ({ part: { name }, source, model }: FedCoil): Duty => ({
  volts: widestVolts(source),
  against: `while ${name} is in`,
  amps: coilAmps(model),
  through: `of ${name} at each stop`,
  also: [name],
});

/** One on the way to a coil: the least coil of its supply goes through it at least, and the supply is against it from the other side. */
function inLine(study: Study, name: string): Duty[] {
  return busiestFlows(study).flatMap(({ source, flows }) => {
    if (!flows.island.diodes.some((d) => d.part === name)) return [];
    const coils = study.fedCoils.filter((c) => c.source.index === source.index).map((c) => coilAmps(c.model));
    const known = coils.filter((amps) => amps !== undefined);
    return [
      {
        volts: widestVolts(source),
        against: 'while another way feeds what lies behind it',
        amps: known.length > 0 ? Math.min(...known) : undefined,
        through: 'of a coil',
        also: [source.part],
      },
    ];
  });
}

function weak({ plan }: Study, diode: DiodePart, { volts, against, amps, through, also }: Duty): Finding[] {
  const told = (what: string, why: string, needed: number, has: number, unit: 'V' | 'A', field: string) =>
    found(plan, entry, {
      parts: [diode.name, ...also],
      at: diode.where.get(field) ?? diode.at,
      message: `${diode.name} bears ${what}`,
      why,
      fix: `Use a diode for at least ${unit === 'V' ? `${rounded(needed)} V` : ampsText(needed)}; those for 1 A and 400 V or more cost no more.`,
      figures: [
        { name: 'needed', value: rounded(needed), unit },
        { name: 'diode', value: rounded(has), unit },
      ],
      basis: entry.basis,
      twin: { alike: field },
    });
  const { reverse, current } = diode;
  return [
    ...(reverse !== undefined && reverse * SLACK < volts
      ? [
          told(
            `${rounded(reverse)} V and has ${rounded(volts)} V against it ${against}`,
            'It breaks down, mostly as a short.',
            volts,
            reverse,
            'V',
            'reverse',
          ),
        ]
      : []),
    ...(current !== undefined && amps !== undefined && current * SLACK < amps
      ? [
          told(
            `${ampsText(current)} and takes the ${ampsText(amps)} ${through}`,
            'Beyond its current a diode overheats, and fails mostly as a short.',
            amps,
            current,
            'A',
            'current',
          ),
        ]
      : []),
  ];
}
