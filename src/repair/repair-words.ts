/** Edits as instructions for someone with a screwdriver. */
import type { Edit } from '../edit/edits.ts';
import type { Core, Plan } from '../plan/plan.ts';
import { coreBetween } from '../text/core-names.ts';

/** One sentence an edit. */
export function instructionsFor(plan: Plan, edits: readonly Edit[]): string[] {
  return edits.map((e) => sentence(plan, e));
}

const coreOf = (plan: Plan, at: { run: number; core: number }): Core => plan.runs[at.run]!.cores[at.core]!;

function named(plan: Plan, at: { run: number; core: number }): string {
  const run = plan.runs[at.run]!;
  const core = coreOf(plan, at);
  const { colour, a, b } = core;
  const ended = { colour, link: run.link, a: a.written, b: b.written };
  return coreBetween(ended, run.name ?? `run ${at.run + 1}`, core.at.line);
}

function sentence(plan: Plan, e: Edit): string {
  if (e.do === 'move') return `Move ${named(plan, e)} from ${coreOf(plan, e)[e.end].written} to ${e.to}.`;
  if (e.do === 'remove') return `Take out ${named(plan, e)}.`;
  if (e.do === 'add') {
    const cable = e.like === undefined ? undefined : plan.runs[e.like]?.cable;
    return cable
      ? `Join ${e.from} to ${e.to} with a new core of ${cable.gauge} cable (its length is taken from run ${e.like! + 1}: measure it).`
      : `Join ${e.from} to ${e.to} with a short jumper.`;
  }
  const [x, y] = [coreOf(plan, e.first)[e.first.end], coreOf(plan, e.second)[e.second.end]];
  const part = plan.parts.get(x.part);
  if (x.part === y.part && (part?.kind === 'diode' || part?.kind === 'led'))
    return `Turn ${x.part} round: what is on ${x.written} goes to ${y.written}, and the reverse.`;
  return `Let two ends change places: ${named(plan, e.first)} leaves ${x.written} for ${y.written}, and ${named(plan, e.second)} leaves ${y.written} for ${x.written}.`;
}
