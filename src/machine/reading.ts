/** What a meter reads, as data; `pullin read --json` prints it. */

/** One conductor: terminals that are one piece of metal, and its volts against the reference named. */
export interface NetReading {
  readonly terminals: readonly string[];
  /** V, null where nothing ties it to a supply */
  readonly volts: number | null;
  readonly kind: 'dc' | 'ac' | null;
  /** terminal that the volts are against */
  readonly against: string | null;
}

/** One core and its current, positive from `from` to `to`; a magnitude for AC. */
export interface CoreReading {
  readonly run: number;
  /** the run as the file counts it, with its piece: `3`, `3.2` */
  readonly mark: string;
  readonly name: string | null;
  readonly colour: string;
  readonly from: string;
  readonly to: string;
  /** A */
  readonly amps: number | null;
}

export interface ReadState {
  /** false when the supplies were taken off */
  readonly power: boolean;
  /** inputs away from rest, with their position */
  readonly moved: Readonly<Record<string, string>>;
  readonly relays: Readonly<Record<string, 'in' | 'out'>>;
  readonly supplies: Readonly<Record<string, 'on' | 'off'>>;
}

/** Format 1 of a reading. Numbers that cannot be worked out are null. */
export interface Reading {
  readonly format: 1;
  readonly state: ReadState;
  readonly between: readonly [string, string] | null;
  /** V at the first terminal against the second: signed for DC, RMS for AC; null with the power off, and where it cannot be told */
  readonly volts: number | null;
  readonly kind: 'dc' | 'ac' | null;
  /** with the power off: whether there is a way through at all */
  readonly through: boolean | null;
  /** ohm with the power off; null where there is no way through, or where it cannot be told */
  readonly ohms: number | null;
  /** whether a continuity tester sounds (below 50 ohm); null where it cannot be told */
  readonly beeps: boolean | null;
  readonly nets: readonly NetReading[];
  readonly cores: readonly CoreReading[];
  /** sentences on what the numbers do not say */
  readonly notes: readonly string[];
}
