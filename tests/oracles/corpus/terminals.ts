/** Where a core end may land: the terminals that the parts of a plan have, and the side each belongs to. */
import { isAc, listOf, type Part, text, type Wiring } from '../brute-read.ts';

/** `low` the loop, `mains` a working conductor of the mains, `earth` the protective conductor. */
export type Side = 'low' | 'mains' | 'earth';

export const PINS = ['L', 'N', 'L1', 'L2', 'L3', 'PE'];
const TWO: Record<string, string[]> = {
  battery: ['+', '-'],
  diode: ['A', 'K'],
  led: ['A', 'K'],
  resistor: ['1', '2'],
  lamp: ['1', '2'],
  fuse: ['1', '2'],
};

function contactTabs(w: Wiring, part: Part): string[] {
  const tabs = part.contacts.map((k) => [k.com, k.no, k.nc].filter((t) => t !== ''));
  if (part.kind !== 'cutout') return tabs.flat();
  const numbered = ['95', '96', '97', '98'].some((t) => w.used.has(`${part.name}.${t}`));
  return numbered ? tabs.slice(1).flat() : tabs[0]!;
}

/** The terminals of one part as a plan may write them. A mains part has those that the right plan uses, as written. */
export function terminalsOf(w: Wiring, part: Part, written: ReadonlySet<string> = w.used): string[] {
  const full = (tabs: string[]): string[] => tabs.map((t) => `${part.name}.${t}`);
  const used = PINS.filter((t) => written.has(`${part.name}.${t}`));
  if (part.kind === 'joint') return [part.name];
  if (part.kind === 'supply')
    return full([...(isAc(part.fields.output) ? ['~1', '~2'] : ['+', '-']), ...used]);
  if (['plug', 'outlet', 'motor', 'load', 'box'].includes(part.kind)) return full(used);
  if (part.kind === 'selector') {
    const positions = listOf(part.fields.positions).map(text);
    return full(['COM', ...positions.filter((x) => x !== 'off')]);
  }
  const own = TWO[part.kind] ?? contactTabs(w, part);
  if (part.kind === 'board') return full(['VCC', 'GND', 'IN', ...own]);
  return full(part.kind === 'relay' || part.kind === 'timer' ? ['A1', 'A2', ...own] : own);
}

/** Sides of all terminals in the right plan: what wire, contacts and fuses join to a plug. */
export function sidesOf(w: Wiring): (key: string) => Side {
  const up = new Map<string, string>();
  const find = (x: string): string => {
    const y = up.get(x);
    return y === undefined || y === x ? x : find(y);
  };
  const join = (a: string, b: string): void => {
    if (find(a) !== find(b)) up.set(find(a), find(b));
  };
  for (const [a, b] of w.joins) join(a, b);
  for (const p of w.parts.values()) {
    if (p.kind === 'fuse' || p.kind === 'selector') {
      const all = terminalsOf(w, p);
      for (const t of all) join(all[0]!, t);
    }
    for (const k of p.contacts) {
      for (const t of [k.no, k.nc]) if (t && k.com) join(`${p.name}.${k.com}`, `${p.name}.${t}`);
    }
  }
  const mains = new Set<string>();
  const earth = new Set<string>();
  for (const p of w.parts.values()) {
    if (!['plug', 'outlet', 'motor', 'load', 'box'].includes(p.kind)) continue;
    for (const t of PINS) (t === 'PE' ? earth : mains).add(find(`${p.name}.${t}`));
  }
  return (key) => (mains.has(find(key)) ? 'mains' : earth.has(find(key)) ? 'earth' : 'low');
}
