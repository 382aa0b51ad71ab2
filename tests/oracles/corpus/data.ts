/** Single slips in the data of a plan: a figure misread, a part of the wrong kind bought, a barrier forgotten. */
import { parseDocument } from 'yaml';
import { coilSlips, supplySlips } from './data-coils.ts';
import type { Mutant } from './mutant.ts';
import { lineAt, splice } from './sheet.ts';
import { type Doc, put, type Slip, textAt, usersOf, withKind } from './slips.ts';

const AWG = [4, 6, 8, 10, 12, 14, 16, 18, 20, 22, 24, 26, 28];
const MM2 = [6, 4, 2.5, 1.5, 1, 0.75, 0.5, 0.34, 0.22, 0.14];
const HP = [0.25, 0.5, 0.75, 1, 1.5, 2, 3, 5, 7.5];
const KW = [0.37, 0.55, 0.75, 1.1, 1.5, 2.2, 3, 4, 5.5];

/** Parts on the runs of one cable. */
function partsOn(doc: Doc, cable: string): string[] {
  const plan = doc.toJS({ maxAliasCount: 1000 }) as { runs?: { cable?: unknown; cores?: object }[] };
  const runs = (plan.runs ?? []).filter((r) => r.cable === cable);
  const ends = runs.flatMap((r) => Object.values(r.cores ?? {}).flat());
  return [...new Set(ends.map((e) => String(e).split('.')[0]!))];
}

/** `2 m` to `20 m`; every number of the text. */
const times = (text: string, by: number): string =>
  text.replace(/\d+(\.\d+)?/g, (n) => String(Number((Number(n) * by).toPrecision(6))));

function cableSlips(doc: Doc): Slip[] {
  return withKind(doc, 'cable').flatMap(({ path, name }): Slip[] => {
    const gauge = textAt(doc, [...path, 'gauge']);
    const list = /AWG/.test(gauge) ? AWG : MM2;
    const thin = list[list.indexOf(Number.parseFloat(gauge)) + 2];
    const on = partsOn(doc, name);
    const parts = [name, ...on];
    const unit = /AWG/.test(gauge) ? ' AWG' : ' mm2';
    return [
      ...(thin === undefined
        ? []
        : [
            {
              name: `${name} ${thin}${unit}`,
              kind: 'cable two sizes thinner',
              parts,
              edits: put(doc, [...path, 'gauge'], thin + unit),
            },
          ]),
      {
        name: `${name} 50 V`,
        kind: 'insulation for 50 V',
        parts,
        edits: put(doc, [...path, 'insulation'], '50 V'),
      },
    ];
  });
}

function lengthSlips(doc: Doc): Slip[] {
  const plan = doc.toJS({ maxAliasCount: 1000 }) as { runs?: { length?: string; cores?: object }[] };
  return (plan.runs ?? []).flatMap((run, i): Slip[] => {
    if (run.length === undefined) return [];
    const parts = Object.values(run.cores ?? {})
      .flat()
      .map((e) => String(e).split('.')[0]!);
    const edits = put(doc, ['runs', i, 'length'], times(run.length, 10));
    return [{ name: `run ${i + 1} ten times as long`, kind: 'length times ten', parts, edits }];
  });
}

function motorSlips(doc: Doc): Slip[] {
  return withKind(doc, 'motor').flatMap(({ path, name }): Slip[] => {
    const power = textAt(doc, [...path, 'power']);
    const size = Number.parseFloat(power);
    const list = /hp/.test(power) ? HP : KW;
    const up = list.find((x) => x > size);
    if (up === undefined) return [];
    const edits = put(doc, [...path, 'power'], `${up} ${/hp/.test(power) ? 'hp' : 'kW'}`);
    for (const key of ['amps', 'locked-rotor']) {
      const amps = textAt(doc, [...path, key]);
      if (amps) edits.push(...put(doc, [...path, key], times(amps, up / size)));
    }
    const outlet = textAt(doc, [...path, 'plugged-into']);
    const parts = [...usersOf(doc, name), outlet].filter((x) => x !== '');
    return [{ name: `${name} of ${up}`, kind: 'motor a size up', parts, edits }];
  });
}

function boxSlips(doc: Doc): Slip[] {
  return withKind(doc, 'box').flatMap(({ path, name }): Slip[] =>
    textAt(doc, [...path, 'divider']) === 'true'
      ? [
          {
            name: `${name} bare inside`,
            kind: 'box without divider',
            parts: [name],
            edits: put(doc, [...path, 'divider'], 'false'),
          },
        ]
      : [],
  );
}

function fuseSlips(doc: Doc): Slip[] {
  return withKind(doc, 'fuse').map(({ path, name }): Slip => {
    const rating = textAt(doc, [...path, 'rating']);
    return {
      name: `${name} ten times`,
      kind: 'fuse times ten',
      parts: [name],
      edits: put(doc, [...path, 'rating'], times(rating, 10)),
    };
  });
}

/** Every single slip in the data of a plan. */
export function dataMutants(text: string): Mutant[] {
  const doc = parseDocument(text);
  const slips = [
    ...cableSlips(doc),
    ...lengthSlips(doc),
    ...coilSlips(doc),
    ...supplySlips(doc),
    ...motorSlips(doc),
    ...boxSlips(doc),
    ...fuseSlips(doc),
  ];
  return slips
    .filter((s) => s.edits.length > 0)
    .map((s) => ({
      name: s.name,
      kind: s.kind,
      family: 'data' as const,
      text: splice(text, s.edits),
      touched: { parts: s.parts, cores: [], lines: s.edits.map((e) => lineAt(text, e.from)) },
    }));
}
