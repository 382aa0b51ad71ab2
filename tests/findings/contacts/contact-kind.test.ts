import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { judge } from '../../../src/findings/judge.ts';
import { readPlan } from '../../../src/plan/read.ts';
import { dcBreaking } from '../../../src/ratings/dc-breaking.ts';
import { Study } from '../../../src/study/study.ts';

const van = readFileSync(new URL('../bases/dc-load.yaml', import.meta.url), 'utf8');

/** The severity of a finding with a van whose fan draws so much and whose relay has that contact; undefined where there is none. */
function severityOf(id: string, contact: string, amps: string, volts = '12'): string | undefined {
  const text = van
    .replace(/contact: \{ratings: \[30 A 28 V DC\][^}]*\}/, `contact: ${contact}`)
    .replace('volts: 12 V DC, amps: 22 A', `volts: ${volts} V DC, amps: ${amps}`)
    .replace('output: 12 V DC, capacity', `output: ${volts} V DC, capacity`)
    .replace('lowest: 11.5 V, highest: 14 V', '');
  const read = readPlan(text, 'van.yaml');
  if (!read.ok) throw new Error(read.errors.map((e) => e.message).join('\n'));
  return judge(Study.of(read.plan)).findings.find((f) => f.id === id)?.severity;
}

describe('a DC load on a contact with AC ratings alone', () => {
  // Common practice, no source: at 30 V and less such contacts break their AC amperes, 20 A at most, and surely half of
  // them; to 60 V between 0.05 and 0.2 of them, above between 0.02 and 0.05 (ranges over makers' double ratings).
  const AC = '{ratings: [30 A 240 V AC], make: 900 A}';
  it.each([
    ['15 A', '12', undefined],
    ['15.1 A', '12', 'doubt'],
    ['20 A', '12', 'doubt'],
    ['20.1 A', '12', 'danger'],
    ['1.5 A', '48', undefined],
    ['1.51 A', '48', 'doubt'],
    ['6 A', '48', 'doubt'],
    ['6.1 A', '48', 'danger'],
    ['0.6 A', '110', undefined],
    ['1.5 A', '110', 'doubt'],
    ['1.6 A', '110', 'danger'],
  ])('%s at %s V DC on 30 A 240 V AC: %s', (amps, volts, severity) => {
    expect(severityOf('contact-kind', AC, amps, volts)).toBe(severity);
  });

  it('says nothing where a DC rating is printed, which then counts', () => {
    const both = '{ratings: [30 A 240 V AC, 20 A 28 V DC], make: 900 A}';
    expect(severityOf('contact-kind', both, '22 A')).toBeUndefined();
    expect(severityOf('contact-running', both, '22 A')).toBe('warning');
    expect(severityOf('contact-running', both, '20 A')).toBeUndefined();
  });

  it('fails a rating for fewer volts, for a maker who prints one prints its limit', () => {
    const low = '{ratings: [5 A 250 V AC, 3 A 30 V DC], make: 900 A}';
    expect(severityOf('contact-voltage', low, '1 A', '48')).toBe('danger');
  });

  it('fails a start above what the contact makes: 8 A start at 40 A at least', () => {
    // Start of a brush motor 5 to 10 times running: inrush table of relay handbooks.
    const made = (make: number) => `{ratings: [30 A 240 V AC, 20 A 28 V DC], make: ${make} A}`;
    expect(severityOf('contact-starting', made(39), '8 A')).toBe('warning');
    expect(severityOf('contact-starting', made(41), '8 A')).toBe('doubt');
    expect(severityOf('contact-starting', made(80), '8 A')).toBeUndefined();
  });

  it('knows of 5 A AC on 48 V DC only that 0.25 A is broken for sure and 1 A at most', () => {
    const contact = { ratings: [{ amps: 5, volts: 250, kind: 'ac' as const }], motor: [] };
    expect(dcBreaking(contact, 48)).toMatchObject({ sure: 0.25, most: 1 });
  });
});
