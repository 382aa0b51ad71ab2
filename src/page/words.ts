/** What a move of one input does, as sentences for a person who watches the machine. */
import type { LoadView, RelayView, StateView } from '../machine/state-view.ts';
import { coilText, getsText, voltsText, type Ways, whyOff, whyOn } from './coil-words.ts';

/** A sentence, and whether it tells of something that is not as the plan wants it. */
export interface Said {
  readonly text: string;
  readonly wrong: boolean;
}

/** `head` is what was moved, `bandsaw open`; `before` is undefined for the first look. */
export function stepWords(
  head: string,
  before: StateView | undefined,
  now: StateView,
  ways: Ways,
): readonly Said[] {
  // While relays chatter nothing that is seen lasts.
  if (!now.settled) return [{ text: `${head}.`, wrong: false }, ...notes(now)];
  const was = <T extends { readonly part: string }>(list: readonly T[] | undefined, { part }: T) =>
    list?.find((b) => b.part === part);
  const coils = now.relays.flatMap((r) => relayText(r, was(before?.relays, r)));
  const names = new Set(now.relays.map((r) => r.part));
  const loads = now.loads.filter((l) => !names.has(l.part)).map((l) => loadText(l, was(before?.loads, l)));
  const wrong = now.loads.filter((l) => l.wanted !== null && l.wanted !== l.runs);
  const meant = wrong.length === 0 && now.loads.some((l) => l.wanted !== null);
  const told = [...coils, loads.join(', ')].filter((x) => x !== '').join('; ');
  return [
    {
      text: `${head}: ${told === '' ? 'nothing changes' : told}${meant ? ', as the plan wants' : ''}.`,
      wrong: false,
    },
    ...wrong.map((l) => ({ text: deviation(l, now, ways, names.has(l.part)), wrong: true })),
    ...notes(now),
  ];
}

function relayText(r: RelayView, before: RelayView | undefined): string[] {
  const was = before?.in ?? false;
  if (r.in && !was) return [`${coilText(r)}, pulls in`];
  const short = r.senses.find((s) => !s.met);
  if (!r.in && was) return [short ? `${getsText(r.part, short)}, lets go` : `${r.part} lets go`];
  if (r.in)
    return [short?.volts != null ? `${r.part} stays in on ${voltsText(short.volts)}` : `${r.part} stays in`];
  const some = r.senses.some((s) => s.what === 'coil' && s.volts !== null && Math.abs(s.volts) >= STRAY);
  return some ? [`${coilText(r)}, stays out`] : [];
}

/** V at a coil that is worth a word while it stays out. */
const STRAY = 0.5;

function loadText(l: LoadView, before: LoadView | undefined): string {
  if (before === undefined || before.runs === l.runs)
    return `${l.part} ${l.runs ? (before ? 'keeps running' : 'runs') : 'stands'}`;
  return `${l.part} ${l.runs ? 'runs' : 'stops'}`;
}

function deviation(l: LoadView, now: StateView, ways: Ways, isRelay: boolean): string {
  const { part } = l;
  if (l.wanted === true) {
    const why = whyOff(part, now, ways);
    return `${part} should ${isRelay ? 'be in and is' : 'run and does'} not: ${why}.`;
  }
  return `${part} should ${isRelay ? 'be out and is in' : 'stand and runs'}: ${whyOn(part, now, ways)}.`;
}

function notes(now: StateView): Said[] {
  const say = (text: string): Said => ({ text, wrong: true });
  return [
    ...(now.settled
      ? []
      : [
          say(
            'Relays find no rest here: one breaks its own coil and chatters, or two race. What is shown is one moment of it.',
          ),
        ]),
    ...(now.told
      ? []
      : [say('Some volts cannot be worked out here: AC and DC meet, AC passes a diode, or supplies clash.')]),
    ...now.supplies
      .filter((s) => s.tripped)
      .map((s) => say(`${s.part} is shorted: its breaker is taken to have opened.`)),
    ...now.supplies
      .filter((s) => s.limited)
      .map((s) => say(`${s.part} cannot give what is asked of it, and its volts sag.`)),
  ];
}
