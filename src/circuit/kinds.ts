/** What each kind of part is electrically, one row each. */

import type { ByKind } from '../plan/by-kind.ts';
import type {
  DiodePart,
  FusePart,
  LedPart,
  LoadPart,
  MotorPart,
  OutletPart,
  ResistorPart,
} from '../plan/part-types.ts';
import type { CircuitDraft } from './circuit-draft.ts';
import { conductorNames } from './nets.ts';
import { addBoard, addRelay, addTimer } from './relay-elements.ts';
import { addBattery, addPlug, addSupply } from './source-elements.ts';
import { addCutout, addGate, addHandSwitch, addSelector } from './switch-elements.ts';
import { SILICON_DROP } from './thresholds.ts';

/** Adds to a circuit what a part of each kind puts into it. */
export const ELEMENTS: ByKind<[draft: CircuitDraft], void> = {
  supply: addSupply,
  battery: addBattery,
  gate: addGate,
  switch: addHandSwitch,
  button: addHandSwitch,
  cutout: addCutout,
  selector: addSelector,
  relay: addRelay,
  timer: addTimer,
  board: addBoard,
  diode: addDiode,
  led: addLed,
  resistor: addResistor,
  lamp: addResistor,
  fuse: addFuse,
  joint: addNothing,
  plug: addPlug,
  outlet: addConsumer,
  motor: addLoad,
  load: addLoad,
  box: addNothing,
};

function addDiode(part: DiodePart, draft: CircuitDraft): void {
  const [anode, cathode] = [draft.net(part, 'A'), draft.net(part, 'K')];
  draft.diodes.push({ anode, cathode, part: part.name, drop: SILICON_DROP, load: false, builtIn: false });
}

/** An indicator: 2 V and 20 mA where the plan says nothing else. */
function addLed(part: LedPart, draft: CircuitDraft): void {
  draft.diodes.push({
    anode: draft.net(part, 'A'),
    cathode: draft.net(part, 'K'),
    part: part.name,
    drop: part.forward ?? 2,
    load: true,
    builtIn: false,
    amps: part.current ?? 0.02,
  });
}

function addResistor(part: ResistorPart, draft: CircuitDraft): void {
  draft.passive(part, part.kind, draft.net(part, '1'), draft.net(part, '2'));
}

function addFuse(part: FusePart, draft: CircuitDraft): void {
  draft.contact(part, ['1', '2'], { by: 'always' });
}

function addConsumer(part: OutletPart | MotorPart | LoadPart, draft: CircuitDraft): number[] {
  const nets = new Map(conductorNames(part.feed).map((terminal) => [terminal, draft.net(part, terminal)]));
  const made = part.kind === 'outlet' ? undefined : part.volts;
  draft.consumers.push({
    part: part.name,
    kind: part.kind,
    nets,
    ...(made?.kind === 'dc' && { dc: true as const }),
    ...(made && { volts: made.volts }),
  });
  return [...nets.values()];
}

/** A load lies between each conductor and the next. */
function addLoad(part: MotorPart | LoadPart, draft: CircuitDraft): void {
  const nets = addConsumer(part, draft);
  for (let i = 1; i < nets.length; i++) draft.passive(part, 'load', nets[i - 1]!, nets[i]!);
}

/** A joint is a net, and a box only holds others. */
function addNothing(): void {}
