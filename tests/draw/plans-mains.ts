/** The mains side of a generated plan: plug, poles, outlet or motor, protective conductor, box. */
import type { Called } from './plans-loop.ts';
import { oneIn, type Plot, pick } from './plans-sheet.ts';

export const FEEDS = ['single', 'two-leg', 'three-phase'] as const;
export type Feed = (typeof FEEDS)[number];
export const LOADS = ['plugged motor', 'wired motor', 'outlet alone', 'motor and lamp'] as const;
export type Load = (typeof LOADS)[number];

const CONDUCTORS = {
  single: ['L', 'N'],
  'two-leg': ['L1', 'L2'],
  'three-phase': ['L1', 'L2', 'L3'],
} as const;
const PLUG = {
  single: 'volts: 230 V AC',
  'two-leg': 'volts: 240 V AC, legs: 2',
  'three-phase': 'volts: 400 V AC, phases: 3',
} as const;
const FED = { single: '', 'two-leg': ', legs: 2', 'three-phase': ', phases: 3' } as const;

const motor = (feed: Feed, plugged: string): string =>
  `{kind: motor, ${PLUG[feed]}, amps: 6 A, protector: manual${plugged === '' ? '' : `, plugged-into: ${plugged}`}}`;

/** Where the protective conductor goes through: a metal box, a joint, or straight on. */
function earth(plot: Plot, called: Called): string | undefined {
  const how = pick(plot.roll, ['metal box', 'plastic box', 'none'] as const);
  if (how === 'none') return undefined;
  const held = `holds: [${called.held.join(', ')}], volume: 4000 cm3`;
  plot.part('B1', `{kind: box, ${held}, metal: ${how === 'metal box'}}`);
  return how === 'metal box' ? 'B1.PE' : plot.joint('earth');
}

function target(plot: Plot, feed: Feed, load: Load): string {
  if (load === 'wired motor') return plot.part('fan', motor(feed, ''));
  plot.part('X1', `{kind: outlet${FED[feed]}}`);
  if (load !== 'outlet alone') plot.part('fan', motor(feed, 'X1'));
  if (load === 'motor and lamp')
    plot.part('lamp', `{kind: load, ${PLUG[feed]}, amps: 1 A, type: lamp, class: II, plugged-into: X1}`);
  return 'X1';
}

/** Writes the mains side, from a plug through the poles that the loop switches. */
export function mains(
  plot: Plot,
  called: Called,
  choice: { feed: Feed; load: Load; runsOn: readonly string[] },
): void {
  const { feed, load, runsOn } = choice;
  plot.part('P1', `{kind: plug, ${PLUG[feed]}, breaker: 16 A}`);
  const to = target(plot, feed, load);
  const names = CONDUCTORS[feed];
  const pe = earth(plot, called);
  const before: [string, string][] = [];
  const after: [string, string][] = [];
  names.forEach((name, i) => {
    const pole = called.poles[i];
    if (pole !== undefined) {
      before.push([`P1.${name}`, pole[0]]);
      after.push([pole[1], `${to}.${name}`]);
    } else if (oneIn(plot.roll, 2)) before.push([`P1.${name}`, `${to}.${name}`]);
    else {
      const nut = plot.joint(`nut-${name}`);
      before.push([`P1.${name}`, nut]);
      after.push([nut, `${to}.${name}`]);
    }
  });
  if (pe === undefined) before.push(['P1.PE', `${to}.PE`]);
  else {
    before.push(['P1.PE', pe]);
    after.push([pe, `${to}.PE`]);
  }
  plot.flex(...before);
  plot.flex(...after);
  if (called.wiredIn !== undefined) {
    const sides = feed === 'single' ? CONDUCTORS.single : CONDUCTORS['two-leg'];
    plot.flex(...sides.map((side): [string, string] => [`P1.${side}`, `${called.wiredIn}.${side}`]));
  }
  if (!oneIn(plot.roll, 5))
    plot.intent(`${load === 'outlet alone' ? 'X1' : 'fan'}: {runs-on: [${runsOn.join(', ')}]}`);
}
