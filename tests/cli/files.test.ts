/** Files that are written or left: of several names, cut short, and when a signal comes. */
import {
  chmodSync,
  linkSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { printPdf } from '../../src/cli/pdf.ts';
import { replaceFile } from '../../src/cli/replace.ts';
import { putAwayOnSignal } from '../../src/cli/tidy.ts';
import { pullin } from './fake-io.ts';

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'pullin-files-'));
});
afterEach(() => {
  vi.restoreAllMocks();
  rmSync(folder, { recursive: true, force: true });
});

it.each(['a longer text than before\n', 'x'])('keeps both names of a file of two', async (after) => {
  const [a, b] = [join(folder, 'a'), join(folder, 'b')];
  writeFileSync(a, 'before\n', { mode: 0o640 });
  linkSync(a, b);
  await replaceFile(a, 'a', Buffer.from('before\n'), Buffer.from(after));
  expect(readFileSync(b, 'utf8')).toBe(after);
  expect(statSync(a).ino).toBe(statSync(b).ino);
  expect(readdirSync(folder)).toEqual(['a', 'b']);
});

describe.skipIf(process.platform === 'win32')('a browser', () => {
  /** A shell script in the place of a browser; `$pdf` is the file it is to print to. */
  const browser = (script: string) => {
    const file = join(folder, 'browser');
    writeFileSync(
      file,
      `#!/bin/sh\nfor a; do case $a in --print-to-pdf=*) pdf=\${a#*=};; esac; done\n${script}\n`,
    );
    chmodSync(file, 0o755);
    return printPdf('<p>', file);
  };

  it('that prints is believed', async () => {
    const pdf = await browser('printf "%%PDF-1.4\\n1 0 obj\\n%%%%EOF\\n" > "$pdf"');
    expect(pdf.toString()).toBe('%PDF-1.4\n1 0 obj\n%%EOF\n');
  });

  it.each([
    ['is cut short', 'printf "%%PDF-1.4\\n1 0 obj" > "$pdf"'],
    ['dies', 'printf "%%PDF-1.4\\n%%%%EOF\\n" > "$pdf"; kill -9 $$'],
    ['fails', 'printf "%%PDF-1.4\\n%%%%EOF\\n" > "$pdf"; exit 1'],
    ['prints nothing', ':'],
  ])('that %s has made no PDF', async (_, script) => {
    await expect(browser(script)).rejects.toThrow(/made no whole PDF, so nothing is written/);
  });
});

it('puts away what is open when a signal comes, and then goes as the signal bids', () => {
  const sent = vi.spyOn(process, 'kill').mockReturnValue(true);
  const put: string[] = [];
  const before = process.listenerCount('SIGTERM');
  const done = putAwayOnSignal(() => put.push('closed'));
  putAwayOnSignal(() => {
    put.push('fails');
    throw new Error('busy');
  });
  putAwayOnSignal(() => put.push('file'));
  done();
  process.emit('SIGTERM', 'SIGTERM');
  expect(put).toEqual(['file', 'fails']);
  expect(sent).toHaveBeenCalledWith(process.pid, 'SIGTERM');
  expect(process.listenerCount('SIGTERM')).toBe(before);
});

it('says of an empty name that it is empty', async () => {
  const { status, err } = await pullin(['check', '']);
  expect([status, err]).toEqual([2, 'pullin: the name of a file is empty; name the plan file\n']);
});
