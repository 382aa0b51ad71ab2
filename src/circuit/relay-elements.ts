/** Relays, timers and boards: what makes them pull in, and their contacts. */

import type { BoardPart, RelayPart, TimerPart } from '../plan/part-types.ts';
import type { Sense } from './circuit.ts';
import type { CircuitDraft } from './circuit-draft.ts';
import { coilThresholds, isContactor, SILICON_DROP } from './thresholds.ts';

export function addRelay(part: RelayPart, draft: CircuitDraft): void {
  addCoilDevice(part, draft, []);
}

/** The dry trigger of a timer counts where a run uses it. */
export function addTimer(part: TimerPart, draft: CircuitDraft): void {
  const triggered = draft.used(part, 'T1') || draft.used(part, 'T2');
  addCoilDevice(part, draft, triggered ? ['T1', 'T2'] : []);
}

function addCoilDevice(part: RelayPart | TimerPart, draft: CircuitDraft, trigger: readonly string[]): void {
  const limits = coilThresholds(part.coil, part.polarised, isContactor(part));
  const a = draft.net(part, 'A1');
  const b = draft.net(part, 'A2');
  const senses: Sense[] = [{ by: 'volts', a, b, ...limits, what: 'coil' }];
  const [t1, t2] = trigger.map((terminal) => draft.net(part, terminal));
  if (t1 !== undefined && t2 !== undefined) senses.push({ by: 'joined', a: t1, b: t2 });
  const relay = draft.relay(part, senses);
  draft.passive(part, 'coil', a, b);
  if (part.coil.suppressor === 'diode' && part.coil.rated.kind === 'dc')
    draft.diodes.push({
      anode: b,
      cathode: a,
      part: part.name,
      drop: SILICON_DROP,
      load: false,
      builtIn: true,
    });
  addPoles(part, draft, relay);
}

/** A board pulls in when its supply suffices and its input is at the level it wants. */
export function addBoard(part: BoardPart, draft: CircuitDraft): void {
  const [vcc, gnd, pin] = [draft.net(part, 'VCC'), draft.net(part, 'GND'), draft.net(part, 'IN')];
  const rated = part.supply.volts;
  const threshold = part.threshold ?? rated / 2;
  const { pullIn, dropOut } = part.coil
    ? coilThresholds(part.coil, true, isContactor(part))
    : { pullIn: 0.75 * rated, dropOut: 0.1 * rated };
  const needed = part.input === 'low' ? rated - threshold : threshold;
  const [from, to] = part.input === 'low' ? [vcc, pin] : [pin, gnd];
  const relay = draft.relay(part, [
    { by: 'volts', a: vcc, b: gnd, pullIn, dropOut, polarised: true, what: 'supply' },
    { by: 'volts', a: from, b: to, pullIn: needed, dropOut: needed, polarised: true, what: 'input' },
  ]);
  draft.passive(part, 'coil', vcc, gnd);
  draft.passive(part, 'input', from, to);
  addPoles(part, draft, relay);
}

function addPoles(part: RelayPart | TimerPart | BoardPart, draft: CircuitDraft, relay: number): void {
  for (const { common, make, break: rest, index } of part.poles) {
    if (make !== undefined) draft.contact(part, [common, make], { by: 'relay', relay, value: true }, index);
    if (rest !== undefined) draft.contact(part, [common, rest], { by: 'relay', relay, value: false }, index);
  }
}
