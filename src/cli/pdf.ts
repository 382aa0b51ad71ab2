/** A PDF from HTML, by a Chromium that is installed on this machine. */
import { spawn } from 'node:child_process';
import { access, constants, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { delimiter, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Io } from './io.ts';
import { Problem } from './status.ts';

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

/** Prints a page without scripts. Throws a `Problem` where the browser fails or takes too long. */
export async function printPdf(html: string, browser: string): Promise<Buffer> {
  const folder = await mkdtemp(join(tmpdir(), 'pullin-'));
  try {
    const page = join(folder, 'sheet.html');
    const pdf = join(folder, 'sheet.pdf');
    await writeFile(page, html, { mode: 0o600 });
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
    return await readFile(pdf).catch(() => {
      throw new Problem('the browser made no PDF; write the sheet as .html and print that');
    });
  } finally {
    await rm(folder, { recursive: true, force: true, maxRetries: 5 }).catch(() => undefined);
  }
}

function run(command: string, args: readonly string[]): Promise<void> {
  return new Promise((done, fail) => {
    const child = spawn(command, args, { stdio: 'ignore' });
    const stop = setTimeout(() => {
      child.kill('SIGKILL');
      fail(new Problem('the browser took too long to print; write the sheet as .html and print that'));
    }, PATIENCE);
    child.on('error', (error) => {
      clearTimeout(stop);
      fail(
        new Problem(
          `the browser could not be started (${(error as NodeJS.ErrnoException).code ?? 'unknown'})`,
        ),
      );
    });
    child.on('close', () => {
      clearTimeout(stop);
      done();
    });
  });
}
