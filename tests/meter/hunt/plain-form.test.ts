/** The plain lines in which a person tells what was seen: read back as they are written, and what is said of a slip. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isOwn } from '../../../src/circuit/positions.ts';
import { isMains } from '../../../src/circuit/sides.ts';
import { answerTo } from '../../../src/meter/hunt/answer-to.ts';
import { Hunt } from '../../../src/meter/hunt/hunt.ts';
import { type Answer, type Observation, observe } from '../../../src/meter/hunt/observation.ts';
import { PlainForm, type Said } from '../../../src/meter/hunt/plain-form.ts';
import { REST, type Stance, stanceOf } from '../../../src/meter/stance.ts';
import { Study } from '../../../src/study/study.ts';
import { rounded } from '../../../src/text/numbers.ts';
import { example } from '../../helpers/example-plans.ts';
import { planOf } from '../../helpers/plan-of.ts';

/** A plan whose names are words of the plain lines themselves. */
const ODD_NAMES = `
title: names that are words
parts:
  PS1: {kind: battery, output: 12 V DC}
  after: {kind: gate, pressed-when: open}
  and: {kind: gate, pressed-when: open}
  by: {kind: gate, pressed-when: open}
  with: {kind: selector, positions: [Hand, after, and], rest: after}
  off: {kind: relay, coil: {rated: 12 V DC}}
  runs: {kind: lamp, rated: 12 V DC, resistance: 300 ohm}
  constructor: {kind: gate, pressed-when: open}
runs:
  - {link: [PS1.+, after.COM]}
  - {link: [PS1.+, and.COM]}
  - {link: [PS1.+, by.COM]}
  - {link: [PS1.+, constructor.COM]}
  - {link: [PS1.+, with.COM]}
  - {link: [with.Hand, off.A1]}
  - {link: [after.NO, off.A1]}
  - {link: [and.NO, off.A1]}
  - {link: [by.NO, off.A1]}
  - {link: [constructor.NO, off.A1]}
  - {link: [off.A2, PS1.-]}
  - {link: [off.A1, runs.1]}
  - {link: [runs.2, PS1.-]}
`;

const studies: readonly (readonly [string, Study])[] = [
  ...['saltmarsh-lane', 'larch-hall', 'osier-yard', 'thistle-yard', 'curlew-van'].map(
    (name) => [name, Study.of(example(name))] as const,
  ),
  ['names that are words', Study.of(planOf(ODD_NAMES))],
];

/** Any position that the parts of a plan can be in, each part once. */
function anyMoved({ wired }: Study): fc.Arbitrary<number[]> {
  return fc
    .subarray(wired.inputs.map((i) => i.index))
    .map((all) =>
      all.filter((i, k) => all.findIndex((j) => wired.inputs[j]!.part === wired.inputs[i]!.part) === k),
    );
}

function anyStance(study: Study): fc.Arbitrary<Stance> {
  const first = fc.oneof({ weight: 2, arbitrary: fc.constant([]) }, anyMoved(study));
  return fc.tuple(anyMoved(study), first).map(([moved, before]) => stanceOf(moved, before));
}

const figure = fc
  .tuple(fc.integer({ min: 1, max: 999 }), fc.integer({ min: -9, max: 9 }))
  .map(([digits, power]) => rounded(digits * 10 ** power));

/** Anything that may be seen or read of a plan. */
function anySaid(study: Study): fc.Arbitrary<Said> {
  const { plan, wired, circuit, sides } = study;
  const loads = new Hunt(study, { worked: true }).predictor.loads;
  const yes = fc.boolean().map((y): Answer => ({ by: 'yes', yes: y }));
  const chatters = fc.constant<Answer>({ by: 'chatters' });
  const unsure = fc.constant(undefined);
  const ends = [...plan.terminals].flatMap(([part, marks]) =>
    marks.names.map((t) => (t === '' ? part : `${part}.${t}`)),
  );
  const loop = ends.filter((key) => !isMains(sides, circuit.netOf.get(key)));
  const pairOf = (keys: readonly string[]) =>
    fc
      .tuple(fc.constantFrom(...keys), fc.constantFrom(...keys))
      .map(([a, b]) => ({ a, b, cost: 1, far: false, main: false }));
  const told = fc
    .subarray([...loads], { minLength: Math.min(1, loads.length) })
    .chain((of) => fc.subarray(of).map((on): Answer => ({ by: 'loads', of, on })));
  const of = (kind: string) => [...plan.parts.values()].filter((p) => kind.split(' ').includes(p.kind));
  const relays = wired.relays.filter(isOwn).map((r) => r.part);
  const about = (
    kind: 'click' | 'lit' | 'lamp',
    parts: readonly string[],
    answers: fc.Arbitrary<Answer | undefined>,
  ) =>
    parts.length === 0
      ? []
      : [
          fc
            .tuple(anyStance(study), fc.constantFrom(...parts), answers)
            .map(([stance, part, answer]) => ({ observation: observe({ kind, stance, part }), answer })),
        ];
  return fc.oneof(
    ...(loads.length === 0 ? [] : (['look', 'finger'] as const)).map((kind) =>
      fc
        .tuple(anyStance(study), fc.oneof(told, told, chatters, unsure))
        .map(([stance, answer]): Said => ({ observation: observe({ kind, stance }), answer })),
    ),
    ...about('click', relays, fc.oneof(yes, chatters, unsure)),
    ...about(
      'lit',
      of('lamp led')
        .map((p) => p.name)
        .filter((p) => !relays.includes(p) && !loads.includes(p)),
      fc.oneof(yes, unsure),
    ),
    ...about(
      'lamp',
      of('outlet plug')
        .map((p) => p.name)
        .filter((p) => !loads.includes(p)),
      fc.oneof(yes, unsure),
    ),
    fc
      .tuple(
        anyStance(study),
        pairOf(loop),
        fc.constantFrom('dc' as const, 'ac' as const),
        figure,
        fc.boolean(),
        fc.boolean(),
      )
      .map(
        ([stance, pair, range, size, minus, sure]): Said => ({
          observation: observe({ kind: 'volts', stance, pair, range }),
          answer: sure ? { by: 'volts', volts: minus ? -size : size } : undefined,
        }),
      ),
    fc
      .tuple(
        anyStance(study),
        pairOf(ends),
        fc.oneof(
          figure.map((ohms): Answer => ({ by: 'ohms', ohms })),
          fc.constant<Answer>({ by: 'ohms', ohms: Number.POSITIVE_INFINITY }),
          fc.constant<Answer>({ by: 'beeps' }),
          unsure,
        ),
      )
      .map(
        ([stance, pair, answer]): Said => ({ observation: observe({ kind: 'ohms', stance, pair }), answer }),
      ),
  );
}

/** A line as the log takes it in. */
function readBack(form: PlainForm, line: string): readonly Said[] {
  const [, word, rest] = /^(saw|reading) (.*)$/s.exec(line)!;
  const read = word === 'saw' ? form.saw(rest!) : form.reading(rest!);
  if (!read.ok) throw new Error(`${line}: ${read.problem}`);
  return [read.value].flat();
}

/** What counts of what was said: how far the probes are apart is no part of a line. */
const plain = ({ observation: { key, kind, stance }, answer }: Said) => ({ key, kind, stance, answer });

describe.each(studies)('a line about %s', (_, study) => {
  it('is read back as it is written', () => {
    const form = new PlainForm(study);
    fc.assert(
      fc.property(anySaid(study), (said) => {
        expect(readBack(form, form.line(said)).map(plain)).toEqual([plain(said)]);
      }),
      { numRuns: 300 },
    );
  });
});

const lane = Study.of(example('saltmarsh-lane'));
const form = new PlainForm(lane);

/** What is said against a line. */
function problem(line: string): string {
  const read = line.includes('=') ? form.reading(line) : form.saw(line);
  if (read.ok) throw new Error(`${line} was taken in`);
  return read.problem;
}

describe('a slip in a line', () => {
  it.each([
    ['plainer open: off', /no gate, switch, button or cut-out is called "plainer"; did you mean planer\?/],
    ['planer opne: off', /found "planer opne", expected planer open or planer shut/],
    ['planer: off', /expected planer open or planer shut/],
    ['planer open, planer shut: off', /names planer twice/],
    ['planer open after router open after bandsaw open: off', /expected "after" once/],
    ['planer open: wobbles', /found "wobbles", expected runs, off or chatters/],
    ['planer open: K2 in', /found "K2 in", expected runs, off or chatters; did you mean K1\?/],
    ['planer open: K1 lit', /found "K1 lit", expected K1 in, out or chatters/],
    ['planer open: K1', /found "K1", expected K1 in, out or chatters/],
    ['planer open: X1 runs', /expected X1 live or dead/],
    ['planer open: D1 in', /D1 is nothing that can be seen to work/],
    ['planer open: runs, collector off', /tells of collector twice/],
    ['planer open', /expected a position and what was seen, such as "bandsaw open: runs"/],
    ['', /expected a position/],
    ['K1.A1 K1.A3 = 12 V', /K1 has no terminal "A3"; did you mean A1\?/],
    ['K2.A1 K1.A2 = 12 V', /no part is called "K2"; did you mean K1\?/],
    ['K1.A1 K1.A2 = 12', /found "12", expected volts, ohms, OL or beeps/],
    ['K1.A1 K1.A2 = 12 A', /expected volts, ohms/],
    ['K1.A1 = 12 V', /expected two terminals/],
    ['K1.A1 K1.A2 = 12 V with plainer open', /did you mean planer\?/],
    ['K1.A1 K1.A2 = 1e999 V', /is no reading/],
    [`K1.A1 K1.A2 = ${'9'.repeat(400)} ohm`, /is no reading/],
    // Nobody is to probe live mains, so no line says that somebody did.
    ['K1.COM neutral = 120 V', /K1\.COM is on mains, and no probe goes on live mains/],
    ['X1.L K1.A1 = 0 V with planer open', /no probe goes on live mains/],
  ])('%s is told', (line, message) => {
    expect(problem(line)).toMatch(message);
  });

  it.each([
    'constructor open: runs',
    '__proto__ open: runs',
    'planer open: constructor in',
    'planer constructor: runs',
    'constructor.prototype K1.A1 = 1 V',
    'K1.constructor K1.A1 = 1 V',
    'toString.valueOf __proto__ = 1 V with hasOwnProperty open',
    '\u001b[2J\u001b[H: runs',
    'planer open: \u001b]0;x\u0007',
  ])('%j is no name of anything', (line) => {
    expect(problem(line)).toMatch(/no gate|no part|no terminal|expected/);
  });

  it.each([
    ['letters', 'x'.repeat(100_000)],
    ['spaces', `K1.A1 K1.A2 = ${' '.repeat(100_000)}x`],
    ['spaces before a colon', `planer open ${' '.repeat(100_000)}x: runs`],
    ['commas', `${'planer open, '.repeat(8_000)}router open: runs`],
    ['digits', `K1.A1 K1.A2 = ${'1'.repeat(100_000)} V`],
  ])('100 kB of %s are refused at once and not repeated', (_, line) => {
    const before = process.cpuUsage().user;
    const hunt = new Hunt(lane, { worked: true });
    const answer = answerTo(hunt, observe({ kind: 'look', stance: REST }), line);
    expect([problem(line).length < 200, answer.ok]).toEqual([true, false]);
    expect(process.cpuUsage().user - before).toBeLessThan(1_000_000);
  });
});

describe('other words for the same', () => {
  it.each([
    ['all shut: runs', 'saw all shut: runs'],
    ['everything at rest: on', 'saw all shut: runs'],
    ['Every gate shut: does not start', 'saw all shut: off'],
    ['planer shut: off', 'saw all shut: off'],
    ['planer open and router open: starts', 'saw planer open, router open: runs'],
    ['planer open by finger: dead', 'saw planer open by finger: off'],
    ['planer open: K1 clicks', 'saw planer open: K1 in'],
    ['planer open: K1 hums', 'saw planer open: K1 chatters'],
    ['planer open: hums', 'saw planer open: chatters'],
    ['planer open: X1 dark', 'saw planer open: X1 dead'],
    ['K1.A1 K1.A2 = 11.84 volts with planer open', 'reading K1.A1 K1.A2 = 11.8 V DC with planer open'],
    ['K1.A1 K1.A2 = 20 mV', 'reading K1.A1 K1.A2 = 0.02 V DC'],
    ['K1.A1 K1.A2 = 24VAC', 'reading K1.A1 K1.A2 = 24 V AC'],
    ['K1.A1 K1.A2 = 1.2 k', 'reading K1.A1 K1.A2 = 1200 ohm'],
    ['K1.A1 K1.A2 = 1.2 MΩ', 'reading K1.A1 K1.A2 = 1200000 ohm'],
    ['P1.L K1.COM = open', 'reading P1.L K1.COM = OL'],
  ])('%s', (typed, line) => {
    const read = typed.includes('=') ? form.reading(typed) : form.saw(typed);
    if (!read.ok) throw new Error(read.problem);
    expect([read.value].flat().map((said) => form.line(said))).toEqual([line]);
  });
});

describe('a short answer', () => {
  const hunt = new Hunt(lane, { worked: true });
  const pair = { a: 'K1.A1', b: 'K1.A2', cost: 1, far: false, main: false };
  const look = observe({ kind: 'look', stance: REST });
  const click = observe({ kind: 'click', stance: REST, part: 'K1' });
  const lamp = observe({ kind: 'lamp', stance: REST, part: 'X1' });
  const volts = observe({ kind: 'volts', stance: REST, pair, range: 'dc' });
  const ohms = observe({ kind: 'ohms', stance: REST, pair });

  it.each<[Observation, string, Answer | undefined]>([
    [look, 'y', { by: 'loads', of: ['collector'], on: ['collector'] }],
    [look, 'collector', { by: 'loads', of: ['collector'], on: ['collector'] }],
    [look, 'no', { by: 'loads', of: ['collector'], on: [] }],
    [look, 'c', { by: 'chatters' }],
    [look, '?', undefined],
    [click, 'in', { by: 'yes', yes: true }],
    [click, 'buzzes', { by: 'chatters' }],
    [lamp, 'dead', { by: 'yes', yes: false }],
    [volts, '11.8', { by: 'volts', volts: 11.8 }],
    [volts, '-0.2 V', { by: 'volts', volts: -0.2 }],
    [ohms, '155', { by: 'ohms', ohms: 155 }],
    [ohms, 'OL', { by: 'ohms', ohms: Number.POSITIVE_INFINITY }],
    [ohms, 'beeps', { by: 'beeps' }],
  ])('%#: is taken in', (o, text, answer) => {
    expect(answerTo(hunt, o, text)).toEqual({ ok: true, value: answer });
  });

  it.each<[Observation, string, RegExp]>([
    // Enter alone is no answer, least of all that nothing runs.
    [look, '', /nothing was typed/],
    [volts, '', /nothing was typed/],
    [look, ',', /expected yes, no or chatters/],
    [look, 'maybe', /expected yes, no or chatters/],
    [click, 'perhaps', /expected yes or no, or chatters/],
    [lamp, 'chatters', /expected yes or no/],
    [volts, '155 ohm', /expected volts/],
    [volts, 'OL', /expected volts/],
    [volts, '24 V AC', /expected what the meter shows on DC volts/],
    [ohms, '12 V', /expected ohms, OL or beeps/],
    [ohms, 'NaN', /expected volts, ohms/],
    [volts, '0x10', /expected volts/],
  ])('%#: is asked again', (o, text, message) => {
    const read = answerTo(hunt, o, text);
    expect(read.ok ? 'taken in' : read.problem).toMatch(message);
  });
});
