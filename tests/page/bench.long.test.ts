/** The page beside a bench, in a browser: what is seen together, findings and drawing linked, as drawn and as mended. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser, BrowserContextOptions, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { launch, SKIPPED } from './browser.ts';
import { pageOfExample } from './pages.ts';

const WRONG = 'wrong/planer-on-break-tab';

describe.skipIf(SKIPPED)('the page at a bench', { timeout: 30_000 }, () => {
  let browser: Browser;
  const folder = mkdtempSync(join(tmpdir(), 'pullin-bench-'));
  beforeAll(async () => {
    browser = await launch();
  }, 20_000);
  afterAll(async () => {
    await browser?.close();
    rmSync(folder, { recursive: true, force: true });
  });

  async function open(
    name: string,
    use: (page: Page) => Promise<void>,
    options: BrowserContextOptions = { viewport: { width: 1400, height: 900 } },
  ): Promise<void> {
    const file = join(folder, `${name.replaceAll('/', '-')}.html`);
    writeFileSync(file, pageOfExample(name));
    const context = await browser.newContext({ reducedMotion: 'reduce', ...options });
    const page = await context.newPage();
    const complaints: string[] = [];
    page.on('pageerror', (e) => complaints.push(e.message));
    try {
      await page.goto(pathToFileURL(file).href);
      await use(page);
      expect(complaints).toEqual([]);
    } finally {
      await context.close();
    }
  }

  /** Whether an element lies in the window in whole. */
  const inView = (at: Locator) =>
    at.evaluate((element) => {
      const { top, bottom, left, right } = element.getBoundingClientRect();
      const { innerWidth, innerHeight } = element.ownerDocument.defaultView!;
      return top >= -1 && left >= -1 && bottom <= innerHeight + 1 && right <= innerWidth + 1;
    });
  const seen = (page: Page, at: string) => page.locator(`${at} >> visible=true`);
  const bands = (page: Page) => seen(page, '.halos > path.mark').count();
  const frames = (page: Page) => seen(page, '.halos > rect.mark').count();

  it.each([1000, 1400, 1920])('shows gates, answers and the drawing side by side at %i px', async (width) => {
    await open(
      'saltmarsh-lane',
      async (page) => {
        await page.locator('button[data-input="0"]').click();
        const controls = (await page.locator('.side').boundingBox())!;
        const sheet = (await page.locator('.sheet').boundingBox())!;
        expect(sheet.x).toBeGreaterThanOrEqual(controls.x + controls.width);
        // Below 1400 px the mains side may reach out of the sheet; the load is told beside the coil.
        const load = width < 1400 ? '[data-chip=collector].on' : '.load.on';
        for (const at of ['button[data-input="0"]', '#said', '[data-chip=K1].on', '.coil.on', load])
          expect(await inView(seen(page, at).first()), at).toBe(true);
        expect(await page.evaluate('document.documentElement.scrollWidth')).toBe(width);
      },
      { viewport: { width, height: 900 } },
    );
  });

  it.each([360, 768])('keeps coil and load in view, and the drawing a tap away, at %i px', async (width) => {
    await open(
      'saltmarsh-lane',
      async (page) => {
        const chip = (part: string) => page.locator(`[data-chip="${part}"]`);
        for (const at of ['button[data-input="0"]', '.sheet', '#findings li:last-child']) {
          await page
            .locator(at)
            .first()
            .evaluate((e) => e.scrollIntoView({ block: 'center' }));
          for (const part of ['K1', 'collector'])
            expect(await inView(chip(part)), `${part} at ${at}`).toBe(true);
        }
        await chip('K1').click();
        expect(await inView(page.locator('.symbols .coil >> visible=true').first())).toBe(true);
        expect(await frames(page)).toBe(2);
        await page.locator('[data-tap=bandsaw]').click();
        expect(await chip('K1').textContent()).toBe('K1 in, 12 V');
        expect(await chip('collector').textContent()).toBe('collector runs');
        expect(await page.evaluate('document.documentElement.scrollWidth')).toBe(width);
      },
      { viewport: { width, height: 740 } },
    );
  });

  it('marks what a finding speaks of, by mouse and by keys', async () => {
    await open(WRONG, async (page) => {
      const show = seen(page, '[data-finding] .show').first();
      expect(await bands(page)).toBe(0);
      await show.click();
      expect(await show.getAttribute('aria-pressed')).toBe('true');
      expect(await bands(page)).toBe(2);
      expect(await frames(page)).toBeGreaterThan(0);
      expect(await inView(seen(page, '.halos > path.mark').first())).toBe(true);
      await show.click();
      expect(await bands(page)).toBe(0);
      // With the keyboard, coming to it is enough.
      await page.locator('.sheet >> visible=true').focus();
      for (let i = 0; i < 9 && (await bands(page)) === 0; i++) await page.keyboard.press('Tab');
      expect(await bands(page)).toBe(2);
      await page.keyboard.press('Enter');
      expect(await show.getAttribute('aria-pressed')).toBe('true');
      await page.keyboard.press('Escape');
      expect(await show.getAttribute('aria-pressed')).toBe('false');
    });
  });

  it('leads from what is marked to its finding, by mouse and by keys', async () => {
    await open(WRONG, async (page) => {
      const chosen = () => page.locator('[data-finding].chosen');
      await seen(page, '.flag').first().click();
      expect(await chosen().count()).toBe(1);
      expect(await chosen().getAttribute('data-finding')).toBe('0');
      expect(await inView(chosen().locator('h3'))).toBe(true);
      await page.keyboard.press('Escape');
      expect(await chosen().count()).toBe(0);
      const hits = seen(page, '.hits > [role=button]');
      expect(await hits.count()).toBeGreaterThan(2);
      expect(await seen(page, '.hits > [tabindex="0"]').count()).toBe(1);
      await seen(page, '.hits > [tabindex="0"]').focus();
      const names = new Set<string>();
      for (let i = 0; i < (await hits.count()); i++) {
        names.add(await page.evaluate('document.activeElement.getAttribute("aria-label")'));
        await page.keyboard.press('ArrowRight');
      }
      expect([...names].some((n) => /^the white core from .*planer\.NC.*: .*FAULT/.test(n))).toBe(true);
      await page.keyboard.press('Enter');
      expect(await chosen().count()).toBe(1);
      expect(await page.evaluate('document.activeElement.className')).toBe('show');
    });
  });

  it('shows the plan as drawn and as mended, after the same moves', async () => {
    await open(WRONG, async (page) => {
      const answers = async () =>
        (await seen(page, '#answers p, #answers .chips').allTextContents()).join(' ');
      const turn = (to: string) => page.locator(`button[data-shows=${to}]`).click();
      await page.locator('button[data-input]', { hasText: 'planer' }).click();
      expect(await answers()).toContain('collector should run and does not');
      expect(await seen(page, '.halos > .moved').count()).toBe(2);
      await turn('mended');
      expect(await page.locator('button[data-shows=mended]').getAttribute('aria-pressed')).toBe('true');
      expect(await answers()).toContain('checked again. Nothing in this check failed');
      expect(await answers()).toContain('collector runs');
      expect(await seen(page, '.load.on').count()).toBe(1);
      expect(await seen(page, '.halos > .moved').count()).toBe(2);
      expect(await seen(page, '.sheet').count()).toBe(1);
      const ends = () => seen(page, '#wires tr').allTextContents();
      expect((await ends()).join('\n')).not.toContain('planer.NC');
      await page.locator('[data-tap=planer] >> visible=true').click();
      expect(await answers()).toContain('collector stops, as the plan wants');
      await turn('drawn');
      expect(await answers()).toContain('collector should stand and runs');
      expect((await ends()).join('\n')).toContain('planer.NC');
      expect(await seen(page, '#truth tr.wrong').count()).toBeGreaterThan(0);
    });
  });

  it('has no switch where there is nothing to mend', async () => {
    await open('saltmarsh-lane', async (page) => {
      expect(await page.locator('[data-shows] button[data-shows]').count()).toBe(0);
      expect(await page.locator('.mending').count()).toBe(0);
    });
  });

  it.each(['light', 'dark'] as const)(
    'lets no graver word look weaker than a lesser one: %s',
    async (colorScheme) => {
      await open(
        'saltmarsh-lane',
        async (page) => {
          const look = (level: string) =>
            page
              .locator(`.tag.${level}`)
              .last()
              .evaluate((tag) => {
                const view = tag.ownerDocument.defaultView!;
                const { fontWeight, borderTopWidth, fontSize } = view.getComputedStyle(tag);
                const sign = view.getComputedStyle(tag, '::before').clipPath !== 'none';
                return [
                  Number(fontWeight),
                  Number.parseFloat(borderTopWidth),
                  Number.parseFloat(fontSize),
                  Number(sign),
                ];
              });
          // Words of ISO 3864-2, worst first.
          const looks = await Promise.all(['danger', 'warning', 'caution', 'notice'].map(look));
          for (const [i, worse] of looks.slice(0, -1).entries())
            for (const [k, value] of worse.entries())
              expect(value, `${i} ${k}`).toBeGreaterThanOrEqual(looks[i + 1]![k]!);
          expect(looks[2]).not.toEqual(looks[3]);
          const colour = (name: string) =>
            page
              .locator(`.findings > .${name} h3`)
              .evaluate((h) => h.ownerDocument.defaultView!.getComputedStyle(h).color);
          expect(await colour('caution')).toBe(await colour('notice'));
        },
        { colorScheme, viewport: { width: 1400, height: 900 } },
      );
    },
  );

  it.each([
    ['reduce', 'auto'],
    ['no-preference', 'smooth'],
  ] as const)('scrolls as a person wants it who asks for motion %s', async (reducedMotion, behavior) => {
    await open(
      'saltmarsh-lane',
      async (page) => {
        await page.evaluate(
          'window.asked = []; Element.prototype.scrollIntoView = function (how) { window.asked.push(how.behavior); }',
        );
        await page.locator('[data-chip=K1]').click();
        expect(await page.evaluate('window.asked')).toEqual([behavior]);
      },
      { reducedMotion, viewport: { width: 1400, height: 900 } },
    );
  });
});
