/** The log of a hunt: one plain line for each answer, written at once, so that whatever ends the hunt leaves it whole. */
import { open, unlink } from 'node:fs/promises';
import { resolve } from 'node:path';
import type { Hunt } from '../meter/hunt/hunt.ts';
import type { PlainForm, Said } from '../meter/hunt/plain-form.ts';
import { printable } from '../text/escape.ts';
import { directory } from './input.ts';
import type { Session } from './io.ts';
import { Problem } from './status.ts';

const HEAD =
  '# What was seen on a hunt with pullin. Lines may be added by hand; those that begin with # are passed over.\n';
/** What was done about a suspect and did not help; and about another at the same time. */
const NO_HELP = 'no help: ';
const NOR = 'nor: ';
const BEGINNING = '# What was seen on a hunt';
/** Largest log that is read, bytes. */
const LARGEST = 100_000;
/** Most lines of it that tell something; a hunt takes a tenth. */
const MOST_LINES = 300;

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
    const text = await textOf(path, name);
    if (text !== undefined && !text.startsWith(BEGINNING))
      throw new Problem(`${name} is there already and is no log of a hunt; name another file`);
    const log = new HuntLog(path, name, (text ?? '').split('\n'), Promise.resolve());
    if (text === undefined) await log.begin();
    else if (!text.endsWith('\n')) await log.put('\n');
    return log;
  }

  /** Brings a hunt to where the log left off. Throws a `Problem` for a line that cannot be read. */
  resume(hunt: Hunt, form: PlainForm): void {
    let told = 0;
    for (const [i, line] of this.lines.entries()) {
      const text = line.trim();
      if (text === '' || text.startsWith('#')) continue;
      if (++told > MOST_LINES)
        throw new Problem(`${this.name} tells of more than ${MOST_LINES} things; begin another log`);
      const wrong = taken(hunt, form, text);
      if (wrong !== undefined) throw new Problem(`${this.name}, line ${i + 1}: ${wrong}`);
    }
  }

  /** Adds that what was done about these suspects, all at once, did not help. */
  noHelp(suspects: readonly string[]): void {
    for (const [k, text] of suspects.entries()) this.say(`${k === 0 ? NO_HELP : NOR}${text}`);
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

  /** Makes the file; never in the place of one that has come there meanwhile. */
  private begin(): Promise<void> {
    return this.tried(whole(this.path, 'ax', HEAD));
  }

  private put(text: string): Promise<void> {
    return this.tried(whole(this.path, 'a', text));
  }

  private async tried(work: Promise<void>): Promise<void> {
    try {
      await work;
    } catch (error) {
      throw new Problem(
        `${this.name}: cannot be written (${(error as NodeJS.ErrnoException).code ?? 'unknown'})`,
      );
    }
  }
}

/** Adds a text to a file, all of it or nothing: half a line could not be read again. A file that was begun for it goes. */
async function whole(path: string, flag: 'a' | 'ax', text: string): Promise<void> {
  const handle = await open(path, flag);
  const { size } = await handle.stat();
  try {
    await handle.writeFile(text, 'utf8');
  } catch (error) {
    await handle.truncate(size).catch(() => undefined);
    if (flag === 'ax') await unlink(path).catch(() => undefined);
    throw error;
  } finally {
    await handle.close();
  }
}

/** What stands in the file; undefined where there is none. Throws a `Problem` for what is no file of text, or too large. */
async function textOf(path: string, name: string): Promise<string | undefined> {
  try {
    const handle = await open(path, 'r');
    try {
      const stat = await handle.stat();
      if (!stat.isFile() || stat.size > LARGEST)
        throw new Problem(`${name} is there already and is no log of a hunt; name another file`);
      return await handle.readFile('utf8');
    } finally {
      await handle.close();
    }
  } catch (error) {
    if (error instanceof Problem) throw error;
    const { code } = error as NodeJS.ErrnoException;
    if (code === 'ENOENT') return undefined;
    throw new Problem(`${name}: cannot be read as a log (${code ?? 'unknown'})`);
  }
}

/** What is wrong with a line of a log; undefined where it was taken in. */
function taken(hunt: Hunt, form: PlainForm, text: string): string | undefined {
  if (text === 'undo') {
    hunt.undo();
    return undefined;
  }
  if (text.startsWith('mended: ')) {
    hunt.putRight(text.slice('mended: '.length));
    return undefined;
  }
  // What was tried with the one before is taken back with it.
  const nor = text.startsWith(NOR);
  if (nor || text.startsWith(NO_HELP)) {
    const told = text.slice(nor ? NOR.length : NO_HELP.length);
    const named = () => hunt.all.filter((s) => s.faults.map((f) => f.text).join(', and ') === told);
    // Two at once are suspects only where no single one fits.
    if (named().length === 0) hunt.withPairs();
    if (named().length === 0) return `"${told}" is nothing that is suspected in this plan`;
    hunt.cleared(named(), nor);
    return undefined;
  }
  const space = text.indexOf(' ');
  const [word, rest] = [text.slice(0, space), text.slice(space + 1)];
  let read: { ok: true; value: readonly Said[] } | { ok: false; problem: string };
  if (word === 'saw') read = form.saw(rest);
  else if (word === 'reading') {
    const one = form.reading(rest);
    read = one.ok ? { ok: true, value: [one.value] } : one;
  } else
    return `found "${text}", expected a line that begins with saw, reading, undo, no help, nor or mended`;
  if (!read.ok) return read.problem;
  for (const { observation, answer } of read.value) hunt.answer(observation, answer);
  return undefined;
}
