/** What is never advised, whatever it would mend, and that the likeliest change comes first. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Edit } from '../../src/edit/edits.ts';
import { planAfter } from '../../src/edit/expected-plan.ts';
import { judge } from '../../src/findings/judge.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { check } from '../../src/repair/check.ts';
import { Harm } from '../../src/repair/harm.ts';
import { mend } from '../../src/repair/mend.ts';
import { NumberedCircuit } from '../../src/repair/numbered-circuit.ts';
import { Places } from '../../src/repair/places.ts';
import { rewired } from '../../src/repair/rewired.ts';
import { triggerHarm } from '../../src/repair/trigger-reach.ts';
import { Study } from '../../src/study/study.ts';
import { wired } from '../findings/wired-plans.ts';
import { example } from '../helpers/example-plans.ts';
import { planOf } from '../helpers/plan-of.ts';

function isHarm(plan: Plan, ...edits: Edit[]): boolean {
  const circuit = new NumberedCircuit(Study.of(plan));
  return new Harm(plan, circuit, new Places(plan)).isDone(edits, rewired(circuit, circuit.cores, edits));
}

/** A core by the two terminals that the plan writes. */
function coreAt(plan: Plan, a: string, b: string): { run: number; core: number } {
  for (const run of plan.runs)
    for (const [core, c] of run.cores.entries())
      if (c.a.written === a && c.b.written === b) return { run: run.index, core };
  throw new Error(`no core from ${a} to ${b}`);
}

const base = (name: string) =>
  planOf(readFileSync(new URL(`../findings/bases/${name}.yaml`, import.meta.url), 'utf8'), name);

describe('never advised', () => {
  const chain = base('dc-chain');
  const earth = coreAt(chain, 'B1.PE', 'X1.PE');

  it('a protective conductor is not taken out, moved off or changed over', () => {
    expect(isHarm(chain, { do: 'remove', ...earth })).toBe(true);
    expect(isHarm(chain, { do: 'move', ...earth, end: 'b', to: 'X1.N' })).toBe(true);
    const neutral = coreAt(chain, 'neutral', 'X1.N');
    expect(
      isHarm(chain, { do: 'swap', first: { ...earth, end: 'b' }, second: { ...neutral, end: 'b' } }),
    ).toBe(true);
  });

  it('earth is joined to nothing else', () => {
    expect(isHarm(chain, { do: 'add', from: 'B1.PE', to: 'K1.A2', like: undefined, metres: undefined })).toBe(
      true,
    );
  });

  it('a link stays in its place', () => {
    const link = coreAt(chain, 'D1.K', 'K1.A1');
    expect(isHarm(chain, { do: 'move', ...link, end: 'b', to: 'router.NO' })).toBe(true);
    expect(isHarm(chain, { do: 'move', ...link, end: 'b', to: 'call' })).toBe(false);
  });

  it('a diode that quenches a coil goes nowhere else', () => {
    const link = coreAt(chain, 'D1.K', 'K1.A1');
    expect(isHarm(chain, { do: 'move', ...link, end: 'b', to: 'feed' })).toBe(true);
  });

  it('a core of the loop is none for the pins of a machine, though nothing feeds them yet', () => {
    const bell = coreAt(chain, 'bandsaw.COM', 'planer.COM').run;
    for (const pin of ['X1.L', 'X1.N']) {
      const plan = planAfter(
        chain,
        chain.runs.flatMap((r) =>
          r.cores.flatMap((c, core): Edit[] =>
            [c.a.written, c.b.written].includes(pin) ? [{ do: 'remove', run: r.index, core }] : [],
          ),
        ),
      )!;
      const add = { do: 'add', from: pin, to: 'K1.NC', metres: undefined } as const;
      expect(isHarm(plan, { ...add, like: bell }), pin).toBe(true);
    }
  });

  it('a loose core of the loop is none for the pin of a machine that nothing feeds', () => {
    const bell = coreAt(chain, 'bandsaw.COM', 'planer.COM').run;
    const line = coreAt(chain, 'K1.NO', 'X1.L');
    const plan = planAfter(chain, [{ do: 'remove', ...line }])!;
    const add = { do: 'add', like: bell, metres: undefined } as const;
    // That pin is the mains' by what it is made for, wherever the other end lies.
    expect(isHarm(plan, { ...add, from: 'X1.L', to: 'router.NC' })).toBe(true);
    expect(isHarm(plan, { ...add, from: 'planer.NC', to: 'router.NC' })).toBe(false);
  });

  it('no core is changed over to where its cable is too short for', () => {
    const cable = (metres: number, cores: string) =>
      `{cable: {gauge: 20 AWG, cores: 2, insulation: 300 V}, length: ${metres} m, cores: {${cores}}}`;
    const plan = planOf(
      wired({
        parts: 'PS1 K1 g h',
        more: ['B1: {kind: box, holds: [PS1, K1]}'],
        wires: 'K1.A2 PS1.-',
        runs: [
          cable(1, 'red: [PS1.+, g.COM], white: [K1.A1, g.NO]'),
          cable(5, 'red: [PS1.+, h.COM], white: [K1.A1, h.NO]'),
          cable(0.5, 'red: [g.NC, h.NC]'),
        ],
        intent: ['K1: {runs-on: [g, h]}'],
      }),
    );
    const at = (a: string, b: string) => ({ ...coreAt(plan, a, b), end: 'b' as const });
    const swap = (second: string) =>
      isHarm(plan, { do: 'swap', first: at('PS1.+', 'g.COM'), second: at('K1.A1', second) });
    // h stands next to g, but a core out of the box to it takes 5 m.
    expect(swap('h.NO')).toBe(true);
    expect(swap('g.NO')).toBe(false);
  });

  // The timer itself sends what flows on a dry trigger; a pole of a supply on it destroys the input: timer data, from memory.
  it('no pole of a supply comes onto the dry trigger of the one timer, and none is left bare', () => {
    const timer = base('timer');
    const circuit = new NumberedCircuit(Study.of(timer));
    const harmAfter = (...edits: Edit[]) => [...triggerHarm(circuit, rewired(circuit, circuit.cores, edits))];
    const feed = coreAt(timer, 'bin.NC', 'KT1.15');
    const dry = ['T1', 'T2'].map((t, core) =>
      coreAt(timer, `KT1.${t}`, core === 0 ? 'planer.COM' : 'planer.NO'),
    );
    expect(harmAfter()).toEqual([]);
    expect(harmAfter({ do: 'move', ...feed, end: 'b', to: 'KT1.T1' })).not.toEqual([]);
    expect(harmAfter(...dry.map((at): Edit => ({ do: 'remove', ...at })))).toEqual(['KT1 bare']);
  });

  const battery = base('battery');
  it('nothing goes round a fuse', () => {
    const fuse = [...battery.parts.values()].find((p) => p.kind === 'fuse')!.name;
    const [core] = battery.runs
      .flatMap((run) => run.cores.map((c, i) => ({ run: run.index, core: i, c })))
      .filter(({ c }) => c.b.part === fuse);
    const beyond = battery.runs.flatMap((r) => r.cores).find((c) => c.a.part === fuse)!;
    const { run, core: index } = core!;
    expect(isHarm(battery, { do: 'move', run, core: index, end: 'b', to: beyond.b.written })).toBe(true);
    expect(
      isHarm(battery, { do: 'add', from: `${fuse}.1`, to: `${fuse}.2`, like: undefined, metres: undefined }),
    ).toBe(true);
  });

  it('a fuse keeps something behind it', () => {
    const behind = coreAt(battery, 'F1.2', 'barA');
    expect(isHarm(battery, { do: 'move', ...behind, end: 'a', to: 'minus' })).toBe(true);
  });

  it('no gate is fed past a fuse, though another one still is through it', () => {
    const feed = coreAt(battery, 'barA', 'lathe.COM');
    expect(isHarm(battery, { do: 'move', ...feed, end: 'a', to: 'BAT.+' })).toBe(true);
    expect(isHarm(battery, { do: 'move', ...feed, end: 'a', to: 'F1.1' })).toBe(true);
    // A second coil behind a gate of its own: no contact joins its wires to the fuse's other end.
    const text = readFileSync(new URL('../findings/bases/battery.yaml', import.meta.url), 'utf8');
    const two = planOf(
      text
        .replace(
          '  bandsaw: {',
          '  K2: {kind: relay, coil: {rated: 12 V DC, resistance: 160 ohm, suppressor: diode}, contact: {ratings: [5 A 30 V DC]}}\n  bandsaw: {',
        )
        .replace('black: [barB, lathe.NO]', 'black: [K2.A1, lathe.NO]')
        .replace('  - {link: [minus, K1.A2]}', '  - {link: [minus, K1.A2]}\n  - {link: [minus, K2.A2]}'),
    );
    const own = coreAt(two, 'barA', 'lathe.COM');
    expect(isHarm(two, { do: 'move', ...own, end: 'a', to: 'BAT.+' })).toBe(true);
    expect(isHarm(two, { do: 'move', ...own, end: 'a', to: 'F1.2' })).toBe(false);
    // Behind the fuse it is as well fed as it was.
    expect(isHarm(battery, { do: 'move', ...feed, end: 'a', to: 'F1.2' })).toBe(false);
    expect(isHarm(battery, { do: 'move', ...feed, end: 'a', to: 'bandsaw.COM' })).toBe(false);
  });
});

describe('the report and mend speak of the same change', () => {
  it.each(['planer-on-break-tab', 'jointer-lever-other-way', 'return-left-in-box', 'stop-with-make-contact'])(
    '%s',
    (name) => {
      const plan = example(`wrong/${name}`);
      const [first] = mend(Study.of(plan), { thorough: false }).repairs;
      const finding = check(Study.of(plan)).findings.find((f) => f.repair !== null)!;
      expect(finding.repair).toEqual({ words: first!.words, edits: first!.edits });
      expect(finding.fix).toBe(first!.words.join(' '));
      const after = judge(Study.of(planAfter(plan, first!.edits)!));
      expect(after.findings.filter((f) => ['danger', 'warning', 'fault'].includes(f.severity))).toEqual([]);
    },
  );
});

describe('likeliest first', () => {
  // Cores of one cable changed over at one gate: the function would be mended by one end, the wiring by both.
  it.each(['heron-slip', 'linnet-garage', 'plover-loft'])(
    'two cores changed over in %s are changed back',
    (name) => {
      const plan = example(name);
      const run = plan.runs.find((r) => r.cores.length === 2 && r.index > 0)!.index;
      const edit: Edit = {
        do: 'swap',
        first: { run, core: 0, end: 'b' },
        second: { run, core: 1, end: 'b' },
      };
      const wrong = planAfter(plan, [edit])!;
      const [first] = mend(Study.of(wrong)).repairs;
      const terminals = (p: Plan) =>
        Study.of(p)
          .circuit.terminals.filter((t) => t.length > 1)
          .map((t) => [...t].sort().join())
          .sort();
      expect(terminals(planAfter(wrong, first!.edits)!)).toEqual(terminals(plan));
    },
  );
});
