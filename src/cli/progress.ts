/** Progress on standard error for work that takes longer than a blink. */
import type { Session } from './io.ts';

/** ms of quiet before the first word, and between two; in a pipe, where each word is a line that stays */
const QUIET = { terminal: 500, pipe: 2000 } as const;

/**
 * Tells how far a piece of work is, and never less than before. On a terminal it is one line that `done` wipes; in a pipe
 * a line each time there is something new to tell.
 */
export function progress(what: string, session: Session<unknown>) {
  const terminal = session.io.stderr.isTTY === true;
  const quiet = terminal ? QUIET.terminal : QUIET.pipe;
  let last = Date.now();
  let shown = 0;
  let told = '';
  let most = 0;
  const write = (text: string) => {
    session.err.raw(terminal ? `\r${text.padEnd(shown)}` : `${text}\n`);
    shown = text.length;
    told = text;
  };
  return {
    step: (done: number, of: number): void => {
      if (of > 0) most = Math.max(most, Math.floor((100 * done) / of));
      if (Date.now() - last < quiet) return;
      last = Date.now();
      const text = `${what}${of > 0 ? ` ${most} %` : ''}`;
      if (terminal || text !== told) write(text);
    },
    done: (): void => {
      if (terminal && shown > 0) session.err.raw(`\r${' '.repeat(shown)}\r`);
    },
  };
}
