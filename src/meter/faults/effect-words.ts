/** An effect in words: what the machine does, and where it shows first. */
import type { Study } from '../../study/study.ts';
import { listOf } from '../../text/word-list.ts';
import type { Fault } from '../fault.ts';
import { REST, type Stance, stanceWords } from '../stance.ts';
import type { Effect, Seen } from './effect.ts';

/** Positions that are named one by one. */
const NAMED = 3;

const BESIDES = {
  'mains on the loop': 'mains lies on the loop: whoever touches it, or a gate, may be hurt',
  'earth lost': 'nothing is seen, and the metal it earthed is no longer earthed',
  'left live':
    'nothing is seen, and a line stays live while the load stands; the next such failure cannot be stopped',
  'wrong time': 'its load starts late, or runs on too short or too long',
  'too many volts': 'coils get more volts than they are for, and burn in time',
  'not worked out': 'not worked out: a coil gets the other kind of current',
} as const;

/** A line that meets earth through a neutral opens no breaker; what is ahead of the plug the plan does not say. */
const RESIDUAL =
  'where a residual-current device is ahead of the plug, it may open, which makes everything behind it dead';

/** Whether a fault joins a pole of the mains to earth in a way in which no breaker need open. */
function meetsEarth({ circuit, sides }: Study, { change, mode }: Fault): boolean {
  if (mode === 'meets-earth') return false;
  const net = (key: string) => circuit.netOf.get(key) ?? -1;
  return (change?.joined ?? []).some(([a, b]) => {
    const [x, y] = [net(a), net(b)];
    const on = (earth: number, other: number) =>
      sides.bareEarth.has(earth) && !sides.bareEarth.has(other) && sides.mains.has(other);
    return on(x, y) || on(y, x);
  });
}

/** What the machine does, as one sentence without a full stop. */
export function effectWords(study: Study, fault: Fault, effect: Effect): string {
  const loads = [...new Set(effect.seen.flatMap((s) => s.load ?? []))];
  const parts = [
    ...(effect.besides === undefined ? [] : [BESIDES[effect.besides]]),
    ...loads.flatMap((load) => loadWords(study, load, effect)),
  ];
  if (parts.length === 0 && effect.seen.length > 0) parts.push('a relay, a lamp or an outlet does otherwise');
  const strained = effect.strained.map((s) => `${s} is shorted or overloaded`);
  const all = [
    ...parts,
    ...strained,
    ...(strained.length === 0 && meetsEarth(study, fault) ? [RESIDUAL] : []),
  ];
  return all.length === 0 ? 'nothing is seen' : all.join('; ');
}

function loadWords(study: Study, load: string, { seen, ought }: Effect): string[] {
  const own = (wrongly: Seen['wrongly']) => seen.filter((s) => s.load === load && s.wrongly === wrongly);
  const [off, on, blocked, restless] = [own('off'), own('on'), own('on though blocked'), own('chatters')];
  const words: string[] = [];
  if (off.length > 0)
    words.push(
      off.length >= ought ? `${load} never runs` : `${load} does not run with ${positions(study, off)}`,
    );
  if (on.some((s) => s.stance.key === REST.key)) words.push(`${load} runs with everything at rest`);
  else if (on.length > 0) words.push(`${load} runs with ${positions(study, on)}`);
  if (blocked.length > 0) words.push(`${load} goes on with ${positions(study, blocked)}`);
  if (restless.length > 0) words.push(`relays chatter with ${positions(study, restless)}`);
  return words;
}

function positions(study: Study, seen: readonly Seen[]): string {
  const words = seen.map((s) => positionWords(study, s.stance));
  if (words.length <= NAMED + 1)
    return [words.slice(0, -1).join(', '), words.at(-1)!].filter((w) => w !== '').join(' or ');
  return `${words.slice(0, NAMED).join(', ')} and ${words.length - NAMED} more`;
}

/** `planer open`, `planer open and bin tripped`, after what was worked before. */
function positionWords({ wired }: Study, { moved, first }: Stance): string {
  const here = moved.length === 0 ? 'everything at rest' : listOf(stanceWords(wired, moved));
  return first.length === 0 ? here : `${here} after ${listOf(stanceWords(wired, first))}`;
}

/** How a failure shows; `own` is a reading that shows one that nothing at the machine does. */
export function detectionWords(
  study: Study,
  fault: Fault,
  effect: Effect,
  own: (fault: Fault) => string | undefined,
): string {
  const first = effect.seen.find((s) => s.load !== null) ?? effect.seen[0];
  if (effect.besides === 'mains on the loop')
    return 'unplugged, ohms from the loop to each pin of the plug: there must be no way through';
  if (effect.besides === 'earth lost')
    return 'unplugged, ohms from the metal of each part on this earth to the earth pin of the plug: it must beep';
  if (effect.besides === 'left live')
    return 'unplugged, with the relay out: ohms over this contact, where there must be no way through';
  if (effect.besides === 'wrong time') return 'by the clock, against the time that the plan says';
  if (effect.besides === 'not worked out' || effect.besides === 'too many volts')
    return 'volts at the supply, on the DC and on the AC range';
  if (first === undefined)
    return (
      own(fault) ??
      `in no position at the machine, and by no reading at its own terminals${fault.hidden === undefined ? '' : `: ${fault.hidden}`}`
    );
  return `at the machine, with ${positionWords(study, first.stance)}`;
}
