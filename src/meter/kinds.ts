/** How the meter sheet treats each kind of part. */

import type { Part, PartKind } from '../plan/part-types.ts';
import type { Plan } from '../plan/plan.ts';

type OfKind<K extends PartKind> = Part & { readonly kind: K };

/** The parts that the text on setting up is about, by what they are to it. */
interface Roles {
  readonly gate: OfKind<'gate'>;
  readonly supply: OfKind<'supply'>;
  readonly battery: OfKind<'battery'>;
  readonly plug: OfKind<'plug'>;
  readonly outlet: OfKind<'outlet'>;
  readonly load: OfKind<'motor'> | OfKind<'load'>;
}
export type Role = keyof Roles;
export type InRole<R extends Role> = Roles[R];

interface KindInMeter<P extends Part> {
  readonly role?: P extends Roles[Role] ? { [R in Role]: P extends Roles[R] ? R : never }[Role] : never;
  /** terminals that are read in every position; absent for none */
  readonly mainTerminals?: 'all' | readonly string[];
  /** stands at a place of its own out in the shop, unless it is in a box */
  readonly outInShop?: true;
  /** whether a part surely has this terminal when no core is on it; `wired`: its terminals with a core */
  readonly surelyHas: (part: P, terminal: string, wired: readonly string[]) => boolean;
  /** a fault of contacts that an input moves, all at once */
  readonly wrongWayRound?: (name: string) => string;
  /** the contact is a fuse, which only blows */
  readonly blows?: true;
  /** what makes it pull in: its two ends, what a fault there is called, and whether it can fail to answer as well */
  readonly coil?: {
    readonly ends: readonly [string, string];
    readonly called: (name: string) => string;
    readonly answers: boolean;
  };
}

const TABS = ['COM', 'NO', 'NC'];
const POLES = ['+', '-', '~1', '~2'];
const COIL = ['A1', 'A2'] as const;

const always = () => true;
const worksWrong = (name: string) => `${name} works the wrong way round`;
const hasTab = (part: OfKind<'gate' | 'switch' | 'button'> | OfKind<'cutout'>, terminal: string) =>
  part.tabs.some((tab) => tab === terminal) ||
  ('throws' in part && part.throws?.some((p) => [p.common, p.make, p.break].includes(terminal)) === true);
const switched = { outInShop: true, surelyHas: hasTab, wrongWayRound: worksWrong } as const;
const coil = { ends: COIL, called: (name: string) => `the coil of ${name}`, answers: false };

/** Two legs and three phases need no neutral. */
function onMains({ feed }: { readonly feed: OfKind<'plug'>['feed'] }, terminal: string): boolean {
  return feed === 'single' || terminal !== 'N';
}

/** Neither double insulation nor direct current asks for an earth. */
function onLoad(part: OfKind<'motor'> | OfKind<'load'>, terminal: string, wired: readonly string[]): boolean {
  if (part.pluggedInto !== undefined && wired.length === 0) return false;
  return onMains(part, terminal) && !(terminal === 'PE' && (part.class2Insulated || part.feed === 'dc'));
}

/** An overload relay has a plain contact as well only where that is wired. */
function onCutout(part: OfKind<'cutout'>, terminal: string, wired: readonly string[]): boolean {
  if (part.throws !== undefined) return hasTab(part, terminal) || wired.includes(terminal);
  const overload = wired.some((t) => !TABS.includes(t));
  if (!TABS.includes(terminal)) return overload;
  return (!overload || wired.some((t) => TABS.includes(t))) && hasTab(part, terminal);
}

const KINDS: { readonly [K in PartKind]: KindInMeter<OfKind<K>> } = {
  supply: { role: 'supply', mainTerminals: 'all', surelyHas: (_, terminal) => POLES.includes(terminal) },
  battery: { role: 'battery', mainTerminals: 'all', surelyHas: always },
  gate: {
    ...switched,
    role: 'gate',
    wrongWayRound: (name) =>
      `${name}: the switch is mounted the wrong way round, pressed when it ought to be free`,
  },
  switch: switched,
  button: switched,
  cutout: { ...switched, surelyHas: onCutout },
  // A selector turned round is at another of its positions, which is no fault of one contact.
  selector: { outInShop: true, surelyHas: (_, terminal) => terminal !== 'off' },
  relay: { mainTerminals: COIL, surelyHas: always, coil },
  timer: { mainTerminals: COIL, surelyHas: (_, t) => t !== 'T1' && t !== 'T2', coil },
  board: {
    mainTerminals: ['VCC', 'GND', 'IN'],
    surelyHas: always,
    coil: {
      ends: ['VCC', 'GND'],
      called: (name) => `${name}: the circuit between its supply pins`,
      answers: true,
    },
  },
  diode: { surelyHas: always },
  resistor: { surelyHas: always },
  lamp: { surelyHas: always },
  led: { surelyHas: always },
  fuse: { surelyHas: always, blows: true },
  joint: { surelyHas: always },
  plug: { role: 'plug', mainTerminals: 'all', surelyHas: onMains },
  outlet: { role: 'outlet', mainTerminals: 'all', surelyHas: onMains },
  motor: { role: 'load', mainTerminals: 'all', surelyHas: onLoad },
  load: { role: 'load', mainTerminals: 'all', surelyHas: onLoad },
  box: { surelyHas: (part) => part.metal },
};

/** What holds of a part by its kind. */
export function kindOf<P extends Part>(part: P): KindInMeter<P> {
  // A row takes parts of its own kind, which the type of a table cannot say.
  return KINDS[part.kind] as unknown as KindInMeter<P>;
}

/** The parts of a plan in one role, in its order. */
export function inRole<R extends Role>(plan: Plan, role: R): InRole<R>[] {
  const parts: readonly Part[] = [...plan.parts.values()];
  return parts.filter((part) => KINDS[part.kind].role === role) as InRole<R>[];
}
