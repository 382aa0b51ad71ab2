import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { shownState } from '../../src/draw/current-shown.ts';
import { drawnState } from '../../src/draw/drawn-state.ts';
import { sheetsOf } from '../../src/draw/sheet.ts';
import { judge } from '../../src/findings/judge.ts';
import { readPlan } from '../../src/plan/read.ts';
import { Study } from '../../src/study/study.ts';
import { launch, SKIPPED } from '../page/browser.ts';
import { allExamples, generatedPlans } from './plans.ts';

function sheetsFor(text: string, name: string): readonly string[] {
  const read = readPlan(Buffer.from(text), name);
  if (!read.ok) throw new Error(name);
  const { plan } = read;
  const study = Study.of(plan);
  const { circuit, sides } = study;
  const shown = shownState(circuit, drawnState(study, []));
  return sheetsOf({ plan, report: judge(study), circuit, sides, shown, state: [] }, 'a4').svgs;
}

/** Runs in the browser, which is why it is text. */
const LOOK = `(source) => {
    const parsed = new DOMParser().parseFromString(source, 'image/svg+xml');
    const error = parsed.querySelector('parsererror');
    if (error !== null) return [error.textContent ?? 'not XML'];
    const sheet = document.body.appendChild(document.importNode(parsed.documentElement, true));
    const faults = [];
    const whole = sheet.getBoundingClientRect();
    const words = [...sheet.querySelectorAll('text')].map((t) => {
      const box = t.getBoundingClientRect();
      // The box of a line of text holds room for accents and tails; letters fill about this much of it.
      // Words that stand along a conductor are turned.
      const turned = t.hasAttribute('transform');
      const [across, down] = turned ? [box.width * 0.2, 0] : [0, box.height * 0.2];
      const inner = {
        left: box.left + across,
        right: box.right - across,
        top: box.top + down,
        bottom: box.bottom - down,
      };
      return { text: t.textContent ?? '', ...inner };
    });
    for (const w of words)
      if (w.left < whole.left - 1 || w.right > whole.right + 1 || w.bottom > whole.bottom + 1)
        faults.push(w.text + ' runs over the edge');
    words.sort((a, b) => a.top - b.top);
    words.forEach((a, i) => {
      for (const b of words.slice(i + 1)) {
        if (b.top >= a.bottom) break;
        if (a.left < b.right - 0.5 && b.left < a.right - 0.5) faults.push(a.text + ' lies over ' + b.text);
      }
    });
    if (words.length < 4 || whole.width < 100) faults.push('nothing is drawn');
    return faults;
}`;

/** What Chromium finds wrong with a sheet: bad XML, nothing drawn, words over words or past the sheet. */
async function faultsIn(page: Page, svg: string): Promise<string[]> {
  await page.setContent('<!doctype html><body style="margin:0"></body>');
  return page.evaluate(`(${LOOK})(${JSON.stringify(svg)})`);
}

describe.skipIf(SKIPPED)('sheets in Chromium', () => {
  let browser: Browser;
  let page: Page;
  beforeAll(async () => {
    browser = await launch();
    page = await browser.newPage({ viewport: { width: 1200, height: 1200 } });
  }, 60_000);
  afterAll(() => browser?.close());

  it.each(
    allExamples()
      .filter((_, i) => i % 2 === 0)
      .map((p) => [p.name, p.text] as const),
  )('%s', async (name, text) => {
    for (const svg of sheetsFor(text, name)) expect(await faultsIn(page, svg)).toEqual([]);
  });

  it('generated plans', { timeout: 120_000 }, async () => {
    for (const { name, text } of generatedPlans(20, 7))
      for (const svg of sheetsFor(text, name)) expect(await faultsIn(page, svg), name).toEqual([]);
  });
});
