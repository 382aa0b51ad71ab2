/** Which field of a part a quantity of a what-if is for, and how it gets there. */
import * as z from 'zod/mini';
import type { Span } from '../errors.ts';
import type { PartKind } from '../part-types.ts';
import { emptyMap, isTreeMap, type Spots, type Tree, type TreeMap } from '../tree.ts';

/** Fields that a quantity without a field's name may mean, by the kind of part, the first that reads it. */
export const MEANT: Readonly<Record<PartKind | 'cable', readonly string[]>> = {
  supply: ['output', 'limit'],
  battery: ['output', 'capacity'],
  gate: ['contact.ratings'],
  switch: ['contact.ratings'],
  selector: ['contact.ratings'],
  button: ['contact.ratings'],
  cutout: ['contact.ratings', 'setting'],
  relay: ['coil.rated', 'coil.power', 'coil.resistance', 'coil.current'],
  timer: ['coil.rated', 'coil.power', 'coil.resistance', 'coil.current'],
  board: ['supply', 'input-current'],
  diode: ['current', 'reverse'],
  resistor: ['resistance', 'rated'],
  lamp: ['rated', 'resistance'],
  led: ['forward', 'current'],
  fuse: ['rating'],
  joint: [],
  plug: ['volts', 'breaker'],
  outlet: [],
  motor: ['power', 'volts', 'amps'],
  load: ['power', 'volts', 'amps'],
  box: ['volume'],
  cable: ['gauge'],
};

const DRAWS = ['coil.resistance', 'coil.current', 'coil.power', 'coil.inrush'];
const OF_MOTOR = ['amps', 'locked-rotor', 'code', 'efficiency', 'power-factor', 'service-factor'];
const OF_CONTACT = ['contact.motor', 'contact.ac-3', 'contact.locked-rotor', 'contact.make', 'contact.pilot'];

/** What a plan says of the thing as it was and does not hold with another figure in that field. */
export const FORGOTTEN: Readonly<Record<string, readonly string[]>> = {
  power: OF_MOTOR,
  volts: [...OF_MOTOR, 'pattern'],
  output: ['no-load'],
  'coil.rated': [...DRAWS, 'coil.pull-in', 'coil.drop-out', 'coil.most', 'coil.frequency'],
  'coil.power': DRAWS,
  'coil.resistance': DRAWS,
  'coil.current': DRAWS,
  'contact.ratings': OF_CONTACT,
};

/** The field of a schema at a dotted path, out of whatever makes it optional; undefined where it has none. */
export function fieldAt(schema: z.ZodMiniType, path: string): z.ZodMiniType | undefined {
  let at: z.ZodMiniType | undefined = schema;
  for (const step of path.split('.')) {
    at = bare(at);
    const shape: z.core.$ZodLooseShape = at instanceof z.ZodMiniObject ? at.shape : {};
    at = Object.hasOwn(shape, step) ? (shape[step] as z.ZodMiniType) : undefined;
    if (at === undefined) return undefined;
  }
  return bare(at);
}

function bare(schema: z.ZodMiniType | undefined): z.ZodMiniType | undefined {
  return schema instanceof z.ZodMiniOptional ? (schema._zod.def.innerType as z.ZodMiniType) : schema;
}

/** The value as a file would have it, where the field reads it. */
export function valueFor(field: z.ZodMiniType, text: string): Tree | undefined {
  const value: Tree = field instanceof z.ZodMiniArray ? [text] : text;
  return field.safeParse(value).success ? value : undefined;
}

/** A text as the quantities of some fields, each once, the longest pieces first; undefined where some piece is none. */
export function split(
  schema: z.ZodMiniType,
  fields: readonly string[],
  text: string,
): Map<string, Tree> | undefined {
  const words = text.split(/\s+/).filter((w) => w !== '');
  const found = new Map<string, Tree>();
  for (let from = 0; from < words.length; ) {
    let to = words.length;
    for (; to > from; to--) {
      const piece = words.slice(from, to).join(' ');
      const read = fields
        .filter((f) => !found.has(f))
        .flatMap((f) => {
          const value = valueFor(fieldAt(schema, f)!, piece);
          return value === undefined ? [] : [[f, value] as const];
        })[0];
      if (read === undefined) continue;
      found.set(...read);
      break;
    }
    if (to === from) return undefined;
    from = to;
  }
  return found.size === 0 ? undefined : found;
}

export function valueAt(tree: TreeMap, path: string): Tree | undefined {
  let at: Tree | undefined = tree;
  for (const step of path.split('.')) at = isTreeMap(at) && Object.hasOwn(at, step) ? at[step] : undefined;
  return at;
}

/** A copy with a value at a path, or without any. */
export function withValue(
  tree: TreeMap,
  [step, ...rest]: readonly string[],
  value: Tree | undefined,
  spots: Spots,
  at: Span,
): TreeMap {
  const copy = emptyMap();
  const places = spots.of(copy);
  for (const [key, spot] of spots.of(tree)) {
    copy[key] = tree[key]!;
    places.set(key, spot);
  }
  const below = copy[step!];
  if (rest.length > 0) {
    copy[step!] = withValue(isTreeMap(below) ? below : emptyMap(), rest, value, spots, at);
  } else if (value === undefined) {
    delete copy[step!];
    places.delete(step!);
    return copy;
  } else {
    copy[step!] = value;
    if (Array.isArray(value))
      for (const i of value.keys()) spots.of(value).set(`${i}`, { key: at, value: at });
  }
  if (!places.has(step!)) places.set(step!, { key: at, value: at });
  return copy;
}
