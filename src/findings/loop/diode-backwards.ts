import { sayMoved } from '../../circuit/input-words.ts';
import { acrossAc, drivenByDc } from '../../logic/driven.ts';
import { everIn } from '../../logic/entry-states.ts';
import type { Moved, Verified } from '../../logic/verify.ts';
import { perStudy } from '../../study/per-study.ts';
import type { Study } from '../../study/study.ts';
import { type Check, extract, type FindingEntry } from '../entry.ts';
import { found } from '../finding.ts';
import type { Finding } from '../report-model.ts';

const entry: FindingEntry = {
  id: 'diode-backwards',
  title: 'the diode at the coil is the wrong way round',
  severity: 'warning',
  question: 5,
  ofWiring: true,
  base: 'dc-chain',
  meaning:
    'The diode conducts when the coil is fed and shorts the supply. The adapter cuts out or the diode burns through at the first opening of a gate. The band belongs on the + side of the coil; on an AC coil a diode is wrong either way round.',
  wrong: extract('  - {link: [D1.A, K1.A1]}', '  - {link: [D1.K, K1.A2]}'),
  right: extract('  - {link: [D1.K, K1.A1]}', '  - {link: [D1.A, K1.A2]}'),
  basis: 'relay makers’ application guidance, several agree',
  followsFrom: [],
};

export const diodeBackwards: Check = { entry, find };

/** A diode that is no indicator and conducts while the loop is fed. */
interface ConductingDiode {
  /** undefined where it is built into the coil */
  readonly diode: string | undefined;
  /** the relay whose coil it lies across */
  readonly coil: string | undefined;
  readonly moved: Moved;
  readonly on: 'dc' | 'ac';
}

/** None where nothing was decided. */
export const conductingDiodes = perStudy((study): readonly ConductingDiode[] => {
  const { circuit, verified: v } = study;
  if (!v) return [];
  const loose = circuit.diodes.flatMap((d): ConductingDiode[] => {
    if (d.load || d.builtIn) return [];
    const dc = everIn(v, drivenByDc(v, d.anode, d.cathode));
    const moved = dc ?? everIn(v, acrossAc(v, d.anode, d.cathode));
    if (!moved) return [];
    const coil = circuit.relays.find((r) =>
      r.senses.some((s) => (s.a === d.anode && s.b === d.cathode) || (s.b === d.anode && s.a === d.cathode)),
    )?.part;
    return [{ diode: d.part, coil, moved, on: dc ? 'dc' : 'ac' }];
  });
  return [...loose, ...builtIntoAc(study, v)];
});

/** AC coils that state a diode across them: on AC it conducts every other half wave. */
function builtIntoAc({ circuit, plan }: Study, v: Verified): ConductingDiode[] {
  return circuit.relays.flatMap((relay): ConductingDiode[] => {
    const part = plan.parts.get(relay.part)!;
    const coil = 'coil' in part ? part.coil : undefined;
    const sense = relay.senses[0];
    if (coil?.rated.kind !== 'ac' || sense?.by !== 'volts') return [];
    if (coil.suppressor !== 'diode' && coil.suppressor !== 'zener') return [];
    const moved = everIn(v, acrossAc(v, sense.a, sense.b));
    return moved ? [{ diode: undefined, coil: relay.part, moved, on: 'ac' }] : [];
  });
}

function find(study: Study): Finding[] {
  return conductingDiodes(study).map(({ diode, coil, moved, on }) =>
    found(study.plan, entry, {
      parts: [diode, coil].filter((p) => p !== undefined),
      terminals: diode === undefined ? [`${coil}.A1`, `${coil}.A2`] : [`${diode}.A`, `${diode}.K`],
      message:
        on === 'ac'
          ? `${diode ?? `the diode built into ${coil}`} lies across an AC supply: it is a short in every other half wave`
          : `${diode} conducts when ${coil === undefined ? 'the loop' : `the coil of ${coil}`} is fed: it shorts the supply`,
      why:
        on === 'ac'
          ? `With ${sayMoved(study.circuit, moved)} each half wave of its own direction goes past the coil.`
          : `With ${sayMoved(study.circuit, moved)} its anode (A) is joined to + and its band (K) to -.`,
      fix:
        on === 'ac'
          ? diode === undefined
            ? 'Read the label again: an AC coil has an RC member or a varistor (suppressor: rc or varistor).'
            : 'Take the diode off; an AC coil takes an RC member or a varistor.'
          : `Turn ${diode} round: the band (K) to the + side of the coil.`,
      basis: entry.basis,
      twin: { alike: `${on} ${coil === undefined ? 'loop' : 'coil'}` },
    }),
  );
}
