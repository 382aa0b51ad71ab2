/** Changes of wiring at one place that make every load do what is meant, each proved by solving the circuit anew. */
import { endKey } from '../../../circuit/nets.ts';
import { FALSE } from '../../../logic/bdd.ts';
import type { Verified } from '../../../logic/verify.ts';
import type { Plan } from '../../../plan/plan.ts';
import { perStudy } from '../../../study/per-study.ts';
import type { Study } from '../../../study/study.ts';
import { zonesOf } from '../../../study/zones.ts';
import { endsMoved, isOdd, isPartOf, type TabMove, tabMoves } from './tab-moves.ts';

const MOST_TRIES = 60;
const MOST_TRIES_OF_OTHERS = 24;

/** Moves at gates that mend the plan: one that does so `alone`, or several that do so together. */
interface WrongTabs {
  readonly moves: readonly TabMove[];
  readonly alone: boolean;
}

const NONE: WrongTabs = { moves: [], alone: false };

/**
 * Gates on the wrong tab. Only switches where this could be the mistake are tried, the odd ones out first. Where
 * several are wrong, all the odd ones are tried together.
 */
export const gatesOnWrongTab = perStudy((study): WrongTabs => {
  const v = study.verified;
  if (!v || (v.deviations.length === 0 && v.chatter === FALSE && v.races.length === 0)) return NONE;
  if (startsUnnamed(study, v) || zonesOnWrongTab(study).moves.length > 0) return NONE;
  const moves = tabMoves(study.plan, (p) => p.kind === 'gate');
  const size = study.circuit.inputs.length;
  const tries = Math.max(6, Math.min(MOST_TRIES, Math.floor(6000 / Math.max(1, size))));
  const one = moves.slice(0, tries).find((move) => mends(study, endsMoved([move])));
  if (one) return { moves: [one], alone: true };
  // Where several cores sit on one tab, only all of them together count; one alone would be told twice.
  const odd = moves.filter((x) => isOdd(study.plan, x) && !moves.some((m) => isPartOf(x, m)));
  if (odd.length < 2 || odd.length > 40 || !mends(study, endsMoved(odd))) return NONE;
  const needed = odd.filter((m) => odd.length <= 12 && !mends(study, endsMoved(odd.filter((x) => x !== m))));
  return { moves: needed.length > 0 ? needed : odd, alone: false };
});

/** All that is wrong is that gates which no intent names start something: the intent forgot them. */
function startsUnnamed({ plan, circuit }: Study, v: Verified): boolean {
  if (plan.intents === undefined || v.deviations.length === 0) return false;
  const named = new Set(plan.intents.flatMap((i) => i.runsOn.flat().map((r) => r.part)));
  return v.deviations.every((d) => {
    const moved = d.steps.at(-1)!.map((i) => circuit.inputs[i]!);
    return !d.expected && moved.some((i) => i.kind === 'gate' && !named.has(i.part));
  });
}

/**
 * Zones whose relay calls on with another tab than most of its like: one core, or all the odd ones together, on the tab
 * that the others have.
 */
export const zonesOnWrongTab = perStudy((study): WrongTabs => {
  const v = study.verified;
  if (!v || v.deviations.length === 0) return NONE;
  const zones = new Set(zonesOf(study).map((z) => z.relay));
  const whole = tabMoves(study.plan, (p) => p.kind === 'relay' && zones.has(p.name));
  const moves = whole.filter((x) => !whole.some((m) => isPartOf(x, m)));
  const on = (from: TabMove['from']) => moves.filter((m) => m.from === from);
  const odd = on('NC').length <= on('NO').length ? on('NC') : on('NO');
  if (odd.length === 0 || odd.length === moves.length || odd.length > MOST_TRIES_OF_OTHERS) return NONE;
  const one = odd.find((move) => mends(study, endsMoved([move])));
  if (one) return { moves: [one], alone: true };
  return odd.length > 1 && mends(study, endsMoved(odd)) ? { moves: odd, alone: false } : NONE;
});

/** The one tab of a hand switch, button or cut-out that, moved to its fellow, makes every load do what is meant. */
export const wrongTabOfOther = perStudy((study): TabMove | undefined => {
  const v = study.verified;
  if (!v || (v.deviations.length === 0 && v.chatter === FALSE)) return undefined;
  const moves = tabMoves(
    study.plan,
    (p) => p.kind === 'switch' || p.kind === 'button' || p.kind === 'cutout',
  );
  return moves.slice(0, MOST_TRIES_OF_OTHERS).find((m) => mends(study, endsMoved([m])));
});

/** The diode that, turned round, makes every load do what is meant; undefined when there is none. */
export const reversedDiode = perStudy((study): string | undefined => {
  const v = study.verified;
  if (!v || v.deviations.length === 0) return undefined;
  const diodes = study.circuit.diodes.filter((d) => !d.load && !d.builtIn).slice(0, MOST_TRIES);
  return diodes.find((d) => mends(study, turned(study.plan, d.part)))?.part;
});

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

/** Whether with these ends moved every load does what is meant and no supply is shorted. */
function mends(study: Study, ends: ReadonlyMap<string, string>): boolean {
  const after = study.rewired(ends).verified;
  if (!after) return false;
  return (
    after.deviations.length === 0 && after.chatter === FALSE && after.races.length === 0 && !anyShort(after)
  );
}

function anyShort(after: Verified): boolean {
  return after.circuit.sources.some((s) =>
    after.places.some(
      (p) => after.model.bdd.and(after.settler.at(after.model.shorted[s.index]!, p.mode), p.states) !== FALSE,
    ),
  );
}
