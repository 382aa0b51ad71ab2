/** The terminals of every kind of part: their names in this program, and the other marks they may carry. */
import type { Feed, Tab } from './plan.ts';
import type { AnyFields, Fields } from './schema.ts';

type PoleFields = NonNullable<Fields['relay']['poles']>[number];

/** The terminals of one part. A joint has one, whose name is empty. */
export class Terminals {
  /** canonical names, in the order a person would list them */
  readonly names: readonly string[];
  readonly #canonical: Map<string, string>;

  constructor(names: readonly string[], aliases: Iterable<readonly [string, string]> = []) {
    this.names = names;
    this.#canonical = new Map(names.map((name) => [name, name]));
    for (const [alias, name] of aliases) {
      if (!this.#canonical.has(alias)) this.#canonical.set(alias, name);
    }
  }

  /** The canonical name of a mark, or undefined. */
  find(mark: string): string | undefined {
    return this.#canonical.get(mark);
  }

  /** All names a terminal may be written by. */
  marks(): IterableIterator<string> {
    return this.#canonical.keys();
  }

  /** The same terminals with a part's own marks, which win over the standard ones. */
  marked(own: Iterable<readonly [string, string]>): Terminals {
    return new Terminals(this.names, [...own, ...this.#canonical]);
  }
}

/** A pole's terminals by canonical name. */
export interface PoleNames {
  readonly common: string;
  readonly make?: string;
  readonly break?: string;
}

const COIL = ['A1', 'A2'] as const;
/** DIN 72552, as on automotive relays */
const COIL_ALIASES = [
  ['86', 'A1'],
  ['85', 'A2'],
] as const;
/** EN 50005 and DIN 72552 */
const SINGLE_ALIASES = [
  ['11', 'COM'],
  ['14', 'NO'],
  ['12', 'NC'],
  ['30', 'COM'],
  ['87', 'NO'],
  ['87a', 'NC'],
] as const;
/** EN 50005, contacts of a timer */
const TIMER_ALIASES = [
  ['15', 'COM'],
  ['18', 'NO'],
  ['16', 'NC'],
] as const;

/** Last digits of EN 50005 by form: common, make, break. A number before them counts the poles. */
function standardMarks(
  form: PoleFields['form'],
  timer: boolean,
): { common: string; make?: string; break?: string } {
  if (form === 'make') return timer ? { common: '7', make: '8' } : { common: '3', make: '4' };
  if (form === 'break') return timer ? { common: '5', break: '6' } : { common: '1', break: '2' };
  return timer ? { common: '5', make: '8', break: '6' } : { common: '1', make: '4', break: '2' };
}

/** The names of a relay's poles, with their other marks. */
export function poleNames(
  poles: readonly PoleFields[] | undefined,
  timer: boolean,
): { names: readonly PoleNames[]; aliases: (readonly [string, string])[] } {
  if (poles === undefined) {
    const aliases = timer ? [...TIMER_ALIASES, ...SINGLE_ALIASES] : [...SINGLE_ALIASES];
    return { names: [{ common: 'COM', make: 'NO', break: 'NC' }], aliases };
  }
  const aliases: (readonly [string, string])[] = [];
  const names = poles.map((pole, index): PoleNames => {
    const number = index + 1;
    const own = pole.marks === undefined ? undefined : markedPole(pole.form, pole.marks);
    const plain = {
      common: `${number}.COM`,
      ...(pole.form === 'break' ? {} : { make: `${number}.NO` }),
      ...(pole.form === 'make' ? {} : { break: `${number}.NC` }),
    };
    const made: PoleNames = own ?? plain;
    const standard = standardMarks(pole.form, timer);
    for (const side of ['common', 'make', 'break'] as const) {
      const name = made[side];
      if (name === undefined) continue;
      aliases.push([plain[side] ?? name, name]);
      if (poles.length === 1) aliases.push([(plain[side] ?? name).slice(2), name]);
      if (own === undefined && number < 10) aliases.push([`${number}${standard[side]}`, name]);
    }
    return made;
  });
  return { names, aliases };
}

function markedPole(form: PoleFields['form'], marks: readonly string[]): PoleNames | undefined {
  const [first, second, third] = marks;
  if (first === undefined || second === undefined) return undefined;
  if (form === 'make') return { common: first, make: second };
  if (form === 'break') return { common: first, break: second };
  return third === undefined ? undefined : { common: first, break: second, make: third };
}

const MAINS: Readonly<Record<Feed, readonly string[]>> = {
  single: ['L', 'N', 'PE'],
  'two-leg': ['L1', 'L2', 'N', 'PE'],
  'three-phase': ['L1', 'L2', 'L3', 'N', 'PE'],
};

// Parts without choices share one table.
const made = new Map<string, Terminals>();
function shared(key: string, make: () => Terminals): Terminals {
  let terminals = made.get(key);
  if (terminals === undefined) {
    terminals = make();
    made.set(key, terminals);
  }
  return terminals;
}

/** The terminals of a part, by its kind and the fields that shape them, without its own `marks`. */
export function standardTerminals(fields: AnyFields, feed: Feed): Terminals {
  const { kind } = fields;
  switch (kind) {
    case 'supply': {
      const output = fields.output?.kind === 'ac' ? ['~1', '~2'] : ['+', '-'];
      const mains = feed === 'single' ? ['L', 'N'] : ['L1', 'L2'];
      return shared(`supply ${output[0]} ${mains[0]}`, () => new Terminals([...output, ...mains]));
    }
    case 'battery':
      return shared(kind, () => new Terminals(['+', '-']));
    case 'gate':
    case 'switch':
    case 'button':
    case 'cutout': {
      const tabs: readonly Tab[] = fields.terminals ?? ['COM', 'NO', 'NC'];
      const overload = kind === 'cutout' ? ['95', '96', '97', '98'] : [];
      return shared(`${kind} ${tabs.join()}`, () => new Terminals([...tabs, ...overload]));
    }
    case 'selector':
      return new Terminals(['COM', ...(fields.positions ?? [])]);
    case 'relay':
    case 'timer': {
      const make = (): Terminals => {
        const { names, aliases } = poleNames(fields.poles, kind === 'timer');
        const contacts = names.flatMap((pole) =>
          [pole.common, pole.make, pole.break].filter((name) => name !== undefined),
        );
        const trigger = kind === 'timer' ? ['T1', 'T2'] : [];
        return new Terminals([...new Set([...COIL, ...trigger, ...contacts])], [...COIL_ALIASES, ...aliases]);
      };
      return fields.poles === undefined ? shared(kind, make) : make();
    }
    case 'board':
      return shared(kind, () => new Terminals(['VCC', 'GND', 'IN', 'COM', 'NO', 'NC']));
    case 'diode':
    case 'led':
      return shared(kind, () => new Terminals(['A', 'K']));
    case 'resistor':
    case 'lamp':
    case 'fuse':
      return shared(kind, () => new Terminals(['1', '2']));
    case 'joint':
      return shared(kind, () => new Terminals(['']));
    case 'plug':
    case 'outlet':
    case 'motor':
    case 'load':
      return shared(feed, () => new Terminals(MAINS[feed]));
    case 'box':
      return shared(kind, () => new Terminals(['PE']));
  }
}
