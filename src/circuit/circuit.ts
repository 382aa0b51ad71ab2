import type { Plan } from '../plan/plan.ts';

/**
 * The circuit: what is joined to what, and under which condition. Knows no ratings, colours or YAML.
 * A net is a set of terminals that wires, links and joints join for good; nets are numbered from 0.
 */

/** A literal over the things that move. Contacts are conjunctions of at most one literal. */
export type Condition =
  | { readonly by: 'always' }
  | { readonly by: 'input'; readonly input: number; readonly value: boolean }
  | { readonly by: 'relay'; readonly relay: number; readonly value: boolean };

export type InputKind = 'gate' | 'switch' | 'selector' | 'button' | 'cutout';

/** One two-valued input, or one position (other than the resting one) of a selector. False at rest. */
export interface Input {
  readonly index: number;
  readonly part: string;
  /** selector position; undefined for two-valued inputs */
  readonly position?: string;
  readonly kind: InputKind;
}

/** Two nets joined while the condition holds. Both directions conduct. */
export interface ContactEdge {
  readonly a: number;
  readonly b: number;
  readonly when: Condition;
  readonly part: string;
  readonly terminals: readonly [string, string];
  /** 1-based pole of a relay; 0 for switches and fuses */
  readonly pole: number;
}

/** Conducts from anode to cathode only. `drop` in volts. A light-emitting diode has `load: true`. */
export interface DiodeEdge {
  readonly anode: number;
  readonly cathode: number;
  readonly part: string;
  readonly drop: number;
  readonly load: boolean;
  /** true for the suppressor inside a coil */
  readonly builtIn: boolean;
  /** current an indicator is meant to draw, A */
  readonly amps?: number;
}

/** A two-terminal element that passes current: coil, resistor, lamp, board input, mains load. */
export interface Passive {
  readonly a: number;
  readonly b: number;
  readonly part: string;
  readonly what: 'coil' | 'resistor' | 'lamp' | 'input' | 'load' | 'primary';
  /** V of the source that can feed it, for electronics whose current hangs on that */
  readonly fed?: number;
}

/** A pole of a source with its potential as a phasor (V, relative to the source's own reference). */
export interface Rail {
  readonly net: number;
  readonly terminal: string;
  readonly re: number;
  readonly im: number;
  /** true for L, L1, L2, L3 */
  readonly live: boolean;
}

export interface Source {
  readonly index: number;
  readonly part: string;
  readonly kind: 'dc' | 'ac';
  /** a plug, or a supply whose output is above extra-low voltage */
  readonly mains: boolean;
  readonly rails: readonly Rail[];
  /** where it gets its power: always, from an outlet or plug, or from terminals of its own */
  readonly feed:
    | { readonly by: 'always' }
    | { readonly by: 'part'; readonly part: string }
    | {
        readonly by: 'nets';
        readonly a: number;
        readonly b: number;
        /** V that the plan's own sources put between the two, in the position of the contacts that gives most */
        readonly volts?: number;
      };
  /** its own reference, from which its rails count, is the earth of its protective pin */
  readonly earthed?: true;
  /** V that its mains side is wired for, where the plan says so */
  readonly winding?: number;
  /** V that it gets over those that it is wired for; its rails have this share in them where they follow the mains */
  readonly share?: number;
}

/** One thing that must be satisfied for a relay to pull in. */
export type Sense =
  | {
      readonly by: 'volts';
      readonly a: number;
      readonly b: number;
      /** V at which it pulls in and at which it has let go */
      readonly pullIn: number;
      readonly dropOut: number;
      readonly polarised: boolean;
      readonly what: 'coil' | 'supply' | 'input';
    }
  | { readonly by: 'joined'; readonly a: number; readonly b: number };

/** A relay, timer or board seen as one two-state thing. */
export interface Relay {
  readonly index: number;
  readonly part: string;
  readonly senses: readonly Sense[];
  /** of a relay that stays put: the number of its second coil, or of the cam that turns on at each pulse */
  readonly latch?: { readonly by: 'reset' | 'cam'; readonly relay: number };
  /**
   * Set where this is no relay of the plan's but a piece of one, by that one's number: a second coil, which senses, or
   * the cam of a toggling relay, which senses nothing. A cam stands where the contact stands while the coil is out, and
   * stays there while the coil is in, so that the contact changes over once a pulse. Pieces come after all relays.
   */
  readonly of?: number;
  readonly delay?: Delay;
}

/** When a timer moves late. */
export interface Delay {
  readonly on: 'in' | 'out';
  /** s */
  readonly seconds: number;
  /** times on with its supply gone; else it is out at once */
  readonly stored: boolean;
}

/** A load or outlet that runs when all its live terminals are fed. */
export interface Consumer {
  readonly part: string;
  readonly kind: 'motor' | 'load' | 'outlet';
  /** nets of its conductors by terminal */
  readonly nets: ReadonlyMap<string, number>;
  /** V between its conductors, when known */
  readonly volts?: number;
  /** runs on direct current, from + to - */
  readonly dc?: true;
}

export interface Circuit {
  readonly plan: Plan;
  readonly netCount: number;
  /** net of `PART.TERMINAL`; a joint is its bare name */
  readonly netOf: ReadonlyMap<string, number>;
  /** terminals with at least one core or link on them, by net */
  readonly terminals: readonly (readonly string[])[];
  readonly inputs: readonly Input[];
  readonly contacts: readonly ContactEdge[];
  readonly diodes: readonly DiodeEdge[];
  readonly passives: readonly Passive[];
  readonly sources: readonly Source[];
  readonly relays: readonly Relay[];
  readonly consumers: readonly Consumer[];
  /** cores or links landed on a terminal */
  readonly landed: ReadonlyMap<string, number>;
}
