import { netAt } from '../../circuit/terminals.ts';
import type { BoxPart, Core, Run } from '../../plan/plan.ts';
import {
  type BoxFill,
  boxFill,
  boxFillSize,
  boxHolds,
  CUBIC_INCH,
  smallestBox,
} from '../../ratings/box-fill.ts';
import type { Study } from '../../study/study.ts';
import { rounded } from '../../text/numbers.ts';
import { finding } from '../finding.ts';
import type { Finding } from '../report-model.ts';

/** Kinds of part that sit on a yoke and take the room of two conductors. */
const ON_YOKE = new Set(['switch', 'outlet', 'selector', 'button']);

/** `box-overfilled`: the volume of every box with mains in it against what NEC 314.16(B) asks for. */
export function checkBoxFill(study: Study): Finding[] {
  return mainsBoxes(study).flatMap((box) => {
    const fill = fillOf(study, box);
    if (fill === undefined) return [beyondTable(study, box)];
    if (box.volume === undefined) return [unstated(study, box, fill)];
    return boxHolds(box.volume, fill.in3) ? [] : [overfilled(study, box, box.volume, fill)];
  });
}

/** What was taken for granted when boxes were counted, for the report's list. */
export function boxFillDefaults(study: Study): string[] {
  return mainsBoxes(study).length === 0
    ? []
    : ['box fill counted with cable clamps inside, NEC 314.16(B)(2), and earths by the 2020 edition'];
}

function mainsBoxes(study: Study): BoxPart[] {
  if (study.plan.practice !== 'nec') return [];
  return [...study.plan.parts.values()].filter(
    (p): p is BoxPart =>
      p.kind === 'box' &&
      study.plan.runs.some((run) =>
        run.cores.some((c) => isInside(p, c.a.part, c.b.part) && onMains(study, c)),
      ),
  );
}

const isInside = (box: BoxPart, ...parts: readonly string[]) =>
  parts.some((name) => name === box.name || box.holds.includes(name));

const netOf = (study: Study, core: Core) => netAt(study.circuit, core.a.part, core.a.terminal) ?? -1;
const onMains = (study: Study, core: Core) => study.sides.mains.has(netOf(study, core));

function isEarth(study: Study, core: Core): boolean {
  if (core.a.terminal === 'PE' || core.b.terminal === 'PE') return true;
  return study.sides.earth.has(netOf(study, core)) && !onMains(study, core);
}

/** Undefined where the table has no row for a conductor. */
function fillOf(study: Study, box: BoxPart): BoxFill | undefined {
  const entering: number[] = [];
  const earths: number[] = [];
  const inside: number[] = [];
  const onPart = new Map<string, number[]>();
  for (const run of study.plan.runs) {
    if (run.link) continue;
    for (const core of run.cores) {
      const ends = [core.a.part, core.b.part].filter((name) => isInside(box, name));
      if (ends.length === 0) continue;
      const awg = sizeOf(run);
      if (awg === undefined) return undefined;
      (ends.length === 2 ? inside : isEarth(study, core) ? earths : entering).push(awg);
      for (const name of ends) onPart.set(name, [...(onPart.get(name) ?? []), awg]);
    }
  }
  const largest = Math.min(...entering, ...earths, ...inside);
  const yokes = box.holds
    .filter((name) => ON_YOKE.has(study.plan.parts.get(name)?.kind ?? '') && carriesMains(study, name))
    // A device joined by links alone is taken to have the thickest conductor of the box.
    .map((name) => Math.min(...(onPart.get(name) ?? [largest])));
  return boxFill({ entering, earths, inside, yokes, clamps: true }, '2020');
}

const sizeOf = (run: Run) => (run.cable === undefined ? undefined : boxFillSize(run.cable));

function carriesMains(study: Study, name: string): boolean {
  return study.plan.runs.some((run) =>
    run.cores.some((c) => (c.a.part === name || c.b.part === name) && onMains(study, c)),
  );
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

function basisOf(fill: BoxFill): string {
  const clauses = [...new Set(fill.allowances.map((a) => a.clause.slice(6)))];
  const box = smallestBox(fill.in3);
  const memory = box?.status === 'memory' ? ` and 314.16(A) (from memory)` : ' and 314.16(A)';
  return `NEC 314.16${clauses.join(', ')}, Tables 314.16(B)${memory}`;
}

function boxWords(fill: BoxFill): string {
  const box = smallestBox(fill.in3);
  return box === undefined
    ? `a box marked with at least ${both(fill.in3)}`
    : `at least a ${box.box} box (${inches(box.in3)})`;
}

function overfilled(study: Study, box: BoxPart, volume: number, fill: BoxFill): Finding {
  const has = volume / CUBIC_INCH;
  return finding(study.plan, {
    id: 'box-overfilled',
    severity: 'warning',
    question: 7,
    parts: [box.name],
    at: box.where.get('volume') ?? box.at,
    message: `${box.name} has ${both(has)} and what is in it needs ${both(fill.in3)}`,
    why: `Counted: ${countWords(fill)}. Pressed wires chafe through, and heat does not leave the box.`,
    fix: `Use ${boxWords(fill)}. The code counts no room for relays, timers and boards: leave it on top.`,
    figures: [
      { name: 'needed', value: Number(fill.in3.toFixed(3)), unit: 'in3' },
      { name: 'volume', value: rounded(has, 5), unit: 'in3' },
    ],
    basis: basisOf(fill),
  });
}

function unstated(study: Study, box: BoxPart, fill: BoxFill): Finding {
  return finding(study.plan, {
    id: 'box-overfilled',
    severity: 'doubt',
    question: 7,
    parts: [box.name],
    at: box.at,
    message: `whether ${box.name} is big enough cannot be told: its volume is not stated; it needs ${both(fill.in3)}`,
    why: `Counted: ${countWords(fill)}. A figure that is not stated is never taken as enough.`,
    fix: `State volume: of ${box.name}, as marked in it or by its size. It takes ${boxWords(fill)}, and room for relays on top.`,
    figures: [
      { name: 'needed', value: Number(fill.in3.toFixed(3)), unit: 'in3' },
      { name: 'volume', value: null, unit: 'in3' },
    ],
    basis: basisOf(fill),
  });
}

function beyondTable(study: Study, box: BoxPart): Finding {
  return finding(study.plan, {
    id: 'box-overfilled',
    severity: 'doubt',
    question: 7,
    parts: [box.name],
    at: box.at,
    message: `whether ${box.name} is big enough cannot be told: a conductor in it has no row in the table of volumes`,
    why: 'The table ends at 6 AWG; thicker conductors ask for a length of box by the size of the raceway. A link alone has no size.',
    fix: 'Size this box by the raceways that enter it, or use 6 AWG and thinner.',
    basis: 'NEC 314.16, 314.28 (from memory)',
  });
}
