import { sayMoved } from '../../circuit/input-words.ts';
import { everIn } from '../../logic/entry-states.ts';
import { coilName } from '../../study/coil-models.ts';
import type { Study } from '../../study/study.ts';
import { heldFeed } from '../../study/timers/held-coils.ts';
import { rounded } from '../../text/numbers.ts';
import type { Check, FindingEntry } from '../entry.ts';
import { found } from '../finding.ts';
import type { Finding } from '../report-model.ts';

const entry: FindingEntry = {
  id: 'pulse-coil-held',
  title: 'a coil made for pulses stays fed',
  severity: 'warning',
  question: 4,
  base: 'set-reset',
  meaning:
    'Many relays that stay put have coils for a short pulse only. A gate, a switch or a cut-out stays closed for hours: an AC coil then hums and overheats, a DC coil overheats, and its insulation fails. Where the plan does not say how long the coil may stand, it is a doubt.',
  wrong: 'pulse: 200 ms',
  right: 'pulse: continuous',
  basis: 'longest pulse as printed on the relay; IEC 60669-2-2 has coils that may and may not stay fed',
  followsFrom: ['toggle-needs-button'],
};

export const pulseCoilHeld: Check = { entry, find };

function find(study: Study): Finding[] {
  const { verified: v, circuit, plan } = study;
  if (!v) return [];
  return circuit.relays.flatMap((relay) => {
    const part = plan.parts.get(relay.part);
    if (part?.kind !== 'relay' || relay.senses.length === 0) return [];
    const { pulse, bistable } = part;
    if (pulse === Number.POSITIVE_INFINITY || (pulse === undefined && bistable === undefined)) return [];
    const moved = everIn(v, heldFeed(v, relay));
    if (moved === undefined) return [];
    const name = coilName(relay);
    const when = `It is fed for as long as ${sayMoved(circuit, moved)} lasts`;
    const told = {
      parts: [relay.part, ...moved.map((i) => circuit.inputs[i]!.part)],
      at: part.where.get('pulse') ?? part.where.get('bistable') ?? part.at,
      basis: entry.basis,
    };
    if (pulse === undefined)
      return [
        found(plan, entry, {
          ...told,
          severity: 'doubt',
          message: `whether the coil of ${name} may stay fed cannot be told: pulse is not stated`,
          why: `${when}, and many such coils stand a second.`,
          fix: `State pulse: of ${relay.part}, as printed; continuous if its coil may stay fed.`,
        }),
      ];
    return [
      found(plan, entry, {
        ...told,
        message: `the coil of ${name} stays fed and stands ${seconds(pulse)} at most`,
        why: `${when}. It overheats.`,
        fix: `Feed it through buttons alone, or use a relay whose coil may stay fed as ${relay.part}.`,
        figures: [{ name: 'longest pulse', value: rounded(pulse), unit: 's' }],
      }),
    ];
  });
}

const seconds = (s: number): string => (s < 1 ? `${rounded(s * 1000)} ms` : `${rounded(s)} s`);
