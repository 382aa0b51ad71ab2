/** A gate more or less, for the bench: what to lay, what to take off, what to put where. */
import type * as z from 'zod';
import type { FreshRun, Growth } from '../edit/growth.ts';
import type { Compared } from '../findings/compare.ts';
import type { Report } from '../findings/report-model.ts';
import { lengthUnit } from '../plan/length-unit.ts';
import type { Plan, Run } from '../plan/plan.ts';
import type { Frozen } from '../text/frozen.ts';
import { lengthWords } from '../text/lengths.ts';
import { runText } from '../text/run-names.ts';
import type { growthSchema } from './answer-schemas.ts';
import { type Block, list, paragraph } from './blocks.ts';
import { comparedBlocks } from './compared.ts';

/** A growth of a plan with what the check says before and after it. */
export interface Grown {
  readonly plan: Plan;
  readonly growth: Growth;
  readonly before: Report;
  readonly after: Report;
  readonly compared: Compared;
}

const cableName = ({ cable }: Run) => (cable?.stock === undefined ? 'cable' : `the cable ${cable.stock}`);
const runName = (run: Run) => `${runText(run)}, line ${run.at.line}`;

function laid(plan: Plan, { like, length, cores }: FreshRun): string {
  const run = plan.runs[like]!;
  const ends = cores.map(({ colour, a, b }) => `${colour} from ${a} to ${b}`).join(', ');
  return `Lay ${lengthWords(length.metres, lengthUnit(plan))} of ${cableName(run)}: ${ends}.`;
}

/** What to do at the bench, a sentence a step. */
function growthSteps(plan: Plan, { do: what, gate, fresh, ends, lengths, gone }: Growth): string[] {
  const words = (metres: number) => lengthWords(metres, lengthUnit(plan));
  const moved = lengths.map(({ run, metres }) => {
    const own = ends.filter((end) => end.run === run);
    const told = own.map(({ core, end, to }) => {
      const { colour, [end]: old } = plan.runs[run]!.cores[core]!;
      return `${colour} from ${old.written} to ${to}`;
    });
    return `Move the ends of ${runName(plan.runs[run]!)}: ${told.join(', ')}. It is ${words(metres)} long then.`;
  });
  const taken = gone.map((run) => {
    const { length, cores } = plan.runs[run]!;
    const told = cores.map(({ colour, a, b }) => `${colour} from ${a.written} to ${b.written}`).join(', ');
    return `Take out ${runName(plan.runs[run]!)}, ${words(length!)}: ${told}.`;
  });
  return [
    ...moved,
    ...taken,
    ...(fresh === undefined ? [] : [laid(plan, fresh)]),
    ...(what === 'add' ? [] : [`Take ${gate} out.`]),
  ];
}

/** A growth as data: what is or would be changed, and the check before and after. */
export type GrowthAnswer = Omit<Frozen<z.infer<typeof growthSchema>>, keyof Compared> & Compared;

export function growthAnswer(
  { plan, growth, before, after, compared }: Grown,
  written: boolean,
  diff: string,
): GrowthAnswer {
  return {
    format: 1,
    do: growth.do,
    gate: growth.gate,
    written,
    steps: growthSteps(plan, growth),
    before: before.verdict,
    after: after.verdict,
    ...compared,
    diff,
  };
}

/** What is or would be changed, and the check before and after; `head` says which. */
export function growthDocument(head: string, { plan, growth, before, after, compared }: Grown): Block[] {
  return [
    paragraph(head),
    list('number', growthSteps(plan, growth)),
    ...comparedBlocks(before, after, compared),
    paragraph(
      growth.do === 'add'
        ? `Pull every plug before you wire it. The lever of ${growth.gate} has to be mounted as that of ${growth.like}.`
        : 'Pull every plug before you take anything off.',
    ),
  ];
}
