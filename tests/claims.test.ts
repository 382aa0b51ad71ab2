/** tests/README.md is made from claims.json and known.json; here these are held to the tests that they speak of. */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import claims from './claims.json' with { type: 'json' };
import known from './known.json' with { type: 'json' };
import { claimedFiles, howWeKnow, testsWritten } from './tools/claims.mjs';

const root = fileURLToPath(new URL('..', import.meta.url));
const files: Readonly<Record<string, { readonly written: number; readonly failed: number }>> = known.files;

describe('what is claimed to be tested', () => {
  it('is tested: every file that is named exists', () => {
    expect(claimedFiles(root).filter((file) => !existsSync(root + file))).toEqual([]);
    expect(claims.claims.length).toBeGreaterThan(15);
    for (const { claim, held } of claims.claims) expect(held.length, claim).toBeGreaterThan(0);
  });

  it('is counted anew when its tests change: run them, then `npm run known` and `npm run generate`', () => {
    const stale = Object.entries(files).filter(
      ([file, { written }]) => !existsSync(root + file) || testsWritten(root, file) !== written,
    );
    expect(stale.map(([file]) => file)).toEqual([]);
  });

  it('agrees: what is written down has no failures, and nothing that no claim names', () => {
    const claimed = claimedFiles(root);
    expect(Object.keys(files).filter((file) => !claimed.includes(file))).toEqual([]);
    expect(Object.entries(files).filter(([, { failed }]) => failed > 0)).toEqual([]);
  });

  it('is held against every oracle there is', () => {
    const own = readdirSync(`${root}tests/oracles`).filter((name) => name.endsWith('.test.ts'));
    const claimed = claimedFiles(root);
    expect(own.map((name) => `tests/oracles/${name}`).filter((file) => !claimed.includes(file))).toEqual([]);
  });

  it('stands on the page, each claim under its own heading', () => {
    const headings = [...howWeKnow(root).matchAll(/^## (.+)$/gm)].map(([, text]) => text);
    expect(headings).toEqual(expect.arrayContaining(claims.claims.map(({ claim }) => claim)));
    expect(readFileSync(`${root}README.md`, 'utf8')).toContain('(tests/README.md)');
  });
});
