/** One Chromium for the tests of the page. */
import { existsSync } from 'node:fs';
import { type Browser, chromium } from 'playwright-core';

/** Where it is: named by CHROMIUM, else the usual place of a package. */
const PATH = [process.env.CHROMIUM, '/usr/bin/chromium', '/usr/bin/chromium-browser'].find(
  (path) => path !== undefined && path !== '' && existsSync(path),
);
/** Without one these tests are left out, but where it must be there its lack is a failure. */
export const SKIPPED = PATH === undefined && process.env.PULLIN_BROWSER !== '1';
if (SKIPPED) console.warn('Nothing is tried in a browser: no Chromium at CHROMIUM or /usr/bin/chromium.');

export async function launch(): Promise<Browser> {
  if (PATH === undefined)
    throw new Error('no Chromium: name one by CHROMIUM, or install it at /usr/bin/chromium');
  // The pages are our own and ask for nothing; the sandbox needs rights that containers lack.
  return chromium.launch({ executablePath: PATH, args: ['--no-sandbox', '--disable-dev-shm-usage'] });
}
