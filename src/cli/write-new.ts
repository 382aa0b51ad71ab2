/** Writing a file that a command makes, whole or not at all, and never over another one unasked. */
import { randomBytes } from 'node:crypto';
import { type Stats, unlinkSync } from 'node:fs';
import { link, lstat, open, realpath, rename, stat, unlink } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import { Problem } from './status.ts';
import { putAwayOnSignal } from './tidy.ts';

const REASONS: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such folder',
  ENOTDIR: 'there is no such folder',
  EACCES: 'permission denied',
  EPERM: 'permission denied',
  EROFS: 'the disk may only be read',
  ENOSPC: 'the disk is full',
  EDQUOT: 'the disk is full',
  ENAMETOOLONG: 'the name is too long',
  EISDIR: 'is a folder; name a file in it',
  ELOOP: 'is a link that leads back to itself',
  ERR_INVALID_ARG_VALUE: 'is no file name',
};

/** File systems without hard links answer with one of these. */
const NO_LINKS = new Set(['EPERM', 'ENOTSUP', 'EOPNOTSUPP', 'ENOSYS', 'EMLINK', 'EXDEV']);

const codeOf = (error: unknown): string => (error as NodeJS.ErrnoException).code ?? String(error);

/**
 * Writes `text` to `path`; `name` is what to call it in messages. The text is complete in a file beside it before it
 * gets its name, so a failure leaves what was there. Without `force` a file that exists stays, even one that appears
 * meanwhile; with it, a link is followed and stays a link, and the mode stays. Throws a `Problem` that says why nothing
 * was written.
 */
export async function writeOutput(
  path: string,
  name: string,
  text: Buffer | string,
  force: boolean,
): Promise<void> {
  try {
    const target = force ? await throughLinks(path) : path;
    const before = await about(target, name);
    if (before && !force) throw exists(name);
    const temporary = join(dirname(target), `.pullin-${randomBytes(6).toString('hex')}.tmp`);
    const done = putAwayOnSignal(() => unlinkSync(temporary));
    try {
      await fill(temporary, text, before);
      if (force) await rename(temporary, target);
      else await give(temporary, target, name, text);
    } finally {
      await unlink(temporary).catch(() => undefined);
      done();
    }
  } catch (error) {
    if (error instanceof Problem) throw error;
    throw new Problem(`${name}: not written: ${REASONS[codeOf(error)] ?? codeOf(error)}`);
  }
}

/**
 * Whether two paths are one file: by links, by hard links, or by spelling alone where the file system does not tell
 * capitals apart. False where either is missing.
 */
export async function isSameFile(a: string, b: string): Promise<boolean> {
  const [x, y] = await Promise.all([a, b].map((path) => stat(path).catch(() => undefined)));
  return x !== undefined && y !== undefined && x.dev === y.dev && x.ino === y.ino;
}

const exists = (name: string) =>
  new Problem(`${name}: is there already, so it is left as it is; --force replaces it`);

async function throughLinks(path: string): Promise<string> {
  try {
    return await realpath(path);
  } catch (error) {
    if (codeOf(error) !== 'ENOENT') throw error;
  }
  // Nothing there, or a link to nothing: the link itself is replaced.
  return join(await realpath(dirname(path)), basename(path));
}

/** What is at the path, which must be a plain file where something is; a link to nothing counts as a file. */
async function about(path: string, name: string): Promise<Stats | undefined> {
  try {
    const found = await lstat(path);
    if (found.isDirectory()) throw new Problem(`${name}: is a folder; name a file in it`);
    if (!found.isFile() && !found.isSymbolicLink())
      throw new Problem(`${name}: is no plain file, so it is not written to`);
    return found;
  } catch (error) {
    if (codeOf(error) === 'ENOENT') return undefined;
    throw error;
  }
}

async function fill(path: string, text: Buffer | string, before: Stats | undefined): Promise<void> {
  const handle = await open(path, 'wx', 0o666);
  try {
    await handle.writeFile(text);
    if (before?.isFile()) await handle.chmod(before.mode & 0o777);
    await handle.sync();
  } finally {
    await handle.close();
  }
}

/** Gives the finished file its name unless something has it by now, which no rename could tell. */
async function give(temporary: string, target: string, name: string, text: Buffer | string): Promise<void> {
  try {
    await link(temporary, target);
  } catch (error) {
    if (codeOf(error) === 'EEXIST') throw exists(name);
    if (!NO_LINKS.has(codeOf(error))) throw error;
    await writeDirectly(target, name, text);
  }
}

async function writeDirectly(target: string, name: string, text: Buffer | string): Promise<void> {
  const handle = await open(target, 'wx', 0o666).catch((error: unknown) => {
    throw codeOf(error) === 'EEXIST' ? exists(name) : error;
  });
  try {
    await handle.writeFile(text);
    await handle.sync();
  } catch (error) {
    await unlink(target).catch(() => undefined);
    throw error;
  } finally {
    await handle.close();
  }
}
