/** Names of a plan that options and arguments take. */
import type { Part } from '../../plan/part-types.ts';
import type { Plan } from '../../plan/plan.ts';
import { printable } from '../../text/escape.ts';
import { NAME_KINDS, type NameKind } from './tree.ts';

const PART: Readonly<Record<Exclude<NameKind, 'terminals' | 'switches'>, Part['kind']>> = {
  gates: 'gate',
  buttons: 'button',
  cutouts: 'cutout',
};

/** The names, each as the command line takes it; none for a kind that is not one. */
export function namesOf(plan: Plan, kind: string): string[] {
  const known = NAME_KINDS.find((one) => one === kind);
  if (known === undefined) return [];
  const parts = [...plan.parts.values()];
  // What would act in a terminal is no name anybody could have typed.
  return named(plan, parts, known).filter((name) => printable(name) === name);
}

function named(plan: Plan, parts: readonly Part[], kind: NameKind): string[] {
  if (kind === 'terminals')
    return parts.flatMap(({ kind: own, name }) =>
      own === 'joint' ? [name] : plan.terminals.get(name)!.names.map((terminal) => `${name}.${terminal}`),
    );
  if (kind === 'switches')
    return parts.flatMap((part) => {
      if (part.kind === 'selector') return part.positions.map((position) => `${part.name}.${position}`);
      return part.kind === 'switch' ? [part.name] : [];
    });
  return parts.filter((part) => part.kind === PART[kind]).map(({ name }) => name);
}
