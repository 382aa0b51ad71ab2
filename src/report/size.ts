/** What a design allows and needs, for reading. */
import type { CoilChoice, Limit, Section, Size, SizeFigure } from '../lists/size/size-model.ts';
import { lengthWords } from '../text/lengths.ts';
import { ampsText, rounded } from '../text/numbers.ts';
import { listOf } from '../text/word-list.ts';
import { type Block, heading, list, paragraph, table } from './blocks.ts';
import { toldBlocks } from './told.ts';

const HOW =
  'Each figure was put into the plan, with all else as it stands, and passed the whole check. One step beyond it, the check in brackets says no or cannot tell; "pullin explain NAME" tells more of it. What the plan leaves out counts at its worse end. Two figures moved at once may fail together: check the plan that you end with. A caution named beside a figure does not fail a plan.';
const WOULD_DO =
  'The figures below are what would do if everything else were right: nothing may be built by them until the plan passes.';
const NOT_ALL =
  'This is no approval. Local codes and a licensed electrician have the last word, on the mains side above all.';

const checked = ({ check, at }: Limit): string => `${at} fails [${check}]`;

function limitWords({ limit, next }: SizeFigure): string {
  if (limit === null) return '';
  const more = next === null ? '' : `, next limit [${next.check}] at ${next.at}`;
  return `; ${checked(limit)}${more}`;
}

function cautionWords({ cautions }: SizeFigure): string {
  return cautions.length === 0
    ? ''
    : `, with the caution${cautions.length > 1 ? 's' : ''} ${listOf(cautions)}`;
}

/** `contact marked 1 hp at 120 V AC`, with what is rated before it where the words do not say it. */
function ratedWords({ what, words }: SizeFigure): string {
  const said = ['motor rating', 'making current', 'contact', 'least current', 'breaker', 'pattern', 'most'];
  return said.includes(what) || words.startsWith(what) ? words : `${what} ${words}`;
}

const sentence = (f: SizeFigure, i: number, all: readonly SizeFigure[]): string =>
  `${all[i - 1]?.of === f.of ? 'the same' : f.of}: ${ratedWords(f)}${cautionWords(f)}${limitWords(f)}`;

/** Figures that are told alike, each with all that it is told of. */
function together(figures: readonly SizeFigure[]): SizeFigure[] {
  const groups = new Map<string, SizeFigure[]>();
  for (const f of figures) {
    const key = JSON.stringify([f.words, f.cautions, f.limit?.check, f.limit?.at]);
    groups.set(key, [...(groups.get(key) ?? []), f]);
  }
  return [...groups.values()].map((alike) => ({
    ...alike[0]!,
    of: `${listOf(alike.map((f) => f.of))}${alike.length > 1 ? ', each by itself' : ' by itself'}`,
  }));
}

const untoldItems = ({ untold }: Section): string[] => untold.map((why) => `not told: ${why}`);

function section(title: string, of: Section, figures: readonly SizeFigure[] = of.figures): Block[] {
  const items = [...figures.map(sentence), ...untoldItems(of)];
  return items.length === 0 ? [] : [heading(2, title), list('dash', items, { close: true })];
}

function wireBlocks({ wire }: Size): Block[] {
  const cables = wire.figures.filter((f) => !f.of.startsWith('run '));
  const runs = together(wire.figures.filter((f) => f.of.startsWith('run ')));
  return section('Thinnest wire', wire, [...cables, ...runs]);
}

function reachBlocks({ reach, plot }: Size): Block[] {
  if (reach.figures.length === 0) return section('How far the farthest gate could be', reach);
  const far = plot === null ? '' : ` ${plot.farthest}, from ${plot.source} along the cable`;
  const notes = [
    ...(reach.figures.some((f) => f.limit === null) ? ['or more: no farther was tried'] : []),
    ...untoldItems(reach),
  ];
  return [
    heading(2, 'How far the farthest gate could be'),
    paragraph(`The farthest gate is${far}; all wire of its kind in the loop in one gauge.`, { close: true }),
    table(
      reach.figures,
      [
        { head: 'gauge', of: (f) => f.of },
        { head: 'at most', right: true, of: (f) => f.words },
        { head: 'fails at', right: true, of: (f) => f.limit?.at ?? '' },
        { head: 'check', of: (f) => (f.limit === null ? '' : f.limit.check) },
        { head: 'then', of: (f) => (f.next === null ? '' : `${f.next.check} at ${f.next.at}`) },
        { head: 'cautions', of: (f) => f.cautions.join(', ') },
      ],
      { close: true, tooWide: 'lines' },
    ),
    ...(notes.length === 0 ? [] : [list('dash', notes, { close: true })]),
  ];
}

const voltsText = (x: number | null): string => (x === null ? '-' : `${rounded(x, 4)} V`);

function shareText({ least, pullIn }: CoilChoice): string {
  return least === null || pullIn === null ? '-' : `${rounded((least / pullIn) * 100, 3)} %`;
}

function coilBlocks({ coils }: Size): Block[] {
  const title = heading(2, 'Coils of other volts, side by side');
  if (coils.rows.length === 0) {
    const items = coils.untold.map((why) => `not told: ${why}`);
    return items.length === 0 ? [] : [title, list('dash', items, { close: true })];
  }
  const against = coils.rows.flatMap((row) =>
    row.untold === null
      ? row.against.map((l) => `${l.at}: ${l.message} [${l.check}]`)
      : [`${row.volts} V ${row.kind.toUpperCase()}: not told: ${row.untold}`],
  );
  return [
    title,
    table(
      coils.rows,
      [
        { head: 'coil', of: (r) => `${r.volts} V ${r.kind.toUpperCase()}${r.own ? ' (the plan)' : ''}` },
        { head: 'gets', right: true, of: (r) => voltsText(r.least) },
        { head: 'needs', right: true, of: (r) => voltsText(r.pullIn) },
        { head: 'share', right: true, of: shareText },
        { head: 'draws', right: true, of: (r) => (r.amps === null ? '-' : ampsText(r.amps)) },
        { head: 'thinnest', of: (r) => r.gauge ?? 'none' },
        { head: 'against it', only: ['markdown'], of: (r) => r.against.map((l) => l.check).join(', ') },
      ],
      { close: true, tooWide: 'lines' },
    ),
    list('dash', [...against, ...coils.taken.map((t) => `taken: ${t}`)], { close: true }),
  ];
}

/** The document for a terminal or as Markdown; `drawn` where the volts by distance are drawn as well. */
export function sizeDocument(size: Size, title: string, drawn = false): Block[] {
  const { check, unit } = size;
  return [
    heading(1, `Sizes for ${title}`),
    ...toldBlocks(check, WOULD_DO),
    ...(size.with.length === 0
      ? []
      : [
          paragraph('Worked out with these changes, which are not in the file:'),
          list('dash', size.with, { close: true }),
        ]),
    ...(size.asks.length === 0
      ? []
      : [paragraph('The check has to be told:'), list('dash', size.asks, { close: true })]),
    paragraph(HOW),
    ...wireBlocks(size),
    ...reachBlocks(size),
    ...section('Gates more', size.gates),
    ...section('Supply and fuses', size.supply),
    ...coilBlocks(size),
    ...section('Contacts to look for', size.contacts),
    ...section('A contactor in the loop', size.contactor),
    ...section('Breaker, plug and box', size.mains),
    ...(size.plot === null || drawn
      ? []
      : [
          paragraph(
            `-o FILE.svg draws the volts at ${size.plot.coil} against the distance, to ${lengthWords(farthestDrawn(size), unit)}.`,
          ),
        ]),
    paragraph(NOT_ALL),
  ];
}

function farthestDrawn({ plot }: Size): number {
  return Math.max(0, ...(plot?.lines ?? []).flatMap((l) => l.points.map((p) => p.metres)));
}
