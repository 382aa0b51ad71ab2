/** Whether the setting of an overload relay fits the motors behind it, and which motors must have a protector. */
import type { Practice } from '../plan/device-figures.ts';
import type { MotorPart } from '../plan/part-types.ts';
import { horsepowerOf, phasesOf } from './horsepower.ts';
import { SLACK } from './judgement.ts';
import * as tables from './table-files.ts';
import type { OverloadRow } from './table-rows.ts';
import { branchRule } from './tables.ts';

const row = (name: OverloadRow['name']): OverloadRow =>
  tables.overloadSettings().rows.find((r) => r.name === name)!;

export interface SettingBounds {
  /** A; a smaller setting may trip at full load */
  readonly least: number;
  /** A; a greater setting does not protect */
  readonly most: number;
  /** A up to which it depends on a service factor that is not stated; as `most` where nothing does */
  readonly perhaps: number;
  readonly basis: string;
}

/** The plate of one motor: its current in A, and its service factor where that is stated. */
export interface Plate {
  readonly amps: number;
  readonly serviceFactor?: number;
}

/** Settings, in A, that fit motors whose currents one overload relay sees together. */
export function settingBounds(plates: readonly Plate[], practice: Practice): SettingBounds {
  const sum = plates.reduce((amps, p) => amps + p.amps, 0);
  if (practice === 'iec') {
    const [least, most] = [row('iec-least'), row('iec-most')];
    const basis = 'IEC 60204-1:2016 clause 7.3, IEC 60947-4-1 (from memory)';
    return { least: least.value * sum, most: most.value * sum, perhaps: most.value * sum, basis };
  }
  const marked = branchRule('overload').value;
  const other = branchRule('overload-other').value;
  const upTo = (unsaid: number) =>
    plates.reduce((amps, { amps: a, serviceFactor: s }) => {
      const factor = s === undefined ? unsaid : s * SLACK >= row('service-factor').value ? marked : other;
      return amps + factor * a;
    }, 0);
  const basis = 'NEC 430.32(A)(1), 430.6(A)(2), 2023 edition (read)';
  return { least: row('nec-least').value * sum, most: upTo(other), perhaps: upTo(marked), basis };
}

export type SettingVerdict = 'fits' | 'too-high' | 'perhaps-too-high' | 'too-low';

/** `setting` in A. */
export function judgeSetting(setting: number, bounds: SettingBounds): SettingVerdict {
  if (setting * SLACK < bounds.least) return 'too-low';
  if (setting > bounds.perhaps * SLACK) return 'too-high';
  return setting > bounds.most * SLACK ? 'perhaps-too-high' : 'fits';
}

/**
 * The rule that asks for an overload protector in this motor, in words with its clause; undefined where none does. `starts`:
 * it is started with nobody beside it. A power that is not stated counts as what volts times amperes could give.
 */
export function protectorRule(motor: MotorPart, practice: Practice, starts: boolean): string | undefined {
  const horsepower = horsepowerOf(motor);
  if (practice === 'nec') {
    const limit = row('nec-automatic-horsepower');
    if (horsepower !== undefined && horsepower > limit.value * SLACK)
      return `it has more than ${limit.value} hp (NEC 430.32(A))`;
    return starts ? 'it starts by itself (NEC 430.32(B))' : undefined;
  }
  const limit = row('iec-kilowatts');
  const kilowatts = kilowattsAtMost(motor, horsepower);
  if (kilowatts === undefined || kilowatts <= limit.value * SLACK) return undefined;
  return `it has more than ${limit.value} kW (${limit.clause})`;
}

/** kW at the shaft, or the kVA that volts and amperes give where the power is not stated. */
function kilowattsAtMost(motor: MotorPart, horsepower: number | undefined): number | undefined {
  if (horsepower !== undefined && motor.power !== undefined) return motor.power.watts / 1000;
  if (motor.amps === undefined) return undefined;
  return (motor.volts.volts * motor.amps * (phasesOf(motor) === 3 ? Math.sqrt(3) : 1)) / 1000;
}
