/** What people call plug and socket patterns, and the row that each name stands for. */
import { nearest } from '../text/nearest-name.ts';
import * as tables from './table-files.ts';
import type { ReceptacleRow } from './table-rows.ts';
import { socketRule } from './tables.ts';

/** How a pattern is used, where its name alone does not settle it. */
export interface PatternUse {
  /** V, between lines where there are several */
  readonly volts: number;
  readonly phases: 1 | 3;
}

/** Rows that a name may stand for, and what kind of name it is. */
interface Named {
  readonly rows: readonly ReceptacleRow[];
  /** everyday: not the name of a standard */
  readonly by: 'name' | 'everyday' | 'part of a name';
}

/** Letters of a pattern's name below which its beginning could be anything. */
const LEAST_BEGUN = 8;

/** Letters and digits only, in capitals: `nema 5-20P` and `NEMA 5-20` are one pattern. */
function key(name: string): string {
  return name
    .toUpperCase()
    .replace(/^(NEMA\s*L?\d+-\d+)\s*[PR]$/, '$1')
    .replace(/[^A-Z0-9]/g, '');
}

function named(pattern: string): Named {
  const { rows } = tables.receptacles();
  // `CEE 7/4 or 7/7 (Type F/E)`: the whole, what stands before the bracket, and each of the alternatives.
  const outside = pattern.replace(/\([^)]*\)/g, '');
  for (const form of [pattern, outside, ...outside.split(/\bor\b/), `NEMA ${outside}`]) {
    const wanted = key(form);
    const row = rows.find((r) => r.names.some((name) => key(name) === wanted));
    if (row) return { rows: [row], by: 'name' };
  }
  const begun = key(outside);
  const also = rows.filter((r) => r.also?.some((name) => key(name) === begun));
  if (also.length > 0) return { rows: also, by: 'everyday' };
  const pins = byPins(pattern);
  if (pins.length > 0) return { rows: pins, by: 'part of a name' };
  const several =
    begun.length < LEAST_BEGUN || begun.startsWith('NEMA')
      ? []
      : rows.filter((r) => r.names.some((name) => key(name).startsWith(begun)));
  return { rows: several, by: 'part of a name' };
}

/** Colours of IEC 60309-2 by their volts. */
const COLOURS = [
  ['yellow', /\b(?:yellow|110 ?v)\b/i],
  ['blue', /\b(?:blue|230 ?v)\b/i],
  ['red', /\b(?:red|400 ?v|415 ?v)\b/i],
] as const;
/** Poles by the number of pins. */
const PINS = [
  ['2P+E', /\b2p ?\+|\b3[- ]?(?:pin|pole)/i],
  ['3P+E', /\b3p ?\+ ?(?:e|pe|t)\b|\b4[- ]?(?:pin|pole)/i],
  ['3P+N+E', /\b3p ?\+ ?n|\b5[- ]?(?:pin|pole)/i],
] as const;

/** `CEE 16A blue 3-pin`, `32 A red 5 pin`: sockets of IEC 60309-2 by amperes, colour or volts, and pins. */
function byPins(pattern: string): readonly ReceptacleRow[] {
  const amps = /\b(16|32|63) ?A\b/i.exec(pattern)?.[1];
  const colour = COLOURS.find(([, is]) => is.test(pattern))?.[0];
  const poles = PINS.find(([, is]) => is.test(pattern))?.[0];
  if (amps === undefined || colour === undefined) return [];
  return tables.receptacles().rows.filter((r) => {
    const [, size, hue, pins] = /^IEC 60309 (\d+) A (\w+) (\S+)$/.exec(r.names[0] ?? '') ?? [];
    return size === amps && hue === colour && (poles === undefined || pins === poles);
  });
}

/** Whether a circuit of these volts is of the system that a socket is made for. */
export function isOfSystem(volts: number, row: ReceptacleRow): boolean {
  return volts <= row.volts && volts > row.volts * socketRule('other-system-volts');
}

/**
 * Rows that a pattern's name may stand for; with a use, those that suit it, where any does. Empty for a name that is not
 * known, and for `fixed`.
 */
export function receptaclesByName(pattern: string, use?: PatternUse): readonly ReceptacleRow[] {
  const { rows } = named(pattern);
  if (use === undefined || rows.length < 2) return rows;
  const suiting = rows.filter((r) => r.phases === use.phases && isOfSystem(use.volts, r));
  return suiting.length > 0 ? suiting : rows;
}

/**
 * Row of a pattern by any of its names. A name that leaves several open (`IEC 60309 16 A`, without poles) is the first of
 * them that suits the use, unless they differ in amperes: then nothing is guessed, and the row is undefined.
 */
export function receptacleByName(pattern: string, use?: PatternUse): ReceptacleRow | undefined {
  const rows = receptaclesByName(pattern, use);
  return rows.every((r) => r.amps === rows[0]!.amps) ? rows[0] : undefined;
}

/** The proper name of a pattern that goes by an everyday one; undefined where that is no news, or not settled. */
export function properName(pattern: string, use?: PatternUse): string | undefined {
  const row = named(pattern).by === 'everyday' ? receptacleByName(pattern, use) : undefined;
  return row?.names[0];
}

/** Most names that a name which is not settled is said to stand for. */
const MOST_MEANT = 4;

/** Proper names that one which settles nothing may be meant for, the likely ones alone; empty where none is near. */
export function patternsMeant(pattern: string): readonly string[] {
  const { rows } = named(pattern);
  if (rows.length > 0) return rows.slice(0, MOST_MEANT).flatMap((r) => r.names[0] ?? []);
  const names = tables.receptacles().rows.flatMap((r) => [...r.names, ...(r.also ?? [])]);
  const near = nearest(pattern, names) ?? nearest(`NEMA ${pattern}`, names);
  return near === undefined ? [] : [near];
}
