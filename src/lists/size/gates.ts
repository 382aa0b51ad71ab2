/** How many gates more a loop allows, each behind the last, on the same cable. */
import { effort, MOST_EFFORT } from '../../circuit/effort.ts';
import { gateCables } from '../../edit/gate-cables.ts';
import { addGate } from '../../edit/growth.ts';
import { Refusal } from '../../edit/text-changes.ts';
import { lengthUnit } from '../../plan/length-unit.ts';
import type { GatePart } from '../../plan/part-types.ts';
import type { InputRef, Intent, LampIntent, Plan, Run, TerminalRef } from '../../plan/plan.ts';
import { splitTerminalKey } from '../../plan/terminal-key.ts';
import { entryBehind } from '../../repair/remedies/put.ts';
import { figureOfLength } from '../../text/lengths.ts';
import { farGate, isOwn, loopGauges, metresTo } from './loop-way.ts';
import type { Section, SizeFigure } from './size-model.ts';
import { tight } from './tight.ts';
import type { Trial } from './trial.ts';

/** Gates up to which more are tried where one or two coils are fed; of more coils, each takes its time for every gate. */
const MOST_GATES = 100;
const LEAST_TRIED = 10;
const FEW_COILS = 2;

/** Plans that are judged until the number is found, about; and what all of them may cost. */
const JUDGED = 20;
const WORTH = 5 * MOST_EFFORT;

/**
 * How many more are tried: fewer where a few more already take so much work that many would take too long, as where gates
 * call several coils and every combination counts. The work grows with the square of the gates at the most.
 */
function mostTried(trial: Trial, withMore: (gates: number) => Plan): number {
  const { fedCoils, plan } = trial.study;
  const coils = fedCoils.length;
  const most = coils <= FEW_COILS ? MOST_GATES : Math.max(LEAST_TRIED, Math.round(MOST_GATES / coils));
  const before = effort();
  trial.first(trial.with(withMore(LEAST_TRIED), true), QUESTIONS);
  const own = [...plan.parts.values()].filter((p) => p.kind === 'gate').length;
  const growth = Math.sqrt(WORTH / (JUDGED * Math.max(1, effort() - before)));
  return Math.min(most, Math.max(LEAST_TRIED, Math.floor(growth * (own + LEAST_TRIED)) - own));
}
/** Questions that one gate more bears on. */
const QUESTIONS = [2, 3, 4, 5] as const;
/** Gates that are tried as the last, those farthest away first. */
const LAST = 5;

/** How one gate more hangs on the one before it. */
interface Pattern {
  readonly like: GatePart;
  /** run whose cable it takes */
  readonly run: Run;
  readonly metres: number;
  /** m to the gate farthest away */
  readonly far: number;
  readonly cores: readonly { readonly colour: string; readonly a: string; readonly b: string }[];
  /** what a name of a new gate begins with */
  readonly stem: string;
}

/** Mean length of the runs of that cable that end at gates, m. */
function meanLength({ runs, parts }: Plan, like: Run): number {
  const isGate = (name: string) => parts.get(name)?.kind === 'gate';
  const own = runs.filter(
    (r) =>
      r.length !== undefined &&
      r.cable?.gauge === like.cable?.gauge &&
      r.cores.some((c) => isGate(c.a.part) || isGate(c.b.part)),
  );
  return own.length === 0 ? 0 : own.reduce((sum, r) => sum + r.length!, 0) / own.length;
}

function freeStem(plan: Plan): string {
  for (let n = 1; ; n++) {
    const stem = n === 1 ? 'more-' : `more-${n}-`;
    if (![...plan.parts.keys()].some((name) => name.toLowerCase().startsWith(stem))) return stem;
  }
}

/** From the gates farthest away, the first that another can be hung on. */
function patternOf({ study }: Trial): Pattern | { readonly untold: string } {
  const { plan, electrics: own } = study;
  const far = farGate(study);
  if ('untold' in far) return far;
  if (own === undefined) return { untold: 'no coil is fed by a loop of its own' };
  const { state } = far;
  const gates = state.rows.flatMap((row) => {
    const part = row.gate === undefined ? undefined : plan.parts.get(row.gate);
    const metres = part?.kind === 'gate' ? (metresTo(own, state, row) ?? 0) : undefined;
    return metres === undefined ? [] : [{ part: part as GatePart, metres }];
  });
  const order = gates.sort((a, b) => b.metres - a.metres).slice(0, LAST);
  let why = 'no gate was found at the end of a cable that another could hang on';
  const stem = freeStem(plan);
  for (const { part } of order) {
    try {
      // Where the cable goes on, another gate would cut it in two.
      if (gateCables(plan, part.name).onward.length === 1) continue;
      const length = { text: '1 m', metres: 1 };
      const { fresh } = addGate(plan, { name: stem + 1, after: part.name, length, onward: undefined });
      const run = fresh && plan.runs[fresh.like];
      if (fresh === undefined || run === undefined) continue;
      const metres = meanLength(plan, run);
      return { like: part, run, metres, far: far.metres, cores: fresh.cores, stem };
    } catch (error) {
      if (!(error instanceof Refusal)) throw error;
      why = error.message;
    }
  }
  return { untold: why };
}

/** Inputs with as many copies of one of them behind it. */
function copied(list: readonly InputRef[], like: string, names: readonly string[]): InputRef[] {
  const own = list.find((ref) => ref.part === like);
  return own === undefined ? [...list] : [...list, ...names.map((part) => ({ ...own, part }))];
}

function copiedEntries(
  list: readonly (readonly InputRef[])[],
  like: string,
  names: readonly string[],
): (readonly InputRef[])[] {
  const own = list.find((entry) => entry.some((ref) => ref.part === like));
  if (own === undefined) return [...list];
  const copy = (part: string) => own.map((ref) => (ref.part === like ? { ...ref, part } : ref));
  return [...list, ...names.map(copy)];
}

function intentWith(intent: Intent, like: string, names: readonly string[]): Intent {
  return {
    ...intent,
    runsOn: copiedEntries(intent.runsOn, like, names),
    blockedBy: copied(intent.blockedBy, like, names),
    staysOnAfter: copied(intent.staysOnAfter, like, names),
    stoppedBy: copied(intent.stoppedBy, like, names),
  };
}

function lampWith(intent: LampIntent, like: string, names: readonly string[]): LampIntent {
  const { litWhen } = intent;
  return typeof litWhen === 'string' || 'runs' in litWhen
    ? intent
    : { ...intent, litWhen: copiedEntries(litWhen, like, names) };
}

/** The plan with so many gates more, each on the cable behind the one before, and named in every intent with the last. */
function withGates(plan: Plan, { like, run, metres, cores, stem }: Pattern, count: number): Plan {
  const names = Array.from({ length: count }, (_, i) => `${stem}${i + 1}`);
  const own = plan.terminals.get(like.name)!;
  const end = (key: string, before: string, name: string): TerminalRef => {
    const { part, terminal: mark } = splitTerminalKey(key);
    const gate = part === like.name || part === `${stem}1`;
    const moved = !gate ? part : part === like.name ? before : name;
    const marks = gate ? own : plan.terminals.get(part)!;
    const terminal = marks.find(mark) ?? mark;
    return { part: moved, terminal, written: terminal === '' ? moved : `${moved}.${terminal}`, at: like.at };
  };
  const first = entryBehind(plan.runs);
  const { name: _, piece: _piece, pieces: _pieces, ...laid } = run;
  const runs = names.map((name, i): Run => {
    const index = plan.runs.length + i;
    const before = i === 0 ? like.name : names[i - 1]!;
    return {
      ...{ ...laid, index, entry: first + i, length: metres },
      cores: cores.map(({ colour, a, b }) => {
        const model = run.cores.find((core) => core.colour === colour) ?? run.cores[0]!;
        return { ...model, run: index, colour, a: end(a, before, name), b: end(b, before, name) };
      }),
    };
  });
  return {
    ...plan,
    parts: new Map([...plan.parts, ...names.map((name) => [name, { ...like, name }] as const)]),
    terminals: new Map([...plan.terminals, ...names.map((name) => [name, own] as const)]),
    runs: [...plan.runs, ...runs],
    ...(plan.intents && { intents: plan.intents.map((i) => intentWith(i, like.name, names)) }),
    ...(plan.lampIntents && { lampIntents: plan.lampIntents.map((i) => lampWith(i, like.name, names)) }),
  };
}

/** m to which the farthest gate may go with the wire of the plan. */
function ownReach(trial: Trial, { figures }: Section): number | undefined {
  const own = loopGauges(trial.study).find((size) => isOwn(trial.study, size));
  return figures.find((f) => f.of === own?.gauge)?.value ?? undefined;
}

/** How many gates more, at the far end, on the same cable and as far apart as gates are on average. */
export function sizeGates(trial: Trial, reach: Section): Section {
  const pattern = patternOf(trial);
  if ('untold' in pattern) return { figures: [], untold: [pattern.untold] };
  const { plan } = trial.study;
  const most = mostTried(trial, (gates) => withGates(plan, pattern, gates));
  const gatesAt = (i: number) => most - i;
  // On a cable from gate to gate, the wire to the last grows with each; elsewhere this is a first guess as good as any.
  const room = (ownReach(trial, reach) ?? pattern.far) - pattern.far;
  const likely = pattern.metres > 0 ? Math.floor(room / pattern.metres + 1e-6) : 0;
  const found = tight(trial, {
    ...{ count: most + 1, guess: most - likely, questions: QUESTIONS },
    ...{ anew: true, further: true },
    planAt: (i) => withGates(plan, pattern, gatesAt(i)),
    wordsAt: (i) => `${gatesAt(i)} more`,
  });
  if ('untold' in found) return { figures: [], untold: [found.untold] };
  const value = gatesAt(found.index);
  const apart = figureOfLength(pattern.metres, lengthUnit(plan));
  const least = found.limit === null ? 'at least ' : '';
  const untried = found.limit === null ? ' (beyond that none was tried)' : '';
  const chained = pattern.cores.some((c) => splitTerminalKey(c.a).part === pattern.like.name);
  const laid = chained ? 'behind the one before' : `from where that of ${pattern.like.name} comes`;
  const figure: SizeFigure = {
    ...{
      of: `${chained ? 'behind' : 'beside'} ${pattern.like.name}`,
      parts: [pattern.like.name],
      runs: [],
      what: 'gates',
      unit: '',
    },
    value,
    words: `${least}${value} more${untried}, each with ${apart} of the same cable ${laid}`,
    cautions: found.cautions,
    limit: found.limit,
    next: found.next,
  };
  return { figures: [figure], untold: [] };
}
