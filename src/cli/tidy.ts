/** What is to be put away when a command is interrupted: temporary files, and a browser at work. */

const SIGNALS = ['SIGINT', 'SIGTERM', 'SIGHUP'] as const;
const open = new Set<() => void>();

function interrupted(signal: NodeJS.Signals): void {
  for (const put of [...open].reverse()) {
    try {
      put();
    } catch {
      // What cannot be put away keeps nothing else from it.
    }
  }
  for (const each of SIGNALS) process.off(each, interrupted);
  // Whoever called learns of it as if nothing had been in between.
  process.kill(process.pid, signal);
}

/** Until the function it gives back is called, a signal that ends the program calls `put` first. */
export function putAwayOnSignal(put: () => void): () => void {
  if (open.size === 0) for (const signal of SIGNALS) process.on(signal, interrupted);
  open.add(put);
  return () => {
    open.delete(put);
    if (open.size === 0) for (const signal of SIGNALS) process.off(signal, interrupted);
  };
}
