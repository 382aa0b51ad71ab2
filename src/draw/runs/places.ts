/**
 * The map of the runs: this folder knows which cable goes from where to where, how long it is and how that is drawn, and
 * must not know what a core is for.
 */
import type { Circuit } from '../../circuit/circuit.ts';
import type { Sides } from '../../circuit/sides.ts';
import { LISTED } from '../../lists/kinds.ts';
import { sectionOf } from '../../lists/wiring-order.ts';
import type { Section } from '../../lists/wiring-section.ts';
import type { Plan, Run } from '../../plan/plan.ts';

/** Where cables end: a box with what it holds, or a part that is in none. */
export interface Place {
  readonly name: string;
  /** what a box holds; empty for a part by itself */
  readonly holds: readonly string[];
  /** sections whose wiring starts here */
  readonly starts: ReadonlySet<Section>;
}

/** What of one run goes between two places; of a run whose cores part, one for each pair of places. */
export interface Leg {
  readonly run: Run;
  /** as the first of its cores is typed */
  readonly a: Place;
  readonly b: Place;
  /** cores that go this way */
  readonly cores: number;
}

/** Places and runs of one section. */
export interface Network {
  readonly section: Section;
  readonly places: readonly Place[];
  readonly legs: readonly Leg[];
}

export interface RunsInput {
  readonly plan: Plan;
  readonly circuit: Circuit;
  readonly sides: Sides;
}

/** Boxes in boxes that are looked through; a box that holds itself ends there too. */
const DEEPEST = 8;

/** The place of every part. */
function placesOf({ parts }: Plan): Map<string, Place> {
  const boxOf = new Map<string, string>();
  for (const part of parts.values())
    if (part.kind === 'box')
      for (const held of part.holds) if (held !== part.name && !boxOf.has(held)) boxOf.set(held, part.name);
  const outermost = (name: string): string => {
    let at = name;
    for (let i = 0; i < DEEPEST && boxOf.has(at); i++) at = boxOf.get(at)!;
    return at;
  };
  const members = new Map<string, { holds: string[]; starts: Set<Section> }>();
  for (const part of parts.values()) {
    const name = outermost(part.name);
    const own = members.get(name) ?? { holds: [], starts: new Set<Section>() };
    members.set(name, own);
    if (name !== part.name) own.holds.push(part.name);
    const { startsWiring } = LISTED[part.kind];
    if (startsWiring !== undefined) own.starts.add(startsWiring);
  }
  const made = new Map([...members].map(([name, own]) => [name, { name, ...own }]));
  return new Map([...parts.keys()].map((name) => [name, made.get(outermost(name))!]));
}

/** The legs of a run by the pairs of places that its cores join; what stays inside a place is left out. */
function legsOf(run: Run, places: ReadonlyMap<string, Place>): Leg[] {
  const legs = new Map<string, { run: Run; a: Place; b: Place; cores: number }>();
  for (const core of run.cores) {
    const [a, b] = [places.get(core.a.part)!, places.get(core.b.part)!];
    if (a === b) continue;
    const key = JSON.stringify([a.name, b.name].sort());
    const leg = legs.get(key);
    if (leg) leg.cores++;
    else legs.set(key, { run, a, b, cores: 1 });
  }
  return [...legs.values()];
}

/** A cable with a core on the mains is laid with the mains. */
function sectionOfRun({ circuit, sides }: RunsInput, run: Run): Section {
  return run.cores.some((core) => sectionOf(circuit, sides, core) === 'mains') ? 'mains' : 'low voltage';
}

/** What is laid between places, low voltage and mains by themselves; a section without runs is left out. */
export function networks(input: RunsInput): Network[] {
  const places = placesOf(input.plan);
  const of = { 'low voltage': [] as Leg[], mains: [] as Leg[] };
  for (const run of input.plan.runs) {
    const legs = legsOf(run, places);
    if (legs.length > 0) of[sectionOfRun(input, run)].push(...legs);
  }
  return (['low voltage', 'mains'] as const).flatMap((section) => {
    const legs = of[section];
    if (legs.length === 0) return [];
    const ends = new Set(legs.flatMap(({ a, b }) => [a, b]));
    return [{ section, legs, places: [...new Set(places.values())].filter((p) => ends.has(p)) }];
  });
}
