/** Shops typed with the short forms, and the same written out by code that shares nothing with the reader. */
import fc from 'fast-check';
import { layOut } from '../../src/draw/layout/layout.ts';
import { CHARACTERS } from '../../src/draw/layout/measures.ts';
import { wireList } from '../../src/lists/wirelist.ts';
import { Study } from '../../src/study/study.ts';
import { good } from './helpers.ts';

/** A cable along some gates, one after the other. */
export interface Zone {
  readonly names: readonly string[];
  /** metres of each piece; one alone: `length` for all of them */
  readonly lengths: readonly number[];
  /** terminal of each of the two cores at every gate */
  readonly tabs: readonly [string, string];
  readonly grouped: boolean;
  readonly shut: boolean;
}

const HEAD = `format: 1
title: Teasel yard
practice: iec
stock:
  snap: {kind: gate, contact: {ratings: [5 A 250 V AC, 3 A 30 V DC], least: 10 mA 5 V DC}}
  bell: {kind: cable, gauge: 0.5 mm2, cores: 2, insulation: 300 V}
parts:
  PS1: {kind: supply, output: 12 V DC, limit: 1 A, regulation: regulated, class-2: true}
  K1: {kind: relay, coil: {rated: 12 V DC, resistance: 155 ohm, pull-in: 75 %}, contact: {ratings: [30 A 240 V AC]}}
`;

/** The ways from the supply to each zone and from there to the coil. */
function spurs(zones: readonly Zone[]): string[] {
  return zones.flatMap(({ names, tabs }) => [
    `{cable: bell, length: 2 m, cores: {red: [PS1.+, ${names[0]}.${tabs[0]}]}}`,
    `{cable: bell, length: 3 m, cores: {white: [${names.at(-1)}.${tabs[1]}, K1.A1]}}`,
  ]);
}
const RETURN = '{cable: bell, length: 2 m, cores: {white: [PS1.-, K1.A2]}}';

const mounted = ({ shut }: Zone) => `{from: snap, pressed-when: ${shut ? 'shut' : 'open'}}`;
const text = (parts: readonly string[], runs: readonly string[], zones: readonly Zone[]) =>
  `${HEAD}${parts.map((p) => `  ${p}\n`).join('')}runs:\n${runs.map((r) => `  - ${r}\n`).join('')}intent:\n  K1: {runs-on: [${zones.flatMap((z) => z.names).join(', ')}]}\n`;

export function shortText(zones: readonly Zone[]): string {
  const parts = zones.flatMap((zone, z) =>
    zone.grouped
      ? [`zone${z}: ${mounted(zone).replace('}', `, names: [${zone.names.join(', ')}]}`)}`]
      : zone.names.map((name) => `${name}: ${mounted(zone)}`),
  );
  const runs = zones.map(({ names, lengths, tabs, grouped }, z) => {
    const long =
      lengths.length === 1
        ? `length: ${lengths[0]} m`
        : `lengths: [${lengths.map((l) => `${l} m`).join(', ')}]`;
    return `{cable: bell, along: ${grouped ? `zone${z}` : `[${names.join(', ')}]`}, ${long}, cores: {red: ${tabs[0]}, white: ${tabs[1]}}}`;
  });
  return text(parts, [RETURN, ...runs, ...spurs(zones)], zones);
}

export function longText(zones: readonly Zone[]): string {
  const parts = zones.flatMap((zone) => zone.names.map((name) => `${name}: ${mounted(zone)}`));
  const runs = zones.flatMap(({ names, lengths, tabs }) =>
    names.slice(1).map((name, i) => {
      const core = (tab: string) => `[${names[i]}.${tab}, ${name}.${tab}]`;
      return `{cable: bell, length: ${lengths[i] ?? lengths[0]} m, cores: {red: ${core(tabs[0])}, white: ${core(tabs[1])}}}`;
    }),
  );
  return text(parts, [RETURN, ...runs, ...spurs(zones)], zones);
}

/** Up to three zones; one in four is wired to a wrong tab. */
export const zonesArb: fc.Arbitrary<Zone[]> = fc
  .array(
    fc.record({
      gates: fc.integer({ min: 2, max: 5 }),
      each: fc.boolean(),
      metres: fc.array(fc.integer({ min: 1, max: 40 }), { minLength: 4, maxLength: 4 }),
      tabs: fc.constantFrom(['COM', 'NO'], ['COM', 'NO'], ['COM', 'NO'], ['COM', 'NC']),
      grouped: fc.boolean(),
      shut: fc.boolean(),
    }),
    { minLength: 1, maxLength: 3 },
  )
  .map((drawn) =>
    drawn.map(
      ({ gates, each, metres, tabs, grouped, shut }, z): Zone => ({
        names: Array.from({ length: gates }, (_, g) => `g${z}-${g}`),
        lengths: each ? metres.slice(0, gates - 1) : metres.slice(0, 1),
        tabs: tabs as unknown as readonly [string, string],
        grouped,
        shut,
      }),
    ),
  );

/** An answer without what runs are called and where they stand in the file. */
function nameless(value: unknown): unknown {
  const text = JSON.stringify(value, (key, inner) =>
    ['line', 'column', 'mark', 'at', 'path', 'title', 'file'].includes(key) ? undefined : inner,
  );
  return JSON.parse(
    text
      .replace(/\d+ runs from \d+ to \d+/g, 'RUNS')
      .replace(/\bruns? \d[\d.]*(?:(?:, | and | to | |piece|s|run)*\d[\d.]*)*/g, 'RUNS')
      .replace(/\(RUNS, line \d+\)|lines? \d+(?:(?:, | and | to )\d+)*/g, 'LINES'),
  );
}

/** All that is told of a plan; `judged`: what is asked for findings. */
export function answers(text: string, judged: (study: Study) => unknown) {
  const study = Study.of(good(text));
  const drawn = layOut(study, CHARACTERS, { columns: 2, bank: 1000 });
  return {
    report: nameless(judged(study)),
    wires: nameless(wireList(study, { any: [5000], own: new Map() })),
    cores: drawn.cores.map(({ id, from, to, link }) => ({ id, from, to, link })),
    symbols: drawn.symbols.map(({ id, mirrored }) => ({ id, mirrored })),
  };
}
