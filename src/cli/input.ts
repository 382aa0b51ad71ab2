/** Reading what the command line names: a file or standard input, never more than the cap. */
import { closeSync, fstatSync, openSync, readSync } from 'node:fs';
import { resolve } from 'node:path';
import type { Unreadable } from '../findings/report-model.ts';
import type { Plan } from '../plan/plan.ts';
import type { WhatIfs } from '../plan/what-if/what-if.ts';
import type { Study } from '../study/study.ts';
import { printable } from '../text/escape.ts';
import type { CheckStages } from './check-stages.ts';
import type { Io, Session } from './io.ts';
import { Problem, STATUS } from './status.ts';

/** Bytes a plan file may have. */
export const MOST_BYTES = 5_000_000;

const REASONS: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such file',
  ENOTDIR: 'there is no such file',
  EISDIR: 'is a directory; name the plan file in it',
  EACCES: 'may not be read: permission denied',
  EPERM: 'may not be read: permission denied',
  ELOOP: 'is a link that leads back to itself',
  ENAMETOOLONG: 'the name is too long',
  ERR_INVALID_ARG_VALUE: 'is no file name',
};

function problem(file: string, reason: string): Problem {
  return new Problem(`${printable(file === '-' ? 'standard input' : file)}: ${reason}`);
}

const tooLarge = (file: string) =>
  problem(file, `is larger than ${MOST_BYTES / 1e6} MB, the most a plan may have`);

function reasonOf(error: unknown): string {
  const { code } = error as NodeJS.ErrnoException;
  return (code !== undefined && REASONS[code]) || `cannot be read (${code ?? String(error)})`;
}

/** The folder that relative file names start from. */
export function directory(io: Io): string {
  return typeof io.cwd === 'function' ? io.cwd() : (io.cwd ?? process.cwd());
}

/** Without promises, which Node makes ready only when they are asked for: there is nothing else to do meanwhile. */
function readFileCapped(file: string, io: Io): Buffer {
  try {
    const handle = openSync(resolve(directory(io), file), 'r');
    try {
      // One byte above the cap tells a file that is too large; a device without end is left there too.
      const { size } = fstatSync(handle);
      let buffer = Buffer.allocUnsafe(Math.min(MOST_BYTES, Math.max(size, 65_535)) + 1);
      let used = 0;
      while (used <= MOST_BYTES) {
        if (used === buffer.length) {
          buffer = Buffer.concat([buffer], Math.min(buffer.length * 2, MOST_BYTES + 1));
        }
        const bytesRead = readSync(handle, buffer, used, buffer.length - used, null);
        if (bytesRead === 0) return buffer.subarray(0, used);
        used += bytesRead;
      }
    } finally {
      closeSync(handle);
    }
  } catch (error) {
    throw problem(file, reasonOf(error));
  }
  throw tooLarge(file);
}

async function readStdinCapped(io: Io): Promise<Buffer> {
  const chunks: Buffer[] = [];
  let used = 0;
  try {
    for await (const chunk of io.stdin) {
      const bytes = Buffer.from(chunk as Uint8Array | string);
      chunks.push(bytes);
      used += bytes.length;
      if (used > MOST_BYTES) break;
    }
  } catch (error) {
    throw problem('-', reasonOf(error));
  }
  if (used > MOST_BYTES) throw tooLarge('-');
  return Buffer.concat(chunks);
}

/** The bytes of a file, or of standard input for `-`. Throws a `Problem` that says why they cannot be read. */
export async function readInput(file: string, io: Io): Promise<Buffer> {
  if (file === '') throw new Problem('the name of a file is empty; name the plan file');
  return file === '-' ? readStdinCapped(io) : readFileCapped(file, io);
}

/** A plan with the file it was read from, byte by byte. */
export interface PlanFile {
  readonly plan: Plan;
  readonly bytes: Buffer;
}

/**
 * Reads and validates one plan, ready to be asked for everything else: one Study a plan and run. A plan that cannot be read
 * is told on standard error, and to `unread`, and gives `undefined`.
 */
export async function loadStudy(
  file: string,
  session: Session<CheckStages>,
  unread?: (why: Unreadable) => void,
): Promise<Study | undefined> {
  const found = await loadPlanFile(file, session, undefined, unread);
  return found && (await studyOf(found.plan));
}

/** Loaded when it is first needed, so that `--help` does without it. */
export async function studyOf(plan: Plan): Promise<Study> {
  const { Study } = await import('./late/check.ts');
  return Study.of(plan);
}

/** As `loadStudy`, with the plan and the bytes of the file. */
export async function loadPlanFile(
  file: string,
  session: Session<CheckStages>,
  whatIfs?: WhatIfs,
  unread?: (why: Unreadable) => void,
): Promise<PlanFile | undefined> {
  const { io, err, stages } = session;
  try {
    const bytes = await readInput(file, io);
    const result = await stages.readPlan(bytes, file, whatIfs);
    if (result.ok) return { plan: result.plan, bytes };
    const errors = result.errors.map(({ position, message }) => ({ ...position, message }));
    unread?.({ format: 1, file, errors });
    const text = await stages.formatPlanErrors(result.errors);
    err.write(text.endsWith('\n') ? text : `${text}\n`);
  } catch (error) {
    if (!(error instanceof Problem)) throw error;
    err.write(`pullin: ${error.message}\n`);
    unread?.({ format: 1, file, errors: [{ line: null, column: null, message: error.message }] });
  }
  session.exit(STATUS.unreadable);
  return undefined;
}
