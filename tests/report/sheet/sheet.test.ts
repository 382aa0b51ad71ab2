import { describe, expect, it } from 'vitest';
import { asHtml } from '../../../src/report/forms/html.ts';
import { runsMap } from '../../../src/report/sheet/runs.ts';
import { printedSheet } from '../../../src/report/sheet/sheet.ts';
import { styleFor } from '../../../src/report/sheet/style.ts';
import { truthTableDocument } from '../../../src/report/truth-table.ts';
import { Study } from '../../../src/study/study.ts';
import { cell } from '../../../src/study/table-cells.ts';
import { example } from '../../helpers/example-plans.ts';
import { partsOf } from './sheet-parts.ts';

const lane = partsOf(example('saltmarsh-lane'));
const sheet = printedSheet(lane);
const feet = printedSheet(partsOf(example('linnet-garage'), 'letter'));
const section = (html: string, title: string): string =>
  new RegExp(`<h2>\\d+\\. ${title}</h2>([\\s\\S]*?)</section>`).exec(html)![1]!;

describe('the look', () => {
  it('has one family of type in three sizes', () => {
    const css = styleFor('a4', '');
    const sizes = new Set([...css.matchAll(/(?:font-size: |font: (?:bold )?)([\d.]+pt)/g)].map((m) => m[1]));
    expect([...sizes].sort()).toEqual(['12pt', '16pt', '9pt']);
    const families = new Set([...css.matchAll(/font: [^;]*?pt(?:\/[\d.]+)? ([^;]+);/g)].map((m) => m[1]));
    expect(families.size).toBe(1);
  });

  it('lets sections follow each other: only a page that lies across begins one', () => {
    expect(styleFor('a4', '')).not.toMatch(/break-(before|after): page|page-break/);
  });

  it('keeps heads on every page, rows whole, and a reading with its causes', () => {
    const css = styleFor('a4', '');
    expect(css).toContain('thead { display: table-header-group; }');
    expect(css).toContain('tr, tbody { break-inside: avoid; }');
    expect(css).not.toMatch(/\.readings tbody[^{]*\{[^}]*break-inside: auto/);
  });
});

describe('the wire list', () => {
  it('has a line for each cable, and under it each of its cores with how its ends are made', () => {
    const list = section(sheet, 'Wire list');
    const above = [...list.matchAll(/<tr class="above"><th colspan="7" scope="rowgroup">([^<]*)</g)];
    const cables = lane.plan.runs.filter((r) => !r.link);
    expect(above.map((m) => /^Run (\d+):/.exec(m[1]!)![1]).sort()).toEqual(
      cables.map((r) => `${r.entry}`).sort(),
    );
    const groups = [...list.matchAll(/<tbody>([\s\S]*?)<\/tbody>/g)].map((m) => m[1]!);
    for (const run of lane.plan.runs) {
      const own = groups.filter((g) => g.includes(`>Run ${run.entry}:`));
      if (!run.link) expect(own.join('').match(/class="tick"/g)).toHaveLength(run.cores.length);
    }
    expect(list).toContain('<td>clamp, strip 15 mm, ferrule</td>');
  });

  it('has inches alone where the plan has feet', () => {
    const list = section(feet, 'Wire list');
    // 6 mm, as in the tables of ends, is 0.236 in: a quarter of an inch to the nearest sixteenth.
    expect(list).toContain('<td>tab, strip 1/4 in</td>');
    expect(list).toMatch(/cut \d+ ft \d+ in; sheath off [\d.]+ in at /);
    expect(list.replace(/<p>[\s\S]*/, '')).not.toMatch(/\d mm\b/);
  });
});

describe('the labels', () => {
  it('are one for each end of each core, of a size that is said, beside a bar to measure it by', () => {
    const labels = section(sheet, 'Labels');
    const cores = lane.plan.runs.filter((r) => !r.link).flatMap((r) => r.cores);
    expect(labels.match(/<li>/g)).toHaveLength(2 * cores.length);
    expect(labels).toContain('Each is 36.5 mm by 8 mm, if this bar is 50 mm long: <span class="bar">');
    expect(styleFor('a4', '')).toMatch(/\.labels li \{ width: 36\.5mm; min-height: 8mm;/);
    expect(styleFor('a4', '')).toMatch(/\.bar \{ display: inline-block; width: 50mm;/);
  });

  it('are in inches where the plan has feet', () => {
    const labels = section(feet, 'Labels');
    expect(labels).toContain('1 7/16 in by 5/16 in, if this bar is 2 in long: <span class="bar inches">');
    // 25.4 mm to the inch.
    expect((1 + 7 / 16) * 25.4).toBeCloseTo(36.5, 1);
    expect((5 / 16) * 25.4).toBeCloseTo(8, 0);
  });
});

describe('what runs when', () => {
  it('is a grid in which what is worked, in or running is dark', () => {
    const { truth } = lane;
    if (typeof truth === 'string') throw new Error(truth);
    const rows = [...section(sheet, 'What runs when').matchAll(/<tr><td>([\s\S]*?)<\/tr>/g)].map((m) =>
      m[0].split('</td>').slice(1, -1),
    );
    expect(rows).toHaveLength(truth.rows.length);
    for (const [i, row] of truth.rows.entries())
      for (const [k, name] of truth.columns.entries()) {
        const dark = ['open', 'in', 'runs'].includes(cell(row, name));
        expect(rows[i]![k]!.includes('class="at-work"'), `${row.label} ${name}`).toBe(dark);
        expect(rows[i]![k]!.replace(/<[^>]*>/g, '')).toBe(cell(row, name));
      }
  });

  it('has marks in place of words where there are many columns, and says what they mean', () => {
    const study = Study.of(example('fallow-rise-school'));
    const html = asHtml(truthTableDocument(study.truthTable({ all: false }), 'pass'));
    expect(html).toContain('<table class="grid upright">');
    expect(html).toContain('<td class="at-work">■</td>');
    expect(html).toContain('Dark: open, on, pressed, tripped, in, running.');
  });

  it('has a plot for each coil, with every gate', () => {
    const html = section(sheet, 'What runs when');
    expect(html.match(/<svg class="coil-volts"/g)).toHaveLength(1);
    for (const gate of ['bandsaw', 'planer', 'router']) expect(html).toContain(`>${gate}</text>`);
    expect(html).toContain('needs 10.59 V warm');
  });
});

describe('the map of the runs', () => {
  it('has each run once, with a box to tick', () => {
    const map = /<svg class="map"[\s\S]*?<\/svg>/.exec(sheet)![0];
    const laid = lane.plan.runs.filter((r) => !r.link);
    expect(map.match(/class="run"/g)).toHaveLength(laid.length);
    expect(map.match(/width="11" height="11"/g)).toHaveLength(laid.length);
  });

  it('is cut between lines where it is longer than a page', () => {
    const plan = example('large/tallow-reach');
    const { circuit, sides } = Study.of(plan);
    const { html } = runsMap({ plan, circuit, sides, size: 'a4' }, false)!;
    const pieces = [
      ...html.matchAll(/<svg class="map"[^>]*height="([\d.]+)mm" viewBox="0 ([\d.]+) \S+ ([\d.]+)"/g),
    ];
    expect(pieces.length).toBeGreaterThan(1);
    let end = 0;
    for (const [, mm, from, height] of pieces) {
      expect(Number(mm)).toBeLessThanOrEqual(201);
      expect(Number(from)).toBeCloseTo(end, 3);
      end = Number(from) + Number(height);
    }
  });
});

it('has no empty section, and each begins with the band where the plan failed', () => {
  const failed = printedSheet(partsOf(example('wrong/planer-on-break-tab')));
  const sections = failed.split(/<section[^>]*>/).slice(1);
  for (const html of sections) expect(html.startsWith('<p class="band">')).toBe(true);
  expect(failed).toContain('@top-center { content: "THIS PLAN FAILED ITS CHECK');
});
