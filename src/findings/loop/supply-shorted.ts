import { sayMoved } from '../../circuit/input-words.ts';
import { everIn } from '../../logic/entry-states.ts';
import type { Study } from '../../study/study.ts';
import { listOf } from '../../text/word-list.ts';
import { fedReversed } from '../coil/polarity-reversed.ts';
import type { Check, FindingEntry } from '../entry.ts';
import { found } from '../finding.ts';
import type { Finding } from '../report-model.ts';
import { conductingDiodes } from './diode-backwards.ts';

const entry: FindingEntry = {
  id: 'supply-shorted',
  title: 'a gate joins the two poles of the supply',
  severity: 'warning',
  question: 5,
  ofWiring: true,
  base: 'battery',
  meaning:
    'In some position of the switches a wire leads from one pole of the supply to the other with no coil in it. Opening that gate blows the fuse or makes the adapter cut out, and every other gate is dead meanwhile. The two tabs of a gate switch belong in one conductor of the loop.',
  wrong: '{red: [barA, lathe.COM], black: [minus, lathe.NO]}',
  right: '{red: [barA, lathe.COM], black: [barB, lathe.NO]}',
  basis: 'common practice',
  followsFrom: ['mains-meets-low-voltage'],
  goneByOneMove: true,
};

export const supplyShorted: Check = { entry, find };

/** A diode or a part the wrong way round that shorts the supply is told by itself. */
function find(study: Study): Finding[] {
  const { plan, circuit, verified: v } = study;
  if (!v || conductingDiodes(study).length > 0 || fedReversed(study).some((r) => r.effect === 'shorts'))
    return [];
  return circuit.sources
    .filter((s) => !s.mains)
    .flatMap((s) => {
      const moved = everIn(v, v.model.shorted[s.index]!);
      if (!moved) return [];
      const who = moved.map((i) => circuit.inputs[i]!.part);
      const poles = s.rails.map((r) => `${s.part}.${r.terminal}`);
      return [
        found(plan, entry, {
          parts: [...who, s.part],
          terminals: poles,
          message: `${listOf(poles)} are joined with ${sayMoved(circuit, moved)}: the supply or its fuse gives up`,
          why: 'There is a path from one pole of the supply to the other with no coil in it.',
          fix:
            who.length > 0
              ? `Wire ${listOf(who)} in one conductor only; the coil belongs between the switches and the other pole.`
              : 'Take away the core that joins the two poles.',
          basis: entry.basis,
        }),
      ];
    });
}
