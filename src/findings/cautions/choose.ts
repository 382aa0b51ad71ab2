/** Which cautions go with a plan. The texts and their sources are in `texts.ts` and the files it names. */
import type { Practice } from '../../plan/device-figures.ts';
import type { Caution } from '../report-model.ts';
import type { Level } from '../report-words.ts';
import { ALWAYS } from './always-texts.ts';
import type { BasisEntry, CautionText } from './caution-text.ts';
import type { CautionFacts } from './facts.ts';
import { TRIGGERED, type TriggeredId } from './texts.ts';

/** True: at the text's own level; a word: at that level; false: not at all. */
type Rule = (f: CautionFacts) => boolean | Level;

/** V: NEC chapter 9 Table 11 for dry places, IEC 60364-4-41 414.4.5 for AC under `iec`. */
function aboveLimit({ noLoadVolts: { ac, dc }, practice }: CautionFacts): boolean | Level {
  if (dc > 60 || ac > 30) return true;
  return practice === 'iec' && ac > 25 ? 'warning' : false;
}

const RULES: Readonly<Record<TriggeredId, Rule>> = {
  'C-LOCKOUT': (f) => f.fixedFeed,
  'C-LIVEMAINS': (f) => f.hasMains && f.readings === 'mains',
  'C-PROVEMETER': (f) => f.hasMains && f.readings !== 'none',
  'C-NOTCLASS2': (f) => f.supplyNotClass2,
  'C-TOOHIGHVOLTS': aboveLimit,
  'C-NOLOADVOLTS': (f) => f.risesAtNoLoad,
  'C-PARALLELSUPPLIES': (f) => f.suppliesJoined,
  'C-BELLDUTY': (f) => f.bellHoldsCoil,
  'C-BATTERY': (f) => f.hasBattery,
  'C-EARTH': (f) => f.earthedAtSwitch,
  'C-CABLEDAMAGE': (f) => f.hasGates,
  'C-COILMISMATCH': (f) => f.coilMismatch,
  'C-DIODE': (f) => (f.suppressor === 'wrong' ? 'warning' : f.suppressor === 'none'),
  'C-SHAREDBOX': (f) => f.sharedBox,
  'C-SHAREDCABLE': (f) => f.sharedCable,
  'C-RELAYISOLATION': (f) => (f.isolation === 'weak' ? 'danger' : f.isolation === 'unsaid'),
  'C-BAREBOARD': (f) => f.boardOnMains,
  'C-ENCLOSURE': (f) => f.relayUnboxed,
  'C-SPLICES': (f) => f.openSplice,
  'C-MOTORRATING': (f) => f.hasMotor && !f.motorRated,
  'C-NEUTRAL': (f) => f.neutralBroken,
  'C-ONELEG': (f) => f.legLeftLive,
  'C-GROUND': (f) => f.earthBroken,
  'C-OVERLOAD': (f) => f.unprotected,
  'C-AUTORESET': (f) => f.resetsItself,
  'C-POWERRETURN': (f) => f.hasMains && f.mayRestart,
  'C-STARTS': (f) => f.frequentStarts,
  'C-CAPACITOR': (f) => f.hasCapacitor,
  'C-SSR': (f) => f.solidState,
  'C-WELD': (f) => f.thinMargin,
  'C-CORDFIXED': (f) => f.cordAsWiring,
  'C-STRAIN': (f) => f.cordIntoBox,
  'C-PLUGHP': (f) => f.practice === 'nec' && f.plug && f.horsepower > 1 / 3,
  'C-BRANCHLOAD': (f) => f.nearlyFillsCircuit,
  'C-CORD15': (f) => f.practice === 'nec' && f.noProtector && f.plugBreaker > 15,
  'C-GFCI': (f) => f.plug,
  'C-DUSTCLASS': (f) => f.largePlant,
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
    const word = RULES[entry.id](facts);
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
