/** What a mistaken plan does by the oracles alone: harmful with its symptoms, harmless, or not judged. */
import { parse } from 'yaml';
import { judge } from '../brute.ts';
import { coilVolts } from '../coil-volts.ts';
import { dataRules } from './data-rules.ts';
import { contactRules, pathsOf } from './load-path.ts';
import { insulation, netRules, unfused } from './mains-rules.ts';
import type { Mutant } from './mutant.ts';
import { type Sheet, sheetOf } from './sheet.ts';

export interface Judgement {
  symptoms: string[];
  /** why a plan without symptoms cannot be called harmless */
  open: string[];
}

/** Inputs up to which the volts are worked out in every state. */
const MOST_INPUTS = 8;

/** The oracles' first symptom in the order of this list stands for the plan in the table. */
const WORST = [
  'mains-meets-low-voltage',
  'mains-through-gate',
  'mains-shorted',
  'neutral-earthed',
  'earth-as-return',
  'earth-broken',
  'line-neutral-swapped',
  'line-not-switched',
  'insulation-too-low',
  'sides-share-box',
  'supply-shorted',
];

const GRAVE = new Set([...WORST.filter((x) => x !== 'supply-shorted'), 'one-touch-starts', 'block-ignored']);

/** Whether the plan can kill or burn, by what its oracles see. */
export const grave = (j: Judgement): boolean => j.symptoms.some((x) => GRAVE.has(x));

/** The symptom that a mistake is counted under. */
export function leading(symptoms: readonly string[]): string {
  return WORST.find((x) => symptoms.includes(x)) ?? [...symptoms].sort()[0] ?? '';
}

/** Coils left below their pull-in when warm, in plans small enough to work out. */
function voltRules(s: Sheet): Judgement {
  const inputs = [...s.wiring.parts.values()].filter((p) =>
    ['gate', 'switch', 'button', 'cutout'].includes(p.kind),
  );
  if (inputs.length > MOST_INPUTS) return { symptoms: [], open: ['coil volts'] };
  try {
    const low = coilVolts(s.text).some((row) => row.margin < 0);
    return { symptoms: low ? ['coil-too-low'] : [], open: [] };
  } catch {
    return { symptoms: [], open: ['coil volts'] };
  }
}

/** Which terminals wire joins, as a text: plans of one partition differ in lengths and cables only. */
function partition({ wiring }: Sheet): string {
  const up = new Map<string, string>();
  const find = (x: string): string => {
    const y = up.get(x);
    return y === undefined || y === x ? x : find(y);
  };
  for (const [a, b] of wiring.joins) {
    const [x, y] = [find(a), find(b)];
    const [low, high] = x < y ? [x, y] : [y, x];
    if (low !== high) up.set(high, low);
  }
  return [...wiring.used]
    .sort()
    .map((t) => `${t}>${find(t)}`)
    .join(' ');
}

/** The right plan that mutants are made from, and what its oracles have found so far. */
export class Ground {
  readonly doc: unknown;
  private readonly known = new Map<string, string[]>();
  private path: string | undefined;

  constructor(readonly text: string) {
    this.doc = parse(text, { maxAliasCount: 1000 });
  }

  /** What the loads' currents pass. */
  get paths(): string {
    this.path ??= pathsOf(sheetOf(this.text));
    return this.path;
  }

  /** Symptoms that the joins alone decide. */
  private joined(m: Mutant, s: Sheet): string[] {
    const key = partition(s);
    const found = this.known.get(key) ?? [...judge(m.text).symptoms, ...netRules(s)];
    this.known.set(key, found);
    return found;
  }

  /** Judges one mutant. Throws where the oracles cannot read it. */
  judge(m: Mutant): Judgement {
    const s = m.sheet;
    if (!s) return dataJudgement(m);
    const symptoms = new Set([...this.joined(m, s), ...insulation(s, this.doc)]);
    if (symptoms.size === 0) for (const x of contactRules(m.text)) symptoms.add(x);
    if (symptoms.size > 0) return { symptoms: [...symptoms], open: [] };
    const volts = voltRules(s);
    return { ...volts, open: [...volts.open, ...unfused(s)] };
  }

  /** Whether a load's current goes another way than in the right plan: its contacts and cores are then other ones. */
  otherPath = (m: Mutant): boolean => pathsOf(sheetOf(m.text)) !== this.paths;
}

/** What stays open about one kind of slip; the rest of a right plan is taken for right. */
const OPEN: Record<string, string[]> = {
  'cable two sizes thinner': ['cord', 'volts at the start', 'coil volts'],
  'length times ten': ['volts at the start', 'coil volts'],
  'coil for other volts': ['coil volts', 'coil near its most', 'supply near its limit'],
  'supply of other volts': ['coil volts', 'coil near its most', 'supply near its limit'],
  'supply of a tenth': ['supply near its limit', 'coil volts'],
  'motor a size up': ['contact', 'cord', 'volts at the start'],
  'box without divider': ['insulation in a shared box'],
  'fuse times ten': ['fuse'],
};

function dataJudgement(m: Mutant): Judgement {
  const s = sheetOf(m.text);
  const doc: unknown = parse(m.text, { maxAliasCount: 1000 });
  const ruled = dataRules(s, doc);
  const symptoms = [...judge(m.text).symptoms, ...netRules(s), ...insulation(s, doc), ...ruled.symptoms];
  const open = [...ruled.open, 'fuse'].filter((x) => OPEN[m.kind]?.includes(x));
  return { symptoms: [...new Set(symptoms)], open };
}
