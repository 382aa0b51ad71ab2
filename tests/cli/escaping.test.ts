/**
 * Payloads by forms of output: what a stranger writes into a plan comes back as text or is shown as an escape, and is never
 * structure. Each form is read by a reader that is not ours: JSON.parse, csv-parse (RFC 4180), for Markdown the escapes of
 * CommonMark 0.31, 2.4; HTML and SVG are read by Chromium in escaping.long.test.ts.
 */
import { parse as parseCsv } from 'csv-parse/sync';
import { describe, expect, it } from 'vitest';
import { ACTS, DRAWN, drawn, PAYLOADS, planWith, run, shownOf } from '../helpers/payloads.ts';
import { sampled, WHOLE } from '../helpers/share.ts';

/** CommonMark 0.31, 2.4 and 2.5: a backslash before punctuation is the punctuation, and what stood for a mark is none. */
const withoutEscapes = (markdown: string) =>
  markdown
    .replace(/\\([!-/:-@[-`{-~])/g, '$1')
    .replace(/&lt;/g, '<')
    .replace(/&amp;/g, '&');

/** What is left of a Markdown text when every escaped character is taken out. */
const marks = (markdown: string) => markdown.replace(/\\[!-/:-@[-`{-~]|&lt;|&amp;/g, '');

describe.each(sampled(PAYLOADS, 20))('%s', (_, payload) => {
  const plan = planWith(payload);
  const shown = shownOf(payload);

  it.each([['check'], ['draw'], ['draw', '--runs'], ['wirelist', '--width', '500'], ['materials']])(
    'is text in the text of %s %s',
    async (...args) => {
      const { out, err, status } = await run(plan, args);
      expect(status).toBeLessThan(4);
      expect(`${out}${err}`).not.toMatch(ACTS);
    },
  );

  it('is whole in the text of a wire list', async () => {
    const { out } = await run(plan, ['wirelist', '--width', '500']);
    expect(out).toContain(shown);
  });

  it('is told in an error', async () => {
    const { err, status } = await run(plan.replace('practice: nec', 'practise: nec'), ['check']);
    expect(status).toBe(2);
    expect(err).not.toMatch(ACTS);
  });

  it('is itself in JSON', async () => {
    const { out } = await run(plan, ['check', '--json']);
    expect(out).not.toMatch(ACTS);
    expect((JSON.parse(out) as { plan: { title: string } }).plan.title).toBe(`t${payload}t`);
  });

  it('is a field of CSV, and no formula', async () => {
    const { out } = await run(plan, ['wirelist', '--format', 'csv']);
    expect(out.replaceAll('\r\n', '\n')).not.toMatch(ACTS);
    const rows: string[][] = parseCsv(out);
    const fields = rows.flat();
    expect(fields.some((f) => f.includes(shown))).toBe(true);
    expect(fields.filter((f) => /^\s*[=+@\t\r-]/.test(f))).toEqual([]);
    expect(new Set(rows.map((r) => r.length)).size).toBe(1);
  });

  it('is text in Markdown', async () => {
    const { out } = await run(plan, ['wirelist', '--format', 'markdown']);
    expect(out).not.toMatch(ACTS);
    expect(withoutEscapes(out)).toContain(shown);
    // Neither HTML, nor code, nor a link, nor an address that would be taken for one.
    expect(marks(out)).not.toMatch(/<|`|\]\(|:\/\/|www\./);
    const cells = out
      .split('\n')
      .filter((l) => l.startsWith('|'))
      .map((l) => marks(l).split('|').length);
    expect(cells.length).toBeGreaterThan(2);
    const plain = await drawn(planWith('x'), ['wirelist', '--format', 'markdown']);
    const usual = plain.out
      .split('\n')
      .filter((l) => l.startsWith('|'))
      .map((l) => marks(l).split('|').length);
    expect(cells).toEqual(usual);
  });

  it.runIf(WHOLE)('opens no element in SVG and in HTML', async () => {
    const tags = (text: string) => [...new Set(text.match(/<[!/?]?[\w-]+/g))].sort();
    for (const args of DRAWN) {
      const { out } = await drawn(plan, args);
      expect(out).not.toMatch(ACTS);
      expect(tags(out)).toEqual(tags((await drawn(planWith('x'), args)).out));
    }
  });

  it('does nothing in a difference that a terminal shows', async () => {
    const wrong = plan.replace('[PS1.-, K1.A2]', '[PS1.-, K1.A1]');
    const { out } = await run(wrong, ['mend', '--diff'], true);
    expect(out).toContain('+++');
    expect(out).not.toMatch(ACTS);
  });
});
