/** Putting a new text in the place of a file, whole or not at all. */
import { randomBytes } from 'node:crypto';
import { constants, unlinkSync } from 'node:fs';
import { access, type FileHandle, open, readFile, realpath, rename, stat, unlink } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { Problem } from './status.ts';
import { putAwayOnSignal } from './tidy.ts';

const REASONS: Readonly<Record<string, string>> = {
  ENOENT: 'it is no longer there',
  EACCES: 'permission denied',
  EPERM: 'permission denied',
  EROFS: 'the disk may only be read',
  ENOSPC: 'the disk is full',
  EDQUOT: 'the disk is full',
};

const reasonOf = (error: unknown): string => {
  const { code } = error as NodeJS.ErrnoException;
  return (code !== undefined && REASONS[code]) || code || String(error);
};

/**
 * Writes `after` in place of `before`. A link is followed and stays a link, a file of several names keeps them; the mode stays. The new text is complete in
 * a file beside it before the name changes hands, so a failure leaves the old one. Throws a `Problem` when the file does
 * not hold `before` any more or cannot be written.
 */
export async function replaceFile(path: string, name: string, before: Buffer, after: Buffer): Promise<void> {
  try {
    const target = await realpath(path);
    const about = await stat(target);
    if (!about.isFile()) throw new Problem(`${name}: is no plain file, so it is not written to`);
    // A new file could take the place of one that may not be written to; that is not what its owner wants.
    await access(target, constants.W_OK);
    const temporary = join(dirname(target), `.pullin-${randomBytes(6).toString('hex')}.tmp`);
    const handle = await open(temporary, 'wx', 0o600);
    const done = putAwayOnSignal(() => unlinkSync(temporary));
    try {
      await fill(handle, after, about);
      if (!(await readFile(target)).equals(before))
        throw new Problem(`${name}: has changed since it was read, so it is left as it is; try again`);
      if (about.nlink > 1) await writeThrough(target, before, after);
      else await rename(temporary, target);
      if (about.nlink > 1) await unlink(temporary).catch(() => undefined);
    } catch (error) {
      await unlink(temporary).catch(() => undefined);
      throw error;
    } finally {
      done();
    }
    await settle(dirname(target));
  } catch (error) {
    if (error instanceof Problem) throw error;
    throw new Problem(`${name}: could not be written, so it is left as it is: ${reasonOf(error)}`);
  }
}

/** A file of several names keeps them all: it is written where it is, and where that fails the old text is put back. */
async function writeThrough(target: string, before: Buffer, after: Buffer): Promise<void> {
  const handle = await open(target, 'r+');
  const put = async (text: Buffer) => {
    for (let at = 0; at < text.length; )
      at += (await handle.write(text, at, text.length - at, at)).bytesWritten;
    await handle.truncate(text.length);
    await handle.sync();
  };
  try {
    await put(after).catch(async (error: unknown) => {
      await put(before);
      throw error;
    });
  } finally {
    await handle.close();
  }
}

interface Owned {
  readonly mode: number;
  readonly uid: number;
  readonly gid: number;
}

async function fill(handle: FileHandle, text: Buffer, { mode, uid, gid }: Owned): Promise<void> {
  try {
    await handle.writeFile(text);
    const own = await handle.stat();
    // Only the administrator may give files away; for others the file is theirs already, or becomes so.
    if (own.uid !== uid || own.gid !== gid) await handle.chown(uid, gid).catch(() => undefined);
    await handle.chmod(mode & 0o7777);
    await handle.sync();
  } finally {
    await handle.close();
  }
}

/** The new name reaches the disk as well, where the system lets a folder be synced. */
async function settle(folder: string): Promise<void> {
  const handle = await open(folder, 'r').catch(() => undefined);
  await handle?.sync().catch(() => undefined);
  await handle?.close().catch(() => undefined);
}
