/**
 * How much has been worked out so far, in steps of the solvers: nets gone through, links of a network made, nodes of diagrams
 * looked for. About ten million are a second of a small machine. What is sought only as long as it is worth it is given up by
 * this count and not by the clock, so that an answer is the same on every machine. Only differences mean anything.
 */
let done = 0;

export function spend(steps: number): void {
  done += steps;
}

export function effort(): number {
  return done;
}
