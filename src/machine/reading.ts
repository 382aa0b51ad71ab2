/**
 * What a meter reads, as data: format 1 of `pullin read --json`.
 * Made from `reading-schema.ts` by `npm run generate`; changes go there.
 */

/** One conductor: terminals that are one piece of metal, and its volts against the reference named */
export interface NetReading {
  /** As the plan marks them */
  readonly terminals: readonly string[];
  /** V, null where nothing ties it to a supply */
  readonly volts: number | null;
  /** Direct or alternating; null without volts */
  readonly kind: 'dc' | 'ac' | null;
  /** Terminal that the volts are against */
  readonly against: string | null;
}

/** One core and its current, positive from `from` to `to`; a magnitude for AC */
export interface CoreReading {
  /** Run, counted from 1, each piece of a run along parts as one */
  readonly run: number;
  /** The run as the file counts it, with its piece: `3`, `3.2` */
  readonly mark: string;
  /** What the plan calls the run; null for nothing */
  readonly name: string | null;
  /** Colour of the core */
  readonly colour: string;
  /** Terminal of its first end */
  readonly from: string;
  /** Terminal of its second end */
  readonly to: string;
  /** A, positive from `from` to `to`; a magnitude for AC */
  readonly amps: number | null;
}

/** How the machine stands */
export interface ReadState {
  /** False when the supplies were taken off */
  readonly power: boolean;
  /** Inputs away from rest, with their position */
  readonly moved: Readonly<Record<string, string>>;
  /** Pulled in or not */
  readonly relays: Readonly<Record<string, 'in' | 'out'>>;
  /** With power or not */
  readonly supplies: Readonly<Record<string, 'on' | 'off'>>;
}

/** What a meter reads. Numbers that cannot be worked out are null */
export interface Reading {
  /** Number of the format */
  readonly format: 1;
  /** How the machine stands */
  readonly state: ReadState;
  /** Terminals of the red and the black probe; null where all conductors were asked for */
  readonly between: readonly [string, string] | null;
  /** V at the first terminal against the second: signed for DC, RMS for AC; null with the power off, and where it cannot be told */
  readonly volts: number | null;
  /** Direct or alternating; null without volts */
  readonly kind: 'dc' | 'ac' | null;
  /** With the power off: whether there is a way through at all */
  readonly through: boolean | null;
  /** ohm with the power off; null where there is no way through, or where it cannot be told */
  readonly ohms: number | null;
  /** Whether a continuity tester sounds (below 50 ohm); null where it cannot be told */
  readonly beeps: boolean | null;
  /** Every conductor, where no probes were named */
  readonly nets: readonly NetReading[];
  /** Every core, where no probes were named */
  readonly cores: readonly CoreReading[];
  /** Sentences on what the numbers do not say */
  readonly notes: readonly string[];
}
