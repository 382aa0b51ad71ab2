/**
 * A person who answers truthfully is led to the fault in the right examples, in about as many answers as there are bits in it: to tell
 * one of several groups by answers of yes or no takes at least their entropy on the average (C. E. Shannon, 1948, theorem 9, from
 * memory). And one who is wrong one time in ten gets there in three cures.
 */
import { describe, expect, it } from 'vitest';
import type { Answer, Observation } from '../../../src/meter/hunt/observation.ts';
import type { Suspect } from '../../../src/meter/hunt/predict.ts';
import { Study } from '../../../src/study/study.ts';
import { example, exampleNames } from '../../helpers/example-plans.ts';
import { WHOLE } from '../../helpers/share.ts';
import { Person } from './person.ts';

/** What a person may need more than yes-or-no answers could do it in. */
const MORE = 1.3;
/** Share of answers that are wrong, cures that are tried, and how often they are enough. */
const WRONG = 0.1;
const CURES = 3;
const OFTEN = 0.9;

/** Numbers that look random, the same ones every time (Park and Miller's generator, from memory). */
function random(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48_271) % 2_147_483_647;
    return state / 2_147_483_647;
  };
}

/**
 * So many suspects, spread evenly over the weight and not over the list, so that the plain mean over them is the mean by weight:
 * systematic sampling with probability proportional to size.
 */
function drawn(suspects: readonly Suspect[], many: number): Suspect[] {
  const sum = suspects.reduce((total, s) => total + s.weight, 0);
  let past = 0;
  return suspects.flatMap((s) => {
    const before = Math.floor((past / sum) * many + 0.5);
    past += s.weight;
    const times = Math.floor((past / sum) * many + 0.5) - before;
    return Array.from({ length: times }, () => s);
  });
}

/** The answer turned round, or that of some other fault. */
function wrong(person: Person, o: Observation, truth: Answer, next: () => number): Answer {
  if (truth.by === 'yes') return { by: 'yes', yes: !truth.yes };
  if (truth.by === 'loads') return { ...truth, on: truth.on.length > 0 ? [] : truth.of };
  for (let tries = 0; tries < 40; tries++) {
    const other = person.suspects[Math.floor(next() * person.suspects.length)]!;
    const answer = person.truth(other, o);
    if (answer !== undefined && JSON.stringify(answer) !== JSON.stringify(truth)) return answer;
  }
  return truth;
}

/** A share of the right examples that is done within a minute; with PULLIN_HUNT_ALL=1 all of them, a quarter of an hour. */
const LIGHT = ['saltmarsh-lane', 'linnet-garage', 'larch-hall', 'sedge-corner', 'plover-loft', 'curlew-van'];
const whole = process.env.PULLIN_HUNT_ALL === '1' ? exampleNames() : LIGHT;
const names = WHOLE ? whole : LIGHT.slice(0, 1);
/** Suspects that are tried of each plan. */
const DRAWN = WHOLE ? 6 : 5;

const told: {
  readonly name: string;
  readonly asked: number;
  readonly bits: number;
  readonly soon: number;
}[] = [];

describe.each(names)('somebody who hunts in %s', (name) => {
  it.runIf(WHOLE)(
    'gets there with true answers, and mostly with one in ten wrong',
    { timeout: 300_000 },
    () => {
      const person = new Person(Study.of(example(name)));
      const suspects = drawn(person.suspects, DRAWN);
      const next = random(19);
      let asked = 0;
      let soon = 0;
      for (const suspect of suspects) {
        const walk = person.go(person.afresh(), suspect);
        expect([suspect.faults[0]!.text, walk.found]).toEqual([suspect.faults[0]!.text, true]);
        asked += walk.asked / suspects.length;
        const misled = person.go(person.afresh(), suspect, (o) => {
          const truth = person.truth(suspect, o);
          return truth === undefined || next() >= WRONG ? truth : wrong(person, o, truth, next);
        });
        if (misled.found && misled.cures < CURES) soon += 1 / suspects.length;
      }
      const { bits } = person.bits();
      told.push({ name, asked, bits, soon });
      // Of one plan some are drawn only; the limits hold for all plans together.
      expect([asked < 2 * bits, soon > 0.6]).toEqual([true, true]);
    },
  );
});

it.runIf(WHOLE)(
  'takes 1.3 times the bits at most over all of them, and three cures where one answer in ten is wrong',
  () => {
    const mean = (of: (t: (typeof told)[number]) => number) =>
      told.reduce((sum, t) => sum + of(t), 0) / told.length;
    const line = (t: (typeof told)[number]) =>
      `${t.name}: ${t.asked.toFixed(2)} answers for ${t.bits.toFixed(2)} bits (${(t.asked / t.bits).toFixed(2)}), ${(100 * t.soon).toFixed(0)} % in ${CURES} cures`;
    console.log(
      [
        ...told,
        {
          name: 'together',
          asked: mean((t) => t.asked),
          bits: mean((t) => t.bits),
          soon: mean((t) => t.soon),
        },
      ]
        .map(line)
        .join('\n'),
    );
    expect(mean((t) => t.asked)).toBeLessThanOrEqual(MORE * mean((t) => t.bits));
    expect(mean((t) => t.soon)).toBeGreaterThanOrEqual(OFTEN);
  },
);
