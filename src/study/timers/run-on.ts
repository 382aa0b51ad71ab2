/** Whether loads go on as long as they are asked to once the last gate is shut, and stop at once when they are blocked. */
import type { Relay } from '../../circuit/circuit.ts';
import { timersOf } from '../../circuit/positions.ts';
import { FALSE, type Fn } from '../../logic/bdd.ts';
import { relayVariable } from '../../logic/conduction.ts';
import type { Wanted } from '../../logic/intent.ts';
import type { Mode } from '../../logic/memory.ts';
import { type Span, type Start, Timed } from '../../logic/timed.ts';
import { type Moved, movedIn, running, type Verified } from '../../logic/verify.ts';
import { perStudy } from '../per-study.ts';

/** Why a load does not go on. */
type ShortCause =
  /** nothing in the plan is late to let go */
  | { readonly why: 'no-timer' }
  /** the timer pulls in late, and lets go at once */
  | { readonly why: 'on-delay'; readonly timer: Relay }
  /** its own supply goes with the gates */
  | { readonly why: 'supply-lost'; readonly timer: Relay }
  | { readonly why: 'too-short'; readonly timer: Relay }
  /** it stays in, and something else breaks the load's way */
  | { readonly why: 'elsewhere'; readonly timer: Relay };

/** A load that stops before its time is up. */
interface Short {
  readonly wanted: Wanted;
  /** s that it goes on for, at worst */
  readonly seconds: number;
  /** inputs away from rest while it runs, and once the last entry has gone back */
  readonly from: Moved;
  readonly moved: Moved;
  readonly cause: ShortCause;
}

/** A load that goes on for a while after something blocks it. */
interface Late {
  readonly wanted: Wanted;
  readonly seconds: number;
  readonly from: Moved;
  readonly moved: Moved;
}

/** Loads with a run-on that fall short of it; empty where none asks for one. Throws Undecided. */
export const shortRunOns = perStudy((study): readonly Short[] => {
  const { verified: v } = study;
  const asked = v?.intents.wanted.filter((w) => w.runOn > 0) ?? [];
  if (!v || asked.length === 0) return [];
  const timed = new Timed(v);
  return asked.flatMap((wanted) => firstShort(timed, wanted) ?? []);
});

/** Loads that a blocking input stops late; those that it never stops are another matter. Throws Undecided. */
export const lateBlocks = perStudy((study): readonly Late[] => {
  const { verified: v } = study;
  if (!v || timersOf(v.circuit.relays).length === 0) return [];
  const timed = new Timed(v);
  return v.intents.wanted.flatMap((wanted) => firstLate(timed, wanted) ?? []);
});

/** Timers that time from a supply which goes when the last entry of some intent goes back, so that they cannot run on. */
export const cutOffTimers = perStudy((study): readonly Relay[] => {
  const { verified: v } = study;
  const own = v ? timersOf(v.circuit.relays).filter((t) => t.delay?.on === 'out' && !t.delay.stored) : [];
  if (!v || own.length === 0) return [];
  const { bdd } = v.model;
  // A stop takes the supply away as well, and then nothing is to run on.
  const blocked = bdd.any(v.intents.wanted.map((w) => w.blocked));
  return own.filter(({ index }) => {
    const lost = v.model.sensed[index]!.lost ?? FALSE;
    const freely = v.places.map((p) => ({ mode: p.mode, states: bdd.diff(p.states, blocked) }));
    // Its supply comes and goes with what starts the load: lost somewhere, and not everywhere.
    return (
      freely.some((p) => bdd.and(v.settler.at(lost, p.mode), p.states) !== FALSE) &&
      freely.some((p) => bdd.diff(p.states, v.settler.at(lost, p.mode)) !== FALSE)
    );
  });
});

/** States in which some entry calls for the load and nothing blocks it. */
const called = ({ model: { bdd } }: Verified, w: Wanted): Fn =>
  bdd.diff(bdd.any(w.entries.map((e) => e.works)), w.blocked);

/** Positions in which the load runs since it is called for. */
function runningStarts(timed: Timed, wanted: Wanted): Start[] {
  const { v } = timed;
  const { bdd } = v.model;
  const run = running(v.model, wanted.target);
  return timed.starts().flatMap(({ mode, states }) => {
    const here = bdd.every([states, timed.at(run, mode), called(v, wanted)]);
    return here === FALSE ? [] : [{ mode, states: here }];
  });
}

function firstShort(timed: Timed, wanted: Wanted): Short | undefined {
  const { v } = timed;
  const { bdd, valid } = v.model;
  const run = running(v.model, wanted.target);
  const back = bdd.every([
    valid,
    bdd.not(bdd.any(wanted.entries.map((e) => e.works))),
    bdd.not(wanted.blocked),
  ]);
  let worst: { start: Start; span: Span; states: Fn } | undefined;
  for (const start of runningStarts(timed, wanted))
    for (const span of timed.after(start.mode, back, wanted.runOn)) {
      if (span.since >= wanted.runOn || (worst && worst.span.since <= span.since)) continue;
      const states = bdd.diff(span.states, timed.at(run, span.mode));
      if (states !== FALSE) worst = { start, span, states };
    }
  if (!worst) return undefined;
  const moved = movedIn(v.circuit, bdd, worst.states) ?? [];
  return {
    wanted,
    seconds: worst.span.since,
    from: movedIn(v.circuit, bdd, worst.start.states) ?? [],
    moved,
    cause: causeOf(timed, worst.start.mode, worst.span, worst.states),
  };
}

/** What the timers do between the position before and the moment in which the load stops. */
function causeOf(timed: Timed, before: Mode, span: Span, states: Fn): ShortCause {
  const { bdd, sensed } = timed.v.model;
  const timers = timersOf(timed.v.circuit.relays);
  const isIn = (t: Relay, mode: Mode) =>
    bdd.and(states, timed.at(bdd.variable(relayVariable(t.index)), mode));
  const was = timers.filter((t) => timed.at(bdd.variable(relayVariable(t.index)), before) !== FALSE);
  const offDelays = was.filter((t) => t.delay!.on === 'out');
  const gone = offDelays.find((t) => isIn(t, span.mode) === FALSE);
  if (gone && span.since > 0) return { why: 'too-short', timer: gone };
  const cut = offDelays.find((t) => {
    const { lost } = sensed[t.index]!;
    return lost !== undefined && bdd.and(states, timed.at(lost, span.mode)) !== FALSE;
  });
  if (cut) return { why: 'supply-lost', timer: cut };
  const held = offDelays.find((t) => isIn(t, span.mode) !== FALSE);
  if (held) return { why: 'elsewhere', timer: held };
  const late = was.find((t) => t.delay!.on === 'in');
  if (late) return { why: 'on-delay', timer: late };
  const none = timed.v.circuit.relays.find((r) => r.delay?.on === 'out' && r.delay.seconds === 0);
  return none ? { why: 'too-short', timer: none } : { why: 'no-timer' };
}

/** s after which every timer has run out, be each started by the one before it. */
const allOut = (v: Verified): number =>
  timersOf(v.circuit.relays).reduce((sum, t) => sum + t.delay!.seconds, 0);

function firstLate(timed: Timed, wanted: Wanted): Late | undefined {
  const { v } = timed;
  const { bdd, valid } = v.model;
  const blocked = bdd.and(valid, wanted.blocked);
  if (blocked === FALSE) return undefined;
  const run = running(v.model, wanted.target);
  let worst: Late | undefined;
  for (const start of runningStarts(timed, wanted))
    for (const span of timed.after(start.mode, blocked, allOut(v))) {
      const states = bdd.and(span.states, timed.at(run, span.mode));
      if (states === FALSE || !Number.isFinite(span.until) || span.until <= (worst?.seconds ?? 0)) continue;
      const moved = movedIn(v.circuit, bdd, states) ?? [];
      worst = { wanted, seconds: span.until, from: movedIn(v.circuit, bdd, start.states) ?? [], moved };
    }
  return worst;
}
