import {
  lstatSync,
  mkdirSync,
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
import { Problem } from '../../src/cli/status.ts';
import { isSameFile, writeOutput } from '../../src/cli/write-new.ts';

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'pullin-write-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const at = (name: string) => join(folder, name);
const text = (name: string) => readFileSync(at(name), 'utf8');
const write = (name: string, what: Buffer | string, force = false) =>
  writeOutput(at(name), name, what, force);

describe('writing a file', () => {
  it('writes text and bytes, and nothing beside them', async () => {
    await write('a', 'Ω\n');
    await write('b', Buffer.from([0, 255]));
    expect(text('a')).toBe('Ω\n');
    expect([...readFileSync(at('b'))]).toEqual([0, 255]);
    expect(readdirSync(folder)).toEqual(['a', 'b']);
  });

  it('lets one of many that write at once win, whole', async () => {
    const bodies = Array.from({ length: 20 }, (_, i) => String(i).repeat(10_000));
    const done = await Promise.allSettled(bodies.map((body) => write('a', body)));
    expect(done.filter((d) => d.status === 'fulfilled')).toHaveLength(1);
    for (const d of done) if (d.status === 'rejected') expect(d.reason).toBeInstanceOf(Problem);
    const won = done.findIndex((d) => d.status === 'fulfilled');
    expect(text('a')).toBe(bodies[won]);
    expect(readdirSync(folder)).toEqual(['a']);
  });

  it('keeps the mode and follows a link with force', async () => {
    writeFileSync(at('a'), 'old', { mode: 0o640 });
    symlinkSync('a', at('link'));
    await expect(write('link', 'new')).rejects.toThrow('is there already');
    await write('link', 'new', true);
    expect(text('a')).toBe('new');
    expect(statSync(at('a')).mode & 0o777).toBe(0o640);
    expect(lstatSync(at('link')).isSymbolicLink()).toBe(true);
  });

  it('takes a link to nothing for a file', async () => {
    symlinkSync('nothing', at('link'));
    await expect(write('link', 'new')).rejects.toThrow('is there already');
    await write('link', 'new', true);
    expect(text('link')).toBe('new');
    expect(statSync(at('link')).mode & 0o111).toBe(0);
  });

  it('refuses folders and other things', async () => {
    mkdirSync(at('d'));
    for (const force of [false, true]) await expect(write('d', 'x', force)).rejects.toThrow('is a folder');
    await expect(writeOutput('/dev/null', 'null', 'x', true)).rejects.toThrow('no plain file');
    await expect(write('no/a', 'x')).rejects.toThrow('no such folder');
  });
});

describe('one file', () => {
  it('is told by what it is, not by its name', async () => {
    writeFileSync(at('a'), '');
    writeFileSync(at('b'), '');
    symlinkSync('a', at('link'));
    expect(await isSameFile(at('a'), at('link'))).toBe(true);
    expect(await isSameFile(at('a'), at('b'))).toBe(false);
    expect(await isSameFile(at('a'), at('none'))).toBe(false);
  });
});
