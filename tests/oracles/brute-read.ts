/**
 * Reads a plan for the brute-force oracle straight from its text with the `yaml` package.
 * Deliberately forgiving and deliberately apart from the product's reader: it expects a valid plan.
 */
import { parse } from 'yaml';

export type Fields = { [key: string]: unknown };

/** One changeover, make or break contact and the plan's own words for its three tabs ('' where missing). */
export interface Contact {
  part: string;
  com: string;
  no: string;
  nc: string;
}

export interface Part {
  name: string;
  kind: string;
  fields: Fields;
  contacts: Contact[];
  /** accepted spelling of a terminal -> its one name here */
  alias: Map<string, string>;
}

export interface Wiring {
  parts: Map<string, Part>;
  /** fixed joins, terminal keys such as `K1.A1`, two by two */
  joins: [string, string][];
  /** terminal keys that a run names */
  used: Set<string>;
  intent: Fields | undefined;
}

export const isMap = (x: unknown): x is Fields => typeof x === 'object' && x !== null && !Array.isArray(x);
export const text = (x: unknown): string => (x === undefined || x === null ? '' : String(x));
export const listOf = (x: unknown): unknown[] => (x === undefined ? [] : Array.isArray(x) ? x : [x]);

const PREFIX: Record<string, number> = { '': 1, m: 1e-3, u: 1e-6, µ: 1e-6, k: 1e3, M: 1e6 };

/** Every number-and-unit in a string: `12 V DC 2 W` gives V 12, W 2. Units: V, A, W, VA, ohm, %. */
export function figures(x: unknown): Record<string, number> {
  const found: Record<string, number> = {};
  for (const m of text(x).matchAll(/([\d.]+)\s*([mukM\u00b5]?)(VA(?!C)|V|A|W|ohms?|Ω|%)/g)) {
    const unit = m[3] === 'Ω' || m[3] === 'ohms' ? 'ohm' : m[3]!;
    found[unit] ??= Number(m[1]) * PREFIX[m[2]!]!;
  }
  return found;
}

export const isAc = (x: unknown): boolean => /AC/.test(text(x));

/** Maps merge key by key, everything else is replaced. */
function over(base: Fields, top: Fields): Fields {
  const out: Fields = { ...base };
  for (const [k, v] of Object.entries(top)) {
    const b = out[k];
    out[k] = isMap(v) && isMap(b) ? over(b, v) : v;
  }
  return out;
}

function take(stock: Fields, fields: Fields): Fields {
  const from = fields.from;
  if (from === undefined) return fields;
  const base = stock[text(from)];
  const { from: _gone, ...rest } = fields;
  return over(isMap(base) ? take(stock, base) : {}, rest);
}

const SINGLE: Record<string, string[]> = {
  COM: ['11', '15', '30'],
  NO: ['14', '18', '87'],
  NC: ['12', '16', '87a'],
};

/** The contacts of a part under the names a plan may write, and every other accepted name for them. */
function contactsOf(name: string, kind: string, fields: Fields, alias: Map<string, string>): Contact[] {
  if (!['gate', 'switch', 'button', 'cutout', 'relay', 'timer', 'board'].includes(kind)) return [];
  const poles = fields.poles;
  if (Array.isArray(poles)) {
    return poles.map((pole: unknown, i) => {
      const p = isMap(pole) ? pole : {};
      const form = text(p.form) || 'changeover';
      const marks = listOf(p.marks).map(text);
      const order =
        form === 'changeover' ? ['COM', 'NC', 'NO'] : form === 'make' ? ['COM', 'NO'] : ['COM', 'NC'];
      const at = (tab: string): string => {
        const k = order.indexOf(tab);
        return k < 0 ? '' : (marks[k] ?? `${i + 1}.${tab}`);
      };
      return { part: name, com: at('COM'), no: at('NO'), nc: at('NC') };
    });
  }
  if (['relay', 'timer', 'board'].includes(kind)) {
    for (const [tab, others] of Object.entries(SINGLE)) for (const o of others) alias.set(o, tab);
  }
  const tabs = Array.isArray(fields.terminals) ? fields.terminals.map(text) : ['COM', 'NO', 'NC'];
  const at = (tab: string): string => (tabs.includes(tab) ? tab : '');
  const out: Contact[] = [{ part: name, com: at('COM'), no: at('NO'), nc: at('NC') }];
  if (kind === 'cutout') {
    out.push({ part: name, com: '95', no: '', nc: '96' }, { part: name, com: '97', no: '98', nc: '' });
  }
  return out;
}

function readPart(name: string, fields: Fields): Part {
  const kind = text(fields.kind);
  const alias = new Map<string, string>();
  if (kind === 'relay' || kind === 'timer') {
    alias.set('86', 'A1').set('85', 'A2');
  }
  if (kind === 'supply') alias.set('L1', 'L').set('L2', 'N');
  const contacts = contactsOf(name, kind, fields, alias);
  if (isMap(fields.marks)) {
    for (const [mark, plain] of Object.entries(fields.marks)) {
      alias.set(mark, alias.get(text(plain)) ?? text(plain));
    }
  }
  return { name, kind, fields, contacts, alias };
}

/** The one key of a terminal: `K1.87` and `K1.NO` both give `K1.NO`; a joint is its name alone. */
export function keyOf(parts: Map<string, Part>, written: unknown): string {
  const s = text(written);
  const dot = s.indexOf('.');
  const name = dot < 0 ? s : s.slice(0, dot);
  const part = parts.get(name);
  if (!part) throw new Error(`oracle: no part named ${name}`);
  if (dot < 0 || part.kind === 'joint') return name;
  const t = s.slice(dot + 1);
  return `${name}.${part.alias.get(t) ?? t}`;
}

/** Parts, fixed joins and intent of a plan. */
export function readWiring(source: string): Wiring {
  const doc: unknown = parse(source, { maxAliasCount: 1000 });
  if (!isMap(doc)) throw new Error('oracle: not a plan');
  const stock = isMap(doc.stock) ? doc.stock : {};
  const parts = new Map<string, Part>();
  for (const [name, raw] of Object.entries(isMap(doc.parts) ? doc.parts : {})) {
    parts.set(name, readPart(name, take(stock, isMap(raw) ? raw : {})));
  }
  const joins: [string, string][] = [];
  const used = new Set<string>();
  for (const run of listOf(doc.runs)) {
    if (!isMap(run)) continue;
    const cores = isMap(run.cores) ? Object.values(run.cores) : [];
    for (const pair of [...cores, run.link]) {
      if (!Array.isArray(pair) || pair.length !== 2) continue;
      const a = keyOf(parts, pair[0]);
      const b = keyOf(parts, pair[1]);
      joins.push([a, b]);
      used.add(a).add(b);
    }
  }
  return { parts, joins, used, intent: isMap(doc.intent) ? doc.intent : undefined };
}
