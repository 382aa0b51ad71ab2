/** A PDF from HTML, by a Chromium that is installed on this machine. */
import { spawn } from 'node:child_process';
import { rmSync } from 'node:fs';
import { access, constants, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { delimiter, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { printable } from '../text/escape.ts';
import type { Io } from './io.ts';
import { Problem } from './status.ts';
import { putAwayOnSignal } from './tidy.ts';

/** Names under which it is found on a search path; `CHROMIUM` may name another. */
const NAMES = ['chromium', 'chromium-browser', 'chrome'];
/** ms after which a browser that has not printed is stopped */
const PATIENCE = 120_000;

/** The browser's file, or undefined where none is installed. */
export async function findChromium(env: Io['env']): Promise<string | undefined> {
  const own = env.CHROMIUM;
  if (own !== undefined && own !== '') return (await runs(own)) ? own : undefined;
  const folders = (env.PATH ?? '').split(delimiter).filter((f) => f !== '');
  for (const name of NAMES)
    for (const folder of folders) if (await runs(join(folder, name))) return join(folder, name);
  return undefined;
}

async function runs(path: string): Promise<boolean> {
  return access(path, constants.X_OK).then(
    () => true,
    () => false,
  );
}

/** Prints a page without scripts. Throws a `Problem` where the browser fails or takes too long, or has no room to work in. */
export async function printPdf(html: string, browser: string): Promise<Buffer> {
  const folder = await mkdtemp(join(tmpdir(), 'pullin-')).catch(noRoom);
  const done = putAwayOnSignal(() => rmSync(folder, { recursive: true, force: true, maxRetries: 5 }));
  try {
    const page = join(folder, 'sheet.html');
    const pdf = join(folder, 'sheet.pdf');
    await writeFile(page, html, { mode: 0o600 }).catch(noRoom);
    await run(browser, [
      '--headless',
      '--disable-gpu',
      '--disable-extensions',
      // Its own sandbox cannot be set up by the superuser; the page has no scripts and may load nothing.
      ...(process.getuid?.() === 0 ? ['--no-sandbox'] : []),
      `--user-data-dir=${join(folder, 'profile')}`,
      '--no-pdf-header-footer',
      `--print-to-pdf=${pdf}`,
      pathToFileURL(page).href,
    ]);
    const made = await readFile(pdf).catch(() => undefined);
    if (made === undefined || !isWhole(made)) throw new Problem(NONE);
    return made;
  } finally {
    await rm(folder, { recursive: true, force: true, maxRetries: 5 }).catch(() => undefined);
    done();
  }
}

function noRoom(error: NodeJS.ErrnoException): never {
  const why = error.code === 'ENOSPC' ? 'the disk is full' : (error.code ?? 'unknown');
  throw new Problem(
    `nothing can be put into the folder for temporary files ${printable(tmpdir())} (${why}), which a PDF is printed from; write the sheet as .html and print that`,
  );
}

const NONE = 'the browser made no whole PDF, so nothing is written; write the sheet as .html and print that';

/** Whether a PDF has its head and its end: ISO 32000-1, 7.5.2 and 7.5.5. One cut short has no end. */
function isWhole(pdf: Buffer): boolean {
  return (
    pdf.subarray(0, 5).toString('latin1') === '%PDF-' &&
    /%%EOF\s*$/.test(pdf.subarray(-32).toString('latin1'))
  );
}

function run(command: string, args: readonly string[]): Promise<void> {
  return new Promise((printed, fail) => {
    // In a group of its own, so that all it starts can be stopped with it.
    const child = spawn(command, args, { stdio: 'ignore', detached: process.platform !== 'win32' });
    const kill = () => {
      if (process.platform === 'win32' || child.pid === undefined) child.kill('SIGKILL');
      else process.kill(-child.pid, 'SIGKILL');
    };
    const done = putAwayOnSignal(kill);
    const stop = setTimeout(() => {
      done();
      kill();
      fail(new Problem('the browser took too long to print; write the sheet as .html and print that'));
    }, PATIENCE);
    child.on('error', (error) => {
      clearTimeout(stop);
      done();
      fail(
        new Problem(
          `the browser could not be started (${(error as NodeJS.ErrnoException).code ?? 'unknown'})`,
        ),
      );
    });
    child.on('close', (status, signal) => {
      clearTimeout(stop);
      done();
      if (status === 0) return printed();
      fail(new Problem(`${NONE} (it ended with ${signal ?? status})`));
    });
  });
}
