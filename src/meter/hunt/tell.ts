/** A hunt as it stands, as plain data: suspects, what to look at next, and at its end what to do. */
import { toldOf } from '../../findings/verdict-line.ts';
import { plugsOut } from '../../machine/power.ts';
import { isFixedFeed } from '../../plan/fixed-feed.ts';
import { listOf } from '../../text/word-list.ts';
import { cureOf } from '../faults/modes.ts';
import { marksOf } from '../probe-words.ts';
import type { Hunt } from './hunt.ts';
import type { HuntSuspect, HuntTold } from './hunt-model.ts';
import type { Observation } from './observation.ts';
import { PlainForm } from './plain-form.ts';
import type { Ranked } from './scores.ts';

/** Suspects that are told. */
const MOST = 20;
/** Cures that are told at the end. */
const CURES = 6;

const DANGER =
  'DANGER: it ran although something that must stop it was worked, or while its relay was out. Pull its plug, or have its breaker locked off, and do not use it until that is found and put right. What follows is looked at without power alone.';

/** What a hunt has come to; brings in two faults at once where no single one fits. */
export function tellHunt(hunt: Hunt): HuntTold {
  return standingOf(hunt).told;
}

/** The same, and what is to be looked at next as it is answered. */
export function standingOf(hunt: Hunt): { readonly told: HuntTold; readonly next: Observation | undefined } {
  let ranked = hunt.ranked();
  const right = hunt.answered.length > 0 && hunt.planFits();
  if (hunt.answered.length > 0 && !hunt.fits(ranked) && !right) {
    hunt.withPairs();
    ranked = hunt.ranked();
  }
  const fits = hunt.fits(ranked);
  const two = fits && !ranked.some((r) => r.against.length === 0 && r.suspect.faults.length === 1);
  const form = new PlainForm(hunt.study);
  const next = hunt.mendedBy === undefined ? hunt.next(ranked) : undefined;
  const group = next === undefined && ranked.length > 0 ? hunt.group(ranked) : [];
  const alike = new Set(group.map((r) => r.suspect));
  const told: HuntTold = {
    format: 1,
    title: hunt.study.plan.title,
    check: toldOf(hunt.study),
    danger: hunt.isUnsafe ? DANGER : null,
    answers: hunt.answered.map((a) => form.line(a)),
    fits: right ? 'nothing wrong' : !fits ? 'none' : two ? 'two faults' : 'one fault',
    doubtful: fits || right ? null : doubtful(ranked),
    suspects: ranked.slice(0, MOST).map((r) => suspectOf(r, alike.has(r.suspect))),
    agreeing: ranked.filter((r) => r.against.length === 0).length,
    mended: hunt.mendedBy ?? null,
    next:
      next === undefined
        ? null
        : {
            kind: next.kind,
            question: questionOf(hunt, form, next),
            line: form.line({ observation: next, answer: undefined }),
          },
    end: next === undefined && group.length > 0 ? endOf(hunt, form, group) : null,
  };
  return { told, next };
}

function suspectOf({ suspect, against }: Ranked, alike: boolean): HuntSuspect {
  return {
    faults: suspect.faults.map(({ text, item, mode }) => ({ text, item, mode })),
    against: against.map((k) => k + 1),
    alike,
  };
}

/** The answer without which the most belief would be free of contradiction, from one. */
function doubtful(ranked: readonly Ranked[]): number | null {
  const freed = new Map<number, number>();
  for (const { against, suspect } of ranked)
    if (against.length === 1) freed.set(against[0]!, (freed.get(against[0]!) ?? 0) + suspect.weight);
  const [most] = [...freed].sort((x, y) => y[1] - x[1]);
  return most === undefined ? null : most[0] + 1;
}

function endOf(hunt: Hunt, form: PlainForm, group: readonly Ranked[]): HuntTold['end'] {
  const cures = group.flatMap((r) => r.suspect.faults.map((f) => `${f.text}: ${cureOf(f.mode, f.item)}`));
  const texts = group.slice(0, CURES).map((r) => r.suspect.faults.map((f) => f.text).join(', and '));
  return {
    cure: [...new Set(cures)].slice(0, CURES),
    proof: hunt
      .unlikePlan()
      .map(({ observation }) =>
        form.line({ observation, answer: hunt.ofPlan(observation) }).replace(/^(?:saw|reading) /, ''),
      ),
    log: `${hunt.answered.length} observations: ${texts.join('; or ')}${group.length > CURES ? `; or ${group.length - CURES} more` : ''}`,
  };
}

/** What to do and what to look at, as one or two sentences. */
function questionOf(hunt: Hunt, form: PlainForm, o: Observation): string {
  const mark = marksOf(hunt.study.plan);
  const rest = o.stance.moved.length + o.stance.first.length === 0;
  const position = rest ? 'everything at rest (all gates shut)' : form.positions(o.stance);
  const { loads } = hunt.predictor;
  const runs = loads.length === 1 ? `Does ${loads[0]} run?` : `Which of ${listOf(loads)} run?`;
  switch (o.kind) {
    case 'look':
      return `Put this: ${position}. ${runs}`;
    case 'finger':
      return `Put this: ${position}. Keep clear of the fan and of anything with mains, and press or free the lever of its switch by finger. ${runs}`;
    case 'click':
      return `Put this: ${position}. Does ${o.part} pull in (a click, or its armature or light shows it)?`;
    case 'lit':
      return `Put this: ${position}. Does ${o.part} give light?`;
    case 'lamp':
      return hunt.study.plan.parts.get(o.part)?.kind === 'plug'
        ? `Pull ${o.part} and plug a lamp or a plug-in tester into its socket. Does it light?`
        : `Put this: ${position}. Unplug what is in ${o.part} and plug a lamp or a plug-in tester in. Does it light?`;
    case 'volts':
      return `${plugsWords(hunt)}, and put this: ${position}. What does the meter show on ${o.range.toUpperCase()} volts, red on ${mark(o.pair.a)}, black on ${mark(o.pair.b)}? ${WHERE}`;
    case 'ohms':
      return `Pull every plug and take the loop's supply off, and put this: ${position}. What does the meter show on ohms from ${mark(o.pair.a)} to ${mark(o.pair.b)}? ${WHERE}`;
  }
}

/** The joints of the model: what is loose is the part's own metal under the core's end. */
const WHERE =
  "Each probe goes on the metal that ends the core there (its crimp, or the bare copper), not on the part's tab or screw: so a loose tab shows.";

/** Which plugs are pulled while the loop is read, by name, and what stays on. */
function plugsWords({ study: { plan, wired } }: Hunt): string {
  const out = plugsOut(plan, wired);
  const of = (fixed: boolean) =>
    wired.sources.flatMap((s) => {
      const part = plan.parts.get(s.part);
      return part?.kind === 'plug' && out(s) && isFixedFeed(part) === fixed ? [s.part] : [];
    });
  const [pinned, wiredIn] = [of(false), of(true)];
  const supplies = wired.sources.filter((s) => !s.mains).map((s) => s.part);
  const steps = [
    ...(pinned.length > 0 ? [`pull ${listOf(pinned)} out of the wall`] : []),
    ...(wiredIn.length > 0 ? [`have ${listOf(wiredIn)} switched off and locked at the breaker`] : []),
    ...(pinned.length + wiredIn.length > 0
      ? []
      : ['no plug can be pulled, for the loop gets its power through it']),
    `leave ${listOf([...new Set(supplies)])} on`,
  ];
  const text = steps.join(', ');
  return text[0]!.toUpperCase() + text.slice(1);
}
