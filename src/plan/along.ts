/** Runs `along` several parts, written out as one plain run a piece before runs are read. */
import { type Errors, quoted, type Span } from './errors.ts';
import { found } from './issues.ts';
import { type Expanded, type Repeats, type Typed, textsOf } from './repeats.ts';
import { without } from './stock.ts';
import { emptyMap, isTreeMap, type Spots, type Tree, type TreeList, type TreeMap } from './tree.ts';

/** One run to read, as the file or a piece of a run along parts has it. */
export interface RunEntry {
  readonly tree: Tree;
  readonly at: Span;
  /** place in the file's list, from one */
  readonly entry: number;
  /** which piece of a run along parts, from one, and of how many */
  readonly piece?: number;
  readonly pieces?: number;
  /** fields that were told to be wrong, and are not missing */
  readonly wrong?: readonly string[];
}

const SHORT = new Set(['along', 'lengths']);

/** Everything a run along parts is written out with. */
interface Context {
  readonly errors: Errors;
  readonly spots: Spots;
  readonly repeats: Repeats;
  readonly groups: Expanded['groups'];
}

/** The runs of a file, those along parts as one run a piece. */
export function expandRuns(list: TreeList, context: Context): RunEntry[] {
  const places = context.spots.of(list);
  return list.flatMap((tree, index): RunEntry[] => {
    const plain = { tree, at: places.get(`${index}`)!.value, entry: index + 1 };
    if (!isTreeMap(tree) || !('along' in tree || 'lengths' in tree)) return [plain];
    return pieces(tree, plain, context);
  });
}

function pieces(tree: TreeMap, { at, entry }: RunEntry, context: Context): RunEntry[] {
  const { errors, spots, repeats } = context;
  const places = spots.of(tree);
  const name = `run ${entry}`;
  if (!('along' in tree)) {
    errors.add(
      places.get('lengths')!.key,
      'lengths: only with along; a run from one part to another has one length',
      name,
    );
    return [{ tree: without(tree, SHORT, spots), at, entry }];
  }
  if ('link' in tree) {
    errors.add(
      places.get('link')!.key,
      'link: not with along, which is for a cable; leave one of them out',
      name,
    );
    return [];
  }
  const stops = stopsOf(tree, name, context);
  const lengths = lengthsOf(tree, stops.length - 1, name, context);
  const cores = coresOf(tree, name, context);
  if (stops.length < 2 || !repeats.take((stops.length - 1) * (1 + 2 * cores.length), at)) return [];
  const own = without(tree, SHORT, spots);
  const wrong = [
    ...('lengths' in tree ? ['length'] : []),
    ...(isTreeMap(own.cores) && cores.length === 0 && spots.of(own.cores).size > 0 ? ['cores'] : []),
  ];
  return stops.slice(1).flatMap((stop, index): RunEntry[] => {
    const piece = index + 1;
    // That was told already.
    if (stop.name === stops[index]!.name) return [];
    const copy = without(own, new Set(), spots);
    const spot = lengths?.[Math.min(index, lengths.length - 1)];
    if (spot !== undefined) put(spots, copy, 'length', spot.name, spot.at);
    if (typeof own.name === 'string') copy.name = `${own.name} piece ${piece}`;
    if (wrong.includes('cores')) delete copy.cores;
    else if (isTreeMap(own.cores)) copy.cores = between(stops[index]!, stop, cores, context);
    return [{ tree: copy, at, entry, piece, pieces: stops.length - 1, wrong }];
  });
}

function put(spots: Spots, map: TreeMap, key: string, value: Tree, at: Span): void {
  map[key] = value;
  spots.of(map).set(key, { key: at, value: at });
}

/** The parts that the cable goes to, in their order. */
function stopsOf(tree: TreeMap, name: string, { errors, spots, groups }: Context): Typed[] {
  const along = tree.along!;
  const spot = spots.of(tree).get('along')!;
  const group = typeof along === 'string' ? groups.get(along) : undefined;
  if (!Array.isArray(along) && group === undefined) {
    const text = `along: found ${found(along)}, expected a list of parts, such as [bandsaw, planer, router]`;
    errors.add(spot.value, text, name);
    return [];
  }
  const typed = Array.isArray(along)
    ? textsOf(errors, spots, along, (item) => `along: found ${item}, expected the name of a part`, name)
    : group!.map((part): Typed => ({ name: part, at: spot.value }));
  const stops = typed.flatMap(
    (t) => groups.get(t.name)?.map((part): Typed => ({ name: part, at: t.at })) ?? [t],
  );
  if (stops.length < 2) {
    const text = `along: found ${stops.length === 1 ? 'one part' : 'no part'}, expected at least two`;
    errors.add(spot.key, text, name);
  }
  checkOnce(errors, stops, name);
  return stops;
}

/** A cable passes a part once; only a ring ends where it begins. */
function checkOnce(errors: Errors, stops: readonly Typed[], name: string): void {
  const seen = new Set<string>();
  for (const [index, stop] of stops.entries()) {
    const ring = index === stops.length - 1 && index > 2 && stop.name === stops[0]!.name;
    if (seen.has(stop.name) && !ring) {
      const text = `along: ${quoted(stop.name)} stands twice; a cable passes each part once`;
      errors.add(stop.at, text, name);
    }
    seen.add(stop.name);
  }
}

/** The length of each piece as typed, or undefined where the run has one `length` or none. */
function lengthsOf(
  tree: TreeMap,
  count: number,
  name: string,
  { errors, spots }: Context,
): readonly Typed[] | undefined {
  const { lengths } = tree;
  const spot = spots.of(tree).get('lengths');
  if (lengths === undefined || spot === undefined) return undefined;
  if ('length' in tree) {
    const text = 'lengths: not with length; length is for pieces of one length, lengths has one for each';
    errors.add(spot.key, text, name);
  }
  if (!Array.isArray(lengths)) {
    const text = `lengths: found ${found(lengths)}, expected a list with one length for each piece, such as [4 m, 3 m]`;
    errors.add(spot.value, text, name);
    return undefined;
  }
  if (count > 0 && lengths.length !== count) {
    const said = `${lengths.length} ${lengths.length === 1 ? 'length' : 'lengths'}`;
    const text = `lengths: found ${said}, expected ${count}: one for each piece between two parts of along`;
    errors.add(spot.key, text, name);
  }
  return textsOf(errors, spots, lengths, (item) => `lengths: found ${item}, expected a length`, name);
}

/** A core, and the terminal that it lands on at each part. */
interface AlongCore {
  readonly colour: string;
  readonly at: Span;
  readonly terminal: string;
  readonly value: Span;
}

function coresOf(tree: TreeMap, name: string, { errors, spots }: Context): AlongCore[] {
  const { cores } = tree;
  if (!isTreeMap(cores)) return [];
  return [...spots.of(cores)].flatMap(([colour, spot]): AlongCore[] => {
    const terminal = cores[colour]!;
    const such = 'expected one terminal name, such as COM, on which it lands at each part of along';
    const add = (text: string): [] => {
      errors.add(spot.value, `cores.${colour}: ${text}`, name);
      return [];
    };
    if (typeof terminal !== 'string') return add(`found ${found(terminal)}, ${such}`);
    if (terminal.includes('.')) {
      const bare = terminal.slice(terminal.lastIndexOf('.') + 1);
      return add(`found ${quoted(terminal)}, ${such}; write ${quoted(bare)} alone`);
    }
    return [{ colour, at: spot.key, terminal, value: spot.value }];
  });
}

/** The cores of the piece between two parts. */
function between(from: Typed, to: Typed, cores: readonly AlongCore[], { spots }: Context): TreeMap {
  const map = emptyMap();
  for (const { colour, at, terminal, value } of cores) {
    const ends: TreeList = [`${from.name}.${terminal}`, `${to.name}.${terminal}`];
    spots.of(ends).set('0', { key: value, value: from.at });
    spots.of(ends).set('1', { key: value, value: to.at });
    map[colour] = ends;
    spots.of(map).set(colour, { key: at, value });
  }
  return map;
}
