import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { STAGES } from '../../src/cli/stages.ts';
import { WHOLE } from '../helpers/share.ts';
import { pullin, type Surroundings } from './fake-io.ts';

let cwd = '';
beforeEach(() => {
  cwd = mkdtempSync(join(tmpdir(), 'pullin-new-'));
});
afterEach(() => rmSync(cwd, { recursive: true, force: true }));

const run = (args: readonly string[], around: Surroundings = {}) =>
  pullin(['new', ...args], { cwd, stages: STAGES, ...around });
const GARAGE = [
  '--practice',
  'nec',
  '--motor',
  '1 hp 13 A',
  '--protector',
  'manual',
  '--lever',
  'open',
  '--gates',
  'saw 6 ft, planer 4 ft',
];
const ANSWERS = `title: Back garage
practice: nec
motor: 1 hp 13 A
protector: manual
lever: open
gates: [saw 6 ft, planer 4 ft]
`;

describe('pullin new', () => {
  it.runIf(WHOLE)(
    'writes a plan that check passes, tells what was taken and why, and what to do next',
    async () => {
      const { status, out, err } = await run([...GARAGE, '-o', 'garage.yaml']);
      expect([status, err]).toEqual([0, '']);
      expect(out).toMatch(/^garage\.yaml: written\. Nothing in this check failed\./);
      expect(out).toContain('layout: chain, since');
      expect(out).toContain('pullin check garage.yaml');
      expect((await pullin(['check', 'garage.yaml'], { cwd, stages: STAGES })).status).toBe(0);
      expect(readdirSync(cwd)).toEqual(['garage.yaml']);
    },
  );

  it.runIf(WHOLE)('names the file after the shop, and never writes over one unasked', async () => {
    expect((await run([...GARAGE, '--title', 'Über den Höfen, 2'])).status).toBe(0);
    expect(readdirSync(cwd)).toEqual(['uber-den-hofen-2.yaml']);
    const before = readFileSync(join(cwd, 'uber-den-hofen-2.yaml'), 'utf8');
    const again = await run([...GARAGE, '--title', 'Über den Höfen, 2', '--layout', 'star']);
    expect(again.status).toBe(2);
    expect(again.err).toContain('--force replaces it');
    expect(readFileSync(join(cwd, 'uber-den-hofen-2.yaml'), 'utf8')).toBe(before);
    expect(
      (await run([...GARAGE, '--title', 'Über den Höfen, 2', '--layout', 'star', '--force'])).status,
    ).toBe(0);
    expect(readFileSync(join(cwd, 'uber-den-hofen-2.yaml'), 'utf8')).not.toBe(before);
  });

  it('puts the plan alone on standard output for -', async () => {
    const { status, out, err } = await run([...GARAGE, '-o', '-']);
    expect(status).toBe(0);
    expect(out).toMatch(/^# /);
    expect(err).toContain('Nothing in this check failed.');
    const checked = await pullin(['check', '-'], { cwd, stages: STAGES, stdin: [out] });
    expect(checked.status).toBe(0);
    expect(readdirSync(cwd)).toEqual([]);
  });

  it.runIf(WHOLE)(
    'takes the same answers from a file, from standard input and from flags, which go before the file',
    async () => {
      writeFileSync(join(cwd, 'answers.yaml'), ANSWERS);
      const plan = async (args: readonly string[], around: Surroundings = {}) =>
        (await run([...args, '-o', '-'], around)).out;
      const byFlags = await plan([...GARAGE, '--title', 'Back garage']);
      expect(await plan(['--answers', 'answers.yaml'])).toBe(byFlags);
      expect(await plan(['--answers', '-'], { stdin: [ANSWERS] })).toBe(byFlags);
      expect(await plan(['--answers', 'answers.yaml', '--lever', 'shut'])).toBe(
        await plan([...GARAGE, '--title', 'Back garage', '--lever', 'shut']),
      );
    },
  );

  it.runIf(WHOLE)(
    'heads the plan with its answers, which are an answers file that gives the same plan',
    async () => {
      const { out } = await run([
        ...GARAGE,
        '--title',
        'Back: the "garage" # 2',
        '--gates',
        '60 x 3 ft',
        '-o',
        '-',
      ]);
      const [, block = ''] = /# Answers:\n((?:# {3}.*\n)+)/.exec(out) ?? [];
      const answers = block.replace(/^# {3}/gm, '');
      const again = await run(['--answers', '-', '-o', '-'], { stdin: [answers] });
      // Only what was taken unasked is told otherwise now: it was answered.
      const without = (text: string) => text.replace(/#\n# Nobody answered[\s\S]*?\n\n/, '\n');
      expect(again.out).toBe(without(out));
    },
  );

  it('tells all problems of an answers file at once, each at its place, with the nearest name', async () => {
    const text =
      'practise: nec\npractice: nec\nmotor: 1 hp\nlever: opne\ngates: [saw 6]\nlayout: chain\nreturn: 3 m\nhand: {a: [b]}\n';
    const { status, err } = await run(['--answers', '-'], { stdin: [text] });
    expect(status).toBe(2);
    expect(err).toContain('did you mean practice?');
    expect(err).toContain('did you mean open?');
    for (const place of [':1:1', ':3:8', ':4:8', ':5:8', ':7:9', ':8:7']) expect(err).toContain(place);
    expect(err).toContain('no amps in it');
    expect(err).toContain('has no length with its unit');
    expect(err).toContain('is only for a ring');
    expect(readdirSync(cwd)).toEqual([]);
  });

  it.each([
    ['not answers', '- a\n- b\n'],
    ['nothing', ''],
    ['no YAML', 'a: [b\n'],
  ])('refuses %s', async (_, text) => {
    expect((await run(['--answers', '-'], { stdin: [text] })).status).toBe(2);
  });

  it('asks for what is missing only in a terminal, and else says what to give', async () => {
    const { status, err } = await run([]);
    expect(status).toBe(2);
    for (const flag of ['--practice', '--motor', '--gates', '--lever'])
      expect(err).toContain(`pullin: ${flag}: is needed`);
    expect(err).toContain('--answers FILE');
    const one = await run([...GARAGE, '--lever', 'up', '--gates', 'Q1 3 m']);
    expect(one.status).toBe(2);
    expect(one.err).toContain('--lever: found "up"');
    expect(one.err).toContain('--gates: Q1 is what a part of the plan is called');
  });

  it.runIf(WHOLE)(
    'writes nothing where no plan passes, and tells the figure and the nearest answer',
    async () => {
      const { status, out } = await run([
        ...GARAGE,
        '--relay',
        'coil 12 V DC 155 ohm, 10 A 240 V AC',
        '-o',
        'x.yaml',
      ]);
      expect(status).toBe(1);
      expect(out).toMatch(/^No plan was written/);
      expect(out).toMatch(/\[contact-[a-z-]+\]/);
      expect(out).toContain('relay: choose in place of coil 12 V DC');
      expect(readdirSync(cwd)).toEqual([]);
    },
  );

  it.runIf(WHOLE)('lets nothing of an answer reach the terminal raw', async () => {
    const evil = await run([...GARAGE, '--title', 'a\u001b[31mb']);
    expect(evil.status).toBe(2);
    const gate = await run([...GARAGE, '--gates', 'saw\u001b[2J 3 m']);
    expect(gate.status).toBe(2);
    for (const { out, err } of [evil, gate]) expect(out + err).not.toContain('\u001b');
    const proto = await run(['--answers', '-'], { stdin: ['__proto__: {a: 1}\nconstructor: x\n'] });
    expect(proto.status).toBe(2);
  });

  it('is told by --help with every question, which other commands do not load', async () => {
    const { out, status } = await run(['--help']);
    expect(status).toBe(0);
    for (const flag of ['--practice', '--gates', '--run-on', '--answers', '--force'])
      expect(out).toContain(flag);
    expect((await pullin(['help', 'new'], { cwd, stages: STAGES })).out).toBe(out);
    expect((await pullin(['check', '--gates', 'x'], { cwd, stages: STAGES })).status).toBe(2);
  });
});
