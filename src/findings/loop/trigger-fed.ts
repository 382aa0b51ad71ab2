import { sayMoved } from '../../circuit/input-words.ts';
import { FALSE } from '../../logic/bdd.ts';
import { everIn } from '../../logic/entry-states.ts';
import type { Study } from '../../study/study.ts';
import { type Triggered, triggered } from '../../study/timers/triggers.ts';
import { type Check, extract, type FindingEntry } from '../entry.ts';
import { found } from '../finding.ts';
import type { Finding } from '../report-model.ts';

const entry: FindingEntry = {
  id: 'trigger-fed',
  title: 'supply volts on the dry trigger of a timer',
  severity: 'warning',
  question: 5,
  ofWiring: true,
  base: 'timer',
  meaning:
    'T1 and T2 want a bare contact between them: the timer itself sends the current. Volts from a supply put on them destroy its input or do nothing. Lead the two cores to the gates and to nothing else; a pole of the supply that is joined to one of them is a caution, since in some timers the trigger hangs together with A1 or A2.',
  wrong: extract(
    '  - {link: [minus, KT1.T2]}',
    '  - {cable: bell, length: 4 m, cores: {white: [plus, planer.COM], brown: [KT1.T1, planer.NO]}}',
  ),
  right: '  - {cable: bell, length: 4 m, cores: {white: [KT1.T1, planer.COM], brown: [KT1.T2, planer.NO]}}',
  basis:
    'makers’ data: a dry trigger takes a potential-free contact, a voltage trigger has a terminal of its own',
  followsFrom: ['mains-meets-low-voltage', 'mains-through-gate'],
};

export const triggerFed: Check = { entry, find };

function find(study: Study): Finding[] {
  return triggered(study).flatMap((t) => fedAcross(study, t) ?? fedAtOne(study, t) ?? []);
}

/** The poles of one source on the two terminals. */
function fedAcross(study: Study, { part, trigger }: Triggered): Finding | undefined {
  const { verified: v, circuit, plan } = study;
  if (!v) return undefined;
  const { bdd, railReach } = v.model;
  for (const source of circuit.sources) {
    const reach = railReach[source.index]!;
    const at = (rail: number, net: number) => reach[rail]!.get(net) ?? FALSE;
    const across = bdd.any(
      source.rails.flatMap((_, i) =>
        source.rails.map((_x, j) => (i === j ? FALSE : bdd.and(at(i, trigger.a), at(j, trigger.b)))),
      ),
    );
    const moved = across === FALSE ? undefined : everIn(v, across);
    if (moved === undefined) continue;
    return found(plan, entry, {
      parts: [part.name, source.part, ...moved.map((i) => circuit.inputs[i]!.part)],
      terminals: [`${part.name}.T1`, `${part.name}.T2`],
      message: `${source.part} lies across T1 and T2 of ${part.name}, which want a bare contact`,
      why: `It does with ${sayMoved(circuit, moved)}. A dry trigger sends its own current; volts from outside destroy it or do nothing.`,
      fix: `Lead T1 and T2 of ${part.name} to the gates alone, with no core to a supply.`,
      basis: entry.basis,
    });
  }
  return undefined;
}

/** One pole on one of them: destroys nothing in most timers, and in some makes a loop of its own. */
function fedAtOne(study: Study, { part, trigger }: Triggered): Finding | undefined {
  const { verified: v, circuit, plan } = study;
  if (!v) return undefined;
  for (const source of circuit.sources)
    for (const [i, rail] of source.rails.entries()) {
      const reach = v.model.railReach[source.index]![i]!;
      const net = [trigger.a, trigger.b].find((n) => (reach.get(n) ?? FALSE) !== FALSE);
      if (net === undefined) continue;
      const terminal = net === trigger.a ? 'T1' : 'T2';
      return found(plan, entry, {
        severity: source.mains ? 'warning' : 'caution',
        parts: [part.name, source.part],
        terminals: [`${part.name}.${terminal}`],
        message: `${source.part}.${rail.terminal} is joined to ${terminal} of ${part.name}, which wants a bare contact`,
        why: 'Whether its trigger is parted from its supply inside is not printed on most timers.',
        fix: `Lead ${terminal} of ${part.name} to the gates alone; or make sure in its data that this pole may be there.`,
        basis: entry.basis,
      });
    }
  return undefined;
}
