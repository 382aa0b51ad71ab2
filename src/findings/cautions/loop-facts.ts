/** The low-voltage side: what feeds it, its coils, its wires. */

import { isMainsOutput } from '../../circuit/thresholds.ts';
import type { CurrentKind } from '../../plan/device-figures.ts';
import type { SupplyPart } from '../../plan/part-types.ts';
import { coilAmps } from '../../ratings/coil.ts';
import { isTransformer, ratedAmps, supplyModel } from '../../ratings/supply.ts';
import { mostTogether } from '../../study/fed-together.ts';
import type { Study } from '../../study/study.ts';
import type { Finding } from '../report-model.ts';
import type { Stands } from './stands.ts';

export interface LoopFacts {
  /** a supply that is no battery has no Class 2 mark */
  readonly supplyNotClass2: boolean;
  /** a supply whose volts rise well above its label at light load */
  readonly risesAtNoLoad: boolean;
  /** V, the highest that a loop of each kind reaches with nothing drawn (RMS for AC); 0 where there is none */
  readonly noLoadVolts: Readonly<Record<CurrentKind, number>>;
  /** a small transformer of the kind sold for bells holds coils in with more than half of its rating */
  readonly bellHoldsCoil: boolean;
  readonly hasBattery: boolean;
  readonly suppliesJoined: boolean;
  /** one side of the loop is earthed and a gate switch sits on it */
  readonly earthedAtSwitch: boolean;
  readonly coilMismatch: boolean;
  /** `wrong`: a diode on AC or the wrong way round; `none`: a DC coil has none */
  readonly suppressor: 'none' | 'wrong' | 'well';
  /** little to spare at the coil, so that contacts may chatter and weld */
  readonly thinMargin: boolean;
  readonly hasGates: boolean;
}

/** VA and V up to which a transformer may be one for bells (IEC 61558-2-8 covers more); common practice, no source. */
const BELL = { va: 30, volts: 24 };

export function loopFacts(study: Study, findings: readonly Finding[], stands: Stands): LoopFacts {
  const { plan } = study;
  const parts = [...plan.parts.values()];
  // What gives mains volts feeds no loop.
  const supplies = parts.filter((p): p is SupplyPart => p.kind === 'supply' && !isMainsOutput(p.output));
  const transformers = supplies.filter(isTransformer);
  const noLoad = (kind: CurrentKind) =>
    Math.max(
      0,
      ...parts.map((p) =>
        (p.kind === 'supply' || p.kind === 'battery') && p.output.kind === kind && !isMainsOutput(p.output)
          ? supplyModel(p, plan.practice).noLoad
          : 0,
      ),
    );
  return {
    supplyNotClass2: supplies.some((s) => s.class2 !== true),
    risesAtNoLoad: transformers.length > 0 || supplies.some((s) => s.regulation === 'unregulated'),
    noLoadVolts: { dc: noLoad('dc'), ac: noLoad('ac') },
    bellHoldsCoil: transformers.some((s) => isForBells(s) && holdsMoreThanHalf(study, s)),
    hasBattery: parts.some((p) => p.kind === 'battery'),
    suppliesJoined: stands('supplies-joined'),
    earthedAtSwitch: findings.some((f) => f.id === 'low-voltage-earthed' && f.severity === 'warning'),
    coilMismatch:
      stands('coil-kind') || findings.some((f) => f.id === 'coil-too-high' && f.severity === 'warning'),
    suppressor: stands('diode-backwards') ? 'wrong' : stands('coil-unsuppressed') ? 'none' : 'well',
    thinMargin: stands('coil-thin-margin') || stands('coil-drops-at-start'),
    hasGates: parts.some((p) => p.kind === 'gate'),
  };
}

const isForBells = (s: SupplyPart): boolean =>
  s.output.volts <= BELL.volts && ratedAmps(s) * s.output.volts <= BELL.va;

/** Coils that can be in together, by their sealed current against the limit. */
function holdsMoreThanHalf(study: Study, supply: SupplyPart): boolean {
  const own = study.fedCoils.filter((c) => c.source.part === supply.name);
  const sealed = mostTogether(study, own, ({ model }) => coilAmps(model) ?? 0);
  return sealed.amps > 0.5 * ratedAmps(supply);
}
