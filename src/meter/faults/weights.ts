/** How likely one failure is beside another: rough, for the order of suspects and nothing else. */

import { isMains } from '../../circuit/sides.ts';
import type { Part, PartKind } from '../../plan/part-types.ts';
import { splitTerminalKey } from '../../plan/terminal-key.ts';
import * as tables from '../../ratings/table-files.ts';
import type { Study } from '../../study/study.ts';
import type { Fault } from '../fault.ts';
import type { FailureMode } from './modes.ts';

/** The sort of thing that fails, as the tables of failures name it. */
type Component = string;

/** Percent for a way to fail that no table gives a share of. */
const LEAST_SHARE = 1;
/** Times as likely a mistake in the wiring is where the circuit never worked; common practice, no source. */
const NEVER_WORKED = 30;

/** The contacts of each kind of part. */
const CONTACTS: { readonly [K in PartKind]?: Component } = {
  gate: 'gate switch',
  switch: 'hand switch',
  selector: 'hand switch',
  button: 'hand switch',
  cutout: 'cut-out',
};

/** Whichever part it is of. */
const BY_MODE: { readonly [M in FailureMode]?: Component } = {
  'core-open': 'core',
  'cores-touch': 'core',
  'wrong-terminal': 'wiring',
  'changed-over': 'wiring',
  'wrong-way-round': 'wiring',
  'meets-mains': 'insulation',
  'meets-earth': 'insulation',
  'lever-not-reached': 'gate mechanics',
  'blade-not-home': 'gate mechanics',
  'coil-open': 'coil',
  'coil-shorted': 'coil',
  'coil-part-shorted': 'coil',
  'diode-open': 'diode',
  'diode-shorted': 'diode',
  reversed: 'diode',
  mistimed: 'timer',
  'feed-dead': 'mains feed',
  unplugged: 'mains feed',
  tripped: 'cut-out',
  blown: 'fuse',
  'does-not-turn': 'motor',
};

/** The weight of each fault of a plan; `worked` where the circuit has worked as it is wired now. */
export function weigh({ plan, circuit, sides }: Study, worked: boolean): (fault: Fault) => number {
  const share = new Map(
    tables.failureShares().rows.map((r) => [`${r.component} ${r.mode}`, (r.low + r.high) / 2]),
  );
  const weight = new Map(tables.failureWeights().rows.map((r) => [r.component, r.weight]));
  const onMains = (key: string) => isMains(sides, circuit.netOf.get(key));
  return (fault) => {
    const of = componentOf(
      plan.parts.get(fault.parts[0]!),
      fault,
      onMains,
      (name) => plan.parts.get(name)?.kind === 'joint',
    );
    const often = (weight.get(of) ?? 1) * (of === 'wiring' && !worked ? NEVER_WORKED : 1);
    return (often * (share.get(`${of} ${fault.mode}`) ?? LEAST_SHARE) * likelyOf(plan.parts, fault)) / 100;
  };
}

/** As the plan weighs it: by the first of its parts that does. */
function likelyOf(parts: ReadonlyMap<string, Part>, { mode, parts: own }: Fault): number {
  if (mode === 'lead-left') return 1;
  for (const name of own) {
    const times = parts.get(name)?.likely?.[mode];
    if (times !== undefined) return times;
  }
  return 1;
}

function componentOf(
  part: Part | undefined,
  fault: Fault,
  onMains: (key: string) => boolean,
  isJoint: (part: string) => boolean,
): Component {
  const { mode } = fault;
  const own = BY_MODE[mode];
  if (own !== undefined) return own;
  if (mode === 'tab-loose') return 'terminal';
  if (mode === 'core-poor')
    return fault.at.some((key) => isJoint(splitTerminalKey(key).part)) ? 'splice' : 'terminal';
  if (part === undefined) return 'core';
  if (mode === 'dark') return part.kind === 'resistor' ? 'resistor' : 'indicator';
  if (part.kind === 'battery') return 'battery';
  if (part.kind === 'supply') return part.output.kind === 'ac' ? 'transformer' : 'adapter';
  if (mode === 'stays-in' || mode === 'stays-out')
    return part.kind === 'timer' ? 'timer' : part.kind === 'board' ? 'relay board' : 'relay';
  const contacts = CONTACTS[part.kind];
  if (contacts !== undefined) return contacts;
  if ('technology' in part && part.technology === 'solid-state') return 'solid-state output';
  return fault.at.some(onMains) ? 'power contact' : 'signal contact';
}
