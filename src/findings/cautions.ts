/** Which cautions go with a plan. The texts and their sources are in `cautions-data.ts`. */
import type { Practice } from '../plan/plan.ts';
import { ALWAYS, type BasisEntry, type CautionText, TRIGGERED } from './caution-texts.ts';
import type { Caution } from './report-model.ts';
import type { Level } from './report-words.ts';

/**
 * What the choice of cautions needs to know of a plan. Left out means unknown: it triggers the cautions that an
 * unstated fact calls for (Class 2 mark, overload protector) and no others.
 */
export interface CautionFacts {
  readonly practice: Practice;
  /** a plug, outlet, motor or load is in the plan */
  readonly hasMains: boolean;
  readonly mainsConnection?: 'cord' | 'fixed' | undefined;
  /** live conductors of the motor's feed: 1, 2 or 3 */
  readonly legs?: number | undefined;
  /** live conductors that the relay breaks */
  readonly poles?: number | undefined;
  /** the relay breaks the neutral and leaves the line */
  readonly neutralSwitched?: boolean | undefined;
  /** an earth wire is missing or broken */
  readonly earthBroken?: boolean | undefined;
  /** A, breaker behind the plug */
  readonly breaker?: number | undefined;
  /** A, full load */
  readonly motorAmps?: number | undefined;
  readonly motorHorsepower?: number | undefined;
  readonly hasMotor?: boolean | undefined;
  readonly motorType?:
    | 'capacitor-start'
    | 'split-phase'
    | 'permanent-split'
    | 'universal'
    | 'three-phase'
    | undefined;
  readonly protector?: 'none' | 'manual' | 'automatic' | undefined;
  /** more starts an hour than the motor table allows */
  readonly frequentStarts?: boolean | undefined;
  /** a gate left open starts the motor when mains returns: no start that has to be given again */
  readonly restartsAfterPowerCut?: boolean | undefined;

  readonly supplyKinds?:
    | readonly ('regulated' | 'unregulated' | 'transformer' | 'bell' | 'battery')[]
    | undefined;
  /** every supply that is no battery is marked Class 2 (or SELV) */
  readonly class2?: boolean | undefined;
  /** highest volts of the loop at no load, V (RMS for AC) */
  readonly noLoadVolts?: number | undefined;
  readonly loopKind?: 'dc' | 'ac' | undefined;
  readonly suppliesJoined?: boolean | undefined;
  /** coil draw as a share of the supply's limit */
  readonly supplyLoad?: number | undefined;
  /** one side of the loop is earthed and a gate switch sits on it */
  readonly earthedAtSwitch?: boolean | undefined;

  readonly coilMismatch?: boolean | undefined;
  /** the coil's suppressor; `wrong`: a diode on AC or the wrong way round */
  readonly suppressor?: 'none' | 'fitted' | 'wrong' | undefined;
  /** DC coil: only then is a missing suppressor worth a word */
  readonly dcCoil?: boolean | undefined;
  /** a relay or contactor stands between the loop and mains */
  readonly hasRelay?: boolean | undefined;
  readonly solidState?: boolean | undefined;
  /** the relay is on an open circuit board */
  readonly board?: boolean | undefined;
  /** a published rating covers the motor's start */
  readonly motorRated?: boolean | undefined;
  /** a thin margin of coil volts or making current */
  readonly thinMargin?: boolean | undefined;

  /** the relay is in a box of the plan */
  readonly boxed?: boolean | undefined;
  /** one box holds mains and low voltage */
  readonly sharedBox?: boolean | undefined;
  /** one cable carries both */
  readonly sharedCable?: boolean | undefined;
  /** a mains joint lies in no box */
  readonly openSplice?: boolean | undefined;
  /** a flexible cord enters a box */
  readonly cordIntoBox?: boolean | undefined;
  /** flexible mains cord longer than a machine's lead */
  readonly cordAsWiring?: boolean | undefined;
  /** bell wire longer than a bench hook-up runs to gates */
  readonly gateWires?: boolean | undefined;
  /** a sheet of meter readings is printed with the report */
  readonly meterSheet?: boolean | undefined;
  readonly workplace?: boolean | undefined;
}

/** True: at the text's own level; a word: at that level; false: not at all. */
type Rule = (f: CautionFacts) => boolean | Level;

const mainsRelay = (f: CautionFacts) => f.hasMains && f.hasRelay === true;
const motor = (f: CautionFacts) => f.hasMains && f.hasMotor === true;
const has = (f: CautionFacts, ...kinds: NonNullable<CautionFacts['supplyKinds']>[number][]) =>
  f.supplyKinds?.some((k) => kinds.includes(k)) === true;

/** V: NEC chapter 9 Table 11 for dry places, IEC 60364-4-41 414.4.5 for AC under `iec`. */
function aboveLimit(f: CautionFacts): boolean {
  if (f.noLoadVolts === undefined || f.loopKind === undefined) return false;
  if (f.loopKind === 'dc') return f.noLoadVolts > 60;
  return f.noLoadVolts > (f.practice === 'iec' ? 25 : 30);
}

const RULES: Readonly<Record<string, Rule>> = {
  'C-LOCKOUT': (f) => f.hasMains && f.mainsConnection === 'fixed',
  'C-LIVEMAINS': (f) => f.hasMains && f.meterSheet === true,
  'C-PROVEMETER': (f) => f.hasMains && f.meterSheet === true,
  'C-NOTCLASS2': (f) => f.class2 !== true && has(f, 'regulated', 'unregulated', 'transformer', 'bell'),
  'C-TOOHIGHVOLTS': (f) =>
    aboveLimit(f) && (f.loopKind === 'ac' && (f.noLoadVolts ?? 0) <= 30 ? 'warning' : true),
  'C-NOLOADVOLTS': (f) => has(f, 'unregulated', 'transformer', 'bell'),
  'C-PARALLELSUPPLIES': (f) => f.suppliesJoined === true,
  'C-BELLDUTY': (f) => has(f, 'bell') && (f.supplyLoad ?? 1) > 0.5,
  'C-BATTERY': (f) => has(f, 'battery'),
  'C-EARTH': (f) => f.earthedAtSwitch === true,
  'C-CABLEDAMAGE': (f) => f.gateWires === true,
  'C-COILMISMATCH': (f) => f.coilMismatch === true,
  'C-DIODE': (f) => (f.suppressor === 'wrong' ? 'warning' : f.dcCoil === true && f.suppressor === 'none'),
  'C-SHAREDBOX': (f) => f.sharedBox === true,
  'C-SHAREDCABLE': (f) => f.sharedCable === true,
  'C-RELAYISOLATION': mainsRelay,
  'C-BAREBOARD': (f) => f.hasMains && f.board === true,
  'C-ENCLOSURE': (f) => mainsRelay(f) && f.boxed !== true,
  'C-SPLICES': (f) => f.openSplice === true,
  'C-MOTORRATING': (f) => motor(f) && f.motorRated === false,
  'C-NEUTRAL': (f) => f.neutralSwitched === true,
  'C-ONELEG': (f) => f.neutralSwitched !== true && (f.legs ?? 1) >= 2 && (f.poles ?? 9) < (f.legs ?? 1),
  'C-GROUND': (f) => f.earthBroken === true,
  'C-OVERLOAD': (f) => motor(f) && (f.protector === undefined || f.protector === 'none'),
  'C-AUTORESET': (f) => motor(f) && f.protector === 'automatic',
  'C-POWERRETURN': (f) => f.hasMains && f.restartsAfterPowerCut === true,
  'C-STARTS': (f) => f.frequentStarts === true,
  'C-CAPACITOR': (f) => f.motorType === 'capacitor-start' || f.motorType === 'permanent-split',
  'C-SSR': (f) => f.hasMains && f.solidState === true,
  'C-WELD': (f) => f.thinMargin === true,
  'C-CORDFIXED': (f) => f.cordAsWiring === true,
  'C-STRAIN': (f) => f.hasMains && f.cordIntoBox === true,
  'C-PLUGHP': (f) => f.practice === 'nec' && f.mainsConnection === 'cord' && (f.motorHorsepower ?? 0) > 1 / 3,
  'C-BRANCHLOAD': (f) =>
    f.motorAmps !== undefined && f.breaker !== undefined && f.motorAmps > 0.8 * f.breaker,
  'C-CORD15': (f) =>
    f.practice === 'nec' && f.mainsConnection === 'cord' && f.protector === 'none' && (f.breaker ?? 0) > 15,
  'C-GFCI': (f) => f.hasMains && f.mainsConnection === 'cord',
  'C-DUSTCLASS': (f) => f.workplace === true,
  'C-AIRFIRST': (f) => f.hasMains,
  'C-UK': (f) => f.hasMains && f.practice === 'iec',
  'C-EU': (f) => f.hasMains && f.practice === 'iec',
  'C-CA': (f) => f.hasMains && f.practice === 'nec',
};

function basisText(entries: readonly BasisEntry[], practice?: Practice): string {
  const here = entries.filter((e) => [e.practice, practice].includes(undefined) || e.practice === practice);
  if (here.length === 0) return 'common practice';
  return here.map((e) => (e.status === 'memory' ? `${e.text} (from memory)` : e.text)).join('; ');
}

function asCaution(entry: CautionText, practice: Practice, level: Level = entry.level): Caution {
  const text = practice === 'iec' && entry.iec !== undefined ? entry.iec : entry.text;
  return { id: entry.id, level, text, basis: basisText(entry.basis, practice) };
}

/** The standing cautions in their order, then those the plan gives cause for. */
export function chooseCautions(facts: CautionFacts): Caution[] {
  const chosen = ALWAYS.map((entry) => asCaution(entry, facts.practice));
  for (const entry of TRIGGERED) {
    const word = RULES[entry.id]?.(facts) ?? false;
    if (word !== false) chosen.push(asCaution(entry, facts.practice, word === true ? entry.level : word));
  }
  return chosen;
}

/** True for the cautions that go with every plan. */
export function isStanding(id: string): boolean {
  return ALWAYS.some((entry) => entry.id === id);
}

/** Every caution there is, with the wording and the sources of both practices; `explain` lists them. */
export function allCautions(): Caution[] {
  return [...ALWAYS, ...TRIGGERED].map(({ id, level, text, iec, basis }) => ({
    id,
    level,
    text: iec === undefined ? text : `${text} (Under iec: ${iec})`,
    basis: basisText(basis),
  }));
}
