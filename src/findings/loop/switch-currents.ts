/** What each switch of the loop has to carry for the coils behind it, against what it is rated for. */

import { isLanded, netAt } from '../../circuit/terminals.ts';
import { inputVariable } from '../../logic/conduction.ts';
import { fedWhere } from '../../logic/model.ts';
import { runsAt, type Verified } from '../../logic/verify.ts';
import type { Contact, CurrentKind, Practice } from '../../plan/device-figures.ts';
import type { Part } from '../../plan/part-types.ts';
import { controlAmps } from '../../ratings/pilot.ts';
import type { FedCoil } from '../../study/fed-coils.ts';
import { perStudy } from '../../study/per-study.ts';
import type { Study } from '../../study/study.ts';
import { holdingAmps, inrushAmps, loopCoils } from './loop-coils.ts';

/** A switch that closes the way to some coils. */
export interface SwitchCurrents {
  readonly part: Part & { readonly contact: Contact };
  readonly input: number;
  readonly coils: readonly FedCoil[];
  readonly kind: CurrentKind;
  readonly volts: number;
  /** A with all its coils in, and A while they pull in */
  readonly held: number;
  readonly start: number;
  /** A, the rating for coils that serves here, else the greatest of the others; undefined where none does */
  readonly rating: number | undefined;
  /** A that it makes by that rating */
  readonly makes: number | undefined;
}

/** Every input of every switch by itself: a selector is judged position by position. */
export const switchCurrents = perStudy((study): readonly SwitchCurrents[] => {
  const { plan, circuit, verified: v } = study;
  if (!v) return [];
  const behind = loopCoils(study).map((coil) => {
    return { coil, depends: v.model.bdd.support(fedWhere(v.model, coil.relay.index)) };
  });
  return circuit.inputs.flatMap(({ index, part: name }) => {
    const part = plan.parts.get(name)!;
    if (!('contact' in part) || !liesInLoop(study, name)) return [];
    const own = inputVariable(circuit, index);
    const coils = behind.filter((b) => b.depends.has(own)).map((b) => b.coil);
    return coils.length === 0 ? [] : [currentsOf(plan.practice, part, index, coils)];
  });
});

function currentsOf(
  practice: Practice,
  part: SwitchCurrents['part'],
  input: number,
  coils: readonly FedCoil[],
): SwitchCurrents {
  const { kind } = coils[0]!.source;
  const volts = Math.max(...coils.map((c) => c.source.rails[0]!.re));
  const held = sum(coils, carriedAmps);
  const can = controlAmps({ contact: part.contact, volts, kind, practice, holdingVA: held * volts });
  return {
    ...{ part, input, coils, kind, volts },
    held,
    start: sum(coils, inrushAmps),
    rating: can?.carries,
    makes: can && Math.max(can.makes, MAKES * can.carries),
  };
}

/** A that a switch carries when it alone is moved; undefined where that starts nothing. */
export function aloneAmps(v: Verified, { input, coils }: SwitchCurrents): number | undefined {
  const fed = coils.filter((c) => runsAt(v, c.part.name, [input]) === true);
  return fed.length === 0 ? undefined : sum(fed, carriedAmps);
}

/** Times its rating that a contact makes, IEC 60947-4-1 Table 7, AC-1. */
const MAKES = 1.5;

/** Whether it carries or makes more than its rating; undefined where it has none that serves. */
export function overRating({ held, start, rating, makes }: SwitchCurrents): 'carry' | 'make' | undefined {
  if (rating === undefined || makes === undefined) return undefined;
  if (held <= rating + 1e-9 && start <= makes + 1e-9) return undefined;
  return held > rating ? 'carry' : 'make';
}

const sum = (coils: readonly FedCoil[], amps: (c: FedCoil) => number): number =>
  coils.reduce((total, c) => total + amps(c), 0);

/** A that a board's input passes where its data do not say; common practice, no source. */
const BOARD_INPUT = 0.005;

/** A while the coil holds; a switch in front of a board's input carries that input, the coil behind it is fed otherwise. */
function carriedAmps(c: FedCoil): number {
  return c.part.kind === 'board' ? (c.part.inputCurrent ?? BOARD_INPUT) : holdingAmps(c);
}

/** Some tab of the switch lies on the low-voltage side. */
function liesInLoop({ circuit, plan, sides }: Study, name: string): boolean {
  return (plan.terminals.get(name)?.names ?? []).some((t) => {
    const net = netAt(circuit, name, t);
    return net !== undefined && isLanded(circuit, name, t) && sides.low.has(net) && !sides.mains.has(net);
  });
}
