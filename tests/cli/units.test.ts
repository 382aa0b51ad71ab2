/** What was typed in feet and inches is told so by every command; in a mixed plan, totals as most of it. */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { STAGES } from '../../src/cli/stages.ts';
import { examplePath } from '../helpers/example-plans.ts';
import { pullin } from './fake-io.ts';

const folder = mkdtempSync(join(tmpdir(), 'units-'));
afterAll(() => rmSync(folder, { recursive: true }));
const text = readFileSync(examplePath('linnet-garage'), 'utf8');
/** The shop of that example, which is typed in feet, changed in its lengths and wire. */
function shop(name: string, change: (text: string) => string): string {
  const path = join(folder, `${name}.yaml`);
  writeFileSync(path, change(text));
  return path;
}
const FEET = shop('feet', (t) =>
  t.replace('length: 12 ft', 'length: 12 ft 6 in').replace('20 AWG', '28 AWG'),
);
const METRIC = shop('metric', (t) =>
  t.replace(/length: (\d+) ft/g, (_, n) => `length: ${Number(n) * 0.3} m`),
);
const MIXED = shop('mixed', (t) => t.replace('length: 12 ft', 'length: 4 m'));
const run = async (...args: string[]) => (await pullin(args, { stages: STAGES })).out;

/** Lengths in metres or centimetres, but for what stands in brackets beside feet. */
const metric = (told: string) => told.replace(/\([^()]*\)/g, '').match(/[\d.]+ ?c?m\b/g) ?? [];
/** Lengths in feet or inches. */
const imperial = (told: string) => told.replace(/\([^()]*\)/g, '').match(/[\d.]+ (?:ft|in)\b/g) ?? [];

const COMMANDS = [
  ['check'],
  ['wirelist'],
  ['wirelist', '--reel', '50 ft'],
  ['materials'],
  ['draw'],
  ['mend'],
  ['meter'],
];

describe('every command', () => {
  it.each(COMMANDS)('%s tells feet where the plan has feet', async (...args) => {
    const told = await run(args[0]!, FEET, ...args.slice(1));
    const lines = told.split('\n').filter((l) => !/^(?:piece|run \d)/.test(l));
    expect(metric(lines.join('\n'))).toEqual([]);
  });
  it.each(COMMANDS)('%s tells metres where the plan has metres', async (...args) => {
    const told = await run(args[0]!, METRIC, ...args.slice(1));
    const lines = told.split('\n').filter((l) => !/^(?:piece|run \d)/.test(l));
    expect(imperial(lines.join('\n')).filter((l) => !/in3/.test(l))).toEqual([]);
  });
});

it('gives the length as typed, the loop, the lost volts, the strip and the piece', async () => {
  expect(await run('draw', FEET)).toMatch(/bell, 28 AWG, 12 ft 6 in: /);
  const check = await run('check', FEET);
  expect(check).toMatch(/table-saw +4\d(?:\.\d)? ft /);
  expect(await run('wirelist', FEET)).toMatch(/screw 7 mm 1\/4 in/);
  // 12.5 ft and 10 % are 13.75 ft; the others 6 ft and 20 cm, 9 ft and 10 %, 15 ft and 10 %, each up to the inch
  expect(await run('wirelist', FEET, '--list', 'cuts')).toMatch(
    /46 ft 10 in \(14\.27 m\) in all[\s\S]*run 1 +6 ft 8 in[\s\S]*run 2 +13 ft 9 in[\s\S]*run 3 +9 ft 11 in[\s\S]*run 4 +16 ft 6 in/,
  );
  const rows = (await run('wirelist', FEET, '--format', 'csv')).split('\r\n').map((l) => l.split(','));
  const at = (head: string) => rows[0]!.indexOf(head);
  expect(rows[3]![at('length')]).toBe('13 ft 9 in');
  expect(rows[3]![at('from strip in')]).toBe('1/4');
  const short = await pullin(['wirelist', FEET, '--reel', '6 ft'], { stages: STAGES });
  expect([short.status, short.err]).toEqual([2, expect.stringMatching(/run \d is \d+ ft.* long.*is 6 ft;/)]);
});

it('gives each run of a mixed plan as typed, totals as most of it', async () => {
  expect(await run('draw', MIXED)).toMatch(/bell, 20 AWG, 4 m: [\s\S]*9 ft/);
  const cuts = await run('wirelist', MIXED, '--list', 'cuts');
  expect(cuts).toMatch(/run 2 +4\.4 m +14 ft 6 in/);
  expect(cuts).toMatch(/bell, 20 AWG, 2 cores: 4 pieces, \d+ ft .*\(\d/);
});
