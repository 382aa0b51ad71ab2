/** What a design allows and needs, each figure with the check that the next one fails. */
import { toldOf } from '../../findings/verdict-line.ts';
import { lengthUnit } from '../../plan/length-unit.ts';
import type { Study } from '../../study/study.ts';
import { CONTACTS, ON_MAINS, SUPPLIES, sizeBought } from './bought.ts';
import { sizeCoils } from './coil-volts.ts';
import { sizeContactor } from './contactor.ts';
import { sizeGates } from './gates.ts';
import { plotOf } from './plot.ts';
import { sizeReach } from './reach.ts';
import type { Section, Size } from './size-model.ts';
import { Trial } from './trial.ts';
import { sizeWires } from './wires.ts';

const untold = (why: string): Section => ({ figures: [], untold: [why] });

/** Why no figure can be found; undefined where they can. */
function stands({ findings, study }: Trial): string | undefined {
  if (study.verified === undefined) return 'which states feed the coils was not decided';
  const wiring = findings.find((f) => f.question <= 3 && ['danger', 'warning', 'fault'].includes(f.severity));
  return wiring && `the wiring comes first: ${wiring.message}`;
}

/**
 * Sizes of a plan, found by moving its figures and judging it again. Figures of a plan whose wiring is wrong are not worked
 * out; of one that fails otherwise, they are what would do. `changed` says what was put into the plan beforehand.
 */
export function size(study: Study, changed: readonly string[] = []): Size {
  const trial = new Trial(study);
  const told = toldOf(study);
  const doubts = trial.findings.filter((f) => f.severity === 'doubt');
  const head = {
    format: 1 as const,
    check: told,
    unit: lengthUnit(study.plan),
    with: [...changed],
    asks: doubts.map((f) => `${f.message}. ${f.fix}`),
  };
  const why = stands(trial);
  if (why !== undefined) {
    const none = untold(why);
    return {
      ...{ ...head, wire: none, reach: none, gates: none, supply: none, contacts: none, contactor: none },
      ...{ mains: none, coils: { rows: [], taken: [], untold: [why] }, plot: null },
    };
  }
  const reach = sizeReach(trial);
  return {
    ...head,
    wire: sizeWires(trial),
    reach,
    gates: sizeGates(trial, reach),
    supply: sizeBought(trial, SUPPLIES),
    contacts: sizeBought(trial, CONTACTS),
    contactor: sizeContactor(trial),
    mains: sizeBought(trial, ON_MAINS),
    coils: sizeCoils(trial),
    plot: plotOf(trial, reach),
  };
}
