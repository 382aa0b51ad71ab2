/** `pullin hunt` without a terminal: what is said on the command line, its forms, and the log. */
import {
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { STAGES } from '../../src/cli/stages.ts';
import type { HuntTold } from '../../src/meter/hunt/hunt-model.ts';
import { huntJsonSchema } from '../../src/meter/hunt/hunt-schema.ts';
import { examplePath } from '../helpers/example-plans.ts';
import { WHOLE } from '../helpers/share.ts';
import { TWO_GATES } from '../meter/hunt/small-plans.ts';
import { pullin } from './fake-io.ts';

const SHOP = '../shop.yaml';
let top = '';
let cwd = '';
beforeEach(() => {
  top = mkdtempSync(join(tmpdir(), 'pullin-hunt-'));
  writeFileSync(join(top, 'shop.yaml'), TWO_GATES);
  cwd = join(top, 'notes');
  mkdirSync(cwd);
});
afterEach(() => rmSync(top, { recursive: true, force: true }));

/** What was told without a log, which nothing before it changes: several tests ask the same of the same plan. */
const before = new Map<string, ReturnType<typeof pullin>>();
const hunt = (...args: string[]) => {
  const key = args.join('\n');
  const told = before.get(key) ?? pullin(['hunt', ...args], { stages: STAGES, cwd });
  if (!args.includes('--log')) before.set(key, told);
  return told;
};
const told = async (...args: string[]): Promise<HuntTold> => {
  const { status, out, err } = await hunt(...args, '--json');
  expect([status, err]).toEqual([0, '']);
  return JSON.parse(out);
};
const valid = new Ajv2020({ strict: false }).compile(huntJsonSchema());
const firstOf = ({ suspects }: HuntTold) => suspects[0]!.faults.map((f) => f.text).join(', and ');

/** Only the far gate is dead: what parts it from the rest lies beyond the saw. */
/** The overload relay has tripped and the fan goes on. */
const STOPPED = 'panel-saw open, OL tripped: runs';
const DEAD_LATHE = ['--saw', 'lathe open: off', '--saw', 'saw open: runs'];

describe('pullin hunt', () => {
  it.runIf(WHOLE)('tells what is asked first, with the cautions, where nothing is said', async () => {
    const { status, out, err } = await hunt(SHOP);
    expect([status, err]).toEqual([0, '']);
    for (const words of [
      'Fault hunt: Two gates',
      'No probe goes on live mains',
      'electrician',
      'Look at this next',
    ])
      expect(out).toContain(words);
    expect(out).not.toContain('Suspected');
  });

  it('tells who is suspected and what to look at next', async () => {
    const { status, out } = await hunt(SHOP, ...DEAD_LATHE);
    expect(status).toBe(0);
    expect(out).toMatch(/Seen so far\s+1\. +saw lathe open: off\s+2\. +saw saw open: runs/);
    const suspects = out.slice(out.indexOf('Suspected'), out.indexOf('Look at this next'));
    expect(suspects).toContain('lathe');
    expect(suspects.split('\n').slice(1, 5)).toEqual(Array(4).fill(expect.stringMatching(/^- lathe/)));
    // Those that agree with everything come first.
    expect(suspects).not.toContain('against it');
    expect(suspects).toMatch(/- and \d+ more that agree/);
    expect(out).toMatch(/To answer in plain form: (?:saw|reading) .*\?/s);
  });

  it.runIf(WHOLE)('asks for nothing that needs power once a stop was seen not to stop it', async () => {
    const plan = examplePath('millrace-joinery');
    const seen = await told(plan, '--saw', STOPPED);
    expect(seen.danger).toContain('Pull its plug');
    expect(seen.next === null || seen.next.kind === 'ohms').toBe(true);
    if (!WHOLE) return;
    const { out } = await hunt(plan, '--saw', STOPPED);
    expect(out.indexOf('DANGER')).toBeLessThan(out.indexOf('Suspected'));
    expect(out).not.toContain('leave that supply on');
  });

  it('does not hold a beep against a good core', async () => {
    const { suspects } = await told(SHOP, ...DEAD_LATHE, '--reading', 'saw.COM lathe.COM = beeps');
    const lathe = suspects.find((s) => s.faults[0]!.text.includes('lathe: contact COM-NO never makes'))!;
    expect(lathe.against).toEqual([]);
  });

  it.runIf(WHOLE)('tells the same as JSON that its schema takes, and as Markdown', async () => {
    for (const args of [
      [],
      DEAD_LATHE,
      ['--saw', 'all shut: runs', '--saw', 'saw open: off', '--never-worked'],
    ]) {
      const json = await told(SHOP, ...args);
      expect([args, valid(json), valid.errors]).toEqual([args, true, null]);
      expect(json).toMatchObject({
        format: 1,
        check: { verdict: 'pass' },
        answers: { length: args.filter((a) => a === '--saw').length },
      });
    }
    const { out } = await hunt(SHOP, ...DEAD_LATHE, '--format', 'markdown');
    expect(out).toMatch(/^# Fault hunt: /);
  });

  it('goes on to the end when the line it gives is filled in', async () => {
    // With the return to the lathe broken its volts come through while it is shut as well as open: nothing reaches the coil.
    const json = await told(
      SHOP,
      ...DEAD_LATHE,
      '--saw',
      'lathe open by finger: off',
      '--reading',
      'lathe.COM lathe.NO = OL with lathe open',
    );
    expect(json.fits).toBe('one fault');
    expect(firstOf(json)).toMatch(/lathe/);
    expect(json.suspects.every((s) => s.against.length > 0 || /lathe/.test(s.faults[0]!.text))).toBe(true);
  });

  it('tells a circuit that never worked by other likelihoods', async () => {
    const worked = await told(SHOP, ...DEAD_LATHE);
    const never = await told(SHOP, ...DEAD_LATHE, '--never-worked');
    const wiring = ({ suspects }: HuntTold) =>
      suspects.findIndex((s) => /wrong-terminal|changed-over/.test(s.faults[0]!.mode));
    expect(wiring(never)).toBeGreaterThanOrEqual(0);
    expect(wiring(worked) < 0 || wiring(never) < wiring(worked)).toBe(true);
  });

  it.runIf(WHOLE)('says so where the circuit does what the plan does, and where nothing agrees', async () => {
    const right = await told(SHOP, '--saw', 'all shut: off', '--saw', 'saw open: runs');
    expect(right.fits).toBe('nothing wrong');
    const { out } = await hunt(SHOP, '--saw', 'all shut: off', '--saw', 'saw open: runs');
    expect(out).toContain('All of it is what the circuit of the plan does');
    // No supply here gives so many volts.
    const none = await told(SHOP, '--saw', 'saw open: off', '--reading', 'K1.A1 K1.A2 = 300 V with saw open');
    expect(none.fits).toBe('none');
    expect([none.agreeing, none.suspects[0]!.against, none.doubtful]).toEqual([0, [2], 2]);
  });

  it('has the later of two answers to the same count', async () => {
    const json = await told(SHOP, '--saw', 'lathe open: runs', '--saw', 'lathe open: off');
    expect(json.answers).toEqual(['saw lathe open: off']);
  });

  it('takes the plan as it stands where it does not pass, and says so', async () => {
    const { status, out } = await hunt(examplePath('wrong/planer-on-break-tab'), '--saw', 'all shut: runs');
    expect(status).toBe(0);
    expect(out).toMatch(/does not pass|fails/i);
    expect(out).toContain('takes the plan as it stands');
  });

  it.each([
    [['--saw', 'lahte open: off'], /^pullin: --saw: no gate.*did you mean lathe\?/],
    [['--saw', 'saw open'], /--saw: found/],
    [['--reading', 'K1.A1 K1.A2 = 12'], /--reading: found "12", expected volts/],
    [['--reading', 'K1.COM X1.N = 230 V'], /no probe goes on live mains/],
    [['--saw', '\u001b[2J open: off'], /\\u001b\[2J/],
    [['--format', 'csv'], /--format/],
  ])('refuses %j', async (args, message) => {
    const { status, out, err } = await hunt(SHOP, ...args);
    expect([status, out]).toEqual([2, '']);
    expect(err).toMatch(message);
    expect(err).not.toContain('\u001b');
  });

  it('cannot hunt in a plan that is missing or cannot be read', async () => {
    expect((await hunt('nowhere.yaml')).status).toBe(2);
    expect((await hunt(examplePath('bad/typing-errors'))).status).toBe(2);
  });
});

const HEAD = /^# What was seen on a hunt with pullin\./;

describe('the log of a hunt', () => {
  const log = () => readFileSync(join(cwd, 'shop.log'), 'utf8');
  const lines = () =>
    log()
      .split('\n')
      .filter((l) => l !== '' && !l.startsWith('#'));

  it.runIf(WHOLE)('is made, and gone on from', async () => {
    await told(SHOP, '--log', 'shop.log', '--saw', 'lathe open: off');
    expect(log()).toMatch(HEAD);
    expect(lines()).toEqual(['saw lathe open: off']);
    const json = await told(
      SHOP,
      '--log',
      'shop.log',
      '--saw',
      'saw open: runs',
      '--reading',
      'K1.A1 K1.A2 = OL',
    );
    expect(lines()).toEqual(['saw lathe open: off', 'saw saw open: runs', 'reading K1.A1 K1.A2 = OL']);
    expect(json.answers).toEqual(lines());
    const again = await told(SHOP, '--log', 'shop.log');
    expect([again, lines().length]).toEqual([json, 3]);
    expect(readdirSync(cwd)).toEqual(['shop.log']);
  });

  it('may be added to by hand, with notes, other line ends and no end of its last line', async () => {
    await hunt(SHOP, '--log', 'shop.log');
    writeFileSync(
      join(cwd, 'shop.log'),
      `${log()}# Tuesday, with the cover off\r\n\r\nsaw lathe open: off\r\nsaw saw open: off\r\nundo\r\nsaw saw open: runs`,
    );
    const json = await told(SHOP, '--log', 'shop.log', '--saw', 'lathe open: K1 out');
    expect(json.answers).toEqual(['saw lathe open: off', 'saw saw open: runs', 'saw lathe open: K1 out']);
    expect(log()).toMatch(/\nsaw saw open: runs\nsaw lathe open: K1 out\n$/);
  });

  it.runIf(WHOLE)('is told by a flag that it is mended, keeps that, and takes it back', async () => {
    await told(SHOP, '--log', 'shop.log', ...DEAD_LATHE);
    const json = await told(SHOP, '--log', 'shop.log', '--mended', 'the lever was\n bent');
    expect([json.mended, json.next]).toEqual(['the lever was bent', null]);
    expect(log()).toMatch(/\nmended: the lever was bent\n$/);
    const text = (await hunt(SHOP, '--log', 'shop.log')).out;
    expect(text).toContain('What put it right: the lever was bent.');
    writeFileSync(join(cwd, 'shop.log'), `${log()}undo\n`);
    expect((await told(SHOP, '--log', 'shop.log')).mended).toBeNull();
    expect((await hunt(SHOP, '--mended', ' ')).status).toBe(2);
  });

  it.runIf(WHOLE)('takes back what was not sure and all that did not help at once', async () => {
    const first = await told(SHOP, '--log', 'shop.log', ...DEAD_LATHE);
    const [x, y] = first.suspects.map((s) => s.faults.map((f) => f.text).join(', and '));
    const gone = (json: HuntTold) => {
      const names = json.suspects.map((s) => s.faults.map((f) => f.text).join(', and '));
      return [x, y].filter((n) => !names.includes(n!)).length;
    };
    const upTo = log();
    writeFileSync(join(cwd, 'shop.log'), `${upTo}no help: ${x}\nnor: ${y}\n`);
    expect(gone(await told(SHOP, '--log', 'shop.log'))).toBe(2);
    writeFileSync(join(cwd, 'shop.log'), `${upTo}no help: ${x}\nnor: ${y}\nundo\n`);
    expect(gone(await told(SHOP, '--log', 'shop.log'))).toBe(0);
    const asked = first.next!.line;
    writeFileSync(join(cwd, 'shop.log'), `${upTo}${asked}\n`);
    expect((await told(SHOP, '--log', 'shop.log')).next?.line).not.toBe(asked);
    writeFileSync(join(cwd, 'shop.log'), `${upTo}${asked}\nundo\n`);
    expect((await told(SHOP, '--log', 'shop.log')).next?.line).toBe(asked);
  });

  it.runIf(WHOLE)('leaves out what was put right without help, two at once too', async () => {
    const first = await told(SHOP, '--log', 'shop.log', ...DEAD_LATHE);
    const gone = firstOf(first);
    writeFileSync(join(cwd, 'shop.log'), `${log()}no help: ${gone}\n`);
    const second = await told(SHOP, '--log', 'shop.log');
    expect(second.suspects.flatMap((s) => s.faults.map((f) => f.text))).not.toContain(gone);
    rmSync(join(cwd, 'shop.log'));
    // Both switches open, with their levers pressed: one at a time fails, not both.
    const both = [
      '--saw',
      'saw open: off',
      '--saw',
      'lathe open: off',
      '--reading',
      'saw.COM saw.NO = OL with saw open',
      '--reading',
      'lathe.COM lathe.NO = OL with lathe open',
    ];
    const pair = await told(SHOP, '--log', 'shop.log', ...both);
    expect(pair.fits).toBe('two faults');
    writeFileSync(join(cwd, 'shop.log'), `${log()}no help: ${firstOf(pair)}\n`);
    const rest = await told(SHOP, '--log', 'shop.log');
    expect(rest.fits).toBe('two faults');
    expect(rest.suspects.map((s) => s.faults.map((f) => f.text).join(', and '))).not.toContain(firstOf(pair));
  });

  it.each([
    ['saw lahte open: off', /shop\.log, line 2: no gate.*did you mean lathe\?/],
    ['lathe is dead', /shop\.log, line 2: found "lathe is dead", expected a line that begins with saw/],
    ['no help: the moon', /line 2: "the moon" is nothing that is suspected/],
    ['reading K1.A1 K1.A2 = \u001b[31m', /line 2: found "\\u001b/],
    ['saw saw open: off\n'.repeat(400), /more than 300 things/],
  ])('with %j is refused and left alone', async (line, message) => {
    writeFileSync(join(cwd, 'shop.log'), `# What was seen on a hunt with pullin.\n${line}\n`);
    const before = log();
    const { status, out, err } = await hunt(SHOP, '--log', 'shop.log', '--saw', 'saw open: runs');
    expect([status, out]).toEqual([2, '']);
    expect(err).toMatch(message);
    expect([err.includes('\u001b'), log()]).toEqual([false, before]);
  });

  it('is never written over another file, a folder or a device', async () => {
    writeFileSync(join(cwd, 'plan.yaml'), 'title: my only copy\n');
    writeFileSync(join(cwd, 'empty.txt'), '');
    writeFileSync(join(cwd, 'large.log'), `# What was seen on a hunt\n${'#'.repeat(200_000)}`);
    mkdirSync(join(cwd, 'folder'));
    symlinkSync('/dev/zero', join(cwd, 'endless'));
    for (const name of [
      'plan.yaml',
      'empty.txt',
      'large.log',
      'folder',
      'endless',
      'folder/missing/shop.log',
    ]) {
      const { status, err } = await hunt(SHOP, '--log', name, '--saw', 'saw open: off');
      expect([name, status]).toEqual([name, 2]);
      expect(err).toMatch(/is no log of a hunt|cannot be written|cannot be read as a log/);
    }
    expect(readFileSync(join(cwd, 'plan.yaml'), 'utf8')).toBe('title: my only copy\n');
    expect(readFileSync(join(cwd, 'empty.txt'), 'utf8')).toBe('');
    expect(readdirSync(cwd).sort()).toEqual(['empty.txt', 'endless', 'folder', 'large.log', 'plan.yaml']);
  });

  it('is not begun for a line that cannot be read', async () => {
    expect((await hunt(SHOP, '--log', 'shop.log', '--saw', 'lahte open: off')).status).toBe(2);
    expect(readdirSync(cwd)).toEqual([]);
  });
});
