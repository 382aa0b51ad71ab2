/** Fields of the parts on the mains side and of the box. Each schema is built when its kind is first met. */
import * as z from 'zod';
import * as q from './quantity.ts';
import { define } from './quantity-reader.ts';
import { common } from './schema-control.ts';
import { choice, figure, flag, list, number, once, quantity, text } from './schema-fields.ts';

const kind = <const K extends string>(name: K, description: string) => z.literal(name).describe(description);

/** Code letters of NEMA MG 1 for locked-rotor kVA per horsepower: A to V without I, O and Q. */
const codeLetter = define('a code letter', [], ['K', 'G'], (reader) => {
  const letter = reader.word().toUpperCase();
  return /^[A-HJ-NPR-V]$/.test(letter) ? letter : undefined;
});

const feed = () => ({
  phases: figure([1, 3], 'Number of phases; 3 gives the terminals L1 L2 L3.').optional(),
  legs: figure([1, 2], 'Number of live legs; 2 gives the terminals L1 L2.').optional(),
});
const pattern = () =>
  text(
    'Pattern of the plug or outlet, such as NEMA 5-20, CEE 7/4, BS 1363, IEC 60309 16 A blue 2P+E; fixed when hard-wired.',
  );

export const plug = once(() =>
  z.strictObject({
    kind: kind(
      'plug',
      'The plug or hard-wired supply that feeds the plan. Terminals L N PE, L1 L2 PE N or L1 L2 L3 PE N.',
    ),
    volts: quantity(q.mainsVolts, 'Mains voltage; between the legs or phases where there are several.'),
    pattern: pattern().optional(),
    breaker: quantity(
      q.breaker,
      'The breaker or fuse of its circuit, with the curve letter if it has one.',
    ).optional(),
    frequency: quantity(q.hertz, 'Mains frequency.').optional(),
    fuse: quantity(q.amps, 'The fuse in the plug.').optional(),
    ...feed(),
    ...common(),
  }),
);
export const outlet = once(() =>
  z.strictObject({
    kind: kind('outlet', 'An outlet. Terminals as a plug; takes after what feeds it.'),
    pattern: pattern().optional(),
    ...feed(),
    ...common(),
  }),
);

const consumer = () => ({
  power: quantity(q.motorPower, 'Rated power; power or amps is needed.').optional(),
  amps: quantity(q.amps, 'Current on the nameplate; power or amps is needed.').optional(),
  class: choice(['I', 'II'], 'II: double-insulated, needs no PE.').optional(),
  'plugged-into': text('The outlet it is plugged into; instead of runs of its own.').optional(),
  ...feed(),
  ...common(),
});
export const motor = once(() =>
  z.strictObject({
    kind: kind('motor', 'A motor. Terminals as a plug, or plugged-into an outlet.'),
    volts: quantity(q.mainsVolts, 'Rated voltage.'),
    ...consumer(),
    'locked-rotor': quantity(q.amps, 'Current at standstill.').optional(),
    code: quantity(codeLetter, 'Code letter on the nameplate (NEMA MG 1), A to V.').optional(),
    type: choice(
      ['capacitor-start', 'split-phase', 'permanent-split', 'universal', 'three-phase'],
      'How the motor is made.',
    ).optional(),
    protector: choice(
      ['none', 'manual', 'automatic'],
      'Overload protector in the motor, by how it resets.',
    ).optional(),
    'starts-per-hour': number(q.startsPerHour, 'Starts in an hour at the busiest.').optional(),
    efficiency: quantity(q.share, 'Efficiency at full load.').optional(),
    'power-factor': number(q.ratio, 'Power factor at full load, 0 to 1.').optional(),
  }),
);
export const load = once(() =>
  z.strictObject({
    kind: kind('load', 'Any other mains load. Terminals as a plug, or plugged-into an outlet.'),
    volts: quantity(q.mainsVolts, 'Rated voltage; default that of the plug.').optional(),
    ...consumer(),
    type: choice(
      ['lamp', 'heater', 'transformer', 'electronic'],
      'What it is; decides its starting current.',
    ).optional(),
  }),
);
export const box = once(() =>
  z.strictObject({
    kind: kind('box', 'One enclosure. Terminal PE where it is metal.'),
    holds: list(text('A part.'), 'The parts inside.').optional(),
    volume: quantity(q.cubicMetres, 'Inside volume.').optional(),
    metal: flag('true when it is metal and must be earthed.').optional(),
    divider: flag('true when a barrier parts mains from low voltage.').optional(),
    enclosure: text('Degree of protection as printed, such as IP54 or NEMA 12.').optional(),
    ...common(),
  }),
);
