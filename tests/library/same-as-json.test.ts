/** What scripts get is what the commands print with --json: one is put beside the other, plan by plan. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { STAGES } from '../../src/cli/stages.ts';
import {
  check,
  drawSvg,
  drawText,
  faultTable,
  hunt,
  materials,
  mend,
  meterSheet,
  planWith,
  readMeter,
  readPlan,
  type Study,
  size,
  study,
  truthTable,
  wireList,
} from '../../src/index.ts';
import { pullin } from '../cli/fake-io.ts';
import { WHOLE } from '../helpers/share.ts';

/** A plan with one gate, which all commands are quick with; its long twin takes plans of every sort. */
const SMALL = 'tests/findings/bases/one-gate.yaml';
const PLANS = WHOLE
  ? [
      ...[
        'examples/saltmarsh-lane.yaml',
        'examples/wren-cellar.yaml',
        'examples/wrong/planer-on-break-tab.yaml',
      ],
      ...['examples/wrong/bin-switch-on-make-tab.yaml', 'examples/wrong/bell-wire-on-contactor.yaml'],
    ]
  : [SMALL];

function studied(file: string): Study {
  const read = readPlan(readFileSync(file), file);
  if (!read.ok) throw new Error(`${file} cannot be read`);
  return study(read.plan);
}

async function printed(...args: readonly string[]): Promise<string> {
  const { out, err, status } = await pullin(args, { stages: STAGES });
  if (status === 2 || status === 70) throw new Error(`${args.join(' ')}: ${err}`);
  return out;
}

const json = async (...args: readonly string[]): Promise<unknown> =>
  JSON.parse(await printed(...args, '--json'));

/** Each product of the library, and the command that prints the same. */
const PRODUCTS: readonly (readonly [string, readonly string[], (study: Study) => unknown])[] = [
  ['check', [], check],
  ['table', [], truthTable],
  ['table', ['--all'], (s) => truthTable(s, { all: true })],
  ['mend', [], mend],
  ['wirelist', [], wireList],
  ['materials', [], materials],
  ...(WHOLE ? [['size', [], size] as const] : []),
  ['faults', [], faultTable],
  ['read', [], readMeter],
];

describe('a product of the library', () => {
  it.each(PRODUCTS)('is what pullin %s %j prints', async (command, options, product) => {
    for (const file of PLANS) {
      expect(product(studied(file)), file).toEqual(await json(command, ...options, file));
    }
  });

  it.runIf(WHOLE)('is what pullin meter prints, and tells how far it is', async () => {
    const told: number[] = [];
    const sheet = meterSheet(studied(SMALL), (done, of) => told.push(done / of));
    expect(sheet).toEqual(await json('meter', SMALL));
    expect(told.length).toBeGreaterThan(0);
    expect(Math.max(...told)).toBeLessThanOrEqual(1);
  });

  it('is what pullin read prints of two terminals, with power and without', async () => {
    const shop = studied(SMALL);
    const at = ['K1.A1', 'K1.A2'] as const;
    expect(readMeter(shop, { positions: { open: ['bandsaw'] } })).toEqual(
      await json('read', '--open', 'bandsaw', SMALL),
    );
    expect(readMeter(shop, { positions: { open: ['bandsaw'] }, between: at })).toEqual(
      await json('read', '--open', 'bandsaw', SMALL, ...at),
    );
    expect(readMeter(shop, { dead: true, between: at, clipped: ['PS1.+', 'PS1.-'] })).toEqual(
      await json('read', '--dead', '--clip', 'PS1.+,PS1.-', SMALL, ...at),
    );
  });

  it('is what pullin wirelist prints for reels, in m', async () => {
    const reels = { any: [30], of: { bell: [15, 30] } };
    expect(wireList(studied(SMALL), reels)).toEqual(
      await json('wirelist', '--reel', '30m', '--reel', 'bell=15m', '--reel', 'bell=30m', SMALL),
    );
  });

  it.runIf(WHOLE)('is what pullin hunt prints of what was seen', async () => {
    const [saw, readings] = [['all shut: off', 'bandsaw open: off'], ['K1.A1 K1.A2 = 0 V with bandsaw open']];
    expect(hunt(studied(SMALL), { saw, readings, neverWorked: true })).toEqual(
      await json(
        ...['hunt', '--saw', saw[0]!, '--saw', saw[1]!, '--reading', readings[0]!, '--never-worked', SMALL],
      ),
    );
  });

  it.runIf(WHOLE)('is what pullin size prints of a plan with other figures', async () => {
    const changed = planWith(readFileSync(SMALL), SMALL, ['bell=22 AWG']);
    if (!changed.ok) throw new Error(changed.problems.join('; '));
    expect(size(study(changed.plan), changed.done)).toEqual(
      await json('size', '--with', 'bell=22 AWG', SMALL),
    );
  });

  it('is what pullin draw writes, on paper and on the screen, of the circuit and of the runs', async () => {
    const shop = studied(SMALL);
    const positions = { open: ['bandsaw'] };
    const draw = (...args: readonly string[]) => printed('draw', ...args, '--width', '100', SMALL);
    expect(drawText(shop, { width: 100 })).toBe(await draw());
    expect(drawText(shop, { width: 100, positions, unicode: false })).toBe(
      await draw('--open', 'bandsaw', '--ascii'),
    );
    expect(drawText(shop, { width: 100, runs: true })).toBe(await draw('--runs'));
    const { out } = await pullin(['draw', '-o', '-', '--size', 'letter', SMALL], {
      stages: STAGES,
      env: { SOURCE_DATE_EPOCH: '1795564800' },
    });
    expect(drawSvg(shop, { size: 'letter', date: '2026-11-25' })).toEqual([out]);
  });
});
