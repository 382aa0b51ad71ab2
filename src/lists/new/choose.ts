/** Choosing what the answers leave open: the least parts with which the plan passes its check, found by trying upwards. */
import { boxOverfilled } from '../../findings/mains/box-overfilled.ts';
import { ordinaryTables } from '../../ratings/ordinary.ts';
import type { SizesRow, SwitchRow } from '../../ratings/part-rows.ts';
import { Study } from '../../study/study.ts';
import type { Answers } from './answers.ts';
import { circuitsFor } from './circuits.ts';
import {
  type Between,
  coilFits,
  type Design,
  type DesignSupply,
  fewestPoles,
  type Kind,
  needsOverload,
  polesNeeded,
  type Switching,
} from './design.ts';
import { shortened } from './shortened.ts';
import { badness, bestOf, isClean, type Trials, type Tried } from './trials.ts';

/** What adapters and coils are mostly sold for, the plainest first; common practice, no source. */
const PLAIN_VOLTS: readonly Kind[] = [
  { volts: 12, kind: 'dc' },
  { volts: 24, kind: 'dc' },
];

function sizes(name: SizesRow['name'], { practice }: Answers): readonly string[] {
  return ordinaryTables.sizes().rows.find((r) => r.name === name && r.practice === practice)!.sizes;
}

/** The whole plan with what was chosen for it. One that passes was judged with all its gates, else with the worst of them. */
export function choose(answers: Answers, trials: Trials): Tried {
  const circuit = chooseCircuit(ampleDesign(answers), trials).design;
  const switching = chooseSwitching(circuit, answers, trials);
  const tried = chosenWith(switching, circuit, answers, trials);
  const { relay } = answers;
  if (tried.against.length === 0 || switching.row === undefined || relay === undefined) return tried;
  // What a relay at hand lacks for the motor is told before what it lacks for working another.
  return relay.poles < fewestPoles(answers) ? tried : chosenWith({ hand: relay }, circuit, answers, trials);
}

function chosenWith(switching: Switching, circuit: Design, answers: Answers, trials: Trials): Tried {
  const loop = chooseLoop({ ...circuit, switching, answers: shortened(answers) }, trials);
  // What fails with one gate fails with all of them.
  return loop.against.length === 0
    ? inFull(answers, withSupply(loop, trials), trials)
    : { ...loop, design: { ...loop.design, answers } };
}

/** The largest of everything, with one short gate cable: what then stands against it is not for want of size. */
function ampleDesign(answers: Answers): Design {
  const one = { ...answers.gates[0]!, length: { text: '1 m', metres: 1 } };
  const few: Answers = {
    ...answers,
    gates: [one],
    layout: 'chain',
    return: undefined,
    'run-on': 0,
    cutouts: [],
    hand: undefined,
  };
  return {
    answers: few,
    supply: amplySupplied(few, { volts: 24, kind: 'dc' }),
    switching: { row: switchRows(answers, [{ volts: 24, kind: 'dc' }]).at(-1)! },
    between: 'none',
    circuit: { ...circuitsFor(answers)[0]!, gauge: sizes('mains', answers).at(-1)! },
    fuse: undefined,
    gauge: sizes('loop', answers).at(-1)!,
    volume: sizes('box', answers).at(-1)!,
  };
}

/** The least circuit that carries the motor, and the thinnest wire on it. */
function chooseCircuit(ample: Design, trials: Trials): Tried {
  const { gauge } = ample.circuit;
  const thick = circuitsFor(ample.answers).map((c) => ({ ...ample, circuit: { ...c, gauge } }));
  const { design: best, against } = bestOf(trials, thick);
  if (against.length > 0) return trials.of(best);
  const thin = sizes('mains', ample.answers).map((g) => ({
    ...best,
    circuit: { ...best.circuit, gauge: g },
  }));
  return bestOf(trials, thin);
}

/** What supply the answers want: that at hand, that of the coil at hand, or what is plain. */
function voltsOf({ supply, relay }: Answers): readonly Kind[] {
  if (supply !== undefined) return [supply];
  return relay === undefined ? PLAIN_VOLTS : [relay];
}

/** Rows with the poles and a coil for one of the voltages; contactors alone where an overload relay is mounted on it. */
function switchRows(answers: Answers, kinds: readonly Kind[]): readonly SwitchRow[] {
  const needed = polesNeeded(answers);
  return ordinaryTables
    .parts()
    .rows.filter(
      (r) =>
        r.poles >= needed &&
        (r.style === 'contactor' || !needsOverload(answers)) &&
        kinds.some((kind) => coilFits(r, kind)),
    );
}

/** The least switch that starts and carries the motor, or the one at hand. */
function chooseSwitching(circuit: Design, answers: Answers, trials: Trials): Switching {
  const kinds = voltsOf(answers);
  const rows = switchRows(answers, kinds);
  if (answers.relay !== undefined && answers.relay.poles >= fewestPoles(answers)) {
    const hand = { hand: answers.relay };
    if (rows.length === 0) return hand;
    // Where it cannot switch the motor itself it may still work what does.
    const itself = trials.of({ ...circuit, switching: hand, supply: amplySupplied(answers, answers.relay) });
    if (!itself.against.some((f) => f.question === 6 || f.question === 1)) return hand;
  }
  if (rows.length === 0) return circuit.switching;
  const designs = rows.map((row) => ({
    ...circuit,
    switching: { row },
    // What is doubtful of a supply at hand says nothing of the switch.
    supply: amplySupplied(answers, kinds.find((kind) => coilFits(row, kind))!),
  }));
  return bestOf(trials, designs).design.switching;
}

/** What the gates may work, the plainest first. */
function betweens(answers: Answers, { hand }: Switching): readonly Between[] {
  if (answers['run-on'] > 0) return ['timer'];
  if (answers.relay === undefined) return ['none', 'relay'];
  return hand === undefined ? ['relay-at-hand'] : ['none'];
}

/** The plainest way to work the switch, and the thinnest gate cable with which it does. */
function chooseLoop(design: Design, trials: Trials): Tried {
  const { answers, switching } = design;
  const fitting = voltsOf(answers).filter((k) => switching.row === undefined || coilFits(switching.row, k));
  // Contactors are mostly sold for the higher volts, relays for the lower.
  const kinds = switching.row?.style === 'contactor' ? fitting.reverse() : fitting;
  const gauges = sizes('loop', answers);
  const ways = betweens(answers, switching).flatMap((between) =>
    (kinds.length === 0 ? voltsOf(answers) : kinds).map((kind) => {
      const supply = chosenSupply(answers, kind);
      return { ...design, between, supply, fuse: largestFuse(answers, supply) };
    }),
  );
  let best: Tried | undefined;
  for (const way of ways) {
    const thick = trials.of({ ...way, gauge: gauges.at(-1)! });
    if (best !== undefined && badness(thick) >= badness(best)) continue;
    best = isClean(thick)
      ? bestOf(
          trials,
          gauges.map((gauge) => ({ ...way, gauge })),
        )
      : thick;
    if (isClean(best)) break;
  }
  // Thicker wire that spares nothing is not taken.
  const { design: found, against } = best!;
  return isClean(best!) || against.length > 0
    ? best!
    : bestOf(
        trials,
        gauges.map((gauge) => ({ ...found, gauge })),
      );
}

/** The most that ordinary supplies of these volts give. */
function amplySupplied(answers: Answers, { volts, kind }: Kind): DesignSupply {
  const limit = sizes(`supply-${kind}`, answers).at(-1)!;
  return { volts, kind, limit, regulation: undefined, class2: true, chosen: true };
}

/** At hand as it is, else with the most that such supplies give. */
function chosenSupply(answers: Answers, kind: Kind): DesignSupply {
  const { supply } = answers;
  return supply?.limit === undefined
    ? amplySupplied(answers, kind)
    : { ...supply, limit: supply.limit, chosen: false };
}

const largestFuse = (answers: Answers, { class2 }: DesignSupply): string | undefined =>
  class2 ? undefined : sizes('fuse', answers).at(-1);

/** The least supply, and the least fuse beside one that needs it. */
function withSupply({ design }: Tried, trials: Trials): Design {
  const { answers, supply, fuse } = design;
  const supplies = supply.chosen
    ? sizes(`supply-${supply.kind}`, answers).map((limit) => ({ ...design, supply: { ...supply, limit } }))
    : [design];
  const fed = bestOf(trials, supplies).design;
  if (fuse === undefined) return fed;
  return bestOf(
    trials,
    sizes('fuse', answers).map((f) => ({ ...fed, fuse: f })),
  ).design;
}

/** With every gate, in the least box that holds it all; with thicker wire where all gates together ask for it. */
function inFull(answers: Answers, short: Design, trials: Trials): Tried {
  const whole = { ...short, answers };
  const volume = leastBox(whole, trials) ?? whole.volume;
  const boxed = { ...whole, volume };
  const gauges = sizes('loop', answers);
  const from = gauges.slice(gauges.indexOf(boxed.gauge));
  return bestOf(
    trials,
    from.map((gauge) => ({ ...boxed, gauge })),
  );
}

function leastBox(design: Design, trials: Trials): string | undefined {
  return sizes('box', design.answers).find(
    (volume) => boxOverfilled.find(Study.of(trials.read({ ...design, volume }))).length === 0,
  );
}
