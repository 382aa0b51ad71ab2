/** `pullin read PLAN [A B]` */
import type { Command } from 'commander';
import type { Probe } from '../bench/read.ts';
import { nearest } from '../plan/nearest.ts';
import type { Part, Plan } from '../plan/plan.ts';
import { loadPlan } from './input.ts';
import { type Session, wantsUnicode, widthFor } from './io.ts';
import { Problem } from './status.ts';

interface ReadFlags {
  readonly open?: readonly string[];
  readonly on?: readonly string[];
  readonly press?: readonly string[];
  readonly trip?: readonly string[];
  readonly dead?: boolean;
  readonly json?: boolean;
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
function collect(text: string, before: readonly string[] = []): string[] {
  return [
    ...before,
    ...text
      .split(',')
      .map((name) => name.trim())
      .filter((name) => name !== ''),
  ];
}

const hint = (found: string, names: Iterable<string>): string => {
  const near = nearest(found, names);
  return near === undefined ? '' : `; did you mean ${near}?`;
};

/** Numbers of the inputs named, in the order in which the circuit lists them. */
function inputsOf(plan: Plan, flags: ReadFlags): number[] {
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
      const part = name.split('.')[0]!;
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
  const part = plan.parts.get(name.split('.')[0]!);
  const own = part && part.kind in OPTION ? OPTION[part.kind as keyof typeof OPTION] : undefined;
  if (part === undefined || own === undefined) {
    const fitting = [...plan.parts.values()].filter(
      (p) => p.kind in OPTION && OPTION[p.kind as keyof typeof OPTION] === option,
    );
    const what =
      part === undefined
        ? `no part is called "${name}"`
        : `${part.name} is a ${part.kind}, which is not moved by hand`;
    throw new Problem(
      `${option}: ${what}${hint(
        name,
        fitting.map((p) => p.name),
      )}`,
    );
  }
  if (own !== option) throw new Problem(`${option}: ${part.name} is a ${part.kind}; say ${own} ${name}`);
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

/** `PART.TERMINAL` with any mark the terminal carries, or a joint's name. */
function probeOf(plan: Plan, text: string): Probe {
  const dot = text.indexOf('.');
  const name = dot < 0 ? text : text.slice(0, dot);
  const part = plan.parts.get(name);
  if (part === undefined) throw new Problem(`no part is called "${name}"${hint(name, plan.parts.keys())}`);
  const marks = plan.terminals.get(name)!;
  if (dot < 0 && part.kind !== 'joint')
    throw new Problem(`name a terminal of ${name}: ${marks.names.map((t) => `${name}.${t}`).join(', ')}`);
  const mark = dot < 0 ? '' : text.slice(dot + 1);
  const terminal = marks.find(mark);
  if (terminal === undefined)
    throw new Problem(
      `${name} has no terminal "${mark}"${hint(mark, marks.marks())} It has ${marks.names.join(', ') || 'one only, its bare name'}`,
    );
  return { part: name, terminal };
}

async function run(
  file: string,
  a: string | undefined,
  b: string | undefined,
  flags: ReadFlags,
  session: Session,
): Promise<void> {
  if (a !== undefined && b === undefined) throw new Problem('name two terminals, or none for a table of all');
  if (flags.dead && b === undefined) throw new Problem('--dead needs the two terminals the meter is on');
  const plan = await loadPlan(file, session);
  if (plan === undefined) return;
  const moved = inputsOf(plan, flags);
  const reading = await session.stages.readMeter(plan, {
    moved,
    dead: flags.dead === true,
    ...(a !== undefined && b !== undefined ? { between: [probeOf(plan, a), probeOf(plan, b)] } : {}),
  });
  if (flags.json) return session.out.write(`${JSON.stringify(reading, null, 2)}\n`);
  const { renderReading } = await import('../report/reading.ts');
  const { stdout, env } = session.io;
  session.out.write(renderReading(reading, widthFor(undefined, stdout), wantsUnicode(stdout, env)));
}

export function addRead(program: Command, session: Session): void {
  program
    .command('read')
    .summary('tell what a meter reads between two terminals')
    .description(
      'Tells what a meter between terminals A and B reads in one position of gates and switches: volts, or with --dead ohms. Without A and B: the volts of every conductor and the current in every core. Figures as printed on the parts, everything at 20 °C.',
    )
    .argument('<plan>', 'plan file; - is standard input')
    .argument('[a]', 'terminal of the red probe, such as K1.A1')
    .argument('[b]', 'terminal of the black probe')
    .option('--open <gates>', 'gates that are open, separated by commas', collect)
    .option('--on <switches>', 'switches that are on, and selector positions such as mode.hand', collect)
    .option('--press <buttons>', 'buttons held pressed', collect)
    .option('--trip <cutouts>', 'cut-outs that have tripped', collect)
    .option('--dead', 'power off: supplies taken off, the meter on ohms')
    .option('--json', 'print the reading as JSON')
    .addHelpText(
      'after',
      '\nWhat is not named stands at rest. A reading is what the plan leads to expect; a\nreal one may differ by the tolerances that "pullin check" counts with.',
    )
    .action((file: string, a: string | undefined, b: string | undefined, flags: ReadFlags) =>
      run(file, a, b, flags, session),
    );
}
