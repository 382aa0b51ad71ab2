/** Relays, timers and boards: what makes them pull in, and their contacts. */

import type { BoardPart, RelayPart, TimerPart } from '../plan/part-types.ts';
import type { Sense } from './circuit.ts';
import type { CircuitDraft } from './circuit-draft.ts';
import { coilThresholds, isContactor, isElectronic, SILICON_DROP } from './thresholds.ts';

export function addRelay(part: RelayPart, draft: CircuitDraft): void {
  const relay = draft.relay(part, [addCoil(part, draft, 'A1', 'A2', 'coil')]);
  if (part.bistable === 'toggle') draft.latch(relay, 'cam');
  if (part.bistable === 'set-reset') draft.latch(relay, 'reset', [addCoil(part, draft, 'B1', 'B2', 'coil')]);
  addPoles(part, draft, relay);
}

/** The dry trigger of a timer counts where a run uses it, or where the timer is said to work from a permanent supply. */
export function addTimer(part: TimerPart, draft: CircuitDraft): void {
  const dry = part.supplied === 'permanent' || draft.used(part, 'T1') || draft.used(part, 'T2');
  const supply = addCoil(part, draft, 'A1', 'A2', dry ? 'supply' : 'coil');
  const trigger: Sense[] = dry ? [{ by: 'joined', a: draft.net(part, 'T1'), b: draft.net(part, 'T2') }] : [];
  const on = part.function === 'on-delay' ? ('in' as const) : ('out' as const);
  // Where none is stated it is asked for, and the plan is read with a long one besides.
  const delay = { on, seconds: part.time ?? 0, stored: !dry };
  addPoles(part, draft, draft.relay(part, [supply, ...trigger], { delay }));
}

/** A coil between two terminals, with what is built in across it; returns what it senses. */
function addCoil(
  part: RelayPart | TimerPart,
  draft: CircuitDraft,
  first: string,
  second: string,
  what: 'coil' | 'supply',
): Sense {
  const limits = coilThresholds(part.coil, part.polarised, {
    contactor: isContactor(part),
    electronic: isElectronic(part),
  });
  const [a, b] = [draft.net(part, first), draft.net(part, second)];
  draft.passive(part, 'coil', a, b);
  if (part.coil.suppressor === 'diode' && part.coil.rated.kind === 'dc' && part.coil.either !== true)
    draft.diodes.push({
      anode: b,
      cathode: a,
      part: part.name,
      drop: SILICON_DROP,
      load: false,
      builtIn: true,
    });
  return { by: 'volts', a, b, ...limits, what };
}

/** A board pulls in when its supply suffices and its input is at the level it wants. */
export function addBoard(part: BoardPart, draft: CircuitDraft): void {
  const [vcc, gnd, pin] = [draft.net(part, 'VCC'), draft.net(part, 'GND'), draft.net(part, 'IN')];
  const rated = part.supply.volts;
  const threshold = part.threshold ?? rated / 2;
  const { pullIn, dropOut } = part.coil
    ? coilThresholds(part.coil, true, { contactor: isContactor(part), electronic: false })
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
