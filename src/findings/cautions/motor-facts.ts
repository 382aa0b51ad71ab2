/** The motors: how they start, what protects them, what starts them again. */
import type { MotorPart, PlugPart } from '../../plan/part-types.ts';
import { WATTS_PER_HORSEPOWER } from '../../ratings/horsepower.ts';
import { motorCurrents } from '../../ratings/motor.ts';
import type { Study } from '../../study/study.ts';
import type { Stands } from './stands.ts';

export interface MotorFacts {
  readonly hasMotor: boolean;
  /** hp of the largest motor; 0 where none states its power */
  readonly horsepower: number;
  /** some motor has a start or run capacitor */
  readonly hasCapacitor: boolean;
  /** a motor with no overload protector that is known of */
  readonly unprotected: boolean;
  /** a motor of which it is stated that it has none, nor does an overload relay stop it */
  readonly noProtector: boolean;
  /** a motor whose protector resets by itself */
  readonly resetsItself: boolean;
  /** a published rating covers the start of every motor */
  readonly motorRated: boolean;
  /** more starts an hour than the motor table allows */
  readonly frequentStarts: boolean;
  /** some motor takes more than 80 % of its breaker (NEC 210.23(A)(1)) */
  readonly nearlyFillsCircuit: boolean;
  /** nothing was decided, so that an open gate may start a load after a power cut; where it surely does, a finding says so */
  readonly mayRestart: boolean;
  /** as large as plants of schools and factories are */
  readonly largePlant: boolean;
}

/** hp from which a collector moves some 1500 cfm, and gates from which a shop has more than one worker; common practice, no source. */
const LARGE_HORSEPOWER = 3;
const MANY_GATES = 20;

export function motorFacts(study: Study, stands: Stands): MotorFacts {
  const parts = [...study.plan.parts.values()];
  const motors = parts.filter((p): p is MotorPart => p.kind === 'motor');
  const horsepower = Math.max(0, ...motors.map(horsepowerOf));
  const protectors = motors.map((m) => m.protector);
  return {
    hasMotor: motors.length > 0,
    horsepower,
    hasCapacitor: motors.some((m) => m.type === 'capacitor-start' || m.type === 'permanent-split'),
    unprotected: stands('motor-unprotected') && protectors.some((p) => p === 'none' || p === undefined),
    noProtector: stands('motor-unprotected') && protectors.includes('none'),
    resetsItself: protectors.includes('automatic'),
    motorRated: !(
      ['contact-not-motor-rated', 'contact-horsepower', 'contact-starting', 'contact-running'] as const
    ).some(stands),
    frequentStarts: stands('starts-per-hour'),
    nearlyFillsCircuit: nearlyFills(study, motors),
    mayRestart: study.verified === undefined,
    largePlant: horsepower > LARGE_HORSEPOWER || parts.filter((p) => p.kind === 'gate').length >= MANY_GATES,
  };
}

function horsepowerOf({ power }: MotorPart): number {
  return power?.horsepower ?? (power ? power.watts / WATTS_PER_HORSEPOWER : 0);
}

function nearlyFills({ plan }: Study, motors: readonly MotorPart[]): boolean {
  const breakers = [...plan.parts.values()]
    .filter((p): p is PlugPart => p.kind === 'plug')
    .flatMap((p) => p.breaker ?? []);
  const least = Math.min(...breakers);
  return motors.some((m) => (motorCurrents(m, plan.practice).running?.amps ?? 0) > 0.8 * least);
}
