/** From validated fields to the parts the rest of the program works with. */
import { keep } from './keep.ts';
import type { Coil, Contact, Feed, Part, Pole, Position, Volts } from './plan.ts';
import type { AnyFields, Fields } from './schema.ts';
import { poleNames } from './terminals.ts';

type CoilFields = Fields['relay']['coil'];
type ContactFields = NonNullable<Fields['relay']['contact']>;

export interface Base {
  readonly name: string;
  readonly at: Position;
  readonly where: ReadonlyMap<string, Position>;
}

function buildContact(fields: ContactFields | undefined): Contact {
  if (fields === undefined) return { ratings: [], motor: [] };
  return keep({
    ratings: fields.ratings ?? [],
    motor: fields.motor ?? [],
    ac3: fields['ac-3'],
    pilot: fields.pilot,
    ac15: fields['ac-15'],
    dc13: fields['dc-13'],
    lockedRotor: fields['locked-rotor'],
    make: fields.make,
    resistance: fields.resistance,
    least: fields.least,
    metal: fields.metal,
  });
}

function buildCoil(fields: CoilFields): Coil {
  return keep({
    rated: { volts: fields.rated.volts, kind: fields.rated.kind },
    frequency: fields.frequency ?? fields.rated.frequency,
    resistance: fields.resistance,
    current: fields.current,
    power: fields.power,
    powerFactor: fields['power-factor'],
    inrushPowerFactor: fields['inrush-power-factor'],
    pullIn: fields['pull-in'],
    dropOut: fields['drop-out'],
    most: fields.most,
    inrush: fields.inrush,
    hotRise: fields['hot-rise'],
    suppressor: fields.suppressor,
    tolerance: fields.tolerance,
  });
}

function buildPoles(fields: Fields['relay'] | Fields['timer']): Pole[] {
  const { names } = poleNames(fields.poles, fields.kind === 'timer');
  return names.map((pole, index) => {
    const own = fields.poles?.[index]?.contact;
    return {
      index: index + 1,
      ...pole,
      contact: buildContact(own === undefined ? fields.contact : { ...fields.contact, ...own }),
    };
  });
}

function buildLimit(limit: Fields['supply']['limit'], output: Volts) {
  return { amps: limit.printed === 'A' ? limit.value : limit.value / output.volts, ...limit };
}

const switchLike = (fields: Fields['gate'] | Fields['switch'] | Fields['button'] | Fields['cutout']) => ({
  contact: buildContact(fields.contact),
  tabs: fields.terminals ?? (['COM', 'NO', 'NC'] as const),
});

const coilDevice = (fields: Fields['relay'] | Fields['timer']) => ({
  coil: buildCoil(fields.coil),
  poles: buildPoles(fields),
  technology: fields.technology ?? ('contact' as const),
  polarised: fields.polarised,
  off_leakage: fields['off-leakage'],
  isolation: fields.isolation,
  listed: fields.listed,
});

const mains = (fields: Fields['plug'] | Fields['outlet'] | Fields['motor'] | Fields['load'], feed: Feed) => ({
  feed,
  phases: fields.phases,
  legs: fields.legs,
});

const consumer = (fields: Fields['motor'] | Fields['load']) => ({
  power: fields.power,
  amps: fields.amps,
  class2Insulated: fields.class === 'II',
  pluggedInto: fields['plugged-into'],
});

/** `volts` of a load that gives none comes from what feeds it. */
export function buildPart(fields: AnyFields, named: Base, feed: Feed, fedVolts: Volts): Part {
  const base = { ...named, price: fields.price };
  switch (fields.kind) {
    case 'supply': {
      const { volts, kind } = fields.output;
      return keep({
        ...base,
        kind: fields.kind,
        output: { volts, kind },
        frequency: fields.frequency ?? fields.output.frequency,
        limit: buildLimit(fields.limit, fields.output),
        regulation: fields.regulation,
        tolerance: fields.tolerance,
        noLoad: fields['no-load'],
        class2: fields['class-2'],
        fedFrom: fields['fed-from'],
      });
    }
    case 'battery':
      return keep({
        ...base,
        kind: fields.kind,
        output: fields.output,
        capacity: fields.capacity,
        internalResistance: fields['internal-resistance'],
        lowest: fields.lowest,
        highest: fields.highest,
      });
    case 'gate':
      return keep({
        ...base,
        kind: fields.kind,
        pressedWhen: fields['pressed-when'] ?? 'open',
        ...switchLike(fields),
      });
    case 'switch':
    case 'button':
    case 'cutout':
      return keep({ ...base, kind: fields.kind, ...switchLike(fields) });
    case 'selector': {
      const rest = fields.rest ?? fields.positions[0]!;
      return keep({
        ...base,
        kind: fields.kind,
        positions: fields.positions,
        rest,
        contact: buildContact(fields.contact),
      });
    }
    case 'relay':
      return keep({ ...base, kind: fields.kind, ...coilDevice(fields) });
    case 'timer':
      return keep({
        ...base,
        kind: fields.kind,
        ...coilDevice(fields),
        function: fields.function,
        time: fields.time,
      });
    case 'board':
      return keep({
        ...base,
        kind: fields.kind,
        supply: fields.supply,
        input: fields.input,
        inputCurrent: fields['input-current'],
        threshold: fields.threshold,
        coil: fields.coil === undefined ? undefined : buildCoil(fields.coil),
        poles: [{ index: 1, common: 'COM', make: 'NO', break: 'NC', contact: buildContact(fields.contact) }],
        technology: fields.technology ?? ('contact' as const),
        isolation: fields.isolation,
        listed: fields.listed,
      });
    case 'diode':
      return keep({
        ...base,
        kind: fields.kind,
        current: fields.current,
        reverse: fields.reverse,
        zener: fields.zener,
      });
    case 'resistor':
    case 'lamp':
      return keep({ ...base, kind: fields.kind, resistance: fields.resistance, rated: fields.rated });
    case 'led':
      return keep({ ...base, kind: fields.kind, forward: fields.forward, current: fields.current });
    case 'fuse':
      return keep({ ...base, kind: fields.kind, rating: fields.rating });
    case 'joint':
      return keep({ ...base, kind: fields.kind });
    case 'plug':
      return keep({
        ...base,
        kind: fields.kind,
        volts: fields.volts,
        pattern: fields.pattern,
        breaker: fields.breaker?.amps,
        curve: fields.breaker?.curve,
        frequency: fields.frequency,
        fuse: fields.fuse,
        ...mains(fields, feed),
      });
    case 'outlet':
      return keep({ ...base, kind: fields.kind, pattern: fields.pattern, ...mains(fields, feed) });
    case 'motor':
      return keep({
        ...base,
        kind: fields.kind,
        volts: fields.volts,
        ...consumer(fields),
        lockedRotor: fields['locked-rotor'],
        code: fields.code,
        type: fields.type,
        protector: fields.protector,
        startsPerHour: fields['starts-per-hour'],
        efficiency: fields.efficiency,
        powerFactor: fields['power-factor'],
        ...mains(fields, feed),
      });
    case 'load':
      return keep({
        ...base,
        kind: fields.kind,
        volts: fields.volts ?? fedVolts,
        ...consumer(fields),
        type: fields.type,
        ...mains(fields, feed),
      });
    case 'box':
      return keep({
        ...base,
        kind: fields.kind,
        holds: fields.holds ?? [],
        volume: fields.volume,
        metal: fields.metal ?? false,
        divider: fields.divider,
        enclosure: fields.enclosure,
      });
  }
}
