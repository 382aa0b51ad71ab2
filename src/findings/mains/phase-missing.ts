import { sayMoved } from '../../circuit/input-words.ts';
import { FALSE } from '../../logic/bdd.ts';
import { everIn } from '../../logic/entry-states.ts';
import { isPlugIn } from '../../study/plug-in.ts';
import type { Study } from '../../study/study.ts';
import type { Check, FindingEntry } from '../entry.ts';
import { found } from '../finding.ts';
import type { Finding } from '../report-model.ts';

const entry: FindingEntry = {
  id: 'phase-missing',
  title: 'the motor gets only two of its three phases',
  severity: 'warning',
  question: 7,
  base: 'three-phase',
  meaning:
    'One phase does not reach the motor. It does not start and hums loudly, or it runs on two and burns out within minutes. Take all three through the contactor and on to the motor.',
  wrong: '{brown: [Q1.2, fan.L1], black: [Q1.4, fan.L2], green-yellow: [B1.PE, fan.PE]}',
  right:
    '{brown: [Q1.2, fan.L1], black: [Q1.4, fan.L2], grey: [Q1.6, fan.L3], green-yellow: [B1.PE, fan.PE]}',
  basis: 'common practice',
  followsFrom: [],
};

export const phaseMissing: Check = { entry, find };

function find(study: Study): Finding[] {
  const { plan, circuit, verified: v } = study;
  if (!v) return [];
  return circuit.consumers.flatMap((c) => {
    const partly = v.model.partlyFed.get(c.part) ?? FALSE;
    const moved = partly === FALSE || isPlugIn(study, c.part) ? undefined : everIn(v, partly);
    if (!moved) return [];
    return [
      found(plan, entry, {
        parts: [c.part],
        terminals: [...c.nets.keys()].map((t) => `${c.part}.${t}`),
        message: `${c.part} gets only two of its three phases with ${sayMoved(circuit, moved)}`,
        why: 'A three-phase motor on two phases does not start, or hums and burns out.',
        fix: 'Take all three phases through the contactor and on to the motor.',
        basis: entry.basis,
        twin: { alike: '' },
      }),
    ];
  });
}
