import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { STAGES } from '../../src/cli/stages.ts';
import { WHOLE } from '../helpers/share.ts';
import { HAS_TERMINAL, inTerminal, read, type Step } from '../helpers/terminal.ts';
import { pullin } from './fake-io.ts';

let cwd = '';
beforeEach(() => {
  cwd = mkdtempSync(join(tmpdir(), 'pullin-asked-'));
});
afterEach(() => rmSync(cwd, { recursive: true, force: true }));

const ENTER = '\r';
/** Takes back what stands on the line. */
const CLEAR = '\u0015';
const answer = (key: string, text: string): Step => ({ wait: `${key}:`, send: text + ENTER });
const all: readonly Step[] = [
  answer('title', 'Back garage'),
  answer('practice', 'nec'),
  answer('mains', ''),
  answer('motor', '1 hp 13 A'),
  answer('type', ''),
  answer('protector', 'manual'),
  answer('circuit', ''),
  answer('layout', ''),
  answer('gates', 'saw 6 ft, planer 4'),
  answer('lever', 'open'),
  answer('supply', ''),
  answer('relay', ''),
  answer('cutouts', ''),
  answer('hand', ''),
  answer('run-on', ''),
];
const FLAGS = [
  '--title',
  'Back garage',
  '--practice',
  'nec',
  '--motor',
  '1 hp 13 A',
  '--protector',
  'manual',
  '--lever',
  'open',
];
/** With these flags only the gates are asked for, and what has a usual answer. */
const FEW = [
  ...FLAGS,
  '--mains',
  '120 V',
  '--type',
  'capacitor-start',
  '--circuit',
  'choose',
  '--supply',
  'choose',
  '--relay',
  'choose',
  '--cutouts',
  'none',
  '--hand',
  'none',
  '--run-on',
  'none',
];

describe.skipIf(!HAS_TERMINAL)('the questions in a terminal', () => {
  it.runIf(WHOLE)(
    'are asked one by one; wrong answers are asked again, back goes back, and the plan is that of the flags',
    async () => {
      const steps = [
        ...all.slice(0, 7),
        answer('layout', 'chian'),
        { wait: 'did you mean chain?', send: `${CLEAR}star${ENTER}` },
        answer('gates', 'back'),
        { wait: 'layout:', send: `chain${ENTER}` },
        ...all.slice(8),
      ];
      const { status, output } = inTerminal(['new'], steps, { cwd, env: { NO_COLOR: '1' } });
      const text = read(output);
      expect([status, text.slice(-300)]).toEqual([
        0,
        expect.stringContaining('pullin check back-garage.yaml'),
      ]);
      // No colour, and no sign but plain ones: SGR sequences end in m.
      // biome-ignore lint/suspicious/noControlCharactersInRegex: looking for them is the purpose
      expect(output).not.toMatch(/\u001b\[[\d;]*m/);
      expect(text).toContain('since most small collectors there plug into it');
      const flags = await pullin(
        ['new', ...FEW, '--layout', 'chain', '--gates', 'saw 6 ft, planer 4', '-o', '-'],
        { cwd, stages: STAGES },
      );
      expect(flags.status).toBe(0);
      expect(bare(readFileSync(join(cwd, 'back-garage.yaml'), 'utf8'))).toBe(bare(flags.out));
    },
  );

  it.runIf(WHOLE)('end at Ctrl-C with nothing written', () => {
    const { status, output } = inTerminal(['new'], [all[0]!, { wait: 'practice:', send: '\u0003' }], { cwd });
    expect([status, readdirSync(cwd)]).toEqual([2, []]);
    expect(read(output)).toContain('Nothing was written.');
  });
});

/** Without the line that names the schema, which differs by where the program lies. */
const bare = (text: string) => text.replace(/^# yaml-language-server.*\n/, '');

describe.skipIf(!HAS_TERMINAL || !WHOLE)('the questions in a terminal, more of them', () => {
  it.each([
    ['quit', `quit${ENTER}`],
    ['Ctrl-D', '\u0004'],
  ])('end at %s with nothing written', (_, send) => {
    const { status, output } = inTerminal(['new'], [all[0]!, { wait: 'practice:', send }], { cwd });
    expect([status, readdirSync(cwd)]).toEqual([2, []]);
    expect(read(output)).toContain('Nothing was written.');
  });

  it('go on when the terminal is made narrow and wide', () => {
    const steps = all.map((step, i) =>
      i === 3 ? { ...step, resize: 40 } : i === 9 ? { ...step, resize: 120 } : step,
    );
    const { status, output } = inTerminal(['new'], steps, { cwd });
    expect([status, readdirSync(cwd)]).toEqual([0, ['back-garage.yaml']]);
    expect(read(output)).toContain('Nothing in this check failed.');
  });

  it('leave out what was given, and what does not apply', () => {
    const steps = [
      { wait: 'layout:', send: `ring${ENTER}` },
      answer('gates', 'saw 6 ft, planer 4 ft'),
      answer('return', ''),
    ];
    const { status, output } = inTerminal(['new', ...FEW], steps, { cwd });
    expect(status).toBe(0);
    expect(read(output)).not.toContain('practice:');
    expect(readFileSync(join(cwd, 'back-garage.yaml'), 'utf8')).toContain('return: 10 ft');
    const chain = inTerminal(
      ['new', ...FEW, '-o', 'chain.yaml'],
      [{ wait: 'layout:', send: `chain${ENTER}` }, answer('gates', 'saw 6 ft')],
      { cwd },
    );
    expect([chain.status, read(chain.output).includes('return:')]).toEqual([0, false]);
  });

  it('offer the nearest change where no plan passes, and make it', () => {
    const relay = ['--relay', 'coil 12 V DC 155 ohm, 10 A 240 V AC'];
    const args = [
      'new',
      ...FEW.filter((_, i, list) => list[i] !== '--relay' && list[i - 1] !== '--relay'),
      ...relay,
      '--layout',
      'chain',
    ];
    const { status, output } = inTerminal(
      args,
      [answer('gates', 'saw 6 ft'), { wait: 'Type yes', send: '' }, { wait: '>', send: `yes${ENTER}` }],
      { cwd },
    );
    expect([status, readdirSync(cwd)]).toEqual([0, ['back-garage.yaml']]);
    expect(read(output)).toContain('relay: choose in place of');
  });

  it('ask for another name where the file is there', () => {
    writeFileSync(join(cwd, 'back-garage.yaml'), 'mine\n');
    const { status } = inTerminal(
      ['new', ...FEW, '--layout', 'chain'],
      [answer('gates', 'saw 6 ft'), { wait: 'file:', send: ENTER }],
      { cwd },
    );
    expect([status, readdirSync(cwd).sort()]).toEqual([0, ['back-garage-2.yaml', 'back-garage.yaml']]);
    expect(readFileSync(join(cwd, 'back-garage.yaml'), 'utf8')).toBe('mine\n');
  });

  it('let no gate name move the cursor', () => {
    const { status, output } = inTerminal(
      ['new', ...FEW, '--layout', 'chain', '-o', 'x.yaml'],
      [answer('gates', 'saw\u202e 6 ft'), { wait: '! ', send: `${CLEAR}quit${ENTER}` }],
      { cwd },
    );
    expect(status).toBe(2);
    expect(read(output).split('! ')[1]).not.toContain('\u202e');
  });
});
