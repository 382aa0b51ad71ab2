import {
  copyFileSync,
  linkSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { STAGES } from '../../src/cli/stages.ts';
import { columns } from '../../src/text/wrap.ts';
import { readSvg } from '../draw/svg-reader.ts';
import { pullin, type Surroundings } from './fake-io.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
const lane = 'examples/saltmarsh-lane.yaml';
const draw = (args: readonly string[], around: Surroundings = {}) =>
  pullin(['draw', ...args], { stages: STAGES, cwd: root, ...around });

/** The sheet without its declaration of size, which the reader of fragments does not know. */
const wellFormed = (svg: string) => readSvg(svg.replace(/<svg [^>]*>/, '<svg>').replace(/\n/g, ''));

describe('drawn on a terminal', () => {
  it('names every part, fits the width and ends with the caution', async () => {
    const { status, out } = await draw([lane]);
    expect(status).toBe(0);
    for (const name of ['PS1', 'bandsaw', 'planer', 'router', 'K1', 'D1', 'P1', 'X1', 'collector', 'B1'])
      expect(out).toContain(name);
    expect(Math.max(...out.split('\n').map(columns))).toBeLessThanOrEqual(80);
    expect(out).toContain('Mains can kill');
    expect(out).not.toContain('\u001b');
  });

  it.each([60, 80, 120])('takes no more than %i columns', async (width) => {
    for (const plan of ['saltmarsh-lane', 'kiln-street', 'gorse-barn', 'wrong/planer-on-break-tab']) {
      const { out } = await draw([`examples/${plan}.yaml`, '--width', String(width)]);
      expect(Math.max(...out.split('\n').map(columns)), plan).toBeLessThanOrEqual(width);
    }
  });

  it('keeps to plain letters when asked', async () => {
    const { out } = await draw([lane, '--ascii', '--open', 'router']);
    expect(out).toMatch(/^[\n -~]*$/);
    expect(out).toContain('drawn with router open');
    expect(out).toContain('#');
  });

  it('draws live conductors heavier only where a position was given', async () => {
    expect((await draw([lane])).out).not.toMatch(/[┃━]/);
    expect((await draw([lane, '--open', 'bandsaw'])).out).toMatch(/┃/);
  });

  it('marks the part a finding speaks of and says what the mark means', async () => {
    const { status, out } = await draw(['examples/wrong/planer-on-break-tab.yaml']);
    expect(status).toBe(0);
    expect(out).toContain('planer !1');
    expect(out).toContain('!1 FAULT: gate planer');
  });

  it.each([
    [['--open', 'planner'], 'no part is called "planner"; did you mean planer?'],
    [['--open', 'K1'], 'K1 is a relay'],
    [['--size', 'a2'], 'Allowed choices are a4, a3, letter, tabloid'],
    [['--width', '7'], 'whole number of columns'],
    [['-o', 'lane.png'], 'ends in .svg'],
  ])('refuses %j', async (args, message) => {
    const { status, out, err } = await draw([lane, ...args]);
    expect({ status, out }).toEqual({ status: 2, out: '' });
    expect(err).toContain(message);
  });
});

describe('drawn on paper', () => {
  let folder = '';
  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'draw-'));
    copyFileSync(join(root, lane), join(folder, 'lane.yaml'));
  });
  afterEach(() => rmSync(folder, { recursive: true }));
  const here = (...args: string[]) => draw(args, { cwd: folder, env: { SOURCE_DATE_EPOCH: '86400' } });

  it('writes a sheet with title block, date and verdict', async () => {
    const { status, out, err } = await here('lane.yaml', '-o', 'lane.svg');
    expect({ status, out, err }).toEqual({ status: 0, out: '', err: 'lane.svg: a sheet of A4\n' });
    const svg = readFileSync(join(folder, 'lane.svg'), 'utf8');
    for (const words of [
      'Saltmarsh Lane',
      'lane.yaml, 1970-01-02',
      'Nothing in this check failed',
      'Not an approval',
    ])
      expect(svg).toContain(words);
    expect(wellFormed(svg).children).toHaveLength(1);
    expect(readdirSync(folder).sort()).toEqual(['lane.svg', 'lane.yaml']);
  });

  it('takes letter paper when asked', async () => {
    expect((await here('lane.yaml', '-o', '-', '--size', 'letter')).out).toMatch(/width="(215.9|279.4)mm"/);
    expect((await here('lane.yaml', '-o', '-')).out).toMatch(/width="(210|297)mm"/);
  });

  it('leaves a file that is there alone, until told', async () => {
    writeFileSync(join(folder, 'lane.svg'), 'mine');
    const refused = await here('lane.yaml', '-o', 'lane.svg');
    expect(refused.status).toBe(2);
    expect(refused.err).toContain('--force');
    expect(readFileSync(join(folder, 'lane.svg'), 'utf8')).toBe('mine');
    expect((await here('lane.yaml', '-o', 'lane.svg', '--force')).status).toBe(0);
    expect(readFileSync(join(folder, 'lane.svg'), 'utf8')).toContain('<svg');
  });

  it('never writes over the plan, whatever it is called', async () => {
    const before = readFileSync(join(folder, 'lane.yaml'), 'utf8');
    linkSync(join(folder, 'lane.yaml'), join(folder, 'other.svg'));
    for (const name of ['other.svg', './other.svg']) {
      const { status, err } = await here('lane.yaml', '-o', name, '--force');
      expect(status, name).toBe(2);
      expect(err).toContain('is the plan itself');
    }
    expect(readFileSync(join(folder, 'lane.yaml'), 'utf8')).toBe(before);
  });

  it('takes as many sheets as legible words need, and names the sheet and column of each conductor that goes on', async () => {
    const gates = Array.from({ length: 60 }, (_, i) => `g${i}`);
    const text = [
      'format: 1',
      'stock: {bell: {kind: cable, gauge: 18 AWG, cores: 2}}',
      'parts:',
      '  PS1: {kind: supply, output: 24 V DC, limit: 1 A}',
      '  K1: {kind: relay, coil: {rated: 24 V DC, resistance: 600 ohm}, contact: {ratings: [10 A 250 V AC]}}',
      ...gates.map((g) => `  ${g}: {kind: gate, contact: {ratings: [5 A 30 V DC]}}`),
      'runs:',
      ...gates.map(
        (g) => `  - {cable: bell, length: 1 m, cores: {red: [PS1.+, ${g}.COM], white: [${g}.NO, K1.A1]}}`,
      ),
      '  - {cable: bell, length: 1 m, cores: {black: [PS1.-, K1.A2]}}',
      '',
    ].join('\n');
    writeFileSync(join(folder, 'big.yaml'), text);
    const { status, err } = await here('big.yaml', '-o', 'big.svg');
    expect(status).toBe(0);
    const names = readdirSync(folder).filter((name) => name.endsWith('.svg'));
    expect(names.length).toBeGreaterThan(3);
    expect(err).toContain(`big-${names.length}.svg: ${names.length} sheets of A4`);
    const svgs = names.map((name) => readFileSync(join(folder, name), 'utf8'));
    for (const svg of svgs) {
      wellFormed(svg);
      expect(svg).toMatch(/width="(210|297)mm"/);
      // 8 points at 96 px to the inch are 10.67 px.
      for (const [, size] of svg.matchAll(/font-size="([\d.]+)"/g)) expect(Number(size)).toBeGreaterThan(8.9);
    }
    expect(svgs[0]).toContain('>2/');
    const refused = await here('big.yaml', '-o', '-');
    expect(refused.status).toBe(2);
    expect(refused.err).toContain('name a file with -o');
  });

  it('lets no text of a plan become markup', async () => {
    const hostile = readFileSync(join(folder, 'lane.yaml'), 'utf8')
      .replace('title: Saltmarsh', 'title: "<script>alert(1)</script>" #')
      .replace('{red: [PS1.+, feed]', '{"</text><image href=x onerror=alert(2)>": [PS1.+, feed]');
    writeFileSync(join(folder, 'lane.yaml'), hostile);
    const { status, out } = await here('lane.yaml', '-o', '-');
    expect(status).toBe(0);
    expect(out).not.toMatch(/<script|<image|onerror=alert\(2\)>/);
    expect(out).toContain('&lt;script&gt;');
    wellFormed(out);
  });

  it('draws a plan from standard input, without a date', async () => {
    const stdin = [readFileSync(join(folder, 'lane.yaml'))];
    const { status, out } = await draw(['-', '-o', '-'], { stdin });
    expect(status).toBe(0);
    expect(out).toContain('from standard input, North American tables');
  });
});
