import {
  chmodSync,
  lstatSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { withWholeLengths } from '../../src/cli/grow.ts';
import { STAGES, type Stages } from '../../src/cli/stages.ts';
import type { Report } from '../../src/findings/report-model.ts';
import { failing, finding, report } from '../report/samples.ts';
import { pullin, type Surroundings } from './fake-io.ts';

const SHOP = `format: 1
stock:
  snap: {kind: gate, pressed-when: open, contact: {ratings: [3 A 30 V DC]}}
  bell: {kind: cable, gauge: 20 AWG, cores: 2, insulation: 150 V}
parts:
  PS1: {kind: supply, output: 12 V DC, limit: 1 A}
  K1: {kind: relay, coil: {rated: 12 V DC}, contact: {ratings: [30 A 240 V AC]}}
  saw: {from: snap} # é
  planer: {from: snap}
runs:
  - {link: [PS1.-, K1.A2]}
  - {cable: bell, length: 4 m, cores: {red: [PS1.+, saw.COM], white: [K1.A1, saw.NO]}}
  - {cable: bell, length: 3 m, cores: {red: [saw.COM, planer.COM], white: [saw.NO, planer.NO]}}
intent: {K1: {runs-on: [saw, planer]}}
`;
const GROWN = SHOP.replace('  planer: {from: snap}\n', '  planer: {from: snap}\n  lathe: {from: snap}\n')
  .replace(
    'planer.NO]}}\n',
    'planer.NO]}}\n  - {cable: bell, length: 2 m, cores: {red: [planer.COM, lathe.COM], white: [planer.NO, lathe.NO]}}\n',
  )
  .replace('[saw, planer]', '[saw, planer, lathe]');

it('takes lengths as a person types them, figure and unit apart', () => {
  const words = (line: string) => withWholeLengths(line.split(' '));
  expect(words('add gate x --length 8 ft 6 in --onward 2 m shop.yaml')).toEqual([
    ...['add', 'gate', 'x', '--length', '8 ft 6 in', '--onward', '2 m', 'shop.yaml'],
  ]);
  for (const same of [
    'add gate m --after 3 --length 3m in',
    'table 3 m',
    'add gate x --length 3',
    'a --length 3 yd',
  ])
    expect(words(same)).toEqual(same.split(' '));
});

let cwd = '';
let file = '';
beforeEach(() => {
  cwd = mkdtempSync(join(tmpdir(), 'pullin-grow-'));
  file = join(cwd, 'shop.yaml');
  writeFileSync(file, SHOP);
});
afterEach(() => rmSync(cwd, { recursive: true }));

const pass = report();
/** True stages but for the check: one report for the plan as it is, one for it as changed. */
const stages = (before: Report, after: Report): Stages => ({
  ...STAGES,
  check: ({ plan }) => (plan.parts.has('lathe') ? after : before),
});
const ADD = ['add', 'gate', 'lathe', '--after', 'planer', '--length', '2m', 'shop.yaml'];
const REMOVE = ['remove', 'gate', 'lathe', 'shop.yaml'];
const run = (args: readonly string[], after: Report = pass, around: Surroundings = {}, before = pass) =>
  pullin(args, { cwd, stages: stages(before, after), ...around });
const leftAlone = (text = SHOP) => {
  expect(readFileSync(file, 'utf8')).toBe(text);
  expect(readdirSync(cwd)).toEqual(['shop.yaml']);
};
const doubt = report({ verdict: 'cannot-tell', findings: [finding({ severity: 'doubt' })] });

describe('what is written', () => {
  it('a gate with its cable and its place in the intent, and back to the byte', async () => {
    chmodSync(file, 0o640);
    const { status, out, err } = await run(ADD);
    expect([status, err]).toEqual([0, '']);
    expect(out).toMatch(
      /^Written into shop\.yaml:\n\n1\. Lay 2 m of the cable bell: red from planer\.COM to lathe\.COM, white/,
    );
    expect(out).toMatch(/Check before and after: pass\. No finding came or went\.\n\nPull every plug/);
    leftAlone(GROWN);
    expect(statSync(file).mode & 0o7777).toBe(0o640);
    const back = await run(REMOVE);
    expect([back.status, back.err]).toEqual([0, '']);
    expect(back.out).toMatch(/1\. Take out run 4, line 15, 2 m: .*\n.*\n2\. Take lathe out\./);
    leftAlone();
  });

  it('by the whole check as well', async () => {
    const { status, out } = await run(ADD, pass, { stages: STAGES });
    expect(status).toBe(3);
    expect(out).toMatch(/Check before and after: cannot tell\./);
    leftAlone(GROWN);
  });

  it('behind the gate at which the cable ends where none is named, and says so', async () => {
    const { status, out, err } = await run(ADD.filter((_, i) => i !== 3 && i !== 4));
    expect(status).toBe(0);
    expect(err).toBe('pullin: --after was not given; lathe comes after planer, where the cable ends.\n');
    expect(out).toContain('red from planer.COM to lathe.COM');
    leftAlone(GROWN);
  });

  it('a cable cut in two', async () => {
    const args = ['add', 'gate', 'lathe', '--after', 'saw', '--length', '1 m', '--onward', '2m', 'shop.yaml'];
    expect((await run(args)).out).toMatch(
      /1\. Move the ends of run 3, line 13: red from saw\.COM to lathe\.COM, white from\n {3}saw\.NO to lathe\.NO\. It is 2 m long then\.\n2\. Lay 1 m/,
    );
    expect(readFileSync(file, 'utf8')).toContain('length: 1 m, cores: {red: [saw.COM, lathe.COM]');
    await run(REMOVE);
    leftAlone();
  });

  it('and told as data', async () => {
    const dry = JSON.parse((await run([...ADD, '--dry-run', '--json'])).out);
    expect(dry).toMatchObject({
      format: 1,
      do: 'add',
      gate: 'lathe',
      written: false,
      before: 'pass',
      after: 'pass',
    });
    expect(dry.steps[0]).toMatch(/^Lay 2 m of the cable bell: red from planer\.COM to lathe\.COM/);
    expect(dry.diff).toContain('+  lathe: {from: snap}');
    leftAlone();
    const worse = await run([...ADD, '--json'], failing());
    expect([worse.status, JSON.parse(worse.out)]).toMatchObject([1, { written: false, after: 'fail' }]);
    leftAlone();
    expect(JSON.parse((await run([...ADD, '--json'])).out)).toMatchObject({
      written: true,
      came: [],
      went: [],
    });
    leftAlone(GROWN);
  });

  it('follows a link, which stays one', async () => {
    symlinkSync(file, join(cwd, 'link.yaml'));
    expect((await run([...ADD.slice(0, -1), 'link.yaml'])).status).toBe(0);
    expect(lstatSync(join(cwd, 'link.yaml')).isSymbolicLink()).toBe(true);
    expect(readFileSync(file, 'utf8')).toBe(GROWN);
  });
});

describe('a plan that would be worse', () => {
  it.each([
    ['fails', failing(), 'Check before: pass. After: fail.'],
    ['cannot be told', doubt, 'Check before: pass. After: cannot tell.'],
  ])('is not written where it then %s, but told with what came', async (_, after, words) => {
    const { status, out, err } = await run(ADD, after);
    expect([status, err]).toEqual([1, '']);
    expect(out.replaceAll('\n', ' ')).toMatch(
      /^Not written into shop\.yaml: the check finds more wrong .*--force/,
    );
    expect(out).toContain(words);
    expect(out).toMatch(/\nCame:\n- \w+ [a-z-]+: /);
    leftAlone();
  });

  it('is written with --force, with the status of the check', async () => {
    const { status, out } = await run([...ADD, '--force'], failing());
    expect(status).toBe(1);
    expect(out).toMatch(/^Written into shop\.yaml:[\s\S]*\nCame:\n/);
    leftAlone(GROWN);
  });

  it('is one that failed before and gets a fault more, and not one that only stays as wrong', async () => {
    const [one, other] = [finding({ parts: ['K1'] }), finding({ parts: ['saw'] })];
    const worse = report({ verdict: 'fail', findings: [one, other] });
    const before = report({ verdict: 'fail', findings: [one] });
    expect((await run(ADD, worse, {}, before)).out).toMatch(/^Not written/);
    leftAlone();
    const listed = report({
      verdict: 'fail',
      findings: [finding({ parts: ['K1', 'lathe'], message: 'now two' })],
    });
    const { status, out } = await run(ADD, listed, {}, before);
    expect(status).toBe(1);
    expect(out).toMatch(/^Written[\s\S]*Check before and after: fail\.\n\nTold otherwise now:\n.*now two/);
  });

  it('loses findings too, which are told', async () => {
    const { out } = await run(ADD, pass, {}, failing());
    expect(out).toMatch(/Check before: fail\. After: pass\.\n\nWent:\n- /);
  });
});

describe('--dry-run', () => {
  it('prints the diff alone on standard output, and writes nothing', async () => {
    const { status, out, err } = await run([...ADD, '--dry-run']);
    expect(status).toBe(0);
    expect(out).toMatch(/^--- shop\.yaml\n\+\+\+ shop\.yaml\n@@ -7,8 \+7,10 @@\n/);
    expect(out).toContain('\n+  lathe: {from: snap}\n');
    expect(err).toMatch(/^Not written into shop\.yaml:\n\n1\. Lay 2 m/);
    leftAlone();
    expect(await run([...ADD, '--dry-run'], failing())).toMatchObject({
      status: 1,
      err: expect.stringMatching(/Came:/),
    });
    leftAlone();
  });

  it('takes standard input, which cannot be written to', async () => {
    const args = [...ADD.slice(0, -1), '-'];
    const piped = await run([...args, '--dry-run'], pass, { stdin: [SHOP] });
    expect(piped).toMatchObject({ status: 0, out: expect.stringMatching(/^--- standard input\t\n/) });
    expect(await run(args, pass, { stdin: [SHOP] })).toMatchObject({
      status: 2,
      out: '',
      err: expect.stringMatching(/standard input cannot be written to/),
    });
  });

  it('leaves no control characters on a terminal', async () => {
    writeFileSync(file, SHOP.replace('# é', '# \u202e'));
    const { out } = await run([...ADD, '--dry-run'], pass, { isTTY: true });
    expect(out).toContain('# \\u202e\n');
  });
});

describe('what is refused', () => {
  const add = (...more: string[]) => ['add', 'gate', ...more];
  it.each([
    [
      add('lathe', '--after', 'plner', '--length', '2m', 'shop.yaml'),
      /no part is called "plner"; did you mean planer\?/,
    ],
    [add('saw', '--after', 'planer', '--length', '2m', 'shop.yaml'), /has a part saw already/],
    [add('SAW', '--after', 'planer', '--length', '2m', 'shop.yaml'), /differ only in case/],
    [add('a\u001b[2Jb', '--after', 'planer', '--length', '2m', 'shop.yaml'), /the name "a.*b" holds/],
    [add('lathe', '--after', 'K1', '--length', '2m', 'shop.yaml'), /K1 is no gate but a relay/],
    [
      add('lathe', '--after', 'saw', '--length', '2m', 'shop.yaml'),
      /--onward how long it is from lathe to planer/,
    ],
    [add('lathe', '--after', 'planer', '--length', '2', 'shop.yaml'), /length with its unit/],
    [add('lathe', '--after', 'planer', '--length', '2 V', 'shop.yaml'), /--length: .*a length/],
    [add('lathe', '--after', 'planer', '--length', '0 m', 'shop.yaml'), /--length: /],
    [add('lathe', '--after', 'planer', '--length', '2m', '--onward', '1 kg', 'shop.yaml'), /--onward: /],
    [add('lathe', '--after', 'planer', 'shop.yaml'), /--length/],
    [['add', 'relay', 'K2', '--after', 'planer', '--length', '2m', 'shop.yaml'], /unknown command 'relay'/],
    [['remove', 'gate', 'lath', 'shop.yaml'], /no part is called "lath"/],
    [['remove', 'gate', 'K1', 'shop.yaml'], /K1 is no gate/],
    [['remove', 'gate', 'saw', 'none.yaml'], /none\.yaml/],
  ])('%j', async (args, words) => {
    const { status, out, err } = await run(args);
    expect([status, out]).toEqual([2, '']);
    expect(err).toMatch(words);
    leftAlone();
  });

  it('a plan that cannot be read, and a file that changed meanwhile', async () => {
    const later = SHOP.replace('# é', '# later');
    const changing: Stages = {
      ...STAGES,
      check: () => {
        writeFileSync(file, later);
        return pass;
      },
    };
    expect(await run(ADD, pass, { stages: changing })).toMatchObject({
      status: 2,
      out: '',
      err: expect.stringMatching(/has changed since it was read/),
    });
    leftAlone(later);
    writeFileSync(file, 'format: 1\n');
    expect((await run(ADD)).status).toBe(2);
    leftAlone('format: 1\n');
  });

  // The administrator may write everywhere.
  it.skipIf(process.getuid?.() === 0)('a file that may only be read', async () => {
    chmodSync(file, 0o444);
    expect(await run(ADD)).toMatchObject({ status: 2, err: expect.stringMatching(/permission denied/) });
    leftAlone();
  });

  it('what the file cannot take', async () => {
    const shared = SHOP.replace('  planer: {from: snap}', '  planer: &p {from: snap}\n  spare: *p');
    writeFileSync(file, shared);
    expect(await run(['remove', 'gate', 'planer', 'shop.yaml'])).toMatchObject({
      status: 2,
      out: '',
      err: expect.stringMatching(/cannot be written into the file\. .*anchor/),
    });
    leftAlone(shared);
  });

  it('help ends with two examples that work', async () => {
    for (const what of ['add', 'remove'])
      expect((await run([what, 'gate', '--help'])).out).toMatch(
        new RegExp(
          `Exit status[\\s\\S]*Examples:\\n  pullin ${what} gate .*shop\\.yaml\\n  pullin ${what} gate .*shop\\.yaml\\n$`,
        ),
      );
  });
});
