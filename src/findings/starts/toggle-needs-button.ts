import { inputVariable } from '../../logic/conduction.ts';
import { everIn } from '../../logic/entry-states.ts';
import { follow } from '../../logic/follow.ts';
import type { Moved, Verified } from '../../logic/verify.ts';
import type { Study } from '../../study/study.ts';
import { heldFeed } from '../../study/timers/held-coils.ts';
import { type Check, extract, type FindingEntry } from '../entry.ts';
import { found } from '../finding.ts';
import type { Finding } from '../report-model.ts';

const entry: FindingEntry = {
  id: 'toggle-needs-button',
  title: 'a contact that stays put works a relay that changes over each time',
  severity: 'fault',
  question: 3,
  base: 'toggle',
  meaning:
    'A toggling relay changes over each time its coil is fed, and shutting a gate feeds nothing. So opening a gate starts the load, shutting it leaves it running, and the next opening stops it; with a second gate open nothing changes at all. Such a relay wants a button that springs back, or a plain relay takes its place.',
  wrong: extract(
    '  - {cable: bell, length: 4 m, cores: {red: [plus, saw.COM], black: [saw.NO, KB1.A1]}}',
    '  - {cable: bell, length: 4 m, cores: {red: [saw.COM, lathe.COM], black: [saw.NO, lathe.NO]}}',
    '  - {link: [plus, KB1.1.COM]}',
    '  - {link: [KB1.1.NO, Q1.A1]}',
  ),
  right: extract(
    '  - {cable: bell, length: 4 m, cores: {red: [plus, saw.COM], black: [saw.NO, KB1.1.COM]}}',
    '  - {cable: bell, length: 4 m, cores: {red: [saw.COM, lathe.COM], black: [saw.NO, lathe.NO]}}',
    '  - {link: [KB1.1.NO, Q1.A1]}',
  ),
  basis: 'impulse relays of IEC 60669-2-2: each closing of the control circuit changes over',
  followsFrom: [],
};

export const toggleNeedsButton: Check = { entry, find };

function find(study: Study): Finding[] {
  const { verified: v, circuit, plan } = study;
  if (!v) return [];
  return circuit.relays.flatMap((relay) => {
    if (relay.latch?.by !== 'cam') return [];
    const moved = everIn(v, heldFeed(v, relay));
    if (moved === undefined) return [];
    const part = plan.parts.get(relay.part)!;
    const inputs = moved.filter((i) =>
      v.model.bdd.support(v.model.pull[relay.index]!).has(inputVariable(circuit, i)),
    );
    const names = (inputs.length > 0 ? inputs : moved).map((i) => circuit.inputs[i]!.part);
    const name = names[0] ?? 'its wiring';
    return [
      found(plan, entry, {
        parts: [relay.part, ...names],
        at: part.where.get('bistable') ?? part.at,
        message: `${name} stays put, and ${relay.part} changes over each time it is fed${effect(study, v, relay.part, name, moved)}`,
        why: `${relay.part} is a toggling relay: only the moment in which its coil becomes fed counts. A contact that stays closed gives one such moment, and opening it none.`,
        fix: `Use a plain relay as ${relay.part}, without bistable; or feed its coil through buttons alone.`,
        basis: entry.basis,
      }),
    ];
  });
}

/** What happens at the machine when the input is worked, let go and worked again, as far as the circuit says it. */
function effect(study: Study, v: Verified, relay: string, name: string, moved: Moved): string {
  if (moved.length === 0) return '';
  const target = v.intents.wanted[0]?.target ?? relay;
  const [first, back, again] = [1, 2, 3].map((n) => {
    const steps = Array.from({ length: n }, (_, k): Moved => (k % 2 === 0 ? moved : []));
    return follow(v, steps).runs(target);
  });
  if (first !== true || back !== true || again !== false) return '';
  const gate = study.plan.parts.get(name)?.kind === 'gate';
  const [open, shut] = gate ? ['opening', 'shutting'] : ['working', 'letting go of'];
  return `: ${open} ${name} starts ${target}, ${shut} it leaves ${target} running, and the next ${open} stops it`;
}
