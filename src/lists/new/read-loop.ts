/** Reading the answers that speak of the loop: switches with their distances, supply and relay at hand. */
import { nameProblem } from '../../plan/names.ts';
import type { Parsed } from '../../plan/quantity-reader.ts';
import * as ratings from '../../plan/rated-quantity.ts';
import { printable } from '../../text/escape.ts';
import type { Placed, RelayAtHand, SupplyAtHand } from './answers.ts';
import { CHOOSE, distanceOf, NONE, reading, spaced } from './read-answers.ts';
import { Apart } from './taken-apart.ts';

/** Switches that one loop may have here. */
const MOST = 300;
/** Characters of a list of them, and of one. */
const LONGEST_LIST = 20_000;
const LONGEST_ITEM = 100;
const UNIT = /(?:^|[\d\s])(m|cm|mm|ft|feet|foot|in|yd|metres?|meters?)\b/i;

/** `saw 6 ft, planer 4`: names with distances, the unit of the first for those that have none; `12 x 3 m` for twelve. */
function placed(text: string, what: string): Parsed<Placed[]> {
  const many = text.length > LONGEST_ITEM ? null : /^(\d{1,4})\s*x\s*(.+)$/i.exec(text);
  if (many !== null && !text.includes(',')) return alike(Number(many[1]), many[2]!, what);
  const found: Placed[] = [];
  let unit: string | undefined;
  for (const item of text
    .split(/[,;\n]/)
    .map((t) => t.trim())
    .filter((t) => t !== '')) {
    if (found.length >= MOST) return { problem: `more than ${MOST} of them` };
    const one = onePlaced(item, unit);
    if ('problem' in one) return one;
    unit ??= UNIT.exec(one.value.length.text)?.[1];
    if (found.some((f) => f.name.toLowerCase() === one.value.name.toLowerCase()))
      return { problem: `${one.value.name} stands twice; give each a name of its own` };
    found.push(one.value);
  }
  return { value: found };
}

function alike(count: number, text: string, what: string): Parsed<Placed[]> {
  if (count < 1 || count > MOST) return { problem: `found ${count}, expected 1 to ${MOST}` };
  const length = distanceOf(text);
  if ('problem' in length) return length;
  return {
    value: Array.from({ length: count }, (_, i) => ({ name: `${what}-${i + 1}`, length: length.value })),
  };
}

/** A name and, behind it, the longest stretch that reads as a length. */
function onePlaced(item: string, unit: string | undefined): Parsed<Placed> {
  if (item.length > LONGEST_ITEM)
    return { problem: `"${printable(item.slice(0, 40))}..." is longer than ${LONGEST_ITEM} characters` };
  const cuts = [...item.matchAll(/[\s:=]+(?=[\d.])/g)];
  for (const cut of cuts) {
    const length = distanceOf(item.slice(cut.index + cut[0].length), unit);
    if ('problem' in length) continue;
    const name = item.slice(0, cut.index).trim().replace(/\s+/g, '-');
    const wrong = nameProblem(name);
    return wrong === undefined ? { value: { name, length: length.value } } : { problem: wrong };
  }
  const shown = printable(item.length > 50 ? `${item.slice(0, 47)}...` : item);
  const last = cuts.at(-1);
  const bare = last !== undefined && /^[\d. ]+$/.test(item.slice(last.index));
  return {
    problem: `"${shown}" has no length${bare ? ' with its unit' : ''}; write a name and its distance, such as saw 6 ft or saw 2 m`,
  };
}

export const readGates = reading(
  'gates with their distances',
  ['saw 6 ft, planer 4 ft', '12 x 3 m'],
  (text): Parsed<readonly Placed[]> => placed(text, 'gate'),
  LONGEST_LIST,
);

export const readCutouts = reading(
  'none, or switches with their distances',
  ['none', 'bin-full 6 ft'],
  (text): Parsed<readonly Placed[]> => (NONE.test(text) ? { value: [] } : placed(text, 'cut-out')),
  LONGEST_LIST,
);

const SUCH_SUPPLY = 'choose, 24 V AC, or 12 V DC 1 A regulated class 2';
const SUPPLY_WORDS = ['regulated', 'unregulated', 'class 2', 'choose'];

export const readSupply = reading(
  'choose, or what is printed on the supply',
  ['choose', '12 V DC 1 A regulated class 2'],
  (text): Parsed<SupplyAtHand | undefined> => {
    if (CHOOSE.test(text)) return { value: undefined };
    const apart = new Apart(text);
    const class2 = apart.take(/\b(class[- ]?(?:2|ii)|SELV|LPS)\b/i) !== undefined;
    const regulated = apart.take(/\b(unregulated|regulated)\b/i)?.toLowerCase();
    const noLoad = apart.take(/\bno[- ]load\s*(\d+(?:\.\d+)?\s*V)\b/i);
    const tolerance = apart.take(/(\d+(?:\.\d+)?\s*%)/);
    const volts = apart.take(/(\d+(?:\.\d+)?\s*V\s*(?:DC|AC))\b/i);
    const limit = apart.take(/(\d+(?:\.\d+)?\s*(?:mA|A|VA|W))\b/i);
    if (volts === undefined) return { problem: `no volts with DC or AC in it; write it as ${SUCH_SUPPLY}` };
    const left = apart.complaint(SUPPLY_WORDS, SUCH_SUPPLY);
    if (left !== undefined) return { problem: left };
    const output = ratings.voltsKind.parse(volts);
    if ('problem' in output) return output;
    const most = limit === undefined ? undefined : ratings.supplyLimit.parse(limit);
    if (most !== undefined && 'problem' in most) return most;
    const { volts: v, kind } = output.value;
    if (regulated !== undefined && kind === 'ac')
      return { problem: 'an AC supply is a transformer, which is not regulated; leave that word out' };
    return {
      value: {
        volts: v,
        kind,
        limit: limit === undefined ? undefined : spaced(limit),
        regulation: kind === 'ac' ? 'transformer' : (regulated as 'regulated' | 'unregulated' | undefined),
        class2,
        'no-load': noLoad === undefined ? undefined : spaced(noLoad),
        tolerance: tolerance === undefined ? undefined : spaced(tolerance),
      },
    };
  },
);

const SUCH_RELAY = 'choose, or coil 12 V DC 155 ohm pull-in 75 %, 30 A 240 V AC, 1.5 hp 120 V AC';
const RELAY_WORDS = ['coil', 'pull-in', 'drop-out', 'most', 'inrush', 'AC-3', 'poles', 'choose'];
const NUMBER = String.raw`\d+(?:\.\d+)?`;
/** Words that stand beside a figure of the coil, before it or behind it. */
const BESIDE = String.raw`(?:pull[- ]?in|drop[- ]?out|most|inrush|hot[- ]rise)\s*(?:at|:|=)?\s*`;
/** Where the figure that follows has no such word before it. */
const FREE = String.raw`(?<!${BESIDE})(?<![\w.])`;

/**
 * A figure with its word, `pull-in 75 %` or `75 % pull-in`. Of two figures without a comma between them each keeps the word that
 * stands on the same side of it.
 */
function figured(apart: Apart, word: string, units: string): string | undefined {
  const figure = String.raw`${NUMBER}\s*(?:${units})`;
  const behind = apart.take(new RegExp(String.raw`${FREE}(${figure})\s*${word}(?![\w-])`, 'i'));
  return (
    behind ??
    apart.take(new RegExp(String.raw`\b${word}\s*(?:at|:|=)?\s*(${figure})(?![\w])(?!\s*(?:DC|AC))`, 'i'))
  );
}

/** Words that say what a figure is of, and that its unit says as well. */
const FILLERS = /(?<![\w-])(coils?|contacts?|relay|contactor|rated|rating|resistance|with|and)(?![\w-])/i;

export const readRelay = reading(
  'choose, or what is printed on the relay',
  ['choose', 'coil 12 V DC 155 ohm, 30 A 240 V AC, 1.5 hp 120 V AC'],
  (text): Parsed<RelayAtHand | undefined> => {
    if (CHOOSE.test(text)) return { value: undefined };
    const apart = new Apart(text);
    const motor = apart
      .all(
        /((?:\d+(?:\.\d+)?|\d*\.\d+)(?:\/\d+)?\s*(?:hp|kW)\s*\d+(?:\.\d+)?\s*V\s*AC(?:\s*3-phase)?)(?!\w)/i,
      )
      .map(spacedRating);
    const ac3 = apart.take(
      /\bAC-?3\s*:?\s*(\d+(?:\.\d+)?\s*A(?:\s*(?:@|at)?\s*\d+(?:\.\d+)?\s*V(?:\s*AC)?)?)\b/i,
    );
    const list = apart.all(/(\d+(?:\.\d+)?\s*A\s*\d+(?:\.\d+)?\s*V\s*(?:AC|DC))\b/i).map(spacedRating);
    const limits = {
      'pull-in': figured(apart, 'pull[- ]?in', '%|V'),
      'drop-out': figured(apart, 'drop[- ]?out', '%|V'),
      most: figured(apart, 'most', '%|V'),
      inrush: figured(apart, 'inrush', 'VA'),
      'hot-rise': figured(apart, 'hot[- ]rise', 'K'),
    };
    const poles = apart.take(/\b([123])[- ]?poles?\b/i);
    const draw = {
      resistance: apart.take(/(\d+(?:\.\d+)?\s*(?:ohms?|Ω))(?!\w)/i),
      power: apart.take(/(\d+(?:\.\d+)?\s*(?:VA|W))\b/i),
      current: apart.take(/(\d+(?:\.\d+)?\s*mA)\b/i),
    };
    const rated = apart.take(/(\d+(?:\.\d+)?\s*V\s*(?:AC|DC))\b/i);
    if (rated === undefined)
      return {
        problem: apart.take(/(\d+(?:\.\d+)?\s*V)(?!A)\b/i)
          ? `volts of a coil without DC or AC; write it as ${SUCH_RELAY}`
          : `no volts of the coil in it; write it as ${SUCH_RELAY}`,
      };
    apart.all(FILLERS);
    const left = apart.complaint(RELAY_WORDS, SUCH_RELAY);
    if (left !== undefined) return { problem: left };
    const output = ratings.voltsKind.parse(rated);
    if ('problem' in output) return output;
    const coil = Object.entries({ ...draw, ...limits }).flatMap(([key, value]) =>
      value === undefined ? [] : [[key, spaced(value)] as const],
    );
    const wrong = wrongWith(motor, list);
    if (wrong !== undefined) return { problem: wrong };
    const { volts, kind } = output.value;
    return {
      value: {
        volts,
        kind,
        coil: Object.fromEntries(coil),
        ratings: list,
        motor,
        ac3: ac3 === undefined ? undefined : spacedRating(ac3),
        poles: Number(poles ?? '1'),
      },
    };
  },
);

const spacedRating = (text: string): string =>
  spaced(text).replace(
    /(\d) ?(V|A) ?(AC|DC)/gi,
    (_, n, v, k) => `${n} ${v.toUpperCase()} ${k.toUpperCase()}`,
  );

function wrongWith(motor: readonly string[], list: readonly string[]): string | undefined {
  for (const [of, texts] of [
    [ratings.motorRating, motor],
    [ratings.rating, list],
  ] as const)
    for (const text of texts) {
      const parsed = of.parse(text);
      if ('problem' in parsed) return parsed.problem;
    }
  return undefined;
}
