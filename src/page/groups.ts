/** The inputs of a plan as groups of buttons. */

import type { Circuit, Input } from '../circuit/circuit.ts';
import { positionWord, restWord } from '../circuit/input-words.ts';
import type { Plan } from '../plan/plan.ts';
import type { TableRow } from '../study/table-model.ts';
import type { Group, Setting } from './html/parts.ts';

const TITLES = [
  ['gate', 'Gates'],
  ['switch', 'Switches'],
  ['button', 'Push buttons'],
  ['cutout', 'Cut-outs'],
] as const;

export function groupsOf(plan: Plan, circuit: Circuit): Group[] {
  const plain = TITLES.map(([kind, title]) => ({
    title,
    settings: circuit.inputs
      .filter((i) => i.kind === kind)
      .map((i) => ({
        input: i.index,
        name: i.part,
        on: positionWord(kind),
        off: restWord(plan, i.part, kind),
      })),
  }));
  return [...plain, ...selectors(plan, circuit)].filter((g) => g.settings.length > 0);
}

function selectors(plan: Plan, { inputs }: Circuit): Group[] {
  return [...plan.parts.values()].flatMap((part): Group[] => {
    if (part.kind !== 'selector') return [];
    const settings = part.positions.map((name): Setting => {
      const input = inputs.find((i) => i.part === part.name && i.position === name);
      return { name, on: 'here', off: '', ...(input === undefined ? {} : { input: input.index }) };
    });
    return [{ title: `Selector ${part.name}`, part: part.name, settings }];
  });
}

/** Numbers of the inputs that a row of the truth table has away from rest. */
export function movedIn(circuit: Circuit, row: TableRow): number[] {
  const isMoved = (i: Input) => row.inputs[i.part] === (i.position ?? positionWord(i.kind));
  return circuit.inputs.filter(isMoved).map((i) => i.index);
}
