import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { STAGES } from '../../src/cli/stages.ts';
import { columns } from '../../src/text/wrap.ts';
import { pullin, type Surroundings } from './fake-io.ts';

const EXAMPLE = new URL('../../examples/saltmarsh-lane.yaml', import.meta.url);
const HOSTILE = `format: 1
title: "x\\e[2J"
parts:
  PS: {kind: supply, output: 12 V DC, limit: 1 A, regulation: regulated}
  R: {kind: resistor, resistance: 12 ohm}
  mode: {kind: selector, positions: [auto, off, hand], rest: auto}
  fan: {kind: resistor, resistance: 1 kohm}
  FULL: {kind: cutout}
  GO: {kind: button}
runs:
  - name: a very long name that somebody gave to a run, so that no table of four columns holds it in eighty
    cable: {kind: cable, gauge: 20 AWG, cores: 1}
    length: 1 m
    cores: {red: [PS.+, FULL.COM]}
  - name: "a\\e[1A\\rb\\u202eé Ω"
    route: "under\\e[2K"
    cable: {kind: cable, gauge: 10 AWG, cores: 2}
    length: 1 cm
    cores: {red: [PS.+, R.1], blue: [PS.-, R.2]}
`;

let cwd = '';
beforeAll(() => {
  cwd = mkdtempSync(join(tmpdir(), 'pullin-read-'));
  writeFileSync(join(cwd, 'lane.yaml'), readFileSync(EXAMPLE));
  writeFileSync(join(cwd, 'hostile.yaml'), HOSTILE);
  writeFileSync(join(cwd, 'bad.yaml'), 'format: 1\nparts: {K1: {kind: realy}}\n');
});
afterAll(() => rmSync(cwd, { recursive: true }));

/** `pullin read ...` with the true stages. */
const read = (args: string, around: Surroundings = {}) =>
  pullin(['read', ...args.split(' ').filter((x) => x !== '')], { cwd, stages: STAGES, ...around });

describe('readings', () => {
  it('two terminals of a lane with one gate open', async () => {
    const { status, out, err } = await read('lane.yaml --open router K1.A1 K1.A2');
    expect([status, err]).toEqual([0, '']);
    expect(out).toBe('With router open; K1 in:\n\nK1.A1 to K1.A2: 11.92 V DC\n');
    expect((await read('lane.yaml --open router K1.86 D1.A')).out).toContain('K1.A1 to D1.A: 11.92 V DC');
  });

  it('the tables of a lane with one gate open', async () => {
    const { out } = await read('lane.yaml --open router');
    expect(out).toMatch(/^With router open; K1 in:\n\nvolts against PS1\.-\n {2}12 V DC {6}PS1\.\+\n/);
    expect(out).toMatch(/\n {2}run 4 {2}red {4}planer\.COM to router\.COM {3}76\.93 mA\n/);
    expect(out).toMatch(/\n {2}119\.2 V AC {3}X1\.L\n/);
    expect(out).toMatch(/tied to no supply\n {15}P1\.PE\n/);
    expect(out.endsWith('A\n')).toBe(true);
  });

  it('power off', async () => {
    expect((await read('lane.yaml --dead K1.A1 K1.A2')).out).toBe(
      'Power off, everything at rest:\n\nK1.A1 to K1.A2: 155 ohm, no beep\n',
    );
    expect((await read('lane.yaml --dead PS1.+ PS1.-')).out).toContain('no way through, no beep');
    expect((await read('lane.yaml --dead --open router router.COM router.NO')).out).toMatch(
      /^Power off, router open:\n\nrouter\.COM to router\.NO: 0\.05 ohm, beeps\n/,
    );
    expect((await read('lane.yaml --dead X1.L X1.N')).out).toMatch(
      /some ohms, beeps\n- The reading goes through[\s\S]*less than 8 ohm/,
    );
  });

  it('a dead line while the loop is live', async () => {
    // Two conductors of 12 AWG, the contact of the relay: next to nothing with the relay in, no way through with it out.
    expect((await read('lane.yaml --dead --loop --open router P1.L X1.L')).out).toMatch(
      /^With router open; K1 in:\n\nP1\.L to X1\.L: 0\.0\d+ ohm, beeps\n$/,
    );
    expect((await read('lane.yaml --dead --loop P1.L X1.L')).out).toContain('no way through');
    expect((await read('lane.yaml --dead --open router P1.L X1.L')).out).toContain('no way through');
    const live = await read('lane.yaml --dead --loop --open router K1.A1 K1.A2');
    expect(live.out).toMatch(/cannot tell\n- A supply that is on reaches a probe/);
  });

  it('a clip lead joins what it is on', async () => {
    // 0.1 ohm of lead and two cores of the cord.
    expect((await read('lane.yaml --dead --clip P1.L,P1.N K1.COM neutral')).out).toMatch(
      /: 0\.1\d* ohm, beeps/,
    );
    expect((await read('lane.yaml --dead K1.COM neutral')).out).toContain('no way through');
    expect((await read('lane.yaml --dead --clip P1.L,P1.PE K1.COM neutral')).out).toContain('no way through');
  });

  it.each([
    ['--loop K1.A1 K1.A2', '--loop goes with --dead'],
    ['--clip P1.L,P1.N K1.A1 K1.A2', '--clip goes with --dead'],
    ['--dead --clip P1.L K1.A1 K1.A2', 'two terminals or more'],
    ['--dead --clip P1.L,P1.X K1.A1 K1.A2', 'P1 has no terminal "X"'],
  ])('%s is refused', async (args, message) => {
    const { status, err } = await read(`lane.yaml ${args}`);
    expect(status).toBe(2);
    expect(err).toContain(message);
  });

  it('takes gates in one list or several, in any order, and twice', async () => {
    const one = await read('lane.yaml --open router,planer K1.A1 K1.A2');
    for (const args of [
      '--open planer --open router',
      '--open planer,router,planer',
      '--open ,planer,,router,',
    ])
      expect((await read(`lane.yaml ${args} K1.A1 K1.A2`)).out).toBe(one.out);
    expect(one.out).toContain('With planer open, router open; K1 in');
  });

  it('gives JSON', async () => {
    const { out, status } = await read('lane.yaml --open router K1.A2 K1.A1 --json');
    expect(status).toBe(0);
    expect(JSON.parse(out)).toEqual({
      format: 1,
      state: { power: true, moved: { router: 'open' }, relays: { K1: 'in' }, supplies: { PS1: 'on' } },
      between: ['K1.A2', 'K1.A1'],
      volts: expect.closeTo(-11.92, 2),
      kind: 'dc',
      through: null,
      ohms: null,
      beeps: null,
      nets: [],
      cores: [],
      notes: [],
    });
    const all = JSON.parse((await read('lane.yaml --json')).out);
    expect(all.between).toBeNull();
    expect(all.cores[0]).toEqual({
      run: 1,
      mark: '1',
      name: null,
      colour: 'red',
      from: 'PS1.+',
      to: 'feed',
      amps: 0,
    });
    expect(Object.keys(all.nets[0])).toEqual(['terminals', 'volts', 'kind', 'against']);
  });
});

describe('what was typed wrong', () => {
  it.each([
    ['lane.yaml --open bandsaww', '--open: no part is called "bandsaww"; did you mean bandsaw?'],
    ['lane.yaml --open K1', '--open: K1 is a relay, which is not moved by hand'],
    ['lane.yaml --press router', '--press: router is a gate; say --open router'],
    ['hostile.yaml --open FULL', '--open: FULL is a cutout; say --trip FULL'],
    ['hostile.yaml --trip GO', '--trip: GO is a button; say --press GO'],
    ['hostile.yaml --press mode', '--press: mode is a selector; say --on mode'],
    ['hostile.yaml --on mode', '--on: mode has the positions mode.auto, mode.off, mode.hand; found "mode"'],
    ['hostile.yaml --on mode.hnad', 'found "mode.hnad"'],
    ['hostile.yaml --on mode.hand,mode.off', 'mode cannot stand at two positions at once'],
    ['hostile.yaml --on mode.auto --on mode.hand', 'mode cannot stand at two positions at once'],
    ['lane.yaml --open router.NO', '--open: found "router.NO", expected router alone'],
    ['lane.yaml K1.A1', 'name two terminals, or none'],
    ['lane.yaml --dead', '--dead needs the two terminals'],
    ['lane.yaml K2.A1 K1.A2', 'no part is called "K2"; did you mean K1?'],
    ['lane.yaml K1 K1.A2', 'name a terminal of K1: K1.A1, K1.A2'],
    ['lane.yaml K1.A1 K1.A3', 'K1 has no terminal "A3"; did you mean A1?'],
    ['lane.yaml feed.1 K1.A1', 'feed has no terminal "1"'],
    ['lane.yaml B1 K1.A1', 'name a terminal of B1'],
    ['lane.yaml a b c', 'too many arguments'],
    ['lane.yaml --opened router', "unknown option '--opened'"],
    ['lane.yaml --open', 'argument missing'],
    ['', 'missing required argument'],
  ])('read %s', async (args, message) => {
    const { status, out, err } = await read(args);
    expect([status, out]).toEqual([2, '']);
    expect(err).toContain(message);
  });

  it('a plan that cannot be read, or is not there', async () => {
    const bad = await read('bad.yaml K1.A1 K1.A2');
    expect([bad.status, bad.out]).toEqual([2, '']);
    expect(bad.err).toContain('did you mean relay?');
    expect((await read('absent.yaml')).err).toBe('pullin: absent.yaml: there is no such file\n');
    // the command line is judged before the file
    expect((await read('absent.yaml K1.A1')).err).toContain('name two terminals');
  });

  it('an escape code in what was typed does not reach the terminal', async () => {
    for (const args of [
      'lane.yaml --open \u001b[2J',
      'lane.yaml \u001b[2J.x K1.A1',
      'lane.yaml K1.\u001b[A K1.A1',
    ]) {
      const { err, status } = await read(args);
      expect(status).toBe(2);
      expect(err).not.toContain('\u001b');
      expect(err).toContain('\\u001b[');
    }
  });

  it('the resting position of a selector is a position', async () => {
    expect((await read('hostile.yaml --on mode.auto R.1 R.2')).out).toMatch(/^With everything at rest:/);
    expect((await read('hostile.yaml --on mode.hand R.1 R.2')).out).toMatch(/^With mode hand:/);
  });
});

describe('on the terminal', () => {
  it('a hostile plan cannot move the cursor, and JSON stays JSON', async () => {
    const { out } = await read('hostile.yaml');
    expect([...out].filter((c) => c !== '\n' && (c < ' ' || c === '\u202e'))).toEqual([]);
    expect(out).toContain('a\\u001b[1A\\u000db\\u202eé Ω');
    expect(out).toContain('1 A');
    const json = (await read('hostile.yaml --json')).out;
    expect(json).not.toContain('\u001b');
    expect(JSON.parse(json).cores[1].name).toContain('\u001b[1A');
  });

  it('spells signs out for a plain locale', async () => {
    const { out } = await read('hostile.yaml', { isTTY: true, env: { LC_ALL: 'C' } });
    expect(/^[\n -~]*$/.test(out)).toBe(true);
    expect(out).toContain('e ohm');
  });

  it.each([80, 40, 24, 20])('keeps within %d columns', async (width) => {
    for (const args of [
      'lane.yaml --open router',
      'hostile.yaml',
      'lane.yaml --dead X1.L X1.N',
      'lane.yaml P1.PE K1.A1',
    ]) {
      const { out } = await read(args, { columns: width });
      for (const line of out.split('\n')) expect([line, columns(line) <= width]).toEqual([line, true]);
    }
  });

  it('prints help', async () => {
    const { out, status } = await read('--help');
    expect(status).toBe(0);
    for (const word of ['--open', '--on', '--press', '--trip', '--dead', '--json', 'stands at rest'])
      expect(out).toContain(word);
    expect((await pullin(['--help'])).out).toContain('read');
  });
});
