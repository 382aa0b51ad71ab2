/** Knows whether a contact serves for what it switches, and what guards a motor; what the mains circuit carries is not asked here. */
import type { Check } from '../entry.ts';
import { contactHorsepower } from './contact-horsepower.ts';
import { contactKind } from './contact-kind.ts';
import { contactLeakage } from './contact-leakage.ts';
import { contactNotMotorRated } from './contact-not-motor-rated.ts';
import { contactRunning } from './contact-running.ts';
import { contactStarting } from './contact-starting.ts';
import { contactVoltage } from './contact-voltage.ts';
import { motorUnprotected } from './motor-unprotected.ts';
import { overloadSetting } from './overload-setting.ts';
import { restartsByItself } from './restarts-by-itself.ts';
import { startsPerHour } from './starts-per-hour.ts';

/** The findings of question 6, as `explain` lists them. */
export const contactsChecks: readonly Check[] = [
  contactVoltage,
  contactKind,
  contactRunning,
  contactStarting,
  contactHorsepower,
  contactNotMotorRated,
  contactLeakage,
  motorUnprotected,
  overloadSetting,
  restartsByItself,
  startsPerHour,
];
