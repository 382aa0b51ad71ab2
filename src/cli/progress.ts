/** Progress on standard error for work that takes longer than a blink. */
import type { Session } from './io.ts';

/** ms of quiet before the first word, and between two */
const QUIET = 500;

/** Tells how far a piece of work is, on a terminal only, and never less than before; `done` wipes the line. */
export function progress(what: string, session: Session) {
  const started = Date.now();
  let last = started;
  let shown = 0;
  let most = 0;
  const terminal = session.io.stderr.isTTY === true;
  return {
    step: (done: number, of: number): void => {
      if (!terminal || Date.now() - last < QUIET) return;
      last = Date.now();
      if (of > 0) most = Math.max(most, Math.floor((100 * done) / of));
      const text = `${what}${of > 0 ? ` ${most} %` : ''}`;
      session.err.write(`\r${text.padEnd(shown)}`);
      shown = text.length;
    },
    done: (): void => {
      if (shown > 0) session.err.write(`\r${' '.repeat(shown)}\r`);
    },
  };
}
