/** Why a load stands though it should run, or runs though it should stand, in a few words. */

import type { ContactOnTheWay } from '../machine/contacts-on-the-way.ts';
import type { RelayView, SenseView, StateView } from '../machine/state-view.ts';
import { rounded } from '../text/numbers.ts';

/** Contacts named in one sentence, at most. */
const MOST = 4;
/** V below which a coil gets nothing to speak of. */
const NOTHING = 0.05;

/** The contacts on the way to a load or to the coil of a relay. */
export type Ways = (part: string) => readonly ContactOnTheWay[];

/** Volts with the digits that matter on a meter. */
export function voltsText(volts: number): string {
  const size = Math.abs(volts);
  return `${size < NOTHING ? 0 : rounded(size)} V`;
}

const OF = {
  coil: '',
  supply: 'the supply of ',
  input: 'the input of ',
  trigger: 'the trigger of ',
} as const;

/** What decides over a relay: `K1 gets 11.9 V, needs 9 V`; of several conditions the first that is not met. */
export function coilText(relay: RelayView): string {
  const short = relay.senses.find((s) => !s.met);
  if (short === undefined && relay.senses.length > 1) return `${relay.part} has all it needs`;
  const sense = short ?? relay.senses[0]!;
  return `${getsText(relay.part, sense)}${sense.needs === null ? '' : `, needs ${voltsText(sense.needs)}`}`;
}

/** `K1 gets 4.2 V`, or what its input or trigger sees. */
export function getsText(part: string, { what, volts, met }: SenseView): string {
  const whose = `${OF[what]}${part}`;
  if (volts === null) return `${whose} is ${met ? 'joined' : 'joined by nothing'}`;
  return `${whose} gets ${voltsText(volts)}${volts < -NOTHING ? ' the wrong way round' : ''}`;
}

const isDead = (r: RelayView) => r.senses.every((s) => s.volts === null || Math.abs(s.volts) < NOTHING);

/** Why a load or relay is off, from what switches it back to the first coil that gets too little. */
export function whyOff(part: string, view: StateView, ways: Ways, seen: Set<string> = new Set()): string {
  if (seen.has(part)) return '';
  seen.add(part);
  const relay = view.relays.find((r) => r.part === part);
  if (relay && !isDead(relay)) return coilText(relay);
  const dead = view.supplies.filter((s) => s.tripped).map((s) => `${s.part} is shorted and off`);
  const because = [
    ...dead,
    ...openText(
      ways(part).filter((c) => !c.made),
      view,
      ways,
      seen,
    ),
  ];
  if (!relay) return because.length === 0 ? `no current finds a way to ${part}` : because.join('; ');
  return [`no current reaches ${part}`, ...because].join('; ');
}

function openText(
  open: readonly ContactOnTheWay[],
  view: StateView,
  ways: Ways,
  seen: Set<string>,
): string[] {
  const relays = view.relays.filter((r) => open.some((c) => c.by === 'relay' && c.part === r.part));
  const out = relays
    .filter((r) => !r.in && open.some((c) => c.part === r.part && c.makes))
    .flatMap((r) => {
      const why = whyOff(r.part, view, ways, seen);
      return why === '' ? [] : [why];
    });
  const breaks = relays
    .filter((r) => r.in && open.some((c) => c.part === r.part && !c.makes))
    .map((r) => `${r.part} is in and holds its contact open`);
  if (out.length + breaks.length > 0) return [...out, ...breaks];
  const inputs = open.filter((c) => c.by === 'input');
  if (inputs.length === 0) return [];
  // What was moved and opens its contact by that is the likeliest culprit.
  const moved = inputs.filter((c) => !c.makes);
  return [
    `open on the way: ${named([...moved, ...inputs])}${moved.length > 0 ? ` (${moved[0]!.part} opens its contact when it is moved)` : ''}`,
  ];
}

/** What keeps a load running. */
export function whyOn(part: string, view: StateView, ways: Ways): string {
  const own = view.relays.find((r) => r.part === part);
  if (own) return heldText(own);
  const made = ways(part).filter((c) => c.made);
  const relays = view.relays.filter((r) => made.some((c) => c.by === 'relay' && c.part === r.part));
  const told = relays.map((r) =>
    r.in ? `${r.part} is in (${heldText(r)})` : `${r.part} is out, and its resting contact feeds ${part}`,
  );
  if (told.length > 0) return told.join('; ');
  return made.length === 0 ? 'nothing switches it' : `made on the way: ${named(made)}`;
}

/** Volts that a relay which is in stands on. */
function heldText(r: RelayView): string {
  const short = r.senses.find((s) => !s.met);
  if (short?.volts == null) return coilText(r).replace(r.part, 'it');
  return `it holds on ${voltsText(short.volts)}`;
}

function named(contacts: readonly ContactOnTheWay[]): string {
  const names = [...new Set(contacts.map((c) => `${c.part} ${c.terminals}`))];
  const more = names.length - MOST;
  return names.slice(0, MOST).join(', ') + (more > 0 ? ` and ${more} more` : '');
}
