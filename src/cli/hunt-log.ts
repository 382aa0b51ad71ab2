/** The log of a hunt: one plain line for each answer, written at once, so that whatever ends the hunt leaves it whole. */
import { appendFile, readFile } from 'node:fs/promises';
import { resolve } from 'node:path';
import type { Hunt } from '../meter/hunt/hunt.ts';
import type { PlainForm, Said } from '../meter/hunt/plain-form.ts';
import { printable } from '../text/escape.ts';
import { directory } from './input.ts';
import type { Session } from './io.ts';
import { Problem } from './status.ts';

const HEAD =
  '# What was seen on a hunt with pullin. Lines may be added by hand; those that begin with # are passed over.\n';
/** Largest log that is read, characters. */
const LARGEST = 1_000_000;

export class HuntLog {
  private constructor(
    private readonly path: string,
    private readonly name: string,
    private readonly lines: readonly string[],
    private pending: Promise<void>,
  ) {}

  /** Reads what is there, or begins a new one. Throws a `Problem` where it is no log or cannot be written. */
  static async open(file: string, session: Session): Promise<HuntLog> {
    const path = resolve(directory(session.io), file);
    const name = printable(file);
    let text: string | undefined;
    try {
      text = await readFile(path, 'utf8');
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code !== 'ENOENT')
        throw new Problem(`${name}: cannot be read as a log`);
    }
    if (text !== undefined && (text.length > LARGEST || !text.startsWith('# What was seen on a hunt')))
      throw new Problem(`${name} is there already and is no log of a hunt; name another file`);
    const log = new HuntLog(path, name, (text ?? '').split('\n'), Promise.resolve());
    if (text === undefined) await log.put(HEAD);
    else if (text !== '' && !text.endsWith('\n')) await log.put('\n');
    return log;
  }

  /** Brings a hunt to where the log left off. Throws a `Problem` for a line that cannot be read. */
  resume(hunt: Hunt, form: PlainForm): void {
    for (const [i, line] of this.lines.entries()) {
      const text = line.trim();
      if (text === '' || text.startsWith('#')) continue;
      const wrong = taken(hunt, form, text);
      if (wrong !== undefined) throw new Problem(`${this.name}, line ${i + 1}: ${wrong}`);
    }
  }

  /** Adds a line. */
  say(line: string): void {
    this.pending = this.pending.then(() => this.put(`${line}\n`));
    this.pending.catch(() => undefined);
  }

  /** Waits until all is on the disk. Throws a `Problem` where it is not. */
  async written(): Promise<void> {
    await this.pending;
  }

  private async put(text: string): Promise<void> {
    try {
      await appendFile(this.path, text, 'utf8');
    } catch (error) {
      throw new Problem(
        `${this.name}: cannot be written (${(error as NodeJS.ErrnoException).code ?? 'unknown'})`,
      );
    }
  }
}

/** What is wrong with a line of a log; undefined where it was taken in. */
function taken(hunt: Hunt, form: PlainForm, text: string): string | undefined {
  if (text === 'undo') {
    hunt.undo();
    return undefined;
  }
  if (text.startsWith('no help: ')) {
    const told = text.slice('no help: '.length);
    const out = hunt.all.filter((s) => s.faults.map((f) => f.text).join(', and ') === told);
    hunt.cleared(out);
    return undefined;
  }
  const space = text.indexOf(' ');
  const [word, rest] = [text.slice(0, space), text.slice(space + 1)];
  let read: { ok: true; value: readonly Said[] } | { ok: false; problem: string };
  if (word === 'saw') read = form.saw(rest);
  else if (word === 'reading') {
    const one = form.reading(rest);
    read = one.ok ? { ok: true, value: [one.value] } : one;
  } else return `found "${text}", expected a line that begins with saw, reading, undo or no help`;
  if (!read.ok) return read.problem;
  for (const { observation, answer } of read.value) hunt.answer(observation, answer);
  return undefined;
}
