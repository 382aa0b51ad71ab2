/** A builder who made one mistake follows the sheet, reading a meter that knows nothing of it. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readMeter } from '../../src/machine/read-meter.ts';
import type { Reading } from '../../src/machine/reading.ts';
import { commission, faultsOf, meterSheet } from '../../src/meter/meter-sheet.ts';
import type { ReadStep } from '../../src/meter/sheet/sheet-model.ts';
import type { Part } from '../../src/plan/part-types.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { Study } from '../../src/study/study.ts';
import { planOf } from '../helpers/plan-of.ts';
import { WHOLE } from '../helpers/share.ts';

/** Plugged and wired in, one line and three, without clip leads and with them; a small shop in the short run. */
const PLANS = WHOLE
  ? ['saltmarsh-lane.yaml', 'tidewater-turners.yaml', 'heron-slip.yaml']
  : ['plover-loft.yaml'];

const made = new Map<string, ReturnType<typeof work>>();
/** The sheet of an example, worked out once. */
function example(name: string): ReturnType<typeof work> {
  const found = made.get(name) ?? work(name);
  made.set(name, found);
  return found;
}

function work(name: string) {
  const plan = planOf(readFileSync(new URL(`../../examples/${name}`, import.meta.url), 'utf8'), name);
  const { sheet, faults } = commission(Study.of(plan));
  return { plan, sheet, faults, reads: sheet.steps.filter((s): s is ReadStep => s.kind === 'read') };
}

/** The collector out of its socket, and with the loop live the plug out of the wall. */
function unplugged(built: Plan, alsoPlugs: boolean): Plan {
  const { intents: _, ...rest } = built;
  const out = (p: Part) =>
    ((p.kind === 'motor' || p.kind === 'load') && p.pluggedInto !== undefined) ||
    (alsoPlugs && p.kind === 'plug');
  return { ...rest, parts: new Map([...built.parts].filter(([, p]) => !out(p))) };
}

/** Whether a reading is plainly not what the step expects; a meter is off by 2 % and some digits. */
function fails({ expect: want, range }: ReadStep, read: Reading): boolean {
  if (want.unit === 'ohm') {
    if (want.shows === 'open') return read.through === true && (read.ohms ?? 0) < 20_000;
    if (want.shows === 'beeps') return read.beeps === false;
    if (read.through === false) return true;
    if (read.ohms === null) return false;
    return read.ohms > want.high! * 1.02 + 0.5 || (want.low !== null && read.ohms < want.low * 0.98 - 0.5);
  }
  if (read.volts === null) return false;
  const full = Number(range.split(' ')[0]);
  // The other kind of current shows nothing on this dial position.
  const seen = read.kind === null || range.endsWith(read.kind.toUpperCase()) ? read.volts : 0;
  const none = Math.abs(seen) < 0.05 * full;
  if (want.shows === 'nothing') return !none;
  const room = full / 400;
  return none || read.volts > want.high! * 1.02 + room || read.volts < want.low! * 0.98 - room;
}

/** A supply on the bench: no core on it, in a socket that works. */
function byItself(built: Plan, name: string): Plan {
  const { intents: _, ...rest } = built;
  const part = { ...built.parts.get(name)! };
  if ('fedFrom' in part) delete (part as { fedFrom?: string }).fedFrom;
  return { ...rest, runs: [], parts: new Map([[name, part]]) };
}

function firstFailing(reads: readonly ReadStep[], built: Plan): ReadStep | undefined {
  return reads.find((step) => {
    const dead = step.expect.unit === 'ohm';
    const shop = step.stage === 3 ? built : unplugged(built, !dead);
    const here = step.alone === null ? shop : byItself(built, step.alone);
    const { moved, between, clippedAt: clipped } = step;
    const read = readMeter(Study.of(here), { moved, dead, loop: dead && step.stage === 2, clipped, between });
    return fails(step, read);
  });
}

const named = (step: ReadStep) => step.wrong.flatMap((w) => w.faults);

function expectNamed(reads: readonly ReadStep[], built: Plan, text: string): void {
  const step = firstFailing(reads, built);
  expect(step, text).toBeDefined();
  expect(named(step!), `step ${step!.number}`).toContain(text);
}

describe.each(PLANS)('%s', (name) => {
  it.runIf(WHOLE)('passes every step as it is', () => {
    const { plan, reads } = example(name);
    expect(firstFailing(reads, plan)).toBeUndefined();
  });

  it('with one core broken fails at a step that names the core', () => {
    const { plan, reads } = example(name);
    for (const run of plan.runs)
      run.cores.forEach((core, i) => {
        const what = run.link ? 'link' : `${core.colour} core`;
        const text = `the ${what} from ${core.a.written} to ${core.b.written} is broken or not joined`;
        const runs = plan.runs.map((r) =>
          r === run ? { ...r, cores: r.cores.filter((_, k) => k !== i) } : r,
        );
        expectNamed(reads, { ...plan, runs }, text);
      });
  });

  it.runIf(WHOLE)(
    'with one end on a wrong terminal or two cores changed over fails at a step that names it',
    () => {
      const { plan, sheet, reads } = example(name);
      const silent = new Set(sheet.silent.map((s) => s.fault));
      const wired = faultsOf(Study.of(plan)).filter((f) => f.plan !== undefined && !silent.has(f.text));
      for (const fault of wired) expectNamed(reads, fault.plan!(plan), fault.text);
    },
    60_000,
  );

  it('with a gate mounted the wrong way round fails at a step that names the gate', () => {
    const { plan, reads } = example(name);
    for (const gate of [...plan.parts.values()].filter((p) => p.kind === 'gate')) {
      const built = {
        ...plan,
        parts: new Map(plan.parts).set(gate.name, { ...gate, pressedWhen: 'shut' } as Part),
      };
      expectNamed(
        reads,
        built,
        `${gate.name}: the switch is mounted the wrong way round, pressed when it ought to be free`,
      );
    }
  });

  it('with another supply out of the drawer fails at a step that reads it by itself, before it is connected', () => {
    const { plan, reads } = example(name);
    const loose = [...plan.parts.values()].filter((p) => p.kind === 'supply' && p.output.kind === 'dc');
    expect(reads.some((s) => s.alone !== null)).toBe(true);
    for (const part of loose) {
      if (part.kind !== 'supply') continue;
      // Neighbours in the row of plug-in supplies that shops sell; common practice, no source.
      const sold = [5, 6, 9, 12, 15, 18, 24, 36, 48];
      const at = sold.indexOf(part.output.volts);
      for (const volts of [sold[at - 1]!, sold[at + 1]!]) {
        const other = { ...part, output: { ...part.output, volts } };
        const built = { ...plan, parts: new Map(plan.parts).set(part.name, other) };
        const step = firstFailing(reads, built)!;
        expect(step.alone).toBe(part.name);
        expect(named(step)).toContain(`${part.name} is one of ${volts} V DC`);
      }
      const step = reads.find((s) => s.alone === part.name)!;
      expect(named(step)).toContain(`${part.name} gives ${part.output.volts} V AC`);
      const before = reads.filter((s) => s.stage > 1 && s.alone === null && s.number < step.number);
      expect(before).toEqual([]);
    }
  });

  it('names each fault at the first step that shows it, whatever the fault', () => {
    const { faults, reads } = example(name);
    for (const fault of faults.filter((f) => f.detectable)) {
      const step = reads.find((s) => s.number === Math.min(...fault.steps))!;
      expect(named(step)).toContain(fault.text);
    }
  });
});

it.runIf(WHOLE)('what it calls silent changes no reading between any two terminals', () => {
  const { plan, sheet } = example('saltmarsh-lane.yaml');
  const keys = [...plan.terminals].flatMap(([part, t]) => t.names.map((terminal) => ({ part, terminal })));
  const box = keys.filter(({ part }) => ['K1', 'D1', 'PS1', 'feed'].includes(part));
  const silent = new Set(sheet.silent.map((s) => s.fault));
  for (const fault of faultsOf(Study.of(plan)).filter((f) => f.plan !== undefined && silent.has(f.text)))
    for (const [i, a] of box.entries())
      for (const b of box.slice(i + 1)) {
        const read = (p: Plan) => readMeter(Study.of(p), { moved: [0], dead: true, between: [a, b] });
        const [right, wrong] = [read(plan), read(fault.plan!(plan))];
        expect(wrong.beeps).toBe(right.beeps);
        expect(Math.abs((wrong.ohms ?? 0) - (right.ohms ?? 0))).toBeLessThan(0.1);
      }
});

describe('by hand', () => {
  /** ohm per metre of solid uncoated copper, 20 AWG: NEC Chapter 9 Table 8 has 18 AWG at 25.5 ohm/km for 75 °C. */
  const AT_75 = 0.0255;
  /** Copper at 20 °C against 75 °C: (234.5 + 20)/(234.5 + 75), IEC 60228. */
  const perMetre = AT_75 * (254.5 / 309.5);
  const coil = 155;
  const contact = 0.05;
  const text = (metres: readonly number[]) => `title: three gates
ambient: 20 °C
parts:
  PS1: {kind: supply, output: 12 V DC, limit: 1 A, regulation: regulated}
  K1: {kind: relay, coil: {rated: 12 V DC, resistance: 155 ohm, tolerance: 10 %}, contact: {ratings: [5 A 30 V DC]}}
${[1, 2, 3].map((i) => `  g${i}: {kind: gate, pressed-when: open, contact: {ratings: [5 A 30 V DC]}}`).join('\n')}
runs:
  - {cable: {kind: cable, gauge: 18 AWG, cores: 2, strands: solid}, length: ${metres[0]} m, cores: {red: [PS1.+, g1.COM], white: [K1.A1, g1.NO]}}
  - {cable: {kind: cable, gauge: 18 AWG, cores: 2, strands: solid}, length: ${metres[1]} m, cores: {red: [g1.COM, g2.COM], white: [g1.NO, g2.NO]}}
  - {cable: {kind: cable, gauge: 18 AWG, cores: 2, strands: solid}, length: ${metres[2]} m, cores: {red: [g2.COM, g3.COM], white: [g2.NO, g3.NO]}}
  - {link: [PS1.-, K1.A2]}
intent:
  K1: {runs-on: [g1, g2, g3]}
`;

  it('the loop through a gate is its contact, two cores each way, and the coil where it is in line', () => {
    const metres = [5, 40, 35];
    const made = meterSheet(Study.of(planOf(text(metres))));
    const loop = made.steps.filter(
      (s): s is ReadStep =>
        s.kind === 'read' && s.stage === 1 && s.expect.shows === 'ohms' && s.moved.length === 1,
    );
    const sum = (list: readonly number[]) => list.reduce((a, b) => a + b, 0);
    const seen = new Set<string>();
    for (const step of loop) {
      const parts = step.between
        .map((p) => p.part)
        .sort()
        .join();
      seen.add(parts);
      const gate = step.moved[0]! + 1;
      // From the supply out to the gate that is open, or from the last gate back to it.
      const far = parts.endsWith('PS1') ? sum(metres.slice(0, gate)) : sum(metres.slice(gate));
      const inLine = parts === 'PS1,PS1' ? coil : 0;
      expect(['PS1,PS1', 'K1,PS1', 'g3,g3']).toContain(parts);
      expect(step.expect.nominal! / (inLine + contact + 2 * far * perMetre)).toBeCloseTo(1, 2);
      expect(step.expect.low!).toBeLessThan(0.9 * inLine + 2 * far * perMetre);
      expect(step.expect.high!).toBeGreaterThan(1.1 * inLine + 2 * far * perMetre);
      expect(step.range).toBe('200 ohm');
    }
    expect(seen.size).toBeGreaterThan(1);
  });

  it('a supply turned round shows a minus sign at a coil or a gate', () => {
    const made = commission(Study.of(planOf(text([5, 4, 3]))));
    const turned = made.faults.find((f) => f.text === 'PS1: its poles are changed over')!;
    const step = made.sheet.steps.find((s) => s.number === turned.steps[0])!;
    expect(step.kind === 'read' && step.stage === 2 && step.expect.kind).toBe('dc');
    expect(step.kind === 'read' && step.wrong.find((w) => w.wrong === 'reversed')!.faults).toContain(
      turned.text,
    );
  });
});
