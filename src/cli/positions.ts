/** `--open`, `--on`, `--press` and `--trip`: which inputs of a plan stand away from rest. */
import type { Part } from '../plan/part-types.ts';
import type { Plan } from '../plan/plan.ts';
import { partOfKey } from '../plan/terminal-key.ts';
import { article } from '../text/article.ts';
import { hint } from '../text/nearest-name.ts';
import type { Verb } from './line/verb.ts';
import { Problem } from './status.ts';

export interface PositionFlags {
  readonly open?: readonly string[];
  readonly on?: readonly string[];
  readonly press?: readonly string[];
  readonly trip?: readonly string[];
}

/** Adds the four options to a command. */
export function addPositions(command: Verb): Verb {
  return command
    .option('--open <gates>', 'gates that are open, separated by commas', collect)
    .option('--on <switches>', 'switches that are on, and selector positions such as mode.hand', collect)
    .option('--press <buttons>', 'buttons held pressed', collect)
    .option('--trip <cutouts>', 'cut-outs that have tripped', collect);
}

/** Which option moves which kind of part. */
const OPTION = {
  gate: '--open',
  switch: '--on',
  selector: '--on',
  button: '--press',
  cutout: '--trip',
} as const;

/** Names separated by commas; the option may be given again. */
export function collect(text: string, before: readonly string[] = []): string[] {
  return [
    ...before,
    ...text
      .split(',')
      .map((name) => name.trim())
      .filter((name) => name !== ''),
  ];
}

/** Numbers of the inputs named, in the order in which the circuit lists them. */
export function inputsOf(plan: Plan, flags: PositionFlags): number[] {
  const numbers = inputNumbers(plan);
  const wanted = new Set<number>();
  const turned = new Map<string, string>();
  for (const [option, names] of [
    ['--open', flags.open],
    ['--on', flags.on],
    ['--press', flags.press],
    ['--trip', flags.trip],
  ] as const)
    for (const name of names ?? []) {
      const index = inputOf(plan, numbers, option, name);
      const part = partOfKey(name);
      const other = turned.get(part);
      if (other !== undefined && other !== name)
        throw new Problem(`${part} cannot stand at two positions at once`);
      turned.set(part, name);
      if (index !== undefined) wanted.add(index);
    }
  return [...wanted].sort((a, b) => a - b);
}

function inputOf(
  plan: Plan,
  numbers: ReadonlyMap<string, number | undefined>,
  option: string,
  name: string,
): number | undefined {
  const part = plan.parts.get(partOfKey(name));
  const own = part && part.kind in OPTION ? OPTION[part.kind as keyof typeof OPTION] : undefined;
  if (part === undefined || own === undefined) {
    const fitting = [...plan.parts.values()].filter(
      (p) => p.kind in OPTION && OPTION[p.kind as keyof typeof OPTION] === option,
    );
    const what =
      part === undefined
        ? `no part is called "${name}"`
        : `${part.name} is ${article(part.kind)}, which is not moved by hand`;
    throw new Problem(
      `${option}: ${what}${hint(
        name,
        fitting.map((p) => p.name),
      )}`,
    );
  }
  if (own !== option)
    throw new Problem(`${option}: ${part.name} is ${article(part.kind)}; say ${own} ${name}`);
  if (part.kind === 'selector') return selectorInput(numbers, part, name);
  if (name !== part.name) throw new Problem(`${option}: found "${name}", expected ${part.name} alone`);
  return numbers.get(name);
}

/** The resting position is a position too, though no input stands for it. */
function selectorInput(
  numbers: ReadonlyMap<string, number | undefined>,
  part: Extract<Part, { kind: 'selector' }>,
  name: string,
): number | undefined {
  if (!numbers.has(name)) {
    const positions = part.positions.map((p) => `${part.name}.${p}`);
    throw new Problem(`--on: ${part.name} has the positions ${positions.join(', ')}; found "${name}"`);
  }
  return numbers.get(name);
}

/** Every input by name, `mode.hand` for a selector; a selector's resting position has no number. */
function inputNumbers(plan: Plan): Map<string, number | undefined> {
  const numbers = new Map<string, number | undefined>();
  let next = 0;
  for (const part of plan.parts.values()) {
    if (part.kind === 'selector') {
      for (const position of part.positions)
        numbers.set(`${part.name}.${position}`, position === part.rest ? undefined : next++);
    } else if (part.kind in OPTION) numbers.set(part.name, next++);
  }
  return numbers;
}

/** What was moved, in words: `bandsaw open`, `mode at hand`. */
export function movedWords(plan: Plan, moved: readonly number[]): string[] {
  const names = [...inputNumbers(plan)];
  return moved.flatMap((index) => {
    const name = names.find(([, n]) => n === index)?.[0];
    if (name === undefined) return [];
    const [part, position] = name.split('.');
    const kind = plan.parts.get(part!)!.kind;
    if (position !== undefined) return [`${part} at ${position}`];
    return [`${part} ${POSITION[kind as keyof typeof POSITION]}`];
  });
}

const POSITION = { gate: 'open', switch: 'on', button: 'pressed', cutout: 'tripped' } as const;
