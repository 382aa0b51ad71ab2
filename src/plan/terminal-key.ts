/** The one name of a terminal inside the program: `PART.TERMINAL`, or the bare name of a joint. */

export function terminalKey(part: string, terminal: string): string {
  return terminal === '' ? part : `${part}.${terminal}`;
}

/** Part and terminal of a key; the terminal of a joint is empty. Names of parts have no dot in them. */
export function splitTerminalKey(key: string): { readonly part: string; readonly terminal: string } {
  const dot = key.indexOf('.');
  return dot < 0 ? { part: key, terminal: '' } : { part: key.slice(0, dot), terminal: key.slice(dot + 1) };
}

/** The part that a key is a terminal of. */
export function partOfKey(key: string): string {
  return splitTerminalKey(key).part;
}
