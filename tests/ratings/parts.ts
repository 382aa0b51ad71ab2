/** Small builders of plan parts for these tests. */

import type { Coil, Contact } from '../../src/plan/device-figures.ts';
import type { BatteryPart, LoadPart, MotorPart, PlugPart, SupplyPart } from '../../src/plan/part-types.ts';

const base = (name: string) => ({ name, at: { line: 1, column: 1 }, where: new Map() });

export const hp = (horsepower: number) => ({ watts: horsepower * 745.7, unit: 'hp' as const, horsepower });
export const watts = (value: number) => ({ watts: value, unit: 'W' as const });
export const ac = (volts: number) => ({ volts, kind: 'ac' as const });
export const dc = (volts: number) => ({ volts, kind: 'dc' as const });

export function motor(fields: Partial<MotorPart> = {}): MotorPart {
  return {
    ...base('collector'),
    kind: 'motor',
    feed: 'single',
    volts: ac(120),
    class2Insulated: false,
    ...fields,
  };
}
export function load(fields: Partial<LoadPart> = {}): LoadPart {
  return {
    ...base('lights'),
    kind: 'load',
    feed: 'single',
    volts: ac(120),
    class2Insulated: false,
    ...fields,
  };
}
export function plug(fields: Partial<PlugPart> = {}): PlugPart {
  return { ...base('P1'), kind: 'plug', feed: 'single', volts: ac(120), ...fields };
}
export function supply(fields: Partial<SupplyPart> = {}): SupplyPart {
  return {
    ...base('PS1'),
    kind: 'supply',
    output: dc(12),
    limit: { amps: 1, printed: 'A', value: 1 },
    ...fields,
  };
}
export function battery(fields: Partial<BatteryPart> = {}): BatteryPart {
  return { ...base('BAT'), kind: 'battery', output: dc(9), ...fields };
}
export function contact(fields: Partial<Contact> = {}): Contact {
  return { ratings: [], motor: [], ...fields };
}
export function rating(amps: number, volts: number, kind: 'ac' | 'dc' = 'ac') {
  return { amps, volts, kind };
}
export function motorRating(horsepower: number, volts: number, phases: 1 | 3 = 1) {
  return { watts: horsepower * 745.7, horsepower, volts, kind: 'ac' as const, phases };
}
export const coil = (fields: Partial<Coil> & Pick<Coil, 'rated'>): Coil => fields;
