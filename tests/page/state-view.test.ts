/** What a drawing and a page show of a state, against the meter and the proof. */
import { describe, expect, it } from 'vitest';
import { drawnState } from '../../src/draw/drawn-state.ts';
import { Undecided } from '../../src/logic/undecided.ts';
import { isArming } from '../../src/machine/intended-state.ts';
import { settledState } from '../../src/machine/power.ts';
import { readMeter } from '../../src/machine/read-meter.ts';
import { stateView } from '../../src/machine/state-view.ts';
import { Walk } from '../../src/machine/walk.ts';
import { movedIn } from '../../src/page/groups.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { Study } from '../../src/study/study.ts';
import { example, exampleNames } from '../helpers/example-plans.ts';
import { inputs, planOf } from '../helpers/plan-of.ts';
import { sampled } from '../helpers/share.ts';
import { someStates } from './states.ts';

/** Plans on which every source has a return pole, so that a meter on it tells what is live. */
const PLAIN = exampleNames()
  .filter((name) => [...example(name).parts.values()].every((p) => p.kind !== 'plug' || p.feed === 'single'))
  .slice(0, 8);

/** V of the source that a reading is against. */
function ratedOf(plan: Plan, against: string): number {
  const part = plan.parts.get(against.split('.')[0]!);
  if (part?.kind === 'supply' || part?.kind === 'battery') return part.output.volts;
  return part?.kind === 'plug' ? part.volts.volts : Number.NaN;
}

/** The rows of the table that are reached straight from rest. */
function rowsOf(plan: Plan) {
  const { circuit } = Study.of(plan);
  return Study.of(plan)
    .truthTable({ all: false })
    .rows.filter((row) => row.moves.length < 2)
    .map((row) => ({ row, moved: movedIn(circuit, row) }));
}

describe('a drawn state', () => {
  it.each(PLAIN)('has those cores live that a meter finds at volts: %s', (name) => {
    const plan = example(name);
    for (const moved of someStates(plan)) {
      const read = readMeter(Study.of(plan), { moved, dead: false });
      const at = new Map(read.nets.flatMap((n) => n.terminals.map((t) => [t, n] as const)));
      const drawn = drawnState(Study.of(plan), moved);
      for (const run of plan.runs)
        run.cores.forEach((core, i) => {
          const ends = [core.a, core.b].map((e) =>
            at.get(e.terminal === '' ? e.part : `${e.part}.${e.terminal}`),
          );
          const live = ends.some(
            (n) => n?.volts != null && Math.abs(n.volts) >= 0.1 * ratedOf(plan, n.against!),
          );
          expect(drawn.live!(run.index, i), `${moved}: ${core.a.written} to ${core.b.written}`).toBe(live);
        });
    }
  });

  it.each(PLAIN)('has relays where the meter has them: %s', (name) => {
    const plan = example(name);
    for (const moved of someStates(plan)) {
      const { relays } = readMeter(Study.of(plan), { moved, dead: false }).state;
      const view = stateView(plan, settledState(Study.of(plan), moved, 'on'), new Map());
      expect(Object.fromEntries(view.relays.map((r) => [r.part, r.in ? 'in' : 'out']))).toEqual(relays);
    }
  });

  it('has both legs and all phases live, and neutral and earth not', () => {
    const cores = (name: string) => {
      const plan = example(name);
      const { live } = drawnState(Study.of(plan), []);
      return plan.runs.flatMap((run) =>
        run.cores.flatMap((core, i) =>
          [core.a, core.b].some((e) => plan.parts.get(e.part)?.kind === 'plug')
            ? [[core.a.part === 'P1' ? core.a.terminal : core.b.terminal, live!(run.index, i)] as const]
            : [],
        ),
      );
    };
    expect(new Set(cores('gorse-barn').map(String))).toEqual(new Set(['L1,true', 'L2,true', 'PE,false']));
    expect(Object.fromEntries(cores('millrace-joinery'))).toMatchObject({
      L1: true,
      L2: true,
      L3: true,
      PE: false,
    });
    expect(Object.fromEntries(cores('saltmarsh-lane'))).toMatchObject({ L: true, N: false, PE: false });
  });

  it('has a contact of a selector made in its own position alone', () => {
    const plan = planOf(`parts:
  mode: {kind: selector, positions: [hand, off, auto], rest: auto}
  J: {kind: joint}
runs:
  - {link: [mode.COM, J]}
`);
    const made = (moved: readonly string[]) => {
      const state = drawnState(Study.of(plan), inputs(plan, moved));
      return ['hand', 'auto'].filter((p) => state.made('mode.COM', `mode.${p}`));
    };
    expect(made([])).toEqual(['auto']);
    expect(made(['mode.hand'])).toEqual(['hand']);
    expect(made(['mode.off'])).toEqual([]);
  });
});

describe('a walk from rest', () => {
  it.each(sampled([...exampleNames(), ...exampleNames('wrong')], 6))(
    'ends as the truth table has it: %s',
    (name) => {
      const plan = example(name);
      const { verified } = Study.of(plan);
      // A circuit that the proof cannot decide has no table to be held against.
      if (!verified) {
        expect(() => rowsOf(plan)).toThrow(Undecided);
        return;
      }
      for (const { row, moved } of rowsOf(plan)) {
        const walk = new Walk(Study.of(plan), isArming(verified));
        walk.moveTo(moved);
        const view = walk.view();
        if (!view.told) continue;
        for (const r of view.relays)
          if (row.relays[r.part] !== 'chatters')
            expect([row.label, r.part, r.in ? 'in' : 'out']).toEqual([row.label, r.part, row.relays[r.part]]);
        for (const l of view.loads) {
          const found = row.loads[l.part];
          if (found !== undefined && found !== 'chatters')
            expect([row.label, l.part, l.runs ? 'runs' : 'off']).toEqual([row.label, l.part, found]);
          const wanted = row.expected[l.part];
          if (wanted !== undefined && l.wanted !== null)
            expect([row.label, l.wanted]).toEqual([row.label, ['runs', 'in'].includes(wanted)]);
        }
      }
    },
  );
});

describe('a walk goes on from where it stood', () => {
  const walkOn = (name: string) => {
    const plan = example(name);
    const walk = new Walk(Study.of(plan), isArming(Study.of(plan).verified!));
    const number = (part: string) => walk.inputs.find((i) => i.part === part)!.index;
    const state = () => {
      const { relays, loads } = walk.view();
      const [fan] = loads.filter((l) => l.part === 'fan');
      return [
        relays
          .filter((r) => r.in)
          .map((r) => r.part)
          .join(),
        fan!.runs,
        fan!.wanted,
      ];
    };
    const move = (part: string) => {
      walk.toggle(number(part));
      return state();
    };
    return { walk, state, move };
  };

  it('START seals in, STOP lets go for good, a gate starts by itself (Millrace Joinery)', () => {
    const { state, move } = walkOn('millrace-joinery');
    expect(state()).toEqual(['', false, false]);
    expect(move('START')).toEqual(['CR,Q1', true, true]);
    expect(move('START')).toEqual(['CR,Q1', true, true]);
    expect(move('STOP')).toEqual(['', false, false]);
    expect(move('STOP')).toEqual(['', false, false]);
    expect(move('panel-saw')).toEqual(['Q1', true, true]);
    expect(move('panel-saw')).toEqual(['', false, false]);
  });

  it('forgets when the power goes', () => {
    const { walk, state, move } = walkOn('millrace-joinery');
    move('START');
    move('START');
    walk.repower();
    expect(state()[0]).toBe('');
  });

  it('tells a holding contact round STOP by its fault', () => {
    const { move } = walkOn('wrong/seal-bridges-stop');
    move('START');
    move('START');
    expect(move('STOP')).toEqual(['CR', false, false]);
    const after = move('STOP');
    expect([after[1], after[2]]).toEqual([true, false]);
  });
});
