import { sayMoved } from '../../circuit/input-words.ts';
import { FALSE, type Fn } from '../../logic/bdd.ts';
import { baseState, entryState, runsFromRest } from '../../logic/entry-states.ts';
import type { Wanted } from '../../logic/intent.ts';
import { type Deviation, type Moved, movedIn, stateOf, type Verified } from '../../logic/verify.ts';
import { push } from '../../plan/map-entries.ts';
import { fedBy } from '../../study/closed-path.ts';
import type { Study } from '../../study/study.ts';
import { listOf } from '../../text/word-list.ts';
import { COMMON_PRACTICE, finding } from '../finding.ts';
import type { Finding } from '../report-model.ts';
import { blockIgnored, oncePerBlock } from './block-ignored-found.ts';
import { deadCause } from './causes.ts';
import { loopCause } from './loop-dead-found.ts';
import { afterwards, chatters, races } from './memory.ts';
import { reversedDiode } from './wrong-tab.ts';

/** Questions 2 and 3: every way in which a load departs from its intent, each named once. */
export function checkStarts(study: Study): Finding[] {
  const v = study.verified;
  if (!v) {
    return [
      finding(study.plan, {
        id: 'undecided',
        severity: 'doubt',
        question: 2,
        parts: [],
        message: 'this circuit is too involved to be decided for every state',
        why: `The exact method gave up: ${study.undecided}. Nothing was guessed.`,
        fix: 'Split the plan into circuits that do not share relays, and check each.',
        basis: 'limit of the method',
      }),
    ];
  }
  return [
    ...v.intents.wanted.flatMap((w) => forTarget(study, v, w)),
    ...chatters(study, v),
    ...races(study, v),
    ...unspoken(study, v),
  ];
}

function forTarget(study: Study, v: Verified, w: Wanted): Finding[] {
  const own = v.deviations.filter((d) => d.target === w.target);
  if (own.length === 0) return [];
  const { bdd } = v.model;
  const { circuit } = study;
  const runs = runsFromRest(v, w.target);
  const base = baseState(v, w);
  const found: Finding[] = [];
  const at = (moved: Moved, f: Fn) => bdd.and(f, stateOf(circuit, bdd, moved)) !== FALSE;
  let explained: Fn = FALSE;

  // Each entry alone.
  const alone = w.entries.map((e) => ({ entry: e, state: entryState(v, w, e.works, base) }));
  const dead = alone.filter((a) => a.state && !at(a.state, runs) && !at(a.state, v.chatter));
  const restRuns = at(base, runs) || at([], runs);
  if (dead.length > 0) {
    const everything = [...new Set(alone.flatMap((a) => a.state ?? []))].sort((a, b) => a - b);
    const starts = movedIn(
      circuit,
      bdd,
      bdd.every([runs, bdd.any(w.entries.map((e) => e.works)), bdd.not(w.blocked), v.model.valid]),
    );
    if (dead.length === alone.length && !starts && !restRuns) {
      found.push(loopCause(study, v, w, everything));
      explained = bdd.not(runs);
    } else if (dead.length === alone.length && starts && severalIn(v, w, starts) && !restRuns) {
      found.push(inSeries(study, v, w, starts, base));
      explained = bdd.not(runs);
    } else {
      found.push(...deadFindings(study, v, w, dead, restRuns));
      // Combinations of dead entries only follow from each being dead.
      const living = bdd.any(alone.filter((a) => !dead.includes(a)).map((a) => a.entry.works));
      explained = bdd.diff(bdd.not(runs), living);
    }
  }
  for (const d of own) {
    const left = d.expected ? bdd.diff(d.states, explained) : d.states;
    if (left === FALSE) continue;
    found.push(
      ...(d.direct ? directFindings(study, v, w, d, left, base, runs) : [afterwards(study, v, w, d)]),
    );
  }
  return oncePerBlock(found).map((f) =>
    w.through === undefined ? f : { ...f, why: `${f.why} (${w.target} is started by ${w.through}.)` },
  );
}

/** One finding for each cause; gates dead of one cause are named together. */
function deadFindings(
  study: Study,
  v: Verified,
  w: Wanted,
  dead: readonly { entry: Wanted['entries'][number]; state: Moved | undefined }[],
  restRuns: boolean,
): Finding[] {
  // A load that runs at rest and stops for every gate has its contact the wrong way round: that is said elsewhere.
  if (restRuns && dead.length === w.entries.length) return [];
  const diode = reversedDiode(study);
  const causes = dead.slice(0, MOST_EXPLAINED).map((d) => deadCause(study, v, w, d.entry, d.state!, diode));
  const groups = new Map<string, Finding[]>();
  for (const c of causes) push(groups, c.group, c.finding);
  const found = [...groups.values()].map(([first, ...more]) => {
    if (more.length === 0) return first!;
    return {
      ...first!,
      parts: [
        ...new Set([...first!.parts.slice(0, 1), ...more.map((f) => f.parts[0]!), ...first!.parts.slice(1)]),
      ],
      terminals: [...new Set([first!, ...more].flatMap((f) => f.terminals))],
      also: more.map((f) => ({ id: f.id, message: f.message })),
    };
  });
  return dead.length > MOST_EXPLAINED
    ? found.map((f, i) =>
        i === 0
          ? {
              ...f,
              also: [
                ...f.also,
                { id: 'gate-dead' as const, message: `and ${dead.length - MOST_EXPLAINED} more gates` },
              ],
            }
          : f,
      )
    : found;
}

const MOST_EXPLAINED = 40;

/** More than one entry works in a state; else what each entry lacks is no other entry. */
function severalIn(v: Verified, w: Wanted, moved: Moved): boolean {
  const { bdd } = v.model;
  const here = stateOf(v.circuit, bdd, moved);
  return w.entries.filter((e) => bdd.and(here, e.works) !== FALSE).length > 1;
}

/** The fewest that start it, less what only unblocks. */
function inSeries(study: Study, v: Verified, w: Wanted, starts: Moved, base: Moved): Finding {
  const names = w.entries.flatMap((e) => e.refs.map((r) => r.part));
  return finding(study.plan, {
    id: 'gates-in-series',
    severity: 'fault',
    question: 2,
    parts: [...starts.map((i) => v.circuit.inputs[i]!.part).filter((p) => names.includes(p)), w.target],
    message: `no gate starts ${w.target} by itself: it takes ${starts.filter((i) => !base.includes(i)).length} together`,
    why: `The fewest that start it: ${sayMoved(v.circuit, starts)}. The switches lie in line, one after the other.`,
    fix: 'Wire the gate switches side by side: one core joins all the COM tabs, the other all the NO tabs.',
    basis: COMMON_PRACTICE,
  });
}

/** Deviations one move away from rest, sorted into what a person would call them. */
function directFindings(
  study: Study,
  v: Verified,
  w: Wanted,
  d: Deviation,
  left: Fn,
  base: Moved,
  runs: Fn,
): Finding[] {
  const { bdd } = v.model;
  const { plan, circuit } = study;
  const found: Finding[] = [];
  const named = new Set(
    [...w.entries.flatMap((e) => e.refs), ...w.blockers.map((b) => b.ref)].map((r) => r.part),
  );
  const say = (moved: Moved) => sayMoved(circuit, moved);
  const parts = (moved: Moved) => moved.map((i) => circuit.inputs[i]!.part);
  if (!d.expected) {
    let rest = left;
    const blocked = bdd.and(rest, w.blocked);
    rest = bdd.diff(rest, blocked);
    const restStates = bdd.or(stateOf(circuit, bdd, []), stateOf(circuit, bdd, base));
    const atRest = bdd.and(left, restStates);
    if (atRest !== FALSE) {
      const moved = movedIn(circuit, bdd, atRest)!;
      found.push(
        finding(plan, {
          id: 'runs-with-all-shut',
          severity: 'fault',
          question: 3,
          parts: [w.target],
          message: `${w.target} runs with every gate shut`,
          why: `It is on with ${say(moved)}.${neverStops(v, runs) ? ' No gate stops it.' : ''}${fedBy(study, v, w.target, moved)}`,
          fix: 'Find the path that stays closed: a switch on the wrong tab, two cores joined, or the load on the break contact.',
          basis: COMMON_PRACTICE,
        }),
      );
      rest = bdd.diff(rest, restStates);
      // What runs at rest runs in most other states too; only states where an input outside the intent matters remain.
      rest = bdd.diff(rest, followsFromRest(v, w, runs, base));
    }
    const realBlock = atRest !== FALSE ? bdd.diff(blocked, restStates) : blocked;
    if (realBlock !== FALSE) found.push(...blockIgnored(study, v, w, realBlock));
    const moved = movedIn(circuit, bdd, rest);
    if (moved) {
      const strangers = parts(moved).filter((p) => !named.has(p));
      const who = strangers.length > 0 ? strangers : parts(moved);
      found.push(
        finding(plan, {
          id: 'runs-without-cause',
          severity: 'fault',
          question: 3,
          parts: [...who, w.target],
          message: `${w.target} runs with ${say(moved)}, which is not meant to start it`,
          why: `${listOf(who)} ${who.length > 1 ? 'are' : 'is'} not in the list that ${w.target} runs on${named.has(who[0] ?? '') ? ' in that position' : ''}.`,
          fix: `Find where ${listOf(who)} reaches the coil of ${w.target}, or add it to the intent if it is wanted.`,
          basis: COMMON_PRACTICE,
        }),
      );
    }
    return found;
  }
  // Meant to run, does not, though some entry alone starts it.
  const entries = bdd.any(w.entries.map((e) => e.works));
  const moved = nearestTo(v, bdd.and(left, entries), base);
  if (!moved) return found;
  const strangers = parts(moved).filter((p) => !named.has(p));
  if (strangers.length > 0) {
    found.push(
      finding(plan, {
        id: 'stops-without-cause',
        severity: 'fault',
        question: 2,
        parts: [...strangers, w.target],
        message: `${w.target} does not run with ${say(moved)}`,
        why: `${listOf(strangers)} is not meant to stop or block it.`,
        fix: `Find where ${listOf(strangers)} breaks the coil circuit, or name it under blocked-by if that is wanted.`,
        basis: COMMON_PRACTICE,
      }),
    );
    return found;
  }
  const stopper = whichStops(v, runs, moved, base) ?? moved.at(-1)!;
  const name = circuit.inputs[stopper]!.part;
  found.push(
    finding(plan, {
      id: 'gate-stops-load',
      severity: 'fault',
      question: 2,
      parts: [name, w.target],
      message: `opening one more gate stops ${w.target}: ${name}`,
      why: `With ${say(moved)} it ought to run and does not, though it runs without ${name}.`,
      fix: `Look at the wiring of ${name}: moved, its switch breaks the loop or joins the supply's poles.`,
      basis: COMMON_PRACTICE,
    }),
  );
  return found;
}

function nearestTo(v: Verified, states: Fn, base: Moved): Moved | undefined {
  const set = new Set(base);
  const offset = v.circuit.relays.length;
  const found = v.model.bdd.nearest(states, (x) => set.has(x - offset));
  if (!found) return undefined;
  return v.circuit.inputs.filter((i) => found.get(offset + i.index) ?? set.has(i.index)).map((i) => i.index);
}

function neverStops(v: Verified, runs: Fn): boolean {
  return v.model.bdd.diff(v.model.valid, runs) === FALSE;
}

/** States whose wrong running is the same as at rest: some named input could be put back without changing it. */
function followsFromRest(v: Verified, w: Wanted, runs: Fn, base: Moved): Fn {
  const { bdd } = v.model;
  const free = bdd.diff(runs, w.blocked);
  const one = stateOf(v.circuit, bdd, base);
  return bdd.and(one, runs) === FALSE ? FALSE : free;
}

function whichStops(v: Verified, runs: Fn, moved: Moved, base: Moved): number | undefined {
  const { bdd } = v.model;
  return moved
    .filter((i) => !base.includes(i))
    .find(
      (i) =>
        bdd.and(
          runs,
          stateOf(
            v.circuit,
            bdd,
            moved.filter((m) => m !== i),
          ),
        ) !== FALSE,
    );
}

function unspoken(study: Study, v: Verified): Finding[] {
  const found = v.intents.unspoken.map((name) =>
    finding(study.plan, {
      id: 'intent-missing',
      severity: 'doubt',
      question: 2,
      parts: [name],
      message: `the plan does not say what ${name} is meant to do`,
      why: `${name} is switched by contacts, and intent names other loads only.`,
      fix: `Add intent: ${name}: {runs-on: [...]}.`,
      basis: 'limit of the method',
    }),
  );
  if (v.intents.wanted.length === 0 && found.length === 0)
    found.push(
      finding(study.plan, {
        id: 'intent-missing',
        severity: 'doubt',
        question: 2,
        parts: [],
        message: 'the plan has no load, outlet or intent, so there is nothing to start',
        why: 'Whether a gate starts its load can only be decided when the plan has a load.',
        fix: 'Add the motor (kind: motor) or the outlet it plugs into, or an intent that names a relay.',
        basis: 'limit of the method',
      }),
    );
  return found;
}
