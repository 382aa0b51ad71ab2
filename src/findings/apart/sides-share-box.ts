import type { BoxPart } from '../../plan/part-types.ts';
import { partOfKey } from '../../plan/terminal-key.ts';
import type { Study } from '../../study/study.ts';
import { type WorkingVolts, workingVolts } from '../../study/working-volts.ts';
import type { Check, FindingEntry } from '../entry.ts';
import { found } from '../finding.ts';
import type { Finding } from '../report-model.ts';
import { runVolts } from './run-volts.ts';

const entry: FindingEntry = {
  id: 'sides-share-box',
  title: 'mains and loop share a box with nothing between',
  severity: 'danger',
  question: 1,
  ofWiring: false,
  base: 'dc-chain',
  meaning:
    'One enclosure holds mains terminals and loop wire with no barrier. A loop wire that slips off its screw can land on the line. Fit a fixed divider; where practice is iec, loop cable insulated for the mains voltage inside the box serves as well. If that insulation is not stated, it is a doubt.',
  wrong: 'divider: false',
  right: 'divider: true',
  basis: 'NEC 725.136(A), (B), (D); IEC 60364-4-41 clause 414.4.2; IEC 60364-5-52 clause 528.1 (from memory)',
  followsFrom: [],
};

export const sidesShareBox: Check = { entry, find };

/** A box with mains and loop in it and no divider, and what stands against the loop's cables inside. */
interface SharedBox {
  readonly box: BoxPart;
  /** V */
  readonly mains: number;
  /** some cable of the loop is insulated for less than the mains */
  readonly thin: boolean;
  /** a link of the loop lies inside */
  readonly bare: boolean;
  /** the insulation of some cable of the loop is not stated */
  readonly unstated: boolean;
}

function find(study: Study): Finding[] {
  const { plan } = study;
  const volts = workingVolts(study);
  return [...plan.parts.values()].flatMap((part) => {
    const shared = part.kind === 'box' && !part.divider ? sharedBox(study, part, volts) : undefined;
    if (!shared) return [];
    return plan.practice === 'nec' ? [sharedByNec(study, shared)] : sharedByIec(study, shared);
  });
}

function sharedBox(study: Study, box: BoxPart, volts: WorkingVolts): SharedBox | undefined {
  const { circuit } = study;
  const holds = new Set(box.holds);
  const nets = [...circuit.netOf]
    .filter(([key]) => holds.has(partOfKey(key)) && circuit.landed.has(key))
    .map(([, n]) => n);
  const mains = Math.max(0, ...nets.map((n) => volts.mains(n)));
  if (mains === 0 || !nets.some((n) => volts.low(n) > 0)) return undefined;
  const loop = runVolts(study).flatMap(({ run, low }) => (low > 0 ? [run] : []));
  const entering = loop.filter(
    (r) => !r.link && r.cores.some((c) => holds.has(c.a.part) || holds.has(c.b.part)),
  );
  return {
    box,
    mains,
    thin: entering.some((r) => (r.cable?.insulation ?? mains) < mains),
    bare: loop.some((r) => r.link && r.cores.every((c) => holds.has(c.a.part) && holds.has(c.b.part))),
    unstated: entering.some((r) => r.cable?.insulation === undefined),
  };
}

/** NEC 725.136: insulation alone does not serve. */
function sharedByNec(study: Study, { box }: SharedBox): Finding {
  return undivided(study, box, {
    severity: 'danger',
    why: 'Thicker insulation alone does not part Class 2 wiring from mains.',
    fix: 'Fit a fixed barrier (divider: true) and keep the two at least 6 mm (1/4 in) apart.',
    basis: 'NEC 725.136(A), (B), (D)',
  });
}

/** IEC 60364-5-52 clause 528.1: loop cable insulated for the mains serves as well as a divider. */
function sharedByIec(study: Study, { box, mains, thin, bare, unstated }: SharedBox): Finding[] {
  if (!thin && !bare && !unstated) return [];
  const why = thin
    ? `The low-voltage cable is insulated for less than ${mains} V.`
    : bare
      ? 'A bare link of the low-voltage loop lies in it.'
      : 'Whether the low-voltage cable is insulated for the mains voltage is not stated.';
  const shared = undivided(study, box, {
    severity: thin || bare ? 'danger' : 'doubt',
    why,
    fix: `Fit a fixed barrier (divider: true), or use loop cable insulated for ${mains} V or more inside the box.`,
    basis: 'IEC 60364-4-41 clause 414.4.2; IEC 60364-5-52 clause 528.1 (from memory)',
  });
  return [shared];
}

function undivided(
  { plan }: Study,
  box: BoxPart,
  words: Pick<Finding, 'severity' | 'why' | 'fix' | 'basis'>,
): Finding {
  return found(plan, entry, {
    parts: [box.name, ...box.holds],
    at: box.where.get('divider') ?? box.at,
    message: `${box.name} holds mains and low voltage with no divider between them`,
    ...words,
  });
}
