/** `pullin check --watch PLAN...`: checks again on every save, and tells what that changed. */
import { type FSWatcher, watch as watchFolder } from 'node:fs';
import { realpath } from 'node:fs/promises';
import { basename, dirname, join, resolve } from 'node:path';
import type { Report } from '../findings/report-model.ts';
import { printable } from '../text/escape.ts';
import type { CheckStages } from './check-stages.ts';
import { directory, loadPlanFile, studyOf } from './input.ts';
import { Output, type Session } from './io.ts';
import { type LookOptions, textOf } from './print.ts';
import { Problem, STATUS, statusOf, worse } from './status.ts';

/** ms without an event after which a file counts as saved. */
const QUIET = 80;
/** Such waits after which it is read even so. */
const MOST_ROUNDS = 25;
/** ms after which a file that cannot be read is read again before that is told: it may be half saved. */
const PATIENCE = 250;

/** What is known of one plan. */
interface Watched {
  readonly file: string;
  /** the bytes checked last, and what the check said of the last plan that could be read */
  bytes: Buffer | undefined;
  report: Report | undefined;
  /** what was told of a file that cannot be read; empty while it can */
  told: string;
}

const pause = (ms: number) => new Promise((done) => setTimeout(done, ms));

/** The plan of a file and its check; else why it cannot be read, in lines. */
async function read(file: string, session: Session<CheckStages>) {
  let told = '';
  const quiet: Session<CheckStages> = {
    ...session,
    err: new Output(() => ({ write: (text) => (told += text) })),
    exit: () => undefined,
  };
  const found = await loadPlanFile(file, quiet);
  return found ?? told;
}

/** Reads the file again and tells what changed; nothing where it did not. */
async function again(
  one: Watched,
  several: boolean,
  look: LookOptions,
  session: Session<CheckStages>,
): Promise<void> {
  let found = await read(one.file, session);
  if (typeof found === 'string') {
    await pause(PATIENCE);
    found = await read(one.file, session);
  }
  const time = new Date().toTimeString().slice(0, 8);
  const head = several ? `\n${time} ${printable(one.file)}\n` : `\n${time}\n`;
  if (typeof found === 'string') {
    if (found !== one.told) session.err.write(`${head}${found}`);
    one.told = found;
    return;
  }
  const wasUnreadable = one.told !== '';
  one.told = '';
  if (one.bytes?.equals(found.bytes) && !wasUnreadable) return;
  one.bytes = found.bytes;
  const before = one.report;
  const after = await session.stages.check(await studyOf(found.plan));
  one.report = after;
  const { checkDocument, compare, comparedBlocks } = await import('./late/check.ts');
  const blocks =
    before === undefined ? checkDocument(after, {}) : comparedBlocks(before, after, compare(before, after));
  session.out.write(`${head}${await textOf(blocks, look, session)}`);
}

/** The folders that the files are in, and those of what they are links to; an event names a file by its last name. */
async function foldersOf(
  files: readonly string[],
  session: Session<CheckStages>,
): Promise<Map<string, Set<string>>> {
  const folders = new Map<string, Set<string>>();
  for (const file of files) {
    const path = resolve(directory(session.io), file);
    const target = await realpath(path).catch(() => path);
    for (const each of [path, target]) {
      const folder = dirname(each);
      folders.set(folder, (folders.get(folder) ?? new Set()).add(join(folder, basename(each))));
    }
  }
  return folders;
}

/**
 * Watches the folders of the files until it is interrupted, or until nobody reads the output any more. A folder, not a file: an
 * editor that writes a new file and renames it leaves the old one behind. Ends with the status of the last checks.
 */
export async function watch(
  files: readonly string[],
  look: LookOptions,
  session: Session<CheckStages>,
  first: (report: Report) => Promise<void>,
): Promise<void> {
  const all: Watched[] = files.map((file) => ({ file, bytes: undefined, report: undefined, told: '' }));
  const watchers: FSWatcher[] = [];
  let ring: () => void = () => undefined;
  let failure: Error | undefined;
  let stopped = false;
  let pending = false;
  const wake = () => {
    pending = true;
    ring();
  };
  const stop = () => {
    stopped = true;
    ring();
  };
  session.io.once?.('SIGINT', stop);
  session.io.once?.('SIGTERM', stop);
  try {
    for (const [folder, names] of await foldersOf(files, session)) {
      const watcher = watchFolder(folder, (_event, name) => {
        if (name === null || names.has(join(folder, name))) wake();
      });
      watcher.on('error', (error) => {
        failure = error;
        stop();
      });
      watchers.push(watcher);
    }
    for (const one of all) {
      const found = await read(one.file, session);
      if (typeof found === 'string') {
        session.err.write(found);
        one.told = found;
        continue;
      }
      one.bytes = found.bytes;
      one.report = await session.stages.check(await studyOf(found.plan));
      await first(one.report);
    }
    session.err.write(
      `\nWatching ${all.length === 1 ? printable(all[0]!.file) : `${all.length} plans`}. Ctrl-C ends.\n`,
    );
    while (!stopped && !session.out.closed) {
      if (!pending) await new Promise<void>((done) => (ring = done));
      if (stopped) break;
      // As long as events come, somebody is still writing.
      for (let rounds = 0; pending && rounds < MOST_ROUNDS && !stopped; rounds++) {
        pending = false;
        await pause(QUIET);
      }
      for (const one of all) if (!stopped) await again(one, all.length > 1, look, session);
    }
  } catch (error) {
    failure = error as Error;
  } finally {
    for (const watcher of watchers) watcher.close();
    session.io.off?.('SIGINT', stop);
    session.io.off?.('SIGTERM', stop);
  }
  if (failure !== undefined && 'code' in failure)
    throw new Problem(
      failure.code === 'ENOENT'
        ? 'there is no such folder to watch'
        : `the folder of a plan cannot be watched (${String(failure.code)})`,
    );
  if (failure !== undefined) throw failure;
  session.exit(
    all
      .map(({ report }) => (report === undefined ? STATUS.unreadable : statusOf(report.verdict)))
      .reduce((a, b) => worse(a, b), STATUS.pass as number),
  );
}
