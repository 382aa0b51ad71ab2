/** What a meter reads, as data; `pullin read --json` prints it. */

/** One conductor: terminals that are one piece of metal, and its volts against the reference named. */
export interface NetReading {
  /** as the plan marks them */
  readonly terminals: readonly string[];
  /** V, null where nothing ties it to a supply */
  readonly volts: number | null;
  /** direct or alternating; null without volts */
  readonly kind: 'dc' | 'ac' | null;
  /** terminal that the volts are against */
  readonly against: string | null;
}

/** One core and its current, positive from `from` to `to`; a magnitude for AC. */
export interface CoreReading {
  /** place in the plan, from one */
  readonly run: number;
  /** the run as the file counts it, with its piece: `3`, `3.2` */
  readonly mark: string;
  /** what the plan calls the run; null for nothing */
  readonly name: string | null;
  /** colour of the core */
  readonly colour: string;
  /** terminal of its first end */
  readonly from: string;
  /** terminal of its second end */
  readonly to: string;
  /** A */
  readonly amps: number | null;
}

/** How the machine stands. */
export interface ReadState {
  /** false when the supplies were taken off */
  readonly power: boolean;
  /** inputs away from rest, with their position */
  readonly moved: Readonly<Record<string, string>>;
  /** pulled in or not */
  readonly relays: Readonly<Record<string, 'in' | 'out'>>;
  /** with power or not */
  readonly supplies: Readonly<Record<string, 'on' | 'off'>>;
}

/** Format 1 of a reading. Numbers that cannot be worked out are null. */
export interface Reading {
  /** number of the format */
  readonly format: 1;
  /** how the machine stands */
  readonly state: ReadState;
  /** terminals of the two probes; null for a table of all */
  readonly between: readonly [string, string] | null;
  /** V at the first terminal against the second: signed for DC, RMS for AC; null with the power off, and where it cannot be told */
  readonly volts: number | null;
  /** direct or alternating; null without volts */
  readonly kind: 'dc' | 'ac' | null;
  /** with the power off: whether there is a way through at all */
  readonly through: boolean | null;
  /** ohm with the power off; null where there is no way through, or where it cannot be told */
  readonly ohms: number | null;
  /** whether a continuity tester sounds (below 50 ohm); null where it cannot be told */
  readonly beeps: boolean | null;
  /** every conductor, where no probes were named */
  readonly nets: readonly NetReading[];
  /** every core, where no probes were named */
  readonly cores: readonly CoreReading[];
  /** sentences on what the numbers do not say */
  readonly notes: readonly string[];
}
