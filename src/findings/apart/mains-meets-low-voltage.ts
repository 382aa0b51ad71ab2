import { sayMoved } from '../../circuit/input-words.ts';
import { reachOf } from '../../circuit/sides.ts';
import { isLanded, netAt } from '../../circuit/terminals.ts';
import { isMainsOutput } from '../../circuit/thresholds.ts';
import { FALSE } from '../../logic/bdd.ts';
import { relayVariable } from '../../logic/conduction.ts';
import { everIn } from '../../logic/entry-states.ts';
import type { SupplyPart } from '../../plan/part-types.ts';
import type { Core } from '../../plan/plan.ts';
import { partOfKey, terminalKey } from '../../plan/terminal-key.ts';
import type { Study } from '../../study/study.ts';
import { coreFromTo } from '../../text/core-names.ts';
import { listOf } from '../../text/word-list.ts';
import type { Check, FindingEntry } from '../entry.ts';
import { found } from '../finding.ts';
import type { Finding } from '../report-model.ts';
import { mainsSources, pinReaches } from './rail-reach.ts';
import { crossingCore, netsMet } from './side-crossing.ts';

const entry: FindingEntry = {
  id: 'mains-meets-low-voltage',
  title: 'mains reaches the low-voltage loop',
  severity: 'danger',
  question: 1,
  base: 'dc-chain',
  meaning:
    'A core or a contact joins a mains conductor to the wire of the gate switches. Every switch, clip and bare tab of the loop can then be live, and the adapter is destroyed. Look where the coil terminals and the power terminals of the relay sit side by side: one core on the wrong row is enough.',
  wrong: '{cable: bell, length: 20 cm, cores: {white: [call, K1.COM]}}',
  right: '{cable: bell, length: 20 cm, cores: {white: [call, K1.A1]}}',
  basis: 'NEC 725.136; IEC 60364-4-41 clause 414.4 (from memory)',
  followsFrom: [],
};

export const mainsMeetsLowVoltage: Check = { entry, find };

/** One finding for the plan, at the core that joins the two where one alone does. */
function find(study: Study): Finding[] {
  const { circuit, sides, plan } = study;
  const met = netsMet(sides);
  if (met.length === 0) return ownPins(study);
  const core = crossingCore(study);
  const terminals = met.flatMap((net) => circuit.terminals[net] ?? []).slice(0, 4);
  return [
    found(plan, entry, {
      ...(core
        ? { ...crossing(core), at: core.at }
        : {
            parts: terminals.map(partOfKey),
            terminals,
            message: `mains reaches the low-voltage loop at ${listOf(terminals)}`,
          }),
      why: `${whenMet(study, met)} Every gate switch and its wire can then be at mains voltage.`,
      fix: core
        ? `Take that core off; nothing of the loop may land on a mains terminal.`
        : 'Separate the two circuits at the terminals named.',
      basis: entry.basis,
    }),
  ];
}

/** How the core is named that joins the two. */
export function crossing(core: Core): Pick<Finding, 'parts' | 'terminals' | 'message'> {
  const terminals = [core.a, core.b].map((e) => terminalKey(e.part, e.terminal));
  const named = coreFromTo({ colour: core.colour, a: core.a.written, b: core.b.written });
  return {
    parts: terminals.map(partOfKey),
    terminals,
    message: `${named} puts mains on the low-voltage loop`,
  };
}

/** Mains terminals of a supply that hang on its own output: they are for the mains, whether or not it arrives there. */
function ownPins(study: Study): Finding[] {
  const { circuit, sides, plan } = study;
  const reach = reachOf(circuit, sides);
  return circuit.sources.flatMap((source) => {
    const part = plan.parts.get(source.part);
    if (source.mains || part?.kind !== 'supply') return [];
    const pins = mainsPins(study, part);
    const own = pins.length === 0 ? undefined : reach(source);
    const on = pins.filter((pin) => own!.has(netAt(circuit, part.name, pin)!));
    if (on.length === 0) return [];
    const terminals = on.map((pin) => terminalKey(part.name, pin));
    return [
      found(plan, entry, {
        parts: [part.name],
        terminals,
        message: `${listOf(terminals)} of the mains side ${on.length === 1 ? 'hangs' : 'hang'} on the low-voltage output of ${part.name}`,
        why: 'A mains terminal of a supply is for the mains alone. Once mains is brought to it, every gate switch and its wire is live.',
        fix: `Take what is of the loop off ${listOf(terminals)}.`,
        basis: entry.basis,
        twin: { name: part.name },
      }),
    ];
  });
}

const OUTPUT: ReadonlySet<string> = new Set(['+', '-', '~1', '~2']);

/** Mains terminals with a core on them; one that states an input of extra-low voltage has none. */
function mainsPins({ circuit, plan }: Study, { name, input }: SupplyPart): string[] {
  if (input !== undefined && !isMainsOutput(input)) return [];
  const marks = plan.terminals.get(name)?.names ?? [];
  return marks.filter((mark) => !OUTPUT.has(mark) && isLanded(circuit, name, mark));
}

/** The smallest state in which a mains rail is joined by contacts to a net of the loop. */
function whenMet(study: Study, met: readonly number[]): string {
  const { circuit, verified: v } = study;
  if (!v) return 'They are joined in some position of the contacts.';
  const { bdd } = v.model;
  const lowRails = circuit.sources.filter((s) => !s.mains).flatMap((s) => s.rails.map((r) => r.net));
  const at = (nets: readonly number[]) =>
    bdd.any(mainsSources(circuit).flatMap((s) => s.rails.map((_, rail) => pinReaches(v, s, rail, nets))));
  const f = at(lowRails) === FALSE ? at(met) : at(lowRails);
  const moved = everIn(v, f);
  if (moved) return `It happens with ${sayMoved(circuit, moved)}.`;
  const state = bdd.nearest(f, () => false);
  const relays = circuit.relays.filter((r) => state?.get(relayVariable(r.index))).map((r) => r.part);
  const inputs = circuit.inputs
    .filter((i) => state?.get(circuit.relays.length + i.index))
    .map((i) => i.index);
  const parts = [
    ...relays.map((r) => `${r} pulled in`),
    ...(inputs.length > 0 ? [sayMoved(circuit, inputs)] : []),
  ];
  return `It happens with ${parts.length > 0 ? parts.join(' and ') : 'everything at rest'}.`;
}
