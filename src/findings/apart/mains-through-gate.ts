import { isLow, isMains } from '../../circuit/sides.ts';
import { netAt } from '../../circuit/terminals.ts';
import type { Core } from '../../plan/plan.ts';
import { partOfKey, terminalKey } from '../../plan/terminal-key.ts';
import type { Study } from '../../study/study.ts';
import { theCore } from '../../text/core-names.ts';
import { listOf } from '../../text/word-list.ts';
import { type Check, extract, type FindingEntry } from '../entry.ts';
import { found } from '../finding.ts';
import type { Finding } from '../report-model.ts';
import { netsMet } from './side-crossing.ts';

const entry: FindingEntry = {
  id: 'mains-through-gate',
  title: 'mains in a gate switch, a small part or the cable of the loop',
  severity: 'danger',
  question: 1,
  base: 'dc-chain',
  meaning:
    'A gate switch, or the thin cable of the loop, carries the line of the motor. The switch sits in reach on a moving gate, its tabs are bare, and neither it nor the cable is made for that. The gate switch may only work the coil of a relay at low voltage. The same holds for a diode, a LED or a lamp of the loop that lies on a mains conductor: across the contact of a motor it passes half of every wave while all is off.',
  wrong: extract(
    '  - {cable: bell, length: 5 m, cores: {red: [K1.NO, router.COM], white: [router.NO, X1.L]}}',
  ),
  right: extract(
    '  - {cable: bell, length: 3 m, cores: {red: [planer.COM, router.COM], white: [planer.NO, router.NO]}}',
    '  - {cable: wire, length: 60 cm, cores: {black: [K1.NO, X1.L]}}',
  ),
  basis: 'NEC 725.136; IEC 60364-4-41 clause 414.4, IEC 60364-5-52 clause 528.1 (from memory)',
  followsFrom: [],
};

export const mainsThroughGate: Check = { entry, find };

/**
 * A tab of a gate switch or a small part, else a core of the loop's stock cable, lies in a path of the mains. Where the loop itself meets
 * mains it does so through them, and nothing is said here.
 */
function find(study: Study): Finding[] {
  if (netsMet(study.sides).length > 0) return [];
  const tabs = gateTabsOnMains(study);
  const small = smallPartsOnMains(study);
  if (tabs.length > 0 || small.length > 0)
    return [
      ...(tabs.length > 0 ? [throughGates(study, tabs)] : []),
      ...small.map((s) => throughPart(study, s)),
    ];
  return loopCoresOnMains(study).map((c) => throughCable(study, c));
}

/** V above which what a lamp or resistor is made for is mains and not the loop: extra-low voltage, IEC 61140 (from memory). */
const EXTRA_LOW = 60;

interface SmallPart {
  readonly name: string;
  readonly terminals: readonly string[];
  /** V that it is made for, where stated */
  readonly rated: number | undefined;
}

/** Diodes and LEDs, and lamps and resistors made for low voltage, with an end on a mains conductor. */
function smallPartsOnMains({ plan, circuit, sides }: Study): SmallPart[] {
  return [...plan.parts.values()].flatMap((part): SmallPart[] => {
    const isLowRated =
      (part.kind === 'lamp' || part.kind === 'resistor') &&
      part.rated !== undefined &&
      part.rated.volts <= EXTRA_LOW;
    if (part.kind !== 'diode' && part.kind !== 'led' && !isLowRated) return [];
    const terminals = (plan.terminals.get(part.name)?.names ?? [])
      .map((t) => terminalKey(part.name, t))
      .filter((key) => circuit.landed.has(key) && isMains(sides, circuit.netOf.get(key)));
    const rated = 'rated' in part ? part.rated?.volts : undefined;
    return terminals.length === 0 ? [] : [{ name: part.name, terminals, rated }];
  });
}

function throughPart({ plan }: Study, { name, terminals, rated }: SmallPart): Finding {
  const made = rated === undefined ? 'a part of the low-voltage loop' : `made for ${rated} V`;
  return found(plan, entry, {
    parts: [name],
    terminals,
    message: `mains reaches ${name}, which is ${made}`,
    why: `${terminals.join(' and ')} ${terminals.length > 1 ? 'lie' : 'lies'} on a mains conductor. ${rated === undefined ? 'Across a contact or a load it lets current by while all is off, and it may burn.' : 'It burns out at once and can start a fire.'}`,
    fix: `Take the mains conductors off ${name}, or ${name} off the mains.`,
    basis: 'NEC 725.136; IEC 60364-4-41 clause 414.4 (from memory); common practice',
  });
}

function gateTabsOnMains({ plan, circuit, sides }: Study): string[] {
  return [...plan.parts.values()]
    .filter((part) => part.kind === 'gate')
    .flatMap((part) => ['COM', 'NO', 'NC'].map((t) => terminalKey(part.name, t)))
    .filter((key) => circuit.landed.has(key) && isMains(sides, circuit.netOf.get(key)));
}

function throughGates({ plan }: Study, tabs: readonly string[]): Finding {
  const gates = [...new Set(tabs.map(partOfKey))];
  return found(plan, entry, {
    parts: gates,
    terminals: tabs,
    message: `mains runs through the gate switch${gates.length > 1 ? 'es' : ''} ${listOf(gates)}`,
    why: `${tabs[0]} is joined to a mains conductor. The switch, its wire and the gate can be touched.`,
    fix: `Take the mains conductors off ${listOf(gates)} and let the gate switches work the coil of a relay at low voltage.`,
    basis: 'NEC 725.136; IEC 60364-4-41 clause 414.4 (from memory); common practice',
  });
}

/** V of insulation from which a cable of the loop may carry mains. */
const MAINS_INSULATION = 300;
/** m² from which a single wire of unstated insulation may be panel wire for mains; bell wire comes in pairs. */
const PANEL_WIRE = 0.7e-6;

interface CableOnMains {
  readonly core: Core;
  readonly stock: string;
  /** V, as stated */
  readonly insulation: number | undefined;
  /** a wire of one core, as thick as those that panels are wired with */
  readonly single: boolean;
}

/** The first core on mains of every run of a cable that the loop is wired with elsewhere. */
function loopCoresOnMains({ plan, circuit, sides }: Study): CableOnMains[] {
  const netOf = (c: Core) => netAt(circuit, c.a.part, c.a.terminal);
  const ofLoop = new Set(
    plan.runs.filter((r) => r.cores.some((c) => isLow(sides, netOf(c)))).map((r) => r.cable?.stock),
  );
  return plan.runs.flatMap(({ cable, cores }) => {
    const { stock, insulation, cores: count = 0, area = 0 } = cable ?? {};
    if (stock === undefined || !ofLoop.has(stock) || (insulation ?? 0) >= MAINS_INSULATION) return [];
    const core = cores.find((c) => isMains(sides, netOf(c)));
    return core ? [{ core, stock, insulation, single: count === 1 && area >= PANEL_WIRE }] : [];
  });
}

function throughCable({ plan }: Study, { core, stock, insulation, single }: CableOnMains): Finding {
  return found(plan, entry, {
    parts: [core.a.part, core.b.part],
    terminals: [core.a.written, core.b.written],
    at: core.at,
    message: `${theCore(core)} of the loop cable "${stock}" carries mains from ${core.a.written} to ${core.b.written}`,
    why: `"${stock}" is the cable of the low-voltage loop${insulation === undefined ? '' : `, insulated for ${insulation} V`}.`,
    severity: insulation === undefined && single ? 'doubt' : 'danger',
    fix: 'Use cord or cable made for mains there.',
    basis: 'NEC 725.136; IEC 60364-5-52 clause 528.1 (from memory)',
    twin: { name: `that from ${core.a.written} to ${core.b.written}` },
  });
}
