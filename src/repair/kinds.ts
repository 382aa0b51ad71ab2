/** How the search for repairs treats each kind of part. */
import type { Part, PartKind } from '../plan/part-types.ts';

type OfKind<K extends PartKind> = Part & { readonly kind: K };

/** Which side a terminal belongs to by its part alone. */
export type Side = 'mains' | 'low' | 'either';

interface KindInRepair<P extends Part> {
  /** the side of a terminal; a protective conductor is always on the mains */
  readonly side: (mark: string) => Side;
  /**
   * whether the part does nothing without a core on this terminal; `pair`: a contact wants a core at both ends; `one`: one
   * of the terminals for which this is said
   */
  readonly needs: (part: P, mark: string) => boolean | 'pair' | 'one';
  /** whether its terminal PE has to be joined to earth */
  readonly needsEarth: (part: P) => boolean;
  /** a bar or splice, on which one more core is no trouble */
  readonly takesMoreCores?: true;
  /** the two ends of what makes it pull in */
  readonly coil?: readonly [string, string];
}

const either = (): Side => 'either';
const low = (): Side => 'low';
const mains = (): Side => 'mains';
const never = () => false;
const always = () => true;
const pair = () => 'pair' as const;
const POLES = ['+', '-', '~1', '~2'];
const PINS = ['VCC', 'GND', 'IN'];

/** Contacts that stand alone. */
const switched = { side: either, needs: pair, needsEarth: never };
/** Two terminals that do nothing unless both are wired. */
const inLine = { side: either, needs: always, needsEarth: never };
const COIL = ['A1', 'A2'] as const;
const coiled = {
  side: either,
  needs: (_: Part, mark: string) => mark === 'A1' || mark === 'A2' || ('pair' as const),
  needsEarth: never,
  coil: COIL,
};

type OnMains = OfKind<'plug'> | OfKind<'outlet'> | OfKind<'motor'> | OfKind<'load'>;

/** Two legs and three phases need no neutral. */
const neutralToo = ({ feed }: OnMains, mark: string) => mark !== 'N' || feed === 'single';
const onDc = ({ feed }: OnMains) => feed === 'dc';
const supplied = {
  side: (mark: string): Side => (mark === '+' || mark === '-' ? 'low' : 'mains'),
  needs: (part: OfKind<'motor'> | OfKind<'load'>, mark: string) =>
    part.pluggedInto === undefined &&
    neutralToo(part, mark) &&
    !(mark === '-' && part.returnsThrough !== undefined) &&
    !(mark === 'PE' && onDc(part)),
  needsEarth: (part: OfKind<'motor'> | OfKind<'load'>) => !part.class2Insulated && !onDc(part),
};

const KINDS: { readonly [K in PartKind]: KindInRepair<OfKind<K>> } = {
  supply: {
    side: (mark) => (/^[+\-~]/.test(mark) ? 'low' : 'either'),
    needs: (part, mark) =>
      POLES.includes(mark) || (part.taps === undefined ? 'pair' : mark === '0' || ('one' as const)),
    needsEarth: never,
  },
  battery: { side: low, needs: (_, mark) => POLES.includes(mark), needsEarth: never },
  gate: { ...switched, side: low },
  switch: switched,
  button: switched,
  cutout: switched,
  selector: switched,
  relay: coiled,
  timer: coiled,
  board: {
    side: either,
    needs: (_, mark) => PINS.includes(mark) || 'pair',
    needsEarth: never,
    coil: ['VCC', 'GND'],
  },
  diode: inLine,
  resistor: inLine,
  lamp: inLine,
  led: inLine,
  fuse: inLine,
  joint: { ...switched, takesMoreCores: true },
  plug: { side: mains, needs: neutralToo, needsEarth: never },
  outlet: { side: mains, needs: neutralToo, needsEarth: always },
  motor: supplied,
  load: supplied,
  box: { side: mains, needs: (part) => part.metal, needsEarth: (part) => part.metal },
};

/** What holds of a part by its kind. */
export function kindOf<P extends Part>(part: P): KindInRepair<P> {
  // A row takes parts of its own kind, which the type of a table cannot say.
  return KINDS[part.kind] as unknown as KindInRepair<P>;
}
