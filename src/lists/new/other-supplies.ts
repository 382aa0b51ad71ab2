/** Other supplies than the one at hand: the same with a mark or a size more, and in words what they have otherwise. */
import type { Practice } from '../../plan/device-figures.ts';
import { supplyLimit } from '../../plan/rated-quantity.ts';
import type { SupplyAtHand } from './answers.ts';
import type { Design } from './design.ts';
import { readSupply } from './read-loop.ts';
import { ordinary, voltsText } from './told.ts';

const LIMIT = /\d+(?:\.\d+)?\s*(?:mA|A|VA|W)\b/i;

const read = (text: string): SupplyAtHand | undefined => {
  const parsed = readSupply.parse(text);
  return 'problem' in parsed ? undefined : parsed.value;
};

/** The answer with each mark that its label may carry and the answer left out, one more at a time. */
function marked(text: string): string[] {
  const own = read(text);
  if (own?.limit === undefined) return [];
  const usual = ordinary(`supply-${own.kind}`);
  const steady =
    own.kind === 'ac'
      ? own['no-load'] === undefined && own.volts === 24
        ? [`${text} no-load ${String(usual['no-load'])}`]
        : []
      : own.regulation === 'regulated'
        ? []
        : own.regulation === 'unregulated'
          ? [text.replace(/\bunregulated\b/i, 'regulated')]
          : [`${text} regulated`];
  const [best = text] = steady;
  return own.tolerance === undefined ? [...steady, `${best} ${String(usual.tolerance)}`] : steady;
}

/** Its volts alone, so that the least of them is chosen; undefined for volts that are not chosen by. */
export function voltsAlone(text: string): string | undefined {
  const own = read(text);
  return own?.limit === undefined ? undefined : voltsText(own.volts, own.kind);
}

/** What is at hand, with nothing but a mark more. */
export const nearSupplies = (text: string): readonly string[] => marked(text.trim());

/** What is at hand with the limit of a supply that does, and then with a mark more; none where its own limit is as large. */
export function largerSupplies(text: string, { supply }: Design): readonly string[] {
  const own = read(text);
  if (own?.limit === undefined || voltAmps(own.limit, own.volts) >= voltAmps(supply.limit, supply.volts))
    return [];
  const larger = text.trim().replace(LIMIT, supply.limit);
  return [larger, ...marked(larger)];
}

/** VA that a printed limit comes to. */
function voltAmps(limit: string, volts: number): number {
  const parsed = supplyLimit.parse(limit);
  if ('problem' in parsed) return 0;
  const { value, printed } = parsed.value;
  return printed === 'A' ? value * volts : value;
}

interface Printed {
  readonly output: string;
  readonly limit: string | undefined;
  readonly regulation: string | undefined;
  readonly tolerance: string | undefined;
  readonly noLoad: string | undefined;
  readonly class2: boolean;
}

/** What is printed on the supply of a design; one that is chosen has what the plan says to look for. */
function printedOn({ supply }: Design): Printed {
  const usual = supply.chosen ? ordinary(`supply-${supply.kind}`) : {};
  const said = (key: 'tolerance' | 'no-load') =>
    supply[key] ?? (usual[key] === undefined ? undefined : String(usual[key]));
  return {
    output: voltsText(supply.volts, supply.kind),
    limit: supply.limit,
    regulation:
      supply.kind === 'ac' ? undefined : (supply.regulation ?? (usual.regulation as string | undefined)),
    tolerance: said('tolerance'),
    noLoad: said('no-load'),
    class2: supply.class2 || usual['class-2'] === 'true',
  };
}

const LIMITED: Readonly<Record<Practice, string>> = {
  nec: 'marked Class 2',
  iec: 'marked SELV',
};

/** `12 V DC, 0.5 A, regulated to 3 %, marked Class 2` */
export function supplyWords(design: Design): string {
  const { output, limit, regulation, tolerance, noLoad, class2 } = printedOn(design);
  const steady = [regulation, tolerance === undefined ? undefined : `to ${tolerance}`];
  return [
    output,
    limit,
    steady.filter((w) => w !== undefined).join(' '),
    noLoad === undefined ? '' : `at most ${noLoad} with nothing on it`,
    class2 ? LIMITED[design.answers.practice] : '',
  ]
    .filter((w) => w !== undefined && w !== '')
    .join(', ');
}

/** What the supply of a design has otherwise than the one that was answered, a phrase each. */
export function otherwiseThan(text: string, design: Design): readonly string[] {
  const own = read(text);
  if (own === undefined) return [];
  const now = printedOn(design);
  const was: Printed = {
    output: voltsText(own.volts, own.kind),
    limit: own.limit,
    regulation: own.kind === 'ac' ? undefined : own.regulation,
    tolerance: own.tolerance,
    noLoad: own['no-load'],
    class2: own.class2,
  };
  const phrase = (key: Exclude<keyof Printed, 'class2'>, words: (value: string) => string) => {
    const [before, after] = [was[key], now[key]];
    if (after === undefined || before === after) return [];
    return [
      `${words(after)}${before === undefined ? ', which yours does not say' : ` in place of ${before}`}`,
    ];
  };
  return [
    ...phrase('output', (v) => v),
    ...phrase('limit', (v) => v),
    ...phrase('regulation', (v) => v),
    ...phrase('tolerance', (v) => `tolerance ${v}`),
    ...phrase('noLoad', (v) => `at most ${v} with nothing on it`),
    ...(now.class2 && !was.class2 ? [`${LIMITED[design.answers.practice]}, which yours does not say`] : []),
  ];
}
