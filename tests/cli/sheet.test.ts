import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { STAGES } from '../../src/cli/stages.ts';
import { readPlan } from '../../src/plan/read.ts';
import { WHOLE } from '../helpers/share.ts';
import { pullin, type Surroundings } from './fake-io.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
const lane = 'examples/saltmarsh-lane.yaml';
const sheet = (args: readonly string[], around: Surroundings = {}) =>
  pullin(['sheet', ...args], { stages: STAGES, cwd: root, ...around });

let ofLane: ReturnType<typeof sheet> | undefined;
/** That of the lane, made once for all that is asked of it. */
const laneSheet = () => (ofLane ??= sheet([lane, '-o', '-']));

/** Text between tags, with entities as letters. */
function words(html: string): string {
  const entities: Record<string, string> = { amp: '&', lt: '<', gt: '>', quot: '"', '#39': "'" };
  return html
    .replace(/<style>[\s\S]*?<\/style>/, '')
    .replace(/<[^>]*>/g, ' ')
    .replace(/&(amp|lt|gt|quot|#39);/g, (_, name: string) => entities[name]!);
}

describe('the document', () => {
  it.runIf(WHOLE)('begins with the verdict and has every section in the order of the bench', async () => {
    const { status, out } = await laneSheet();
    expect(status).toBe(0);
    const heads = [...out.matchAll(/<h2>([^<]*)<\/h2>/g)].map((m) => m[1]);
    const numbered = [
      '1. Diagram',
      '2. Runs',
      '3. What runs when',
      '4. Wire list',
      '5. Cut list',
      '6. Labels',
      '7. Materials',
      '8. Meter sheet',
      '9. Done',
    ];
    const expected = ['What the check found', 'The seven questions', 'Cautions', ...numbered];
    expect(heads.filter((h) => expected.includes(h!))).toEqual(expected);
    expect(out).toContain(`<p class="contents">In this sheet: ${numbered.join(', ')}.</p>`);
    expect(words(out).indexOf('Nothing in this check failed')).toBeLessThan(words(out).indexOf('Diagram'));
    expect(out).toContain('@page { size: A4 portrait');
    expect(out).not.toMatch(/<script|javascript:|https?:\/\/(?!www\.w3\.org\/2000\/svg)/);
  });

  it.runIf(WHOLE)('has a box to tick for every core, link, piece and thing to buy', async () => {
    const { out } = await laneSheet();
    const read = readPlan(readFileSync(join(root, lane)), lane);
    if (!read.ok) throw new Error('unreadable');
    const rows = /<h2>4. Wire list<\/h2>([\s\S]*?)<\/section>/.exec(out)![1]!;
    const cores = read.plan.runs.flatMap((r) => r.cores);
    expect(rows.match(/<td class="tick">/g)).toHaveLength(cores.length);
    for (const { a, b } of cores) {
      expect(rows).toContain(`<td>${a.written}</td>`);
      expect(rows).toContain(`<td>${b.written}</td>`);
    }
  });

  it.runIf(WHOLE)('tells how every end is stripped, the labels, and lengths in whole inches', async () => {
    const { out } = await laneSheet();
    const text = words(out);
    expect(out).toContain('<td>screw, strip 7 mm</td>');
    expect(text).toContain('Run 3: bell, 20 AWG; cut 4.4 m; sheath off 40 mm at bandsaw, 40 mm at planer');
    expect(text).toContain('1 red > PS1.+');
    expect(text).toContain('15.4 m (50 ft 7 in)');
    expect(text).toContain('Low voltage, with the supply unplugged.');
  });

  it.runIf(WHOLE)(
    'shows a plan that failed as one: findings on the first page, a band on every page',
    async () => {
      const { status, out } = await sheet(['examples/wrong/planer-on-break-tab.yaml', '-o', '-']);
      expect(status).toBe(0);
      const band = 'THIS PLAN FAILED ITS CHECK';
      expect(out).toMatch(new RegExp(`@top-center \\{ content: "${band}`));
      expect(words(out.slice(0, out.indexOf('<h2>1. Diagram')))).toContain('the white cores sit on NC');
      expect(out.match(/<section/g)!.length).toBe(out.match(/<p class="band">/g)!.length);
      expect((await laneSheet()).out).not.toContain(band);
    },
  );

  it.runIf(WHOLE)('never says that something is approved or without danger', async () => {
    for (const plan of [lane, 'examples/wrong/mains-core-on-coil.yaml', 'examples/kiln-street.yaml']) {
      const text = words((await (plan === lane ? laneSheet() : sheet([plan, '-o', '-']))).out);
      expect(text, plan).not.toMatch(/\b(safe|safely|approved|certified|compliant)\b/i);
      expect(text, plan).toContain('It is no approval');
    }
  });

  it.runIf(WHOLE)('lets no text of a plan become markup', async () => {
    const hostile = readFileSync(join(root, lane), 'utf8')
      .replace('title: Saltmarsh', 'title: "<img src=x onerror=alert(1)>" #')
      .replace('{red: [PS1.+, feed]', '{"</td><script>alert(2)</script>": [PS1.+, feed]')
      .replace('length: 5 m,', 'length: 5 m, route: "</style><b onclick=alert(3)>", name: "\\u202etxt",');
    const { status, out } = await sheet(['-', '-o', '-'], { stdin: [hostile] });
    expect(status).toBe(0);
    expect(out).not.toMatch(/<img|<script|<b onclick|\u202e/);
    expect(words(out)).toContain('</style><b onclick=alert(3)>');
  });

  it.runIf(WHOLE)('takes letter paper', async () => {
    expect((await sheet([lane, '-o', '-', '--size', 'letter'])).out).toContain(
      '@page { size: letter portrait',
    );
  });
});

describe('the file', () => {
  let folder = '';
  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'sheet-'));
    writeFileSync(join(folder, 'lane.yaml'), readFileSync(join(root, lane)));
  });
  afterEach(() => rmSync(folder, { recursive: true }));
  const here = (args: readonly string[], env: Record<string, string> = {}) =>
    sheet(args, { cwd: folder, env });

  it.runIf(WHOLE)('is written whole, and never over another one unasked', async () => {
    expect((await here(['lane.yaml', '-o', 'lane.html'])).status).toBe(0);
    writeFileSync(join(folder, 'lane.html'), 'mine');
    const refused = await here(['lane.yaml', '-o', 'lane.html']);
    expect(refused.status).toBe(2);
    expect(refused.err).toContain('--force');
    expect(readFileSync(join(folder, 'lane.html'), 'utf8')).toBe('mine');
    expect((await here(['lane.yaml', '-o', 'lane.html', '--force'])).status).toBe(0);
    expect(readdirSync(folder).sort()).toEqual(['lane.html', 'lane.yaml']);
  });

  it.each(['lane.txt', 'lane', 'lane.yaml'])('is refused as %s', async (name) => {
    const { status, err } = await here(['lane.yaml', '-o', name, '--force']);
    expect(status).toBe(2);
    expect(err).toContain('ends in .html or .pdf');
  });

  it('says what to do where no browser is installed', async () => {
    const { status, err } = await here(['lane.yaml', '-o', 'lane.pdf'], { PATH: folder });
    expect(status).toBe(2);
    expect(err).toMatch(/no Chromium was found.*\.html/);
    expect(existsSync(join(folder, 'lane.pdf'))).toBe(false);
  });
});
