/** All payloads, and what Chromium makes of HTML and SVG with them: the same elements, the payload as text, nothing that runs. */
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { launch, SKIPPED } from '../page/browser.ts';
import './escaping.test.ts';
import { DRAWN, drawn, PAYLOADS, planWith, shownOf } from '../helpers/payloads.ts';

interface Read {
  readonly names: readonly string[];
  readonly acts: readonly string[];
  readonly text: string;
}

/** Run in the page: which elements a text has, what of it would run, and what it says. */
const READ = `([source, type]) => {
  const document = new DOMParser().parseFromString(source, type);
  const every = [...document.querySelectorAll('*')];
  const on = every.flatMap((e) => e.getAttributeNames().filter((n) => n.startsWith('on')));
  const links = every.flatMap((e) => e.getAttribute('href') ?? e.getAttribute('src') ?? []);
  return {
    names: [...new Set(every.map((e) => e.localName))].sort(),
    acts: [...on, ...links.filter((l) => /^\\s*javascript:/i.test(l))],
    text: document.documentElement.textContent ?? '',
  };
}`;

describe.skipIf(SKIPPED)('in a browser', () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await launch();
  });
  afterAll(async () => browser?.close());

  it.each(DRAWN)('%s %s %s has the payload as text', { timeout: 300_000 }, async (...args) => {
    const tab = await browser.newPage();
    const read = async (payload: string) => {
      const { out } = await drawn(planWith(payload), args);
      const type = out.startsWith('<!') ? 'text/html' : 'image/svg+xml';
      return (await tab.evaluate(`(${READ})(${JSON.stringify([out, type])})`)) as Read;
    };
    const plain = await read('x');
    expect(plain.names).not.toContain('parsererror');
    for (const [name, payload] of PAYLOADS) {
      const found = await read(payload);
      expect([name, found.names, found.acts]).toEqual([name, plain.names, []]);
      const squeezed = (text: string) => text.replace(/\s+/g, '');
      // A drawing cuts a title that is too long for its frame.
      if (args[0] !== 'draw')
        expect([name, squeezed(found.text)]).toEqual([
          name,
          expect.stringContaining(squeezed(shownOf(payload))),
        ]);
    }
    await tab.close();
  });
});
