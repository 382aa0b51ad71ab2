import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { z } from 'zod';
import { STAGES } from '../../src/cli/stages.ts';
import { meterSheet } from '../../src/meter/meter-sheet.ts';
import type { MeterSheet, ReadStep } from '../../src/meter/sheet/sheet-model.ts';
import { asHtml } from '../../src/report/forms/html.ts';
import { asMarkdown } from '../../src/report/forms/markdown.ts';
import { asText } from '../../src/report/forms/text.ts';
import { meterDocument } from '../../src/report/meter-sheet.ts';
import { positionWords, wrongWords } from '../../src/report/meter-words.ts';
import { Study } from '../../src/study/study.ts';
import { columns } from '../../src/text/wrap.ts';
import { pullin } from '../cli/fake-io.ts';
import { planOf } from '../helpers/plan-of.ts';
import { WHOLE } from '../helpers/share.ts';

const loft = readFileSync(new URL('../../examples/plover-loft.yaml', import.meta.url), 'utf8');
let worked: MeterSheet | undefined;
/** The sheet of a small shop, worked out once. */
function made(): MeterSheet {
  worked ??= meterSheet(Study.of(planOf(loft)));
  return worked;
}

const asLines = (of: MeterSheet, width: number, unicode = true) =>
  asText(meterDocument(of), { width, unicode });
const marked = (of: MeterSheet) => asMarkdown(meterDocument(of));
const printed = (of: MeterSheet) => asHtml(meterDocument(of), 1);

/** A sheet whose every text comes from somebody who means harm. */
function hostile(): MeterSheet {
  const bad = 'x\u001b[2J\u202e`*<b>|[a](b)&\n# y é Ω';
  const step = made().steps.find((s): s is ReadStep => s.kind === 'read')!;
  return {
    ...made(),
    title: bad,
    check: { verdict: 'fail', finding: bad },
    setup: [{ stage: 1, text: [bad], after: [bad] }],
    steps: [
      { number: 1, stage: 1, kind: 'check', part: bad, text: bad },
      {
        ...step,
        zone: bad,
        alone: bad,
        red: bad,
        black: bad,
        range: bad,
        positions: [bad],
        first: [bad],
        held: [bad],
        clipped: [bad, bad],
        far: true,
        adjust: [bad],
        wrong: [{ wrong: 'open', faults: Array.from({ length: 9 }, () => bad) }],
      },
    ],
    silent: [{ item: bad, fault: bad, why: bad }],
  };
}

describe('text', () => {
  it.each([40, 60, 80, 132])('keeps to %d columns', (width) => {
    for (const line of asLines(made(), width).split('\n'))
      expect(columns(line), line).toBeLessThanOrEqual(width);
    for (const line of asLines(hostile(), width).split('\n'))
      expect(columns(line), line).toBeLessThanOrEqual(width);
  });

  it('has every step with probes, range and what to expect, and when to stop', () => {
    const text = asLines(made(), 400);
    for (const step of made().steps) expect(text).toContain(`[ ] ${step.number}. `);
    expect(text).toMatch(/red on P1\.PE, black on X1\.PE; continuity; everything at rest\n +expect it beeps/);
    expect(text).toContain('call an electrician');
    expect(text).toMatch(/Stage 1.*Stage 2.*Stage 3/s);
    expect(text).not.toMatch(/\bsafe/i);
  });

  it('lets no control character and, on a plain terminal, no letter beyond ASCII through', () => {
    // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is looked for
    expect(asLines(hostile(), 80)).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u202e]/);
    expect(asLines(hostile(), 80, false)).toMatch(/^[\n -~]*$/);
  });
});

describe('a plan that fails the check', () => {
  const finding = 'the planer is on its break tab';
  const failed = (): MeterSheet => ({ ...made(), check: { verdict: 'fail', finding } });
  const withheld = (): MeterSheet => ({
    ...failed(),
    setup: [],
    steps: [],
    detectable: 0,
    detected: 0,
    silent: [],
  });

  it('is said to at the top, before anything to do', () => {
    const note = `Note: this plan fails the check: ${finding}. The readings are of the plan as it stands.`;
    expect(asLines(failed(), 400).split('\n')[1]).toBe(note);
    expect(marked(failed()).split('\n')[2]).toBe(note);
    expect(printed(failed())).toMatch(new RegExp(`^<p>${note.replaceAll('.', '\\.')}</p>`));
    for (const text of [asLines(made(), 400), marked(made()), printed(made())])
      expect(text).not.toContain('Note:');
  });

  it('has no stages and no count of faults where it puts somebody in danger', () => {
    for (const text of [asLines(withheld(), 400), marked(withheld()), printed(withheld())]) {
      expect(text).toContain(finding);
      expect(text).toMatch(/puts somebody in danger as drawn: put it right first/);
      expect(text).toMatch(/nothing is to be measured or powered until then\./);
      expect(text).not.toMatch(/Stage|single faults|red on|probe/);
    }
  });
});

describe('words', () => {
  const first = () => made().steps.find((s): s is ReadStep => s.kind === 'read')!;
  const showing = (shows: ReadStep['expect']['shows']): ReadStep => ({
    ...first(),
    expect: { ...first().expect, shows },
  });

  it('say of no range but continuity that the meter beeps', () => {
    expect(wrongWords(showing('open'), 'shorted')).toBe('a low reading');
    expect(wrongWords(showing('ohms'), 'shorted')).toBe('next to nothing');
    const text = asLines(made(), 400);
    for (const line of text.split('\n').filter((l) => /\bbeep/.test(l)))
      expect(line).toMatch(/it beeps|no beep/);
  });

  it('have a button let go of before the reading, and a third hand where one is held', () => {
    const at = { ...first(), positions: [], first: ['start pressed'], held: [] };
    expect(positionWords(at)).toBe('first start pressed; let go, then read with everything at rest');
    const held = {
      ...first(),
      positions: ['stop pressed', 'start pressed'],
      first: [],
      held: ['stop', 'start'],
    };
    expect(positionWords(held)).toContain('keep stop and start so while you read: a second person is needed');
  });
});

describe('mains readings', () => {
  /** Common practice in proving dead, no source: the tester is tried on a known live source before and after. */
  it('stand between two trials of the meter on a live source', () => {
    const mains = made().steps.filter((s) => s.stage === 3);
    expect(mains.length).toBeGreaterThan(0);
    for (const text of [asLines(made(), 400), marked(made()), printed(made())]) {
      const [before, after] = [
        text.indexOf('Prove the meter before the first reading'),
        text.indexOf('prove the meter on the same source once more'),
      ];
      expect(before).toBeGreaterThan(text.indexOf('Stage 3'));
      expect(after).toBeGreaterThan(before);
      const between = text.slice(before, after);
      for (const step of mains) if (step.kind === 'read') expect(between).toContain(step.range);
      expect(text.match(/prove the meter/gi)).toHaveLength(2);
    }
  });
});

describe('what no reading tells', () => {
  const lines = (silent: MeterSheet['silent']) =>
    asLines({ ...made(), silent }, 2000)
      .split('What no reading at the terminals tells')[1]!
      .split('\n')
      .filter((l) => l.trim() !== '');

  it('is one line a reason, what several parts have alike told once, and nothing left out', () => {
    const contact = (item: string) => ({
      item,
      fault: `${item}: contact COM-NC never makes`,
      why: 'no core is on NC',
    });
    const other = { item: 'K1.A1', fault: 'the core is on D1.A', why: 'no core is on NC' };
    const alone = { item: 'D1', fault: 'D1 is broken', why: 'it carries nothing' };
    const told = lines([contact('g1'), alone, contact('g2'), other, contact('g3')]);
    expect(told.map((l) => l.slice(2))).toEqual([
      'Of each of these 4, no core is on NC: g1: contact COM-NC never makes (likewise g2 and g3); the core is on D1.A',
      'D1 is broken: it carries nothing',
    ]);
  });

  it('names every fault of a real shop by its text or its part', () => {
    const told = lines(made().silent).join(' ');
    for (const { item, fault, why } of made().silent) {
      expect(told).toContain(why);
      expect(told.includes(fault) || told.includes(item), fault).toBe(true);
    }
    expect(lines(made().silent).length).toBe(new Set(made().silent.map((s) => s.why)).size);
  });
});

it('on paper says where the causes stand that it has no room for', () => {
  expect(printed(made())).toMatch(/and \d+ more/);
  expect(printed(made())).toMatch(/pullin meter --json/);
});

describe('Markdown', () => {
  it('has a box to tick for every step', () => {
    const boxes = marked(made()).match(/^- \[ \] \*\*\d+\*\*/gm);
    expect(boxes).toHaveLength(made().steps.length);
  });

  it('escapes what a plan says', () => {
    const text = marked(hostile());
    expect(text).not.toMatch(/<b>|(?<!\\)\[a\]|\n# y|(?<!\\)`/);
    // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is looked for
    expect(text).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u202e]/);
  });
});

describe('pullin meter', () => {
  let cwd = '';
  beforeAll(() => {
    cwd = mkdtempSync(join(tmpdir(), 'pullin-meter-'));
    writeFileSync(join(cwd, 'loft.yaml'), loft);
    writeFileSync(join(cwd, 'bad.yaml'), 'format: 1\nparts: {K1: {kind: realy}}\n');
  });
  afterAll(() => rmSync(cwd, { recursive: true }));
  const run = (...args: string[]) => pullin(['meter', ...args], { cwd, stages: STAGES });

  const probe = z.strictObject({ part: z.string(), terminal: z.string() });
  const stage = z.union([z.literal(1), z.literal(2), z.literal(3)]);
  const step = z.discriminatedUnion('kind', [
    z.strictObject({
      number: z.number().int(),
      stage,
      kind: z.literal('check'),
      part: z.string(),
      text: z.string(),
    }),
    z.strictObject({
      number: z.number().int(),
      stage,
      kind: z.literal('read'),
      zone: z.string().nullable(),
      red: z.string(),
      black: z.string(),
      between: z.tuple([probe, probe]),
      clipped: z.array(z.string()),
      clippedAt: z.array(probe),
      far: z.boolean(),
      adjust: z.array(z.string()),
      range: z.string().regex(/^(continuity|\d+ (ohm|kohm|Mohm)|\d+ V (AC|DC))$/),
      moved: z.array(z.number().int()),
      positions: z.array(z.string()),
      first: z.array(z.string()),
      movedFirst: z.array(z.number().int()),
      held: z.array(z.string()),
      alone: z.string().nullable(),
      expect: z.strictObject({
        shows: z.enum(['beeps', 'open', 'ohms', 'below', 'volts', 'nothing']),
        nominal: z.number().nullable(),
        low: z.number().nullable(),
        high: z.number().nullable(),
        unit: z.enum(['ohm', 'V']),
        kind: z.enum(['dc', 'ac']).nullable(),
      }),
      wrong: z
        .array(
          z.strictObject({
            wrong: z.enum(['open', 'shorted', 'too high', 'too low', 'reversed']),
            faults: z.array(z.string()).min(1),
          }),
        )
        .min(1),
    }),
  ]);
  const shape = z.strictObject({
    format: z.literal(1),
    title: z.string(),
    check: z.strictObject({
      verdict: z.enum(['pass', 'fail', 'cannot-tell']),
      finding: z.string().nullable(),
    }),
    setup: z
      .array(z.strictObject({ stage, text: z.array(z.string()), after: z.array(z.string()) }))
      .length(3),
    steps: z.array(step).min(1),
    detectable: z.number().int(),
    detected: z.number().int(),
    silent: z.array(z.strictObject({ item: z.string(), fault: z.string(), why: z.string() })),
  });

  it.runIf(WHOLE)('prints the sheet, as JSON of the stated shape, and as Markdown', async () => {
    const text = await run('loft.yaml', '--width', '60');
    expect(text.status).toBe(0);
    expect(text.out).toBe(asLines(made(), 60));
    const json = await run('loft.yaml', '--json');
    expect(shape.parse(JSON.parse(json.out))).toEqual(made());
    expect((await run('loft.yaml', '--format', 'markdown')).out).toBe(marked(made()));
  });

  it('refuses what it cannot read', async () => {
    expect((await run('bad.yaml')).status).toBe(2);
    expect((await run('loft.yaml', '--json', '--format', 'text')).status).toBe(2);
    expect((await run('loft.yaml', '--width', '3')).status).toBe(2);
    expect((await run()).status).toBe(2);
  });
});
