/** Inputs and terminals by the names a person gives them. */
import type { Part } from '../plan/part-types.ts';
import type { Plan } from '../plan/plan.ts';
import { partOfKey } from '../plan/terminal-key.ts';
import { article } from '../text/article.ts';
import { hint } from '../text/nearest-name.ts';
import type { Probe } from './read-meter.ts';

/** A name that the plan has not, or that does not fit what it was given for; the message says so and the nearest that would do. */
export class NotInPlan extends Error {
  override readonly name = 'NotInPlan';
}

/** What stands away from rest, by name; what is not named stands at rest. */
export interface Positions {
  /** gates that are open */
  readonly open?: readonly string[];
  /** switches that are on, and positions of selectors, such as `mode.hand` */
  readonly on?: readonly string[];
  /** buttons that are held pressed */
  readonly press?: readonly string[];
  /** cut-outs that have tripped */
  readonly trip?: readonly string[];
}

type Way = keyof Positions;

/** How each kind of part is moved. */
const WAY = { gate: 'open', switch: 'on', selector: 'on', button: 'press', cutout: 'trip' } as const;

/**
 * Numbers of the inputs named, in the order in which the circuit lists them. `spelled` writes a key of `Positions` as whoever
 * gave it has it. Throws `NotInPlan`.
 */
export function inputsNamed(plan: Plan, positions: Positions, spelled: (way: Way) => string): number[] {
  const numbers = inputNumbers(plan);
  const wanted = new Set<number>();
  const turned = new Map<string, string>();
  for (const way of ['open', 'on', 'press', 'trip'] as const)
    for (const name of positions[way] ?? []) {
      const index = inputNamed(plan, numbers, way, name, spelled);
      const part = partOfKey(name);
      const other = turned.get(part);
      if (other !== undefined && other !== name)
        throw new NotInPlan(`${part} cannot stand at two positions at once`);
      turned.set(part, name);
      if (index !== undefined) wanted.add(index);
    }
  return [...wanted].sort((a, b) => a - b);
}

function inputNamed(
  plan: Plan,
  numbers: ReadonlyMap<string, number | undefined>,
  way: Way,
  name: string,
  spelled: (way: Way) => string,
): number | undefined {
  const part = plan.parts.get(partOfKey(name));
  const own = part && wayOf(part);
  if (part === undefined || own === undefined) {
    const fitting = [...plan.parts.values()].filter((p) => wayOf(p) === way);
    const what =
      part === undefined
        ? `no part is called "${name}"`
        : `${part.name} is ${article(part.kind)}, which is not moved by hand`;
    throw new NotInPlan(
      `${spelled(way)}: ${what}${hint(
        name,
        fitting.map((p) => p.name),
      )}`,
    );
  }
  if (own !== way)
    throw new NotInPlan(
      `${spelled(way)}: ${part.name} is ${article(part.kind)}; say ${spelled(own)} ${name}`,
    );
  if (part.kind === 'selector') return selectorInput(numbers, part, name, spelled(way));
  if (name !== part.name)
    throw new NotInPlan(`${spelled(way)}: found "${name}", expected ${part.name} alone`);
  return numbers.get(name);
}

const wayOf = ({ kind }: Part): Way | undefined => (kind in WAY ? WAY[kind as keyof typeof WAY] : undefined);

/** The resting position is a position too, though no input stands for it. */
function selectorInput(
  numbers: ReadonlyMap<string, number | undefined>,
  part: Extract<Part, { kind: 'selector' }>,
  name: string,
  way: string,
): number | undefined {
  if (!numbers.has(name)) {
    const positions = part.positions.map((p) => `${part.name}.${p}`);
    throw new NotInPlan(`${way}: ${part.name} has the positions ${positions.join(', ')}; found "${name}"`);
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
    } else if (wayOf(part) !== undefined) numbers.set(part.name, next++);
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
    return [`${part} ${WORD[kind as keyof typeof WORD]}`];
  });
}

const WORD = { gate: 'open', switch: 'on', button: 'pressed', cutout: 'tripped' } as const;

/** A terminal as `PART.TERMINAL`, with any mark that it carries, or a joint by its name. Throws `NotInPlan`. */
export function terminalNamed(plan: Plan, text: string): Probe {
  const dot = text.indexOf('.');
  const name = dot < 0 ? text : text.slice(0, dot);
  const part = plan.parts.get(name);
  if (part === undefined) throw new NotInPlan(`no part is called "${name}"${hint(name, plan.parts.keys())}`);
  const marks = plan.terminals.get(name)!;
  if (dot < 0 && part.kind !== 'joint')
    throw new NotInPlan(`name a terminal of ${name}: ${marks.names.map((t) => `${name}.${t}`).join(', ')}`);
  const mark = dot < 0 ? '' : text.slice(dot + 1);
  const terminal = marks.find(mark);
  if (terminal === undefined)
    throw new NotInPlan(
      `${name} has no terminal "${mark}"${hint(mark, marks.marks()) || '.'} It has ${marks.names.join(', ') || 'one only, its bare name'}`,
    );
  return { part: name, terminal };
}
