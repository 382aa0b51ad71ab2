/**
 * How much has been worked out so far, in steps of the solvers: nets gone through, links of a network made, nodes of diagrams
 * looked for. About ten million are a second of a small machine. What is sought only as long as it is worth it is given up by
 * this count and not by the clock, so that an answer is the same on every machine. Only differences mean anything.
 */
let done = 0;

/**
 * Steps after which one search or weighing is given up. Measured: shops of 300 gates with half their figures left out stay below
 * it, but for twenty zones on one trunk; with a tenth of it those of twelve gates were told less than can be found.
 */
export const MOST_EFFORT = 8_000_000;

/** The same of one for which no such shop needs as much: repairs that are tried, volts where relays are in doubt. */
export const SOME_EFFORT = 1_000_000;

export function spend(steps: number): void {
  done += steps;
}

export function effort(): number {
  return done;
}
