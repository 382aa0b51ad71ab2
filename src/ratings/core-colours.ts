/** The colour of a core against what the core is for. */
import type { Practice } from '../plan/device-figures.ts';
import type { Cable } from '../plan/plan.ts';
import { type Coloured, type CoreColour, colourOf } from '../text/core-colours.ts';
import type { CoreColourRow, CoreUse } from './protection-rows.ts';
import * as tables from './table-files.ts';
import { gaugeWithin } from './wire.ts';

/** A core, what it is for, and what the rules ask besides. */
export interface ColouredCore {
  readonly practice: Practice;
  /** `live`: on the mains and not the earth, but whether line or neutral cannot be told */
  readonly use: CoreUse | 'live';
  readonly cable: Cable;
  /** as the plan calls it */
  readonly name: string;
  /** what both its ends are marked as */
  readonly marked: string | undefined;
  /** the circuit has a neutral with which a line in its colour could be confused */
  readonly besideNeutral: boolean;
  /** the way back from a switch whose feed lies in the same cable */
  readonly switchReturn: boolean;
  /** patterns of the plugs and outlets of the plan */
  readonly patterns: readonly string[];
  /** V of the loop and its kind, for one on low voltage */
  readonly loop: { readonly volts: number; readonly kind: 'ac' | 'dc' } | undefined;
  /** another core of the cable is on mains or is an earth */
  readonly besideMains: boolean;
}

export interface ColourFault {
  /** whose colours are in question */
  readonly of: 'earth' | 'neutral';
  /** `taken`: it has a colour that is for something else; `other`: it has not the colour it has to have */
  readonly what: 'taken' | 'other';
  /** the colour that is wrong */
  readonly colour: CoreColour;
  /** colours in which both ends may be marked instead; none where the rules do not let it */
  readonly remark: readonly CoreColour[];
  /** colours that a core for this use has, the likeliest first */
  readonly wears: readonly CoreColour[];
  readonly basis: string;
}

const STATUS = { verified: '', 'one-source': ' (seen in one copy)', memory: ' (from memory)' } as const;

function rowsOf(practice: Practice, use: CoreUse, rule: CoreColourRow['rule']): readonly CoreColourRow[] {
  return tables.coreColours().rows.filter((r) => r.practice === practice && r.use === use && r.rule === rule);
}

/** Colours that a core for some use has where each is practised, the likeliest first. */
export function wornBy(practice: Practice, use: 'earth' | 'neutral' | 'line'): readonly CoreColour[] {
  return rowsOf(practice, use, use === 'line' ? 'usual' : 'wears').flatMap((r) => r.colours);
}

/** Colours that in some practice are for the earth alone. */
export function isEarthColour(name: string): boolean {
  const colour = colourOf(name)?.colour;
  return (
    colour !== undefined &&
    (['nec', 'iec'] as const).some((p) => rowsOf(p, 'earth', 'only').some((r) => r.colours.includes(colour)))
  );
}

/** What is wrong with the colour of a core; undefined where nothing is, or where its name says no colour. */
export function judgeColour(core: ColouredCore): ColourFault | undefined {
  const own = colourOf(core.name);
  if (own === undefined) return undefined;
  const mark = core.marked === undefined ? undefined : colourOf(core.marked);
  if (core.use === 'low-voltage') return lowVoltageFault(core, own) ?? (mark && lowVoltageFault(core, mark));
  const { use } = core;
  const fault = mainsFault(core, use, own);
  const marked = mark && markFault(core, use, mark);
  // Whatever the insulation is, a mark in the colour of the earth is touched as one.
  if (marked?.of === 'earth' && marked.what === 'taken') return marked;
  if (fault !== undefined && mark !== undefined && fault.remark.includes(mark.colour)) return undefined;
  return fault ?? marked;
}

type MainsUse = Exclude<ColouredCore['use'], 'low-voltage'>;

function mainsFault(core: ColouredCore, use: MainsUse, own: Coloured): ColourFault | undefined {
  if (use === 'earth') return suits(core, use, own) ? undefined : faultOf(core, 'earth', 'other', own, use);
  if (isFor(core.practice, 'earth', own)) return faultOf(core, 'earth', 'taken', own, use);
  if (use === 'neutral')
    return suits(core, use, own) ? undefined : faultOf(core, 'neutral', 'other', own, use);
  if (use === 'live' || !isFor(core.practice, 'neutral', own) || suits(core, use, own)) return undefined;
  return faultOf(core, 'neutral', 'taken', own, use);
}

/** A mark says what the core is for as its insulation does, and none of the permissions for insulation holds for it. */
function markFault(core: ColouredCore, use: MainsUse, mark: Coloured): ColourFault | undefined {
  const told = { ...core, marked: undefined };
  if (use === 'earth' || use === 'neutral')
    return worn(core.practice, use, mark) ? undefined : faultOf(told, use, 'other', mark, use);
  const [taken] = (['earth', 'neutral'] as const).filter((of) => isFor(core.practice, of, mark));
  if (taken === undefined || (use === 'live' && taken === 'neutral')) return undefined;
  return faultOf(told, taken, 'taken', mark, use);
}

function isFor(practice: Practice, use: 'earth' | 'neutral', { colour }: Coloured): boolean {
  return rowsOf(practice, use, 'only').some((r) => r.colours.includes(colour));
}

function worn(practice: Practice, use: CoreUse, { colour, stripe }: Coloured): boolean {
  return rowsOf(practice, use, 'wears').some(
    (r) =>
      r.colours.includes(colour) ||
      (r.stripes === true && stripe !== undefined && r.colours.includes(stripe)),
  );
}

function suits(core: ColouredCore, use: CoreUse, own: Coloured): boolean {
  return (
    worn(core.practice, use, own) ||
    rowsOf(core.practice, use, 'also').some((r) => r.colours.includes(own.colour) && holds(r, core))
  );
}

function holds(row: CoreColourRow, core: ColouredCore): boolean {
  const { cable } = core;
  if (row.when === 'multicore' && cable.cores < 2) return false;
  if (row.when === 'flexible' && !(cable.flexible && cable.cores > 1)) return false;
  if (row.when === 'fixed' && cable.flexible) return false;
  if ((row.when === 'no-neutral' || row.noNeutral === true) && core.besideNeutral) return false;
  if (row.supplyOnly === true && core.switchReturn) return false;
  if (row.mostAwg !== undefined && !isAsThickAs(cable, row.mostAwg)) return false;
  const family = row.pattern;
  return family === undefined || core.patterns.some((p) => p.toUpperCase().startsWith(family));
}

function isAsThickAs(cable: Cable, awg: number): boolean {
  const within = gaugeWithin(cable, [awg]);
  return within === 'thicker' || within === awg;
}

function faultOf(
  core: ColouredCore,
  of: 'earth' | 'neutral',
  what: 'taken' | 'other',
  { colour }: Coloured,
  use: MainsUse,
): ColourFault {
  const { practice } = core;
  const rows =
    use === 'live' || (of === 'earth' && what === 'taken') ? [] : rowsOf(practice, use, 're-marked');
  const [broken] = rowsOf(practice, of, what === 'taken' ? 'only' : 'wears');
  return {
    of,
    what,
    colour,
    remark: rows
      .filter((r) => (r.colours.length === 0 || r.colours.includes(colour)) && holds(r, core))
      .flatMap((r) => r.as ?? []),
    wears: wornBy(practice, use === 'live' ? 'line' : use),
    basis: `${broken!.clause}${STATUS[broken!.status]}`,
  };
}

/** Low voltage may have any colour but that of the earth; green alone where the table lets it. */
function lowVoltageFault(core: ColouredCore, own: Coloured): ColourFault | undefined {
  const { practice, loop } = core;
  if (own.colour === 'bare' || !isFor(practice, 'earth', own)) return undefined;
  const free = rowsOf(practice, 'low-voltage', 'also').some((r) => {
    const most = loop?.kind === 'ac' ? r.mostVoltsAc : r.mostVoltsDc;
    return r.colours.includes(own.colour) && (most === undefined || (loop?.volts ?? 0) <= most);
  });
  if (free && !(practice === 'iec' && core.besideMains)) return undefined;
  return faultOf(core, 'earth', 'taken', own, 'live');
}
