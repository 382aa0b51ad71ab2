/** A file that a command makes from a plan: where it goes, and that it never takes the place of the plan. */
import { stat } from 'node:fs/promises';
import { basename, resolve } from 'node:path';
import { printable } from '../text/escape.ts';
import { directory } from './input.ts';
import type { Session } from './io.ts';
import { Problem } from './status.ts';
import { isSameFile, writeOutput } from './write-new.ts';

export interface Making {
  /** plan file as typed; `-` is standard input */
  readonly file: string;
  /** file to write as typed */
  readonly output: string;
  readonly force: boolean;
}

/** Throws a `Problem` when the file to write is the plan itself, by whatever name. */
export async function refusePlan({ file, output }: Making, session: Session): Promise<string> {
  const path = resolve(directory(session.io), output);
  if (file !== '-' && (await isSameFile(path, resolve(directory(session.io), file))))
    throw new Problem(`${printable(output)} is the plan itself; write to another name`);
  return path;
}

/** Writes what was made and returns the name to tell of. Throws a `Problem` as `writeOutput` does. */
export async function writeMade(making: Making, content: Buffer | string, session: Session): Promise<string> {
  const path = await refusePlan(making, session);
  const name = printable(making.output);
  await writeOutput(path, name, content, making.force);
  return name;
}

/** The file to write where none is named: called as the plan, in the folder one is in. */
export function besidePlan(file: string, end: string): string {
  if (file === '-') throw new Problem('a plan on standard input has no name; name the file to write with -o');
  return `${basename(file).replace(/\.ya?ml$/i, '')}${end}`;
}

/** The day a file was last changed, or the one that SOURCE_DATE_EPOCH gives for builds that must come out the same. */
export async function dateOf(file: string, session: Session): Promise<string | undefined> {
  const epoch = session.io.env.SOURCE_DATE_EPOCH;
  if (epoch !== undefined && /^\d{1,11}$/.test(epoch)) return day(new Date(Number(epoch) * 1000));
  if (file === '-') return undefined;
  const about = await stat(resolve(directory(session.io), file)).catch(() => undefined);
  return about === undefined ? undefined : day(about.mtime);
}

function day(date: Date): string {
  return date.toISOString().slice(0, 10);
}
