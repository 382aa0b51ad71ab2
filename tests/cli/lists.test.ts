/** `pullin wirelist` and `pullin materials`. */
import { describe, expect, it } from 'vitest';
import { STAGES } from '../../src/cli/stages.ts';
import type { Materials } from '../../src/lists/materials-model.ts';
import type { WireList } from '../../src/lists/wirelist-model.ts';
import { examplePath } from '../helpers/example-plans.ts';
import { pullin } from './fake-io.ts';

const LANE = examplePath('saltmarsh-lane');
const WRONG = examplePath('wrong/coil-24-on-12');
const run = (...args: string[]) => pullin(args, { stages: STAGES });

describe('pullin wirelist', () => {
  it('prints all lists, one alone, and JSON', async () => {
    const all = await run('wirelist', LANE);
    expect(all).toMatchObject({ status: 0, err: '' });
    for (const words of ['Wire list of Saltmarsh Lane', 'Cut list.', '1 red > PS1.+'])
      expect(all.out).toContain(words);
    const labels = await run('wirelist', LANE, '--list', 'labels', '--format', 'csv');
    expect(labels.out.split('\r\n').slice(0, 2)).toEqual(['wire,end,label', '1,from,1 red > PS1.+']);
    const json: WireList = JSON.parse((await run('wirelist', LANE, '--json', '--reel', '15m')).out);
    expect(json).toMatchObject({ format: 1, check: { verdict: 'pass' } });
    expect(json.waste).toBeGreaterThan(0);
  });

  it('takes reels in several units, for all cables or for one', async () => {
    const { status, out } = await run(
      'wirelist',
      LANE,
      '--json',
      '--reel',
      '50 ft',
      '--reel',
      'bell=600cm',
      '--reel',
      'bell=30m',
    );
    expect(status).toBe(0);
    const { cuts }: WireList = JSON.parse(out);
    expect(cuts.map((c) => [c.cable, c.reels!.map((r) => r.length)])).toEqual([
      ['bell', [30]],
      ['cord', [15.24]],
    ]);
  });

  it.each([
    [
      ['--reel', '5m'],
      /^pullin: bell: the piece of run 2 is 5.5 m long, slack included, and the longest reel is 5 m/,
    ],
    [['--reel', 'bel=5m'], /no cable of this plan is called "bel"; did you mean bell\?/],
    [['--reel', 'foo=5m'], /no cable of this plan is called "foo"\. It has bell, cord/],
    [['--reel', 'lots'], /--reel: /],
    [['--reel', 'bell=0m'], /--reel: /],
    [['--reel', '1mm'], /at least 1 cm/],
    [['--list', 'all'], /--list/],
    [['--format', 'pdf'], /--format/],
  ])('refuses %j', async (args, message) => {
    const { status, out, err } = await run('wirelist', LANE, ...args);
    expect(status).toBe(2);
    expect(out).toBe('');
    expect(err).toMatch(message);
  });

  it('lists a plan that fails, and says so where it does not spoil the CSV', async () => {
    const page = await run('wirelist', WRONG);
    expect(page.status).toBe(0);
    expect(page.out).toMatch(/^Note: this plan fails the check/m);
    const csv = await run('wirelist', WRONG, '--format', 'csv');
    expect(csv.out).toMatch(/^number,section/);
    expect(csv.err).toMatch(/^Note: this plan fails the check/);
  });
});

describe('pullin materials', () => {
  it('prints text, Markdown, CSV and JSON', async () => {
    expect((await run('materials', LANE)).out).toContain('3 x gate switch: 5 A 250 V AC');
    expect((await run('materials', LANE, '--format', 'markdown')).out).toMatch(/^# Materials for Saltmarsh/);
    expect((await run('materials', LANE, '--format', 'csv')).out).toMatch(/^what,spec,count/);
    const json: Materials = JSON.parse((await run('materials', LANE, '--json')).out);
    expect(json).toMatchObject({ format: 1, total: null });
    expect(json.items.find((i) => i.names.includes('K1'))!.least.map((l) => l.what)).toEqual([
      ...['motor rating', 'AC-3', 'making current'],
    ]);
  });

  it('lists a plan that fails, and ends with 2 where there is none', async () => {
    const page = await run('materials', WRONG);
    expect(page.status).toBe(0);
    expect(page.out).toMatch(/^Note: this plan fails the check/m);
    expect((await run('materials', examplePath('nowhere'))).status).toBe(2);
  });
});
