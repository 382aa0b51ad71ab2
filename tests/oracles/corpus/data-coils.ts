/** Slips with coils and supplies: 24 V for 12 V and back, AC for DC and back. */
import { isMap, isScalar, isSeq } from 'yaml';
import { figures, isAc } from '../brute-read.ts';
import type { Splice } from './sheet.ts';
import { type Doc, put, type Slip, textAt, usersOf, withKind } from './slips.ts';

const OTHER: Record<number, number> = { 12: 24, 24: 12, 5: 12 };

/** Volts in a text multiplied; per cent and amperes stay. */
const scaled = (text: string, by: number, unit: RegExp): string =>
  text.replace(new RegExp(`([\\d.]+)(\\s*(?:${unit.source})\\b)`), (_, n: string, u: string) => {
    return `${Number((Number(n) * by).toPrecision(6))}${u}`;
  });

/** A coil wound for other volts and the same power. */
function rewound(doc: Doc, path: string[], from: number, to: number): Splice[] {
  const by = to / from;
  const edits = put(
    doc,
    [...path, 'rated'],
    `${to} V ${isAc(textAt(doc, [...path, 'rated'])) ? 'AC' : 'DC'}`,
  );
  for (const key of ['pull-in', 'drop-out', 'most']) {
    const text = textAt(doc, [...path, key]);
    if (/V/.test(text)) edits.push(...put(doc, [...path, key], scaled(text, by, /V/)));
  }
  const ohm = textAt(doc, [...path, 'resistance']);
  if (ohm) edits.push(...put(doc, [...path, 'resistance'], scaled(ohm, by * by, /ohm/)));
  return edits;
}

/** The same coil for the other kind of current: what is printed on a coil of that kind and power. */
function otherKind(doc: Doc, path: string[]): Splice[] {
  const node = doc.getIn(path, true);
  if (!isMap(node) || !node.range) return [];
  const rated = textAt(doc, [...path, 'rated']);
  const volts = figures(rated).V ?? 12;
  const f = figures(textAt(doc, [...path, 'power']));
  const ohm = figures(textAt(doc, [...path, 'resistance'])).ohm;
  const watts = Number((f.W ?? f.VA ?? (ohm ? volts ** 2 / ohm : 1)).toPrecision(3));
  const coil = isAc(rated)
    ? `{rated: ${volts} V DC, power: ${watts} W, pull-in: 75 %, drop-out: 10 %, most: 120 %, suppressor: none}`
    : `{rated: ${volts} V AC, power: ${watts} VA, pull-in: 80 %, drop-out: 30 %, most: 115 %, suppressor: none}`;
  const [from, to] = node.range;
  const first = node.flow === true ? '' : '\n';
  return [{ from, to, put: coil + first }];
}

export function coilSlips(doc: Doc): Slip[] {
  return ['relay', 'timer'].flatMap((kind) =>
    withKind(doc, kind).flatMap(({ path, name }): Slip[] => {
      const coil = [...path, 'coil'];
      const rated = textAt(doc, [...coil, 'rated']);
      const volts = figures(rated).V ?? 0;
      const to = OTHER[volts];
      const parts = usersOf(doc, name);
      return [
        ...(to
          ? [
              {
                name: `${name} for ${to} V`,
                kind: 'coil for other volts',
                parts,
                edits: rewound(doc, coil, volts, to),
              },
            ]
          : []),
        {
          name: `${name} for ${isAc(rated) ? 'DC' : 'AC'}`,
          kind: 'coil for other current',
          parts,
          edits: otherKind(doc, coil),
        },
      ];
    }),
  );
}

/** Ends on the supply's poles renamed from `+ -` to `~1 ~2` or back. */
function poles(doc: Doc, name: string, ac: boolean): Splice[] {
  const to: Record<string, string> = ac ? { '~1': '+', '~2': '-' } : { '+': '~1', '-': '~2' };
  const runs = doc.get('runs');
  const out: Splice[] = [];
  if (!isSeq(runs)) return out;
  for (const run of runs.items) {
    if (!isMap(run)) continue;
    const cores = run.get('cores');
    const pairs = isMap(cores) ? cores.items.map((p) => p.value) : [run.get('link', true)];
    for (const end of pairs.flatMap((p) => (isSeq(p) ? p.items : []))) {
      if (!isScalar(end) || !end.range) continue;
      const [part, pole] = String(end.value).split('.');
      if (part === name && to[pole!])
        out.push({ from: end.range[0], to: end.range[1], put: `${name}.${to[pole!]}` });
    }
  }
  return out;
}

export function supplySlips(doc: Doc): Slip[] {
  return withKind(doc, 'supply').flatMap(({ path, name }): Slip[] => {
    const output = textAt(doc, [...path, 'output']);
    const volts = figures(output).V ?? 0;
    const ac = isAc(output);
    const to = OTHER[volts];
    const open = textAt(doc, [...path, 'no-load']);
    const noLoad = (v: string): Splice[] => (open ? put(doc, [...path, 'no-load'], v) : []);
    const kind = ac ? 'DC' : 'AC';
    const limit = figures(textAt(doc, [...path, 'limit']));
    const tenth = limit.A ? `${limit.A / 10} A` : limit.VA ? `${limit.VA / 10} VA` : '';
    const slips: Slip[] = [
      {
        name: `${name} of ${volts} V ${kind}`,
        kind: 'supply of other current',
        parts: [name],
        edits: [
          ...put(doc, [...path, 'output'], `${volts} V ${kind}`),
          ...put(doc, [...path, 'regulation'], ac ? 'regulated' : 'transformer'),
          ...noLoad(`${volts} V`),
          ...poles(doc, name, ac),
        ],
      },
    ];
    if (tenth) {
      slips.push({
        name: `${name} of ${tenth}`,
        kind: 'supply of a tenth',
        parts: [name],
        edits: put(doc, [...path, 'limit'], tenth),
      });
    }
    if (to) {
      const edits = [
        ...put(doc, [...path, 'output'], `${to} V ${ac ? 'AC' : 'DC'}`),
        ...noLoad(scaled(open, to / volts, /V/)),
      ];
      slips.push({ name: `${name} of ${to} V`, kind: 'supply of other volts', parts: [name], edits });
    }
    return slips;
  });
}
