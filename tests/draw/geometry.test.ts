import { describe, expect, it } from 'vitest';
import { secondsOfWork } from '../helpers/work.ts';
import { faultsOf } from './geometry.ts';
import { type Break, breaks, finder, route, shift } from './geometry-breaks.ts';
import { bigSample, type Loose, mirrored, sampleDrawing, samplePlan, turnedOver } from './geometry-sample.ts';

const plan = samplePlan();
const views = { 'as drawn': (d: Loose) => d, mirrored, 'upside down': turnedOver };

/** The faults of the right drawing after a change. */
function faultsAfter(change: Break, view = views['as drawn']): string[] {
  const drawing = sampleDrawing();
  change(drawing, finder(drawing));
  return faultsOf(view(drawing), plan);
}

describe.each(Object.entries(views))('a drawing %s', (_, view) => {
  it('has no faults when it is right', () => {
    expect(faultsOf(view(sampleDrawing()), plan)).toEqual([]);
  });

  it.each(breaks)('is caught with $how', ({ fault, damage }) => {
    const faults = faultsAfter(damage, view);
    expect(
      faults.some((f) => fault.test(f)),
      faults.join('\n'),
    ).toBe(true);
  });
});

it('faults say where they are', () => {
  expect(faultsAfter((d) => d.dots.push(...route('170,160')))).toEqual([
    'dot at 170, 160, where no cores of one terminal part',
  ]);
  expect(faultsAfter((d) => d.dots.pop())).toEqual(['cores 0/0 and 0/1 part at 140, 60 without a dot']);
});

describe('what is allowed', () => {
  it('a core through its own label', () => {
    expect(faultsAfter((_, f) => shift(f.label('core', '3/0'), 0, 8))).toEqual([]);
  });

  it('a drawing without a barrier', () => {
    expect(faultsAfter((d) => delete d.barrier)).toEqual([]);
  });

  it('a link with a label', () => {
    const label = { x: 365, y: 95, width: 20, height: 10, text: 'link', what: 'core' as const, of: '2/0' };
    expect(faultsAfter((d) => d.labels.push(label))).toEqual([]);
  });

  it('a dot on a port that two cores leave', () => {
    expect(faultsAfter((d) => d.dots.push(...route('80,60')))).toEqual([]);
  });

  it('a path of no length where two ports are one place', () => {
    const found = faultsAfter((_, f) => {
      shift(f.symbol('H1').box, -70, 0);
      for (const t of f.symbol('H1').terminals) shift(t.ports[0]!, -70, 0);
      for (const of of ['H1.1', 'H1.2']) shift(f.label('mark', of), -70, 0);
      shift(f.label('caption', 'H1'), -70, 0);
      shift(f.label('name', 'J'), 0, -30);
      f.core('2/0').path = route('330,110 330,110');
      f.core('3/0').path[0]!.x = 370;
    });
    expect(found).toEqual([]);
  });

  it('places that differ by rounding alone', () => {
    const third = (d: Loose): void => {
      for (const p of d.cores.flatMap((c) => c.path)) p.x += (0.1 + 0.2 - 0.3) * 100;
    };
    expect(faultsAfter(third)).toEqual([]);
  });
});

it('a line drawn beside its place runs through the label whose edge it would touch', () => {
  const drawing = sampleDrawing();
  Object.assign(finder(drawing).label('core', '4/0'), { x: 350, y: 240 });
  expect(faultsOf(drawing, plan)).toEqual([]);
  expect(faultsOf(drawing, plan, 0.5)).toEqual(['core 3/0 passes through the label core 4/0']);
});

it('a drawing of 300 gates on two long stems is judged within two seconds', () => {
  const { drawing, plan: big } = bigSample(300);
  expect(secondsOfWork(() => expect(faultsOf(drawing, big)).toEqual([]))).toBeLessThan(2);
});
