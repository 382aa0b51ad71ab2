import type { Check } from '../entry.ts';
import { blockIgnored } from './block-ignored.ts';
import { blockLate } from './block-late.ts';
import { breakIsSilent } from './break-is-silent.ts';
import { breakStartsLoad } from './break-starts-load.ts';
import { chatters } from './chatters.ts';
import { dependsOnOrder } from './depends-on-order.ts';
import { gateDead } from './gate-dead.ts';
import { gateOnWrongTab } from './gate-on-wrong-tab.ts';
import { gateStopsLoad } from './gate-stops-load.ts';
import { gatesInSeries } from './gates-in-series.ts';
import { intentContradicts } from './intent-contradicts.ts';
import { intentMissing } from './intent-missing.ts';
import { lampMisleads } from './lamp-misleads.ts';
import { loopDead } from './loop-dead.ts';
import { looseEnd } from './loose-end.ts';
import { nothingWired } from './nothing-wired.ts';
import { ringHidesBreak } from './ring-hides-break.ts';
import { runOnClearsNoDuct } from './run-on-clears-no-duct.ts';
import { runOnMissing } from './run-on-missing.ts';
import { runsOnDeadSupply } from './runs-on-dead-supply.ts';
import { runsWithAllShut } from './runs-with-all-shut.ts';
import { runsWithoutCause } from './runs-without-cause.ts';
import { staysOn } from './stays-on.ts';
import { stopsOnDeadSupply } from './stops-on-dead-supply.ts';
import { stopsWithoutCause } from './stops-without-cause.ts';
import { timerSupply } from './timer-supply.ts';
import { toggleNeedsButton } from './toggle-needs-button.ts';
import { undecided } from './undecided.ts';
import { valueUnsaid } from './value-unsaid.ts';
import { zoneOnWrongTab } from './zone-on-wrong-tab.ts';

/** The findings of questions 2 and 3, as `explain` lists them. */
export const startsChecks: readonly Check[] = [
  loopDead,
  gateDead,
  gateOnWrongTab,
  zoneOnWrongTab,
  gatesInSeries,
  gateStopsLoad,
  stopsWithoutCause,
  chatters,
  dependsOnOrder,
  looseEnd,
  intentMissing,
  intentContradicts,
  undecided,
  breakIsSilent,
  ringHidesBreak,
  nothingWired,
  valueUnsaid,
  runsWithAllShut,
  runsWithoutCause,
  blockIgnored,
  staysOn,
  runsOnDeadSupply,
  stopsOnDeadSupply,
  breakStartsLoad,
  lampMisleads,
  runOnMissing,
  blockLate,
  timerSupply,
  toggleNeedsButton,
  runOnClearsNoDuct,
];
