import type { BoxPart } from '../../plan/part-types.ts';
import { type BoxFill, boxHolds, CUBIC_INCH, smallestBox } from '../../ratings/box-fill.ts';
import type { Study } from '../../study/study.ts';
import { rounded } from '../../text/numbers.ts';
import type { Check, FindingEntry } from '../entry.ts';
import { found } from '../finding.ts';
import type { Figure, Finding } from '../report-model.ts';
import { mainsBoxes } from './box-contents.ts';

const entry: FindingEntry = {
  id: 'box-overfilled',
  title: 'the box is too small for what is in it',
  severity: 'warning',
  question: 7,
  base: 'dc-chain',
  meaning:
    'Each conductor that ends in the box, the clamps, the earths and each switch or outlet take a share of its volume. Pressed in tighter, wires chafe through and the heat stays inside. A box with mains and no stated volume is a doubt. Where practice is iec no such count exists.',
  wrong: 'volume: 18 in3',
  right: 'volume: 120 in3',
  basis: 'NEC 314.16(B)(1), (B)(2), (B)(4), (B)(5); Tables 314.16(A) and 314.16(B)',
  followsFrom: [],
};

export const boxOverfilled: Check = { entry, find };

/** The volume of every box with mains in it against what NEC 314.16(B) asks for. */
function find(study: Study): Finding[] {
  return mainsBoxes(study).flatMap(({ box, fill }) => {
    if (fill === undefined) return [beyondTable(study, box)];
    if (box.volume === undefined) return [unstated(study, box, fill)];
    return boxHolds(box.volume, fill.in3) ? [] : [overfilled(study, box, box.volume, fill)];
  });
}

function overfilled({ plan }: Study, box: BoxPart, volume: number, fill: BoxFill): Finding {
  const has = volume / CUBIC_INCH;
  return found(plan, entry, {
    parts: [box.name],
    at: box.where.get('volume') ?? box.at,
    message: `${box.name} has ${both(has)} and what is in it needs ${both(fill.in3)}`,
    why: `Counted: ${countWords(fill)}. Pressed wires chafe through, and heat does not leave the box. No room is counted for relays, timers and boards: leave it on top.`,
    fix: `${box.name} is ${both(fill.in3 - has)} short.`,
    figures: figures(fill, rounded(has, 5)),
    basis: basisOf(fill),
    twin: { alike: 'overfilled', badness: fill.in3 / has },
  });
}

function unstated({ plan }: Study, box: BoxPart, fill: BoxFill): Finding {
  return found(plan, entry, {
    severity: 'doubt',
    parts: [box.name],
    at: box.at,
    message: `whether ${box.name} is big enough cannot be told: its volume is not stated; it needs ${both(fill.in3)}`,
    why: `Counted: ${countWords(fill)}. A figure that is not stated is never taken as enough.`,
    fix: `State volume: of ${box.name}, as marked in it or by its size. It takes ${boxWords(fill)}, and room for relays on top.`,
    figures: figures(fill, null),
    basis: basisOf(fill),
    twin: { alike: 'unstated' },
  });
}

function beyondTable({ plan }: Study, box: BoxPart): Finding {
  return found(plan, entry, {
    severity: 'doubt',
    parts: [box.name],
    at: box.at,
    message: `whether ${box.name} is big enough cannot be told: a conductor in it has no row in the table of volumes`,
    why: 'The table ends at 6 AWG; thicker conductors ask for a length of box by the size of the raceway. A link alone has no size.',
    fix: 'Size this box by the raceways that enter it, or use 6 AWG and thinner.',
    basis: 'NEC 314.16, 314.28 (from memory)',
  });
}

function figures(fill: BoxFill, volume: number | null): Figure[] {
  return [
    { name: 'needed', value: Number(fill.in3.toFixed(3)), unit: 'in3' },
    { name: 'volume', value: volume, unit: 'in3' },
  ];
}

const inches = (in3: number) => `${Number(in3.toFixed(2))} in3`;
const both = (in3: number) => `${inches(in3)} (${Math.round((in3 * CUBIC_INCH) / 1e-6)} cm3)`;

const NAMES = {
  conductors: ['conductor', 'conductors'],
  clamps: ['cable clamps', 'cable clamps'],
  devices: ['device', 'devices'],
  earths: ['earth', 'earths'],
} as const;

/** "4 conductors of 14 AWG 8 in3, cable clamps 2 in3, ..." */
function countWords(fill: BoxFill): string {
  return fill.allowances
    .map(({ what, pieces, awg, in3 }) => {
      const noun = NAMES[what][pieces === 1 ? 0 : 1];
      return what === 'clamps' ? `${noun} ${inches(in3)}` : `${pieces} ${noun} of ${awg} AWG ${inches(in3)}`;
    })
    .join(', ');
}

function boxWords(fill: BoxFill): string {
  const box = smallestBox(fill.in3);
  return box === undefined
    ? `a box marked with at least ${both(fill.in3)}`
    : `at least a ${box.box} box (${inches(box.in3)})`;
}

function basisOf(fill: BoxFill): string {
  const clauses = [...new Set(fill.allowances.map((a) => a.clause.slice(6)))];
  const box = smallestBox(fill.in3);
  const memory = box?.status === 'memory' ? ` and 314.16(A) (from memory)` : ' and 314.16(A)';
  return `NEC 314.16${clauses.join(', ')}, Tables 314.16(B)${memory}`;
}
