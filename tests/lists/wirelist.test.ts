import { describe, expect, it } from 'vitest';
import { judge } from '../../src/findings/judge.ts';
import { toldOf } from '../../src/findings/verdict-line.ts';
import { pieceCm } from '../../src/lists/cuts.ts';
import { type Reels, wireList } from '../../src/lists/wirelist.ts';
import type { WireList } from '../../src/lists/wirelist-model.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { Study } from '../../src/study/study.ts';
import { example, mostExamples } from '../helpers/example-plans.ts';
import { planOf } from '../helpers/plan-of.ts';
import { sampled } from '../helpers/share.ts';

const NONE: Reels = { any: [], own: new Map() };
const EVERY = sampled(mostExamples(), 12);

function listOf(plan: Plan, reels: Reels = NONE): WireList {
  const list = wireList(Study.of(plan), reels);
  if ('tooLong' in list) throw new Error('too long');
  return list;
}

/** Terminals that conductors, contacts and coils could join to the pins of a plug, by a walk over part names alone. */
function touchesPlug(plan: Plan, from: string, to: string): boolean {
  const pins = (t: string) => plan.parts.get(t.split('.')[0]!)?.kind === 'plug' && !t.endsWith('.PE');
  return pins(from) || pins(to);
}

describe.each(EVERY)('the wire list of %s', (name) => {
  const plan = example(name);
  const list = listOf(plan);

  it('has every core once, under its number', () => {
    const planned = plan.runs.flatMap((r) =>
      r.cores.map((c) => [r.index + 1, ...[c.a.written, c.b.written].sort()].join(' ')),
    );
    const listed = list.wires.map((w) => [w.run, ...[w.from.terminal, w.to.terminal].sort()].join(' '));
    expect(listed.sort()).toEqual(planned.sort());
    expect(list.wires.map((w) => w.number)).toEqual(list.wires.map((_, i) => i + 1));
  });

  it('begins with low voltage and ends with mains', () => {
    const sections = list.wires.map((w) => w.section);
    expect(sections.lastIndexOf('low voltage')).toBeLessThan(
      sections.includes('mains') ? sections.indexOf('mains') : sections.length,
    );
    for (const w of list.wires)
      if (touchesPlug(plan, w.from.terminal, w.to.terminal)) expect(w.section).toBe('mains');
  });

  it('starts each core where something is: at a source, or at a part wired before', () => {
    for (const section of ['low voltage', 'mains'] as const) {
      const there = new Set(
        [...plan.parts.values()]
          .filter((p) => (section === 'mains' ? p.kind === 'plug' : ['supply', 'battery'].includes(p.kind)))
          .map((p) => p.name),
      );
      for (const w of list.wires.filter((x) => x.section === section)) {
        expect(w.loose || there.has(w.from.part)).toBe(true);
        expect(w.loose && there.has(w.from.part)).toBe(false);
        there.add(w.from.part).add(w.to.part);
      }
    }
  });

  it('cuts what the runs are long, slack included', () => {
    const cut = list.cuts.flatMap((c) => c.pieces);
    expect(cut.map((p) => p.run).sort((a, b) => a - b)).toEqual(
      plan.runs.filter((r) => !r.link).map((r) => r.index + 1),
    );
    for (const p of cut) expect(p.length).toBeCloseTo(pieceCm(plan.runs[p.run - 1]!)! / 100, 9);
    for (const c of list.cuts)
      expect(c.total).toBeCloseTo(
        c.pieces.reduce((sum, p) => sum + (p.length ?? 0), 0),
        9,
      );
  });

  it('labels both ends of every core of a cable', () => {
    const cores = plan.runs.filter((r) => !r.link).reduce((sum, r) => sum + r.cores.length, 0);
    expect(list.labels).toHaveLength(2 * cores);
    expect(new Set(list.labels.map((l) => `${l.wire} ${l.end}`)).size).toBe(2 * cores);
    for (const l of list.labels) {
      const wire = list.wires[l.wire - 1]!;
      const { overload } = wire;
      const relay = overload?.end === l.end ? `${overload.relays.join(' or ')} ${overload.lands}, not ` : '';
      expect(l.text).toBe(`${wire.number} ${wire.colour} > ${relay}${wire[l.end].terminal}`);
    }
  });
});

describe('the order of wiring', () => {
  it('follows a spur to its end, and joins what sits on a relay before it leaves it', () => {
    const { wires } = listOf(example('saltmarsh-lane'));
    expect(wires.map((w) => `${w.from.terminal} ${w.to.terminal}`)).toEqual([
      'PS1.+ feed',
      'PS1.- K1.A2',
      'K1.A1 D1.K',
      'K1.A2 D1.A',
      'feed bandsaw.COM',
      'K1.A1 bandsaw.NO',
      'bandsaw.COM planer.COM',
      'bandsaw.NO planer.NO',
      'planer.COM router.COM',
      'planer.NO router.NO',
      'P1.PE B1.PE',
      'P1.L K1.COM',
      'P1.N neutral',
      'B1.PE X1.PE',
      'K1.NO X1.L',
      'neutral X1.N',
    ]);
  });

  it('comes to the far end of a chain by way of the chain, from the + side', () => {
    const names = ['a', 'b', 'c', 'd'];
    const bell = '{gauge: 20 AWG, cores: 2}';
    const plan = planOf(`parts:
  PS1: {kind: supply, output: 12 V DC, limit: 1 A}
  K1: {kind: relay, coil: {rated: 12 V DC, resistance: 155 ohm}, contact: {ratings: [5 A 250 V AC]}}
${names.map((n) => `  ${n}: {kind: gate}\n`).join('')}runs:
  - {cable: ${bell}, length: 1 m, cores: {white: [d.NO, K1.A1]}}
  - {cable: ${bell}, length: 1 m, cores: {white: [PS1.-, K1.A2]}}
  - {cable: ${bell}, length: 1 m, cores: {red: [c.COM, d.COM], white: [c.NO, d.NO]}}
  - {cable: ${bell}, length: 1 m, cores: {red: [PS1.+, a.COM]}}
  - {cable: ${bell}, length: 1 m, cores: {red: [b.COM, c.COM], white: [b.NO, c.NO]}}
  - {cable: ${bell}, length: 1 m, cores: {red: [a.COM, b.COM], white: [a.NO, b.NO]}}
`);
    expect(listOf(plan).wires.map((w) => `${w.from.terminal} ${w.to.terminal}`)).toEqual([
      ...['PS1.+ a.COM', 'a.COM b.COM', 'a.NO b.NO', 'b.COM c.COM', 'b.NO c.NO', 'c.COM d.COM', 'c.NO d.NO'],
      ...['d.NO K1.A1', 'PS1.- K1.A2'],
    ]);
  });

  it('marks what hangs on nothing as loose', () => {
    const plan =
      planOf(`parts: {PS1: {kind: supply, output: 12 V DC, limit: 1 A}, a: {kind: joint}, b: {kind: joint}, c: {kind: joint}}
runs:
  - {cable: {gauge: 20 AWG, cores: 1}, length: 1 m, cores: {red: [b, c]}}
  - {cable: {gauge: 20 AWG, cores: 1}, length: 1 m, cores: {red: [a, PS1.+]}}
`);
    expect(listOf(plan).wires.map((w) => [w.from.terminal, w.to.terminal, w.loose])).toEqual([
      ['PS1.+', 'a', false],
      ['b', 'c', true],
    ]);
  });
});

describe('ends', () => {
  it('are joined by the kind of part (common practice, no source)', () => {
    const { wires } = listOf(example('saltmarsh-lane'));
    const methods = new Map(wires.flatMap((w) => [w.from, w.to]).map((e) => [e.terminal, e.method]));
    expect(Object.fromEntries(methods)).toMatchObject({
      ...{ 'PS1.+': 'screw', 'K1.A1': 'screw', 'bandsaw.COM': 'tab', feed: 'splice' },
      ...{ 'P1.L': 'clamp', 'X1.N': 'clamp', 'B1.PE': 'earth', 'D1.K': 'lead' },
    });
    // a bare link is not stripped; solid wire takes no ferrule, fine strands under a screw do
    expect(wires[2]!.from).toMatchObject({ strip: null, sheath: null, ferrule: false });
    expect(wires[0]!.from).toMatchObject({ strip: 7, sheath: 100, ferrule: false });
    expect(wires[11]!.to).toMatchObject({ terminal: 'K1.COM', strip: 12, ferrule: true });
  });
});

describe('reels', () => {
  const plan = example('saltmarsh-lane');

  it('are cut up to what is needed, and the rest is told', () => {
    const list = listOf(plan, { any: [1000], own: new Map([['bell', [1500, 300]]]) });
    const [bell, cord] = list.cuts;
    expect(bell!.reels!.map((r) => [r.length, r.pieces.map((p) => p.run), r.waste])).toEqual([
      [15, [2, 3, 4], 1.8],
      [3, [1], 0.8],
    ]);
    expect(cord!.reels!.map((r) => r.length)).toEqual([10]);
    expect(list.waste).toBeCloseTo(1.8 + 0.8 + 7.2, 9);
    for (const c of list.cuts)
      expect(c.total + c.waste!).toBeCloseTo(
        c.reels!.reduce((s, r) => s + r.length, 0),
        9,
      );
  });

  it('leave waste open where none are given', () => {
    const list = listOf(plan);
    expect(list.waste).toBeNull();
    expect(list.cuts.every((c) => c.reels === null && c.waste === null)).toBe(true);
  });

  it('too short for a piece are told with the piece', () => {
    expect(wireList(Study.of(plan), { any: [500], own: new Map() })).toEqual({
      tooLong: { cable: 'bell', run: 'run 2', piece: 5.5, reel: 5, unit: 'm' },
    });
  });
});

describe('the verdict', () => {
  it('goes with the lists of a plan that fails', () => {
    expect(listOf(example('saltmarsh-lane')).check).toEqual({ verdict: 'pass', finding: null });
    const wrong = listOf(example('wrong/coil-24-on-12'));
    expect(wrong.check.verdict).toBe('fail');
    expect(wrong.check.finding).toMatch(/K1/);
  });

  it.each(EVERY)('of %s names the finding that led to it', (name) => {
    const plan = example(name);
    const { verdict, findings } = judge(Study.of(plan));
    const { finding } = toldOf(Study.of(plan));
    if (verdict === 'pass') expect(finding).toBeNull();
    else
      expect(findings.find((f) => f.message === finding)!.severity).toMatch(
        verdict === 'fail' ? /danger|warning|fault/ : /doubt/,
      );
  });

  it('is a doubt, where notices stand before it', () => {
    const plan = planOf(`parts:
  PS1: {kind: supply, output: 12 V DC, limit: 1 A}
runs: []
`);
    const { findings } = judge(Study.of(plan));
    const doubt = findings.find((f) => f.severity === 'doubt');
    expect(toldOf(Study.of(plan))).toEqual({ verdict: 'cannot-tell', finding: doubt!.message });
  });
});
