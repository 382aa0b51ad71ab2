/** What a motor or another mains load draws, running and at the moment it is switched on. */

import type { Practice } from '../plan/device-figures.ts';
import type { LoadPart, MotorPart } from '../plan/part-types.ts';
import { defaults } from './defaults.ts';
import { horsepowerOf, phasesOf, printsInput } from './horsepower.ts';
import * as tables from './table-files.ts';
import type { MotorColumn, MotorRow, Table, TableStatus } from './table-rows.ts';
import { cellStatus } from './tables.ts';
import { motorColumn } from './voltage-class.ts';

/** stated: printed on the machine or typed in the plan; estimate: worked out from assumed figures. */
export type FigureStatus = TableStatus | 'stated' | 'estimate';

/** A current and where it comes from. */
export interface Figure {
  /** A; the upper end where the source gives a range */
  readonly amps: number;
  /** A; the lower end where the source gives a range */
  readonly least?: number;
  /** true where the real figure may be higher than `amps` by an unknown amount */
  readonly atLeast?: boolean;
  /** true for a rule-of-thumb range: between `least` and `amps` it decides nothing */
  readonly rough?: boolean;
  /** plain words with the standard and clause */
  readonly basis: string;
  readonly status: FigureStatus;
}

export interface LoadCurrents {
  readonly running?: Figure;
  readonly starting?: Figure;
  /** the NEC table figure for the horsepower, beside a nameplate current or in place of one */
  readonly tableRunning?: Figure;
}

/** A printed 0.33 or 1.1 kW is the 1/3 or 1-1/2 hp row; anything further goes to the next row up. */
const ROW_SLACK = 1.02;

/** V·A of one ampere: the voltage, times √3 on three phases. */
function voltsPerAmp(load: MotorPart | LoadPart): number {
  return load.volts.volts * (phasesOf(load) === 3 ? Math.sqrt(3) : 1);
}

/** Row of a motor table for a horsepower: the row itself or the next one up; undefined past its end. */
function motorRow(table: Table<MotorRow>, horsepower: number): MotorRow | undefined {
  return table.rows.find((row) => row.horsepower * ROW_SLACK >= horsepower);
}

function fromTable(
  table: Table<MotorRow>,
  horsepower: number,
  column: MotorColumn | undefined,
): Figure | undefined {
  if (column === undefined) return undefined;
  const row = motorRow(table, horsepower);
  const amps = row?.[column];
  if (row === undefined || amps === null || amps === undefined) return undefined;
  return {
    amps,
    basis: `NEC ${table.clause}, ${row.label} hp at ${column.slice(1)} V`,
    status: cellStatus(table, row, column),
  };
}

/** NEC full-load current, Tables 430.248 and 430.250. */
export function tableFullLoad(horsepower: number, volts: number, phases: 1 | 3): Figure | undefined {
  return fromTable(
    phases === 3 ? tables.motorFlcThree() : tables.motorFlcSingle(),
    horsepower,
    motorColumn(volts),
  );
}

/** NEC locked-rotor current, Tables 430.251(A) and (B); none below 1/2 hp, where six times full load serves. */
export function tableLockedRotor(horsepower: number, volts: number, phases: 1 | 3): Figure | undefined {
  const table = phases === 3 ? tables.lockedRotorThree() : tables.lockedRotorSingle();
  if (horsepower * ROW_SLACK < table.rows[0]!.horsepower) return undefined;
  return fromTable(table, horsepower, motorColumn(volts));
}

/** Locked-rotor current from the code letter: kVA/hp × hp × 1000 / V, over √3 on three phases. */
export function codeLetterCurrent(
  code: string,
  horsepower: number,
  voltsTimesRoot: number,
): Figure | undefined {
  const table = tables.codeLetters();
  const row = table.rows.find((r) => r.letter === code.trim().toUpperCase());
  if (row === undefined || voltsTimesRoot <= 0) return undefined;
  const amps = (kva: number): number => (kva * horsepower * 1000) / voltsTimesRoot;
  const basis = `code letter ${row.letter}, NEC ${table.clause}`;
  if (row.high === null)
    return {
      amps: amps(row.low),
      atLeast: true,
      basis: `${basis}, at least ${row.low} kVA per hp`,
      status: row.status,
    };
  return {
    amps: amps(row.high),
    least: amps(row.low),
    basis: `${basis}, ${row.high} kVA per hp`,
    status: row.status,
  };
}

/** Range of the switch-on current of a kind of load. */
function inrush(kind: string, running: Figure, what: string): Figure {
  const row = tables.inrush().rows.find((r) => r.load === kind)!;
  return {
    amps: row.high * running.amps,
    ...(row.low < row.high && { least: row.low * running.amps, rough: true }),
    ...(running.atLeast === true && { atLeast: true }),
    basis: `${row.high} times running, the usual figure for ${what}`,
    status: row.status,
  };
}

/**
 * Running and starting current of a motor or load. A field is left out where the plan says too little.
 * Running: nameplate, else the NEC table (nec) or output over volts, efficiency and power factor (iec).
 * Starting: locked-rotor current, else the code letter's upper end, else the NEC locked-rotor tables
 * (nec), else six times running.
 */
export function motorCurrents(load: MotorPart | LoadPart, practice: Practice): LoadCurrents {
  return load.kind === 'motor' ? currentsOfMotor(load, practice) : currentsOfLoad(load);
}

function currentsOfMotor(motor: MotorPart, practice: Practice): LoadCurrents {
  const horsepower = horsepowerOf(motor);
  const phases = phasesOf(motor);
  const onTable = practice === 'nec' && motor.volts.kind === 'ac' && horsepower !== undefined;
  const tableRunning = onTable ? tableFullLoad(horsepower, motor.volts.volts, phases) : undefined;
  const flc = phases === 3 ? tables.motorFlcThree() : tables.motorFlcSingle();
  const beyond = onTable ? estimatedBeyond(estimated(motor), flc, motor.volts.volts) : estimated(motor);
  const running = nameplate(motor) ?? tableRunning ?? beyond;
  const starting = startOfMotor(motor, practice, horsepower, running, tableRunning);
  return {
    ...(running !== undefined && { running }),
    ...(starting !== undefined && { starting }),
    ...(tableRunning !== undefined && { tableRunning }),
  };
}

/** A column that ends before this motor still says what a smaller one takes; an estimate never falls below that. */
function estimatedBeyond(
  estimate: Figure | undefined,
  table: Table<MotorRow>,
  volts: number,
): Figure | undefined {
  const column = motorColumn(volts);
  if (estimate === undefined || column === undefined) return estimate;
  const last = Math.max(0, ...table.rows.map((row) => row[column] ?? 0));
  if (estimate.amps >= last) return estimate;
  return { ...estimate, amps: last, basis: `no less than the last figure of NEC ${table.clause}` };
}

function nameplate(load: MotorPart | LoadPart): Figure | undefined {
  return load.amps === undefined ? undefined : { amps: load.amps, basis: 'nameplate', status: 'stated' };
}

/** Running current from power where no nameplate current and no table serves. */
function estimated(motor: MotorPart): Figure | undefined {
  const perAmp = voltsPerAmp(motor);
  if (motor.power === undefined || perAmp <= 0) return undefined;
  if (printsInput(motor))
    return { amps: motor.power.watts / perAmp, basis: 'input power over volts', status: 'estimate' };
  if (motor.volts.kind === 'dc') return undefined;
  const three = phasesOf(motor) === 3;
  const efficiency =
    motor.efficiency ?? defaults[three ? 'efficiencyThreePhase' : 'efficiencySinglePhase'].value;
  const powerFactor =
    motor.powerFactor ?? defaults[three ? 'powerFactorThreePhase' : 'powerFactorSinglePhase'].value;
  const assumed = motor.efficiency === undefined || motor.powerFactor === undefined;
  return {
    amps: motor.power.watts / (perAmp * efficiency * powerFactor),
    basis: `output over volts, efficiency ${efficiency} and power factor ${powerFactor}${assumed ? ', an estimate' : ''}`,
    status: 'estimate',
  };
}

function startOfMotor(
  motor: MotorPart,
  practice: Practice,
  horsepower: number | undefined,
  running: Figure | undefined,
  tableRunning: Figure | undefined,
): Figure | undefined {
  if (motor.lockedRotor !== undefined)
    return { amps: motor.lockedRotor, basis: 'locked-rotor current on the nameplate', status: 'stated' };
  if (motor.code !== undefined && horsepower !== undefined && motor.volts.kind === 'ac') {
    const coded = codeLetterCurrent(motor.code, horsepower, voltsPerAmp(motor));
    if (coded !== undefined) return coded;
  }
  // a brush motor has no locked rotor in the sense of the tables
  if (motor.type === 'universal' || motor.volts.kind === 'dc')
    return running === undefined ? undefined : inrush('motor', running, 'a brush motor');
  if (practice === 'nec' && horsepower !== undefined) {
    const locked = tableLockedRotor(horsepower, motor.volts.volts, phasesOf(motor));
    if (locked !== undefined) return locked;
  }
  const base =
    tableRunning !== undefined && tableRunning.amps > (running?.amps ?? 0) ? tableRunning : running;
  if (base === undefined) return undefined;
  const times = defaults.motorStart.value;
  const start: Figure = {
    amps: times * base.amps,
    basis: `${times} times running (${base.basis})`,
    status: 'estimate',
  };
  if (practice !== 'nec' || horsepower === undefined) return start;
  const table = phasesOf(motor) === 3 ? tables.lockedRotorThree() : tables.lockedRotorSingle();
  const small = horsepower * ROW_SLACK < table.rows[0]!.horsepower;
  return small ? start : estimatedBeyond(start, table, motor.volts.volts);
}

function currentsOfLoad(load: LoadPart): LoadCurrents {
  const running = nameplate(load) ?? loadFromPower(load);
  if (running === undefined) return {};
  const starting = startOfLoad(load, running);
  return { running, ...(starting !== undefined && { starting }) };
}

/** Watts of a load that is not plainly resistive give the least current it can draw. */
function loadFromPower(load: LoadPart): Figure | undefined {
  const perAmp = voltsPerAmp(load);
  if (load.power === undefined || perAmp <= 0) return undefined;
  const amps = load.power.watts / perAmp;
  const sure =
    load.power.unit === 'VA' || load.type === 'heater' || load.type === 'lamp' || load.volts.kind === 'dc';
  if (sure && load.power.unit !== 'hp') return { amps, basis: 'power over volts', status: 'stated' };
  return {
    amps,
    atLeast: true,
    basis: 'power over volts, at least: power factor not stated',
    status: 'estimate',
  };
}

function startOfLoad(load: LoadPart, running: Figure): Figure | undefined {
  switch (load.type) {
    case 'heater':
      return inrush('resistive heater', running, 'a heater');
    case 'lamp':
      return inrush('tungsten lamp', running, 'a filament lamp');
    case 'transformer':
      return inrush('transformer', running, 'a transformer');
    case 'electronic':
      return inrush('capacitor', running, 'electronics with a capacitor input');
    case undefined:
      return undefined;
  }
}
