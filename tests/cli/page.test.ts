import {
  existsSync,
  linkSync,
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
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { pullin } from './fake-io.ts';

let cwd: string;
beforeEach(() => {
  cwd = mkdtempSync(join(tmpdir(), 'pullin-page-'));
  for (const word of ['pass', 'fail', 'doubt', 'crash', 'other'])
    writeFileSync(join(cwd, `${word}.yaml`), word);
});
afterEach(() => rmSync(cwd, { recursive: true, force: true }));

const text = (name: string) => readFileSync(join(cwd, name), 'utf8');

describe('pullin page', () => {
  it.each(['pass', 'fail', 'doubt'])('writes the page of a plan that would %s', async (word) => {
    const done = await pullin(['page', `${word}.yaml`, '-o', 'out.html'], { cwd });
    expect(done).toEqual({ status: 0, out: '', err: 'out.html: written\n' });
    expect(text('out.html')).toContain(`<title>${word}</title>`);
  });

  it('writes to standard output', async () => {
    const { status, out, err } = await pullin(['page', '-', '-o', '-'], { cwd, stdin: ['pass'] });
    expect([status, err]).toEqual([0, '']);
    expect(out).toBe('<!doctype html><title>pass</title>\n');
  });

  it('is called as the plan where no name is given, and asks for one where the plan has none', async () => {
    expect((await pullin(['page', 'pass.yaml'], { cwd })).err).toBe('pass.html: written\n');
    expect((await pullin(['page', 'pass.yaml'], { cwd })).status).toBe(2);
    const { status, err } = await pullin(['page', '-'], { cwd, stdin: ['pass'] });
    expect(status).toBe(2);
    expect(err).toContain('name the file to write with -o');
  });

  it('writes nothing for a plan that cannot be read, or when it fails itself', async () => {
    expect((await pullin(['page', 'other.yaml', '-o', 'out.html'], { cwd })).status).toBe(2);
    expect((await pullin(['page', 'crash.yaml', '-o', 'out.html'], { cwd })).status).toBe(70);
    expect(existsSync(join(cwd, 'out.html'))).toBe(false);
  });

  it('leaves a file that exists unless told otherwise', async () => {
    writeFileSync(join(cwd, 'out.html'), 'mine');
    const kept = await pullin(['page', 'pass.yaml', '-o', 'out.html'], { cwd });
    expect(kept.status).toBe(2);
    expect(kept.err).toContain('out.html: is there already');
    expect(text('out.html')).toBe('mine');
    expect((await pullin(['page', 'pass.yaml', '-o', 'out.html', '--force'], { cwd })).status).toBe(0);
    expect(text('out.html')).toContain('<title>pass</title>');
  });

  it('never writes over the plan, by whatever name', async () => {
    symlinkSync('pass.yaml', join(cwd, 'soft.html'));
    linkSync(join(cwd, 'pass.yaml'), join(cwd, 'hard.html'));
    for (const name of ['soft.html', './soft.html', join(cwd, 'hard.html'), 'hard.html']) {
      const { status, err } = await pullin(['page', 'pass.yaml', '-o', name, '--force'], { cwd });
      expect(status, name).toBe(2);
      expect(err).toContain('is the plan itself');
    }
    expect(text('pass.yaml')).toBe('pass');
  });

  it('says what is wrong with the name, and leaves nothing behind', async () => {
    const before = readdirSync(cwd);
    const said = async (name: string, ...more: string[]) =>
      (await pullin(['page', 'pass.yaml', '-o', name, ...more], { cwd })).err;
    expect(await said('no/out.html')).toContain('there is no such folder');
    expect(await said('no/out.html', '--force')).toContain('there is no such folder');
    expect(await said('pass.yaml/out.html')).toContain('there is no such folder');
    mkdirSync(join(cwd, 'folder.html'));
    before.push('folder.html');
    expect(await said('folder.html')).toContain('is a folder');
    expect(await said('folder.html', '--force')).toContain('is a folder');
    expect(await said('a\u0000b.html')).toContain('is no file name');
    expect(await said('\u001b[2J/x.html')).not.toContain('\u001b');
    expect(await said('out.txt')).toContain('ends in .html');
    expect(await said('pass.yaml')).toContain('ends in .html');
    expect(readdirSync(cwd).sort()).toEqual(before.sort());
  });
});
