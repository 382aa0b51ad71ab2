/** What a plan has to read back as with a gate more or less: one text a part, run and intent, in no order. */
import type { Plan, Run } from '../plan/plan.ts';
import { metresText } from './add-core.ts';
import type { Growth } from './growth.ts';

const flat = (value: unknown) =>
  JSON.stringify(value, (key, inner: unknown) => {
    if (key === 'at' || key === 'where') return undefined;
    return inner instanceof Map ? [...inner] : inner;
  });

type Ends = readonly (readonly [colour: string, marked: string | null, a: string, b: string])[];

const runLine = ({ cable, link, route, slack }: Run, metres: number | undefined, ends: Ends) =>
  `run ${flat([cable, link, route, slack, metres === undefined ? null : metresText(metres), ends])}`;

const endsOf = (run: Run): Ends =>
  run.cores.map(({ colour, marked, a, b }) => [colour, marked ?? null, a.written, b.written] as const);

type Inputs = readonly (readonly { readonly part: string; readonly position?: string }[])[];

const inputsText = (list: Inputs) =>
  list
    .map((all) => all.map(({ part, position }) => `${part} ${position ?? ''}`).join('+'))
    .sort()
    .join();

/** Every list of an intent through `change`. */
function intentLines(plan: Plan, change: (list: Inputs) => Inputs): string[] {
  const single = (list: Inputs[number]) => list.map((input) => [input]);
  const line = (words: readonly unknown[], lists: readonly Inputs[]) =>
    `intent ${flat(words)} ${lists.map((list) => inputsText(change(list))).join(' | ')}`;
  const loads = (plan.intents ?? []).map((i) =>
    line(
      [i.target, i.ifSupplyFails, i.runOn, i.sameAs],
      [i.runsOn, single(i.blockedBy), single(i.staysOnAfter), single(i.stoppedBy)],
    ),
  );
  const lamps = (plan.lampIntents ?? []).map(({ target, litWhen }) =>
    typeof litWhen === 'string' || 'runs' in litWhen
      ? `lamp ${target} ${flat([litWhen])}`
      : line([target], [litWhen]),
  );
  return [...loads, ...lamps];
}

const headLine = ({ format, title, practice, practiceFrom, ambient }: Plan) =>
  flat([format, title, practice, practiceFrom, ambient]);

/** A plan as it reads. */
export function linesOf(plan: Plan): string[] {
  return [
    headLine(plan),
    ...[...plan.parts].map(([name, part]) => `part ${name} ${flat(part)}`),
    ...plan.runs.map((run) => runLine(run, run.length, endsOf(run))),
    ...intentLines(plan, (list) => list),
  ].sort();
}

/** A plan as it is to read after the growth. */
export function linesAfter(plan: Plan, growth: Growth): string[] {
  const { gate, like, fresh, ends, lengths, gone } = growth;
  const parts = [...plan.parts].filter(([name]) => growth.do === 'add' || name !== gate);
  const model = like === undefined ? undefined : plan.parts.get(like);
  if (model !== undefined) parts.push([gate, { ...model, name: gate }]);
  const moved = new Map(ends.map(({ run, core, end, to }) => [`${run} ${core} ${end}`, to]));
  const stays = plan.runs.filter((run) => !gone.includes(run.index));
  const runs = stays.map((run) => {
    const after = endsOf(run).map(
      ([colour, marked, a, b], core) =>
        [
          colour,
          marked,
          moved.get(`${run.index} ${core} a`) ?? a,
          moved.get(`${run.index} ${core} b`) ?? b,
        ] as const,
    );
    return runLine(run, lengths.find((l) => l.run === run.index)?.metres ?? run.length, after);
  });
  if (fresh !== undefined) {
    const run = plan.runs[fresh.like]!;
    const marked = (colour: string) => run.cores.find((core) => core.colour === colour)?.marked ?? null;
    runs.push(
      runLine(
        run,
        fresh.length.metres,
        fresh.cores.map(({ colour, a, b }) => [colour, marked(colour), a, b]),
      ),
    );
  }
  return [
    headLine(plan),
    ...parts.map(([name, part]) => `part ${name} ${flat(part)}`),
    ...runs,
    ...intentLines(plan, (list) => listAfter(list, growth)),
  ].sort();
}

/** A list of inputs with the gate beside the one it is like, or without it. */
function listAfter(list: Inputs, growth: Growth): Inputs {
  if (growth.do === 'remove') return list.filter((all) => all.every(({ part }) => part !== growth.gate));
  const copies = list
    .filter((all) => all.some(({ part }) => part === growth.like))
    .map((all) => all.map((input) => (input.part === growth.like ? { part: growth.gate } : input)));
  return [...list, ...copies];
}
