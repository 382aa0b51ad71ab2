import type { Source } from '../../circuit/circuit.ts';
import { isContactor } from '../../circuit/thresholds.ts';
import type { MotorPart } from '../../plan/part-types.ts';
import { defaults } from '../../ratings/defaults.ts';
import { motorCurrents } from '../../ratings/motor.ts';
import type { CoilState } from '../../study/coil-states.ts';
import { figuresFor } from '../../study/corner-figures.ts';
import type { Electrics } from '../../study/electrics.ts';
import { solveMains } from '../../study/mains/mains-flows.ts';
import type { Standing } from '../../study/situations.ts';
import type { Study } from '../../study/study.ts';
import { rounded } from '../../text/numbers.ts';
import type { Check, FindingEntry } from '../entry.ts';
import { found } from '../finding.ts';
import type { Finding } from '../report-model.ts';

const entry: FindingEntry = {
  id: 'coil-drops-at-start',
  title: 'the relay may let go while the motor starts',
  severity: 'warning',
  question: 4,
  base: 'shared-cord',
  meaning:
    'The control supply hangs on the cord that feeds the motor. Starting current pulls the volts at the far end of that cord down, the coil no longer holds, the motor stops, the volts come back, and so on several times a second under the greatest current there is. Give the supply an outlet of its own, or the motor a thicker and shorter cord.',
  wrong:
    '  - {cable: {gauge: 16 AWG, cores: 3, insulation: 600 V}, length: 60 m, cores: {black: [P1.L1, Q1.1], white: [P1.L2, Q1.3], green: [P1.PE, B1.PE]}}',
  right:
    '  - {cable: cord, length: 2 m, cores: {black: [P1.L1, Q1.1], white: [P1.L2, Q1.3], green: [P1.PE, B1.PE]}}',
  basis: 'relay makers’ data on holding volts; IEC 60947-4-1 for contactors (from memory)',
  followsFrom: ['coil-too-low'],
};

export const coilDropsAtStart: Check = { entry, find };

/** Share of rated volts above which a pulled-in coil is sure to hold; makers' data, DC 50 %, AC 80 %, contactor 75 %. */
function holdShare(state: CoilState): number {
  if (state.fed.model.kind === 'dc' && !state.fed.model.electronic) return defaults.holdDcRelay.value;
  return isContactor(state.fed.part) ? defaults.holdContactor.value : defaults.holdAcRelay.value;
}

function find(study: Study): Finding[] {
  const own = study.electrics;
  return own ? study.coilStates.flatMap((state) => letsGo(study, own, state)) : [];
}

/** The first motor whose start leaves the coil less than it holds by, where its supply hangs on that motor's cord. */
function letsGo(study: Study, own: Electrics, state: CoilState): Finding[] {
  const { source, model, supply, part } = state.fed;
  if (source.mains || !supply || supply.sourceOhms === 0) return [];
  const nets = feedNets(own, source);
  if (!nets) return [];
  const row = state.rows[0]!;
  const standing = own.situations.at(row.moved);
  if (!standing) return [];
  const motors = [...study.plan.parts.values()].filter(
    (p): p is MotorPart => p.kind === 'motor' && p.volts.kind === 'ac',
  );
  for (const motor of motors) {
    const amps = motorCurrents(motor, study.plan.practice).starting?.amps;
    if (amps === undefined) continue;
    const kept = sagShare(study, own, nets, standing, motor, amps);
    const held = row.most * (supply.openCircuit.min / supply.openCircuit.max) * kept;
    const needs = holdShare(state) * model.rated;
    if (held >= needs - 1e-9) continue;
    return [
      found(study.plan, entry, {
        parts: [part.name, source.part, motor.name],
        message: `${part.name} may drop out while ${motor.name} starts: its coil keeps ${rounded(held)} V and needs ${rounded(needs)} V to hold`,
        why: `${source.part} hangs on the cord of ${motor.name}, whose start of ${rounded(amps)} A leaves it ${rounded(kept * 100)} % of the mains. The contact then opens and closes under the starting current.`,
        fix: `Feed ${source.part} from an outlet of its own, or use a thicker and shorter cord.`,
        figures: [
          { name: 'volts at the coil during the start', value: rounded(held, 4), unit: 'V' },
          { name: 'volts to hold', value: rounded(needs, 4), unit: 'V' },
        ],
        basis: 'relay makers’ data; IEC 60947-4-1 for contactors (from memory)',
      }),
    ];
  }
  return [];
}

/** The two nets that the supply is fed from, where the plan shows them. */
function feedNets(own: Electrics, source: Source): readonly [number, number] | undefined {
  const { feed } = own.circuit.sources[source.index]!;
  if (feed.by === 'nets') return [feed.a, feed.b];
  if (feed.by !== 'part') return undefined;
  const outlet = own.circuit.consumers.find((c) => c.part === feed.part);
  const nets = outlet ? [...outlet.nets.values()] : [];
  return nets.length >= 2 ? [nets[0]!, nets[1]!] : undefined;
}

/** Volts at the supply's feed with the motor starting, against those with it not drawing at all. */
function sagShare(
  study: Study,
  own: Electrics,
  nets: readonly [number, number],
  standing: Standing,
  motor: MotorPart,
  amps: number,
): number {
  const mains = own.circuit.sources.find((s) => s.mains);
  if (!mains) return 1;
  const volts = (drawn: ReadonlyMap<string, number>): number => {
    const flows = solveMains(own, mains, standing.situation, drawn, figuresFor(study.plan, 'low'), {
      starting: motor.name,
    });
    const v = flows.volts(nets[0], nets[1]);
    return v ? Math.hypot(v.re, v.im) : 0;
  };
  const still = volts(new Map());
  return still > 0 ? volts(new Map([[motor.name, amps]])) / still : 1;
}
