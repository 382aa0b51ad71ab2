import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { findChromium } from '../../src/cli/pdf.ts';
import { STAGES } from '../../src/cli/stages.ts';
import { SKIPPED } from '../page/browser.ts';
import { pullin } from './fake-io.ts';

const lane = fileURLToPath(new URL('../../examples/saltmarsh-lane.yaml', import.meta.url));

describe.skipIf(SKIPPED)('the printed sheet', () => {
  it('is a PDF of few pages, with its title and its language', async () => {
    const browser = await findChromium(process.env);
    const folder = mkdtempSync(join(tmpdir(), 'sheet-'));
    const { status, err } = await pullin(['sheet', lane, '-o', 'lane.pdf'], {
      stages: STAGES,
      cwd: folder,
      env: { CHROMIUM: browser!, PATH: process.env.PATH! },
    });
    // On a slow machine lines of progress come before it.
    expect([status, err.split('\n').slice(-2)]).toEqual([0, ['lane.pdf: written', '']]);
    const pdf = readFileSync(join(folder, 'lane.pdf'));
    rmSync(folder, { recursive: true });
    expect(pdf.subarray(0, 5).toString()).toBe('%PDF-');
    const text = pdf.toString('latin1');
    const pages = text.match(/\/Type \/Page\b/g)!.length;
    expect(pages).toBeGreaterThanOrEqual(5);
    expect(pages).toBeLessThanOrEqual(9);
    // ISO 32000-1, 14.3.3 and 14.9.2: the title of the document, and its language in the catalogue.
    expect(text).toContain('/Title (Saltmarsh Lane boat shop, collector loop)');
    expect(text).toMatch(/\/Type \/Catalog[\s\S]*?\/Lang \(en\)/);
  });
});
