/** The page in a browser: what its buttons do, and that everybody can use it. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import axe from 'axe-core';
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { buildCircuit } from '../../src/circuit/build.ts';
import { movedIn } from '../../src/page/groups.ts';
import { Study } from '../../src/study/study.ts';
import { cell } from '../../src/study/table-cells.ts';
import type { TruthTable } from '../../src/study/table-model.ts';
import { example } from '../helpers/example-plans.ts';
import { launch, SKIPPED } from './browser.ts';
import { hostilePlan, MARKUP, pageFor, pageOfExample } from './pages.ts';

const PHONE = { width: 360, height: 740 };

describe.skipIf(SKIPPED)('the page in a browser', () => {
  let browser: Browser;
  const folder = mkdtempSync(join(tmpdir(), 'pullin-page-'));
  const files = new Map<string, string>();
  beforeAll(async () => {
    browser = await launch();
  }, 20_000);
  afterAll(async () => {
    await browser?.close();
    rmSync(folder, { recursive: true, force: true });
  });

  /** Opens the page of a plan from disk, runs `use`, and holds that it neither complained nor asked for anything. */
  async function onPage(
    name: string,
    html: () => string,
    use: (page: Page) => Promise<void>,
    options: BrowserContextOptions = {},
  ): Promise<void> {
    let file = files.get(name);
    if (file === undefined) {
      file = join(folder, `${files.size}.html`);
      writeFileSync(file, html());
      files.set(name, file);
    }
    const context = await browser.newContext(options);
    const page = await context.newPage();
    const complaints: string[] = [];
    const asked: string[] = [];
    page.on('console', (m) => ['error', 'warning'].includes(m.type()) && complaints.push(m.text()));
    page.on('pageerror', (e) => complaints.push(e.message));
    page.on('request', (r) => asked.push(r.url()));
    try {
      const address = pathToFileURL(file).href;
      await page.goto(address);
      await use(page);
      expect(complaints).toEqual([]);
      expect(asked).toEqual([address]);
    } finally {
      await context.close();
    }
  }

  const open = (name: string, use: (page: Page) => Promise<void>, options?: BrowserContextOptions) =>
    onPage(name, () => pageOfExample(name), use, options);
  const text = async (page: Page, at: string) => (await page.locator(at).textContent()) ?? '';
  const said = (page: Page) => text(page, '#said');

  it.each(['saltmarsh-lane', 'osier-yard'])(
    'every button moves its part by mouse and by keys: %s',
    async (name) => {
      await open(name, async (page) => {
        for (const button of await page.locator('button[data-input]').all()) {
          const pressed = () => button.getAttribute('aria-pressed');
          expect((await button.boundingBox())!.height).toBeGreaterThanOrEqual(44);
          expect(await pressed()).toBe('false');
          const before = await said(page);
          await button.click();
          expect(await pressed()).toBe('true');
          expect(await said(page)).not.toBe(before);
          await page.locator('#to-rest').click();
          expect(await pressed()).toBe('false');
          await button.focus();
          await page.keyboard.press('Enter');
          expect(await pressed()).toBe('true');
          await page.locator('#to-rest').focus();
          await page.keyboard.press('Space');
          expect(await pressed()).toBe('false');
        }
      });
    },
  );

  /** What the tables of the page say of each relay and load: `in`, `out`, `runs`, `off`. */
  async function shown(page: Page): Promise<Record<string, string>> {
    const rows = await page
      .locator('tr[data-relay], tr[data-load]')
      .evaluateAll((all) =>
        all.map((row) => [
          row.getAttribute('data-relay') ?? row.getAttribute('data-load') ?? '',
          row.querySelector('[data-cell=now]')?.textContent ?? '',
        ]),
      );
    return Object.fromEntries(rows.map(([part, word]) => [part!, word === 'stands' ? 'off' : word!]));
  }

  it.each(['saltmarsh-lane', 'millrace-joinery', 'wrong/planer-on-break-tab'])(
    'stands, one input after the other, as the truth table has it: %s',
    async (name) => {
      const plan = example(name);
      const circuit = buildCircuit(plan);
      const all = Study.of(plan).truthTable({ all: true });
      await open(name, async (page) => {
        for (const { index } of circuit.inputs) {
          const row = all.rows.find((r) => movedIn(circuit, r).join() === String(index))!;
          await page.locator(`button[data-input="${index}"]`).click();
          expect(await shown(page), row.label).toEqual({ ...row.relays, ...row.loads });
          // What START holds stays when the button is let go; power off and on forgets it.
          await page.locator(`button[data-input="${index}"]`).click();
          await page.locator('#repower').click();
          const rest = all.rows[0]!;
          expect(await shown(page), `${row.label}, back`).toEqual({ ...rest.relays, ...rest.loads });
        }
      });
    },
  );

  it('holds itself in after START until STOP (Millrace Joinery)', async () => {
    await open('millrace-joinery', async (page) => {
      const press = (name: string) => page.locator('button[data-input]', { hasText: name }).click();
      await press('START');
      await press('START');
      expect(await shown(page)).toMatchObject({ CR: 'in', fan: 'runs' });
      expect(await text(page, 'tr.is-here [data-cell=here]')).toContain('held from before');
      await press('STOP');
      await press('STOP');
      expect(await shown(page)).toMatchObject({ CR: 'out', fan: 'off' });
      expect(await text(page, 'tr.is-here [data-cell=here]')).toBe('now');
    });
  });

  it.each(['saltmarsh-lane', 'osier-yard', 'wrong/planer-on-break-tab'])(
    'has the truth table of the check: %s',
    async (name) => {
      const table: TruthTable = Study.of(example(name)).truthTable({ all: false });
      await open(name, async (page) => {
        const rows = await page
          .locator('#truth tbody tr:not([data-as=mended])')
          .evaluateAll((all) => all.map((row) => [...row.children].map((c) => c.textContent ?? '')));
        expect(rows.map((r) => r.slice(1, -1))).toEqual(
          table.rows.map((r) => [r.label, ...table.columns.map((c) => cell(r, c))]),
        );
        expect(await page.locator('tr.is-here').count()).toBe(1);
      });
    },
  );

  it('draws contacts, live cores and what runs as they stand, and takes a tap', async () => {
    await open('saltmarsh-lane', async (page) => {
      const live = () => page.locator('path.core.live').count();
      const made = page.locator('[data-part=bandsaw] [data-way="COM NO"] > .made');
      const before = await live();
      expect(await made.isVisible()).toBe(false);
      await page.locator('[data-tap=bandsaw]').click();
      expect(await page.locator('button[data-input="0"]').getAttribute('aria-pressed')).toBe('true');
      expect(await made.isVisible()).toBe(true);
      expect(await live()).toBeGreaterThan(before);
      expect(await page.locator('.coil.on, .load.on').count()).toBe(2);
      expect(await page.locator('#wires .is-live').count()).toBe(await live());
      await page.locator('[data-tap=bandsaw]').click();
      expect(await live()).toBe(before);
    });
  });

  it('says why a load does not do what it should', async () => {
    await open('wrong/planer-on-break-tab', async (page) => {
      expect(await said(page)).toContain('collector should stand and runs');
      await page.locator('button[data-input]', { hasText: 'planer' }).click();
      expect(await said(page)).toContain('collector should run and does not');
      expect(await page.locator('[data-load=collector] td.wrong').count()).toBe(1);
    });
  });

  it.each([
    ['light', 1400, ['wrong/planer-on-break-tab', 'osier-yard']],
    ['light', 360, ['wrong/planer-on-break-tab']],
    ['dark', 1400, ['wrong/wrong-tap']],
    ['dark', 768, ['wrong/planer-on-break-tab']],
  ] as const)('can be used by everybody: %s, %i px', async (colorScheme, width, names) => {
    for (const name of names)
      await open(
        name,
        async (page) => {
          await page.locator('button[data-input]').first().click();
          await page.locator('.show >> visible=true').first().click();
          const mended = page.locator('button[data-shows=mended]');
          if (width === 768 && (await mended.count()) > 0) await mended.click();
          await page.evaluate(axe.source);
          const found = (await page.evaluate('axe.run().then((r) => r.violations)')) as {
            id: string;
            impact: string;
            nodes: { html: string }[];
          }[];
          const grave = found.filter((v) => ['serious', 'critical'].includes(v.impact));
          expect(grave.map((v) => `${v.id}: ${v.nodes[0]?.html}`)).toEqual([]);
        },
        { colorScheme, viewport: { width, height: 900 } },
      );
  });

  it.each(['saltmarsh-lane', 'millrace-joinery', 'osier-yard'])('fits a phone: %s', async (name) => {
    await open(
      name,
      async (page) => {
        await page.locator('button[data-input]').first().click();
        expect(await page.evaluate('document.documentElement.scrollWidth')).toBe(PHONE.width);
        await page.emulateMedia({ media: 'print' });
        expect(await page.locator('h1').isVisible()).toBe(true);
      },
      { viewport: PHONE },
    );
  });

  it('shows text of a plan as text', async () => {
    await onPage(
      'hostile',
      () => pageFor(hostilePlan()),
      async (page) => {
        await page.locator('button[data-input="0"]').click();
        expect(await page.title()).toBe(MARKUP);
        expect(await text(page, 'h1')).toBe(MARKUP);
        expect(await page.locator('img').count()).toBe(0);
        expect(await text(page, '[data-load=M] [data-cell=now]')).toBe('runs');
      },
    );
    await onPage(
      'hostile',
      () => pageFor(hostilePlan()),
      async (page) => expect(await page.evaluate('document.documentElement.scrollWidth')).toBe(PHONE.width),
      { viewport: PHONE },
    );
  });
});
