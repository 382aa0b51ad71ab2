import { describe, expect, it } from 'vitest';
import { applyEdits } from '../../src/edit/apply-edits.ts';
import type { Edit } from '../../src/edit/edits.ts';
import { good } from '../plan/helpers.ts';

const HEAD = `format: 1
practice: nec
stock:
  snap: {kind: gate, pressed-when: open} # as bought
parts:
  PS1: {kind: supply, output: 12 V DC, limit: 1 A}
  K1: {kind: relay, coil: {rated: 12 V DC, resistance: 100 ohm}, contact: {ratings: [5 A 250 V AC]}}
  a: {from: snap}
  b: {from: snap}
  c:
    kind: gate # its own
  S: {kind: button, contact: {ratings: [5 A 250 V AC]}}
`;
const RUNS = `runs:
  - {link: [PS1.+, a.COM]}
`;
const INTENT = `intent:
  K1:
    runs-on:
      - a
      - b # last
    stays-on-after: S
`;
const text = HEAD + RUNS + INTENT;
const said = (source: string, ...edits: Edit[]): string => {
  const applied = applyEdits(source, good(source), edits);
  if ('refused' in applied) throw new Error(applied.refused);
  return applied.text;
};
const say = (part: string, value: 'open' | 'shut'): Edit => ({
  do: 'say',
  part,
  field: 'pressed-when',
  value,
});
const intend = (
  field: 'runs-on' | 'blocked-by' | 'stays-on-after' | 'stopped-by',
  input: string,
  instead?: string,
): Edit => ({
  do: 'intend',
  load: 'K1',
  field,
  input,
  instead,
});

describe('other words in the text of a plan', () => {
  it('all gates of a stock item are said there, one of them at its own place', () => {
    expect(said(text, say('a', 'shut'), say('b', 'shut'))).toBe(
      text.replace('pressed-when: open', 'pressed-when: shut'),
    );
    expect(said(text, say('a', 'shut'))).toBe(
      text.replace('a: {from: snap}', 'a: {from: snap, pressed-when: shut}'),
    );
  });

  it('a part written over several lines gets a line of its own', () => {
    expect(said(text, say('c', 'shut'))).toBe(
      text.replace('    kind: gate # its own\n', '    kind: gate # its own\n    pressed-when: shut\n'),
    );
  });

  it('an input goes behind the others of its list, however that is written', () => {
    expect(said(text, intend('runs-on', 'c'))).toBe(
      text.replace('      - b # last\n', '      - b # last\n      - c\n'),
    );
    expect(said(text, intend('blocked-by', 'S'))).toBe(`${text}    blocked-by: [S]\n`);
    const flow = `${HEAD}${RUNS}intent:\n  K1: {runs-on: [a, b]}\n`;
    expect(said(flow, intend('runs-on', 'c'))).toBe(flow.replace('[a, b]', '[a, b, c]'));
    expect(said(flow, intend('stays-on-after', 'S'))).toBe(
      flow.replace('[a, b]', '[a, b], stays-on-after: [S]'),
    );
    expect(said(flow, intend('runs-on', 'c', 'b'))).toBe(flow.replace('[a, b]', '[a, c]'));
  });

  it('CRLF and a missing line break at the end stay as they are', () => {
    const windows = text.trimEnd().replaceAll('\n', '\r\n');
    expect(said(windows, intend('blocked-by', 'S'))).toBe(`${windows}\r\n    blocked-by: [S]`);
  });

  it('refuses a gate, an intent or an input that is not there', () => {
    for (const edit of [
      say('z', 'shut'),
      intend('runs-on', 'z'),
      { ...intend('runs-on', 'c'), load: 'z' } as Edit,
    ])
      expect(applyEdits(text, good(text), [edit])).toHaveProperty('refused');
  });
});
