import type { Study } from '../../study/study.ts';
import { ampsText, rounded } from '../../text/numbers.ts';
import { listOf } from '../../text/word-list.ts';
import type { Check, FindingEntry } from '../entry.ts';
import { found } from '../finding.ts';
import type { Finding } from '../report-model.ts';
import type { Severity } from '../report-words.ts';
import { type ConductorDuty, conductorDuties } from './conductor-duties.ts';
import { type ConductorJudgement, judgeConductor } from './conductor-limits.ts';
import { deviceWords } from './mains-guards.ts';

const entry: FindingEntry = {
  id: 'conductor-unprotected',
  title: 'mains wire thinner than the breaker or fuse ahead allows',
  severity: 'warning',
  question: 7,
  base: 'iec-star',
  meaning:
    'The breaker or fuse lets more current through than this wire bears, whatever is plugged in today. In an overload or a fault the wire burns before anything opens. What counts is the wire with the air round it, its insulation and the cores beside it; where the plan leaves one of these open and it decides, this is a doubt.',
  wrong: '  flex: {kind: cable, gauge: 1 mm2, cores: 3, insulation: 750 V, flexible: true, strands: fine}',
  right: '  flex: {kind: cable, gauge: 2.5 mm2, cores: 3, insulation: 750 V, flexible: true, strands: fine}',
  basis:
    'NEC 240.4, 240.5, 310.16, 400.5, 430.72(B); IEC 60364-4-43 clause 433.1 with IEC 60364-5-52, BS 7671 Table 4F3A',
  followsBeside: {},
  followsFrom: ['mains-meets-low-voltage', 'mains-through-gate', 'mains-shorted'],
};

export const conductorUnprotected: Check = { entry, find };

interface Told {
  readonly duty: ConductorDuty;
  readonly judged: ConductorJudgement;
}

function find(study: Study): Finding[] {
  const groups = new Map<string, Told[]>();
  for (const duty of conductorDuties(study)) {
    // What stands ahead is not stated: circuit-overloaded asks for it.
    if (duty.guard.device === undefined) continue;
    const judged = judgeConductor(study, duty);
    if (judged.verdict === 'pass') continue;
    const { verdict, limit, open, excuse } = judged;
    const key = [duty.cable.gauge, duty.guard.part.name, verdict, limit.amps, open.join(), excuse].join('/');
    groups.set(key, [...(groups.get(key) ?? []), { duty, judged }]);
  }
  return [...groups.values()].map((told) => unprotected(study, told));
}

/** What is said where something left open decides. */
const OPEN_WORDS = {
  ambient: 'how warm the air round it gets (ambient)',
  rated: 'what temperature its insulation stands (rated)',
  class: 'the class of the fuse (class)',
  laying: 'how it is laid',
  memory: 'a figure that is known from memory alone',
} as const;

/** What the plan can say is a doubt; what no field can settle a caution. */
function severityOf({ verdict, open, excuse, unsaidProtectors }: ConductorJudgement): Severity {
  if (verdict === 'fail') return excuse === undefined ? 'warning' : 'caution';
  if (unsaidProtectors !== undefined) return 'doubt';
  return open.some((o) => o !== 'laying' && o !== 'memory') ? 'doubt' : 'caution';
}

function unprotected(study: Study, told: readonly Told[]): Finding {
  const { duty, judged } = told[0]!;
  const { guard, cable } = duty;
  const runs = told.map((t) => t.duty.run);
  const endsOf = (run: (typeof runs)[number]) => [...new Set(run.cores.flatMap((c) => [c.a.part, c.b.part]))];
  const ends = endsOf(runs[0]!);
  const more = runs.length > 1 ? ` and ${runs.length - 1} more like it` : '';
  // As the rating of a device of the kind that stands ahead.
  const limit = rounded((judged.limit.amps * guard.device!.amps) / guard.need);
  return found(study.plan, entry, {
    severity: severityOf(judged),
    parts: [...new Set(runs.flatMap(endsOf)), guard.part.name],
    at: runs[0]!.at,
    ...wordsOf(told[0]!, `the ${cable.gauge} conductors at ${listOf(ends)}${more}`, limit),
    figures: [
      { name: 'ahead', value: rounded(guard.device!.amps, 4), unit: 'A' },
      { name: 'conductors allow', value: limit, unit: 'A' },
    ],
    basis: [judged.limit.basis, judged.excuse && `${judged.excuse} (from memory)`].filter(Boolean).join('; '),
    twin: { alike: `${cable.gauge}/${guard.part.name}/${limit}/${judged.verdict}` },
  });
}

function wordsOf(
  { duty: { guard, cable }, judged }: Told,
  which: string,
  limit: number,
): Pick<Finding, 'message' | 'why' | 'fix'> {
  const ahead = deviceWords(guard);
  const most =
    limit > 0 ? `a breaker or fuse of ${ampsText(limit)} at most` : 'none that is made for the mains';
  const need = `Conductors good for ${ampsText(guard.need)}`;
  const smaller = limit > 0 ? `, or a breaker or fuse of at most ${ampsText(limit)} ahead of these` : '';
  if (judged.verdict === 'fail' && judged.excuse === undefined)
    return {
      message: `${which} are too thin for ${ahead}: they may have ${most}`,
      why: 'An overload or a fault heats them until they burn, and nothing opens.',
      fix: `${need} are needed${smaller}.`,
    };
  if (judged.verdict === 'fail')
    return {
      message: `${which} are thinner than ${ahead} allows: they may have ${most}`,
      why: `What excuses it is known from memory alone: ${judged.excuse}.`,
      fix: `Have the rule looked up, or use conductors good for ${ampsText(guard.need)}.`,
    };
  if (judged.unsaidProtectors !== undefined) {
    const names = listOf(judged.unsaidProtectors);
    return {
      message: `whether ${which} may have ${ahead} cannot be told: the overload protector of ${names} is not stated`,
      why: 'Only an overload device at the motor makes up for a larger breaker.',
      fix: `State protector: of ${names}, or take the break contact 95-96 of its overload relay into the coil circuit.`,
    };
  }
  const open = judged.open.map((o) => OPEN_WORDS[o]);
  const fields = judged.open.flatMap((o) => (o === 'laying' || o === 'memory' ? [] : [o]));
  const whose = {
    ambient: 'ambient: of the plan',
    rated: `rated: of ${cable.stock ?? 'this cable'}`,
    class:
      guard.part.kind === 'fuse'
        ? `class: of ${guard.part.name}`
        : `the class in fuse: of ${guard.part.name}`,
  };
  if (fields.length > 0)
    return {
      message: `whether ${which} may have ${ahead} cannot be told: ${listOf(fields)} ${fields.length > 1 ? 'are' : 'is'} not stated`,
      why: `It turns on ${listOf(open)}; at the worst they may have ${most}.`,
      fix: `State ${fields.map((f) => whose[f]).join(', or ')}.`,
    };
  const laying = judged.open.includes('laying');
  return {
    message: `${which} bear ${ahead} only ${laying ? 'where they are fixed in free air' : 'by a figure known from memory'}`,
    why: laying
      ? `In conduit, trunking or an insulated wall they may have ${most}.`
      : `By figures that were read again they may have ${most}.`,
    fix: laying
      ? 'Fix the cable to the surface in free air along its whole length, or use thicker conductors.'
      : 'Compare the figure with the table before you buy.',
  };
}
