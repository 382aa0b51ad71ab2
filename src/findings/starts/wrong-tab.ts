import { endKey } from '../../circuit/nets.ts';
import type { Verified } from '../../logic/verify.ts';
import type { Core, GatePart, Part, Plan } from '../../plan/plan.ts';
import type { Study } from '../../study/study.ts';
import { coresOf } from '../../text/core-names.ts';
import { COMMON_PRACTICE, finding } from '../finding.ts';
import type { Finding } from '../report-model.ts';

interface Move {
  readonly part: string;
  readonly from: string;
  readonly to: string;
  readonly ends: readonly { readonly core: Core; readonly index: number; readonly end: 'a' | 'b' }[];
}

const MOST_TRIES = 60;
const SHOWS: ReadonlySet<string> = new Set(['lamp', 'led', 'resistor']);

/**
 * `gate-on-wrong-tab`: one core (or all the cores of one tab) moved between NO and NC makes every load do what is
 * meant. Only switches where this could be the mistake are tried, the odd ones out first; each is proved by solving
 * the circuit anew. Where several switches are wrong, all the odd ones are tried together.
 */
export function findWrongTabs(study: Study): Finding[] {
  const v = study.verified;
  if (!v || (v.deviations.length === 0 && v.chatter === 0 && v.races.length === 0)) return [];
  if (startsUnnamed(study)) return [];
  const moves = candidates(study.plan, isGate);
  const size = study.circuit.inputs.length;
  const tries = Math.max(6, Math.min(MOST_TRIES, Math.floor(6000 / Math.max(1, size))));
  for (const move of moves.slice(0, tries))
    if (mends(study, moveEnds([move]))) return [report(study, move, true)];
  // Where several cores sit on one tab, only all of them together count; one alone would be told twice.
  const odd = moves.filter((x) => isOdd(study.plan, x) && !moves.some((m) => isPartOf(x, m)));
  if (odd.length < 2 || odd.length > 40 || !mends(study, moveEnds(odd))) return [];
  const needed = odd.filter((m) => odd.length <= 12 && !mends(study, moveEnds(odd.filter((x) => x !== m))));
  return (needed.length > 0 ? needed : odd).map((m) => report(study, m, false));
}

function isPartOf(x: Move, whole: Move): boolean {
  return whole.part === x.part && whole.from === x.from && whole.ends.length > x.ends.length;
}

/** All that is wrong is that gates which no intent names start something: the intent forgot them. */
function startsUnnamed(study: Study): boolean {
  const { plan, circuit, verified: v } = study;
  if (!v || plan.intents === undefined || v.deviations.length === 0) return false;
  const named = new Set(plan.intents.flatMap((i) => i.runsOn.flat().map((r) => r.part)));
  return v.deviations.every((d) => {
    const moved = d.steps.at(-1)!.map((i) => circuit.inputs[i]!);
    return !d.expected && moved.some((i) => i.kind === 'gate' && !named.has(i.part));
  });
}

function moveEnds(moves: readonly Move[]): Map<string, string> {
  const map = new Map<string, string>();
  for (const m of moves)
    for (const e of m.ends) map.set(endKey(e.core.run, e.index, e.end), `${m.part}.${m.to}`);
  return map;
}

/** The diode that, turned round, makes every load do what is meant; undefined when there is none. */
export function reversedDiode(study: Study): string | undefined {
  const v = study.verified;
  if (!v || v.deviations.length === 0) return undefined;
  const diodes = study.circuit.diodes.filter((d) => !d.load && !d.builtIn).slice(0, MOST_TRIES);
  return diodes.find((d) => mends(study, turned(study.plan, d.part)))?.part;
}

function turned(plan: Plan, diode: string): Map<string, string> {
  const map = new Map<string, string>();
  for (const run of plan.runs)
    run.cores.forEach((core, index) => {
      for (const end of ['a', 'b'] as const)
        if (core[end].part === diode)
          map.set(endKey(run.index, index, end), `${diode}.${core[end].terminal === 'A' ? 'K' : 'A'}`);
    });
  return map;
}

function mends(study: Study, map: ReadonlyMap<string, string>): boolean {
  const after = study.rewired(map).verified;
  if (!after) return false;
  return after.deviations.length === 0 && after.chatter === 0 && after.races.length === 0 && !anyShort(after);
}

function anyShort(after: Verified): boolean {
  return after.circuit.sources.some((s) =>
    after.places.some(
      (p) => after.model.bdd.and(after.settler.at(after.model.shorted[s.index]!, p.mode), p.states) !== 0,
    ),
  );
}

function candidates(plan: Plan, wanted: (part: Part | undefined) => boolean): Move[] {
  const ends = new Map<string, Move['ends'][number][]>();
  for (const run of plan.runs)
    run.cores.forEach((core, index) => {
      for (const end of ['a', 'b'] as const) {
        const ref = core[end];
        if ((ref.terminal !== 'NO' && ref.terminal !== 'NC') || !wanted(plan.parts.get(ref.part))) continue;
        // A lamp across a switch is no core on a wrong tab.
        if (SHOWS.has(plan.parts.get(core[end === 'a' ? 'b' : 'a'].part)?.kind ?? '')) continue;
        const key = `${ref.part}.${ref.terminal}`;
        ends.set(key, [...(ends.get(key) ?? []), { core, index, end }]);
      }
    });
  const moves: Move[] = [];
  for (const [key, list] of ends) {
    const dot = key.lastIndexOf('.');
    const part = key.slice(0, dot);
    const from = key.slice(dot + 1);
    const to = from === 'NO' ? 'NC' : 'NO';
    const owner = plan.parts.get(part);
    if (owner && 'tabs' in owner && !owner.tabs.includes(to as 'NO')) continue;
    for (const e of list) moves.push({ part, from, to, ends: [e] });
    if (list.length > 1) moves.push({ part, from, to, ends: list });
  }
  // Switches with both tabs in use, or on the other tab than their mounting asks for, come first.
  const both = new Set(moves.map((m) => m.part).filter((p) => ends.has(`${p}.NO`) && ends.has(`${p}.NC`)));
  const rank = (m: Move) => (isOdd(plan, m) ? 0 : 2) + (both.has(m.part) ? 0 : 1);
  return moves
    .map((m, i) => ({ m, i }))
    .sort((x, y) => rank(x.m) - rank(y.m) || x.i - y.i)
    .map(({ m }) => m);
}

function isGate(part: Part | undefined): boolean {
  return part?.kind === 'gate';
}

/** The one tab of a hand switch, button or cut-out that, moved to its fellow, makes every load do what is meant. */
export function wrongTabOfOther(study: Study): { part: string; from: string; to: string } | undefined {
  const v = study.verified;
  if (!v || (v.deviations.length === 0 && v.chatter === 0)) return undefined;
  const moves = candidates(
    study.plan,
    (p) => p?.kind === 'switch' || p?.kind === 'button' || p?.kind === 'cutout',
  );
  return moves.slice(0, 24).find((m) => mends(study, moveEnds([m])));
}

/** The move takes a core away from the tab that the part's use does not ask for. */
function isOdd(plan: Plan, move: Move): boolean {
  const part = plan.parts.get(move.part);
  return part?.kind === 'gate' && move.from === ((part as GatePart).pressedWhen === 'open' ? 'NC' : 'NO');
}

function report(study: Study, move: Move, alone: boolean): Finding {
  const { plan } = study;
  const cores = coresOf(move.ends.map((e) => e.core.colour));
  const what = `the ${cores} ${move.ends.length > 1 ? 'sit' : 'sits'}`;
  const part = plan.parts.get(move.part)!;
  const first = move.ends[0]!;
  return finding(plan, {
    id: 'gate-on-wrong-tab',
    severity: 'fault',
    question: 2,
    parts: [move.part],
    terminals: [`${move.part}.${move.from}`, `${move.part}.${move.to}`],
    at: first.core[first.end].at,
    message: `${part.kind === 'gate' ? 'gate ' : ''}${move.part}: ${what} on ${move.from} and ${move.ends.length > 1 ? 'belong' : 'belongs'} on ${move.to}`,
    why: alone
      ? `With that one change every load does what is meant in all states; ${tabWords(part, move.from)}.`
      : `With this change and the like ones named beside it every load does what is meant; ${tabWords(part, move.from)}.`,
    fix: `Move the ${cores} from ${move.part}.${move.from} to ${move.part}.${move.to}.`,
    basis: `${COMMON_PRACTICE}; repair proved by solving the circuit with the core moved`,
    cause: { what: 'tab', terminals: [`${move.part}.${move.from}`, `${move.part}.${move.to}`] },
  });
}

function tabWords(part: Part, tab: string): string {
  const pressed = part.kind === 'gate' && part.pressedWhen === 'shut' ? 'shut' : 'open';
  if (part.kind !== 'gate')
    return `${tab} is joined to COM ${tab === 'NO' ? 'when it is worked' : 'at rest'}`;
  const closed = (tab === 'NO') === (pressed === 'open') ? 'open' : 'shut';
  return `${tab} is joined to COM while this gate is ${closed}`;
}
