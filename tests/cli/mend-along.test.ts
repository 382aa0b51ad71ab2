/** `pullin mend` on a plan with a cable along several parts, one end of which has to move. */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, it } from 'vitest';
import { STAGES } from '../../src/cli/stages.ts';
import { instructionsFor } from '../../src/repair/repair-words.ts';
import { good } from '../plan/helpers.ts';
import { pullin } from './fake-io.ts';

const folder = mkdtempSync(join(tmpdir(), 'along-'));
afterAll(() => rmSync(folder, { recursive: true }));
const run = (...args: string[]) => pullin(args, { stages: STAGES });

/** The lead to the coil is on the wrong tab of the last gate. */
const PLAN = `format: 1
title: Sallow Row, three gates on one cable
practice: nec
ambient: 35 °C
stock:
  snap: {kind: gate, pressed-when: open, contact: {ratings: [5 A 250 V AC, 3 A 30 V DC]}}
  bell: {kind: cable, gauge: 20 AWG, cores: 2, insulation: 150 V}
parts:
  PS1: {kind: supply, output: 12 V DC, limit: 1 A, regulation: regulated, tolerance: 1 %, class-2: true}
  K1: {kind: relay, coil: {rated: 12 V DC, resistance: 155 ohm, suppressor: diode}, contact: {ratings: [30 A 240 V AC]}}
  shop: {from: snap, names: [bandsaw, planer, router]}
runs:
  - {cable: bell, length: 6 ft, cores: {red: [PS1.+, bandsaw.COM], white: [PS1.-, K1.A2]}}
  # along the wall
  - {cable: bell, along: shop, lengths: [12 ft, 9 ft], cores: {red: COM, white: NO}} # in the tray
  - {cable: bell, length: 15 ft, cores: {white: [router.NC, K1.A1]}}
intent:
  K1: {runs-on: [shop]}
`;

it('names the piece and the line, and writes the run out only where it must', async () => {
  const file = join(folder, 'row.yaml');
  writeFileSync(file, PLAN);
  const told = await run('mend', file);
  expect(told.out).toMatch(/run 3, line 16/);
  expect((await run('mend', file, '--write')).status).toBe(0);
  expect(readFileSync(file, 'utf8')).toBe(PLAN.replace('router.NC', 'router.NO'));

  const piece = PLAN.replace(
    'lengths: [12 ft, 9 ft], cores: {red: COM, white: NO}',
    'length: 9 ft, cores: {red: COM, white: NC}',
  ).replace('router.NC', 'router.NO');
  writeFileSync(file, piece);
  const other = await run('mend', file);
  expect(other.status).toBe(1);
  expect((await run('mend', file, '--write')).status).toBe(0);
  const written = readFileSync(file, 'utf8');
  expect(written).toContain('# along the wall\n  - {cable: bell, length: 9 ft, cores: ');
  expect(written).toContain(' # in the tray\n  - {cable: bell, length: 9 ft, cores: ');
  expect((await run('check', file, '--quiet')).status).toBe(0);
});

it('says in words which piece an end belongs to, and its line', () => {
  const edits = [{ do: 'move', run: 2, core: 1, end: 'b', to: 'router.NC' }] as const;
  expect(instructionsFor(good(PLAN), edits)).toEqual([
    'Move the white core between planer.NO and router.NO (run 2 piece 2, line 15) from router.NO to router.NC.',
  ]);
});
