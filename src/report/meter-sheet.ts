/** The commissioning sheet, with room to write in what was read. */
import type { CheckStep, MeterSheet, MeterStep, ReadStep } from '../meter/sheet/sheet-model.ts';
import { type Block, heading, type Item, list, PRINTED, paragraph, table, WRITTEN } from './blocks.ts';
import {
  beforeWords,
  checkLine,
  expectWords,
  INTRO,
  isWithheld,
  MORE,
  meaningLines,
  positionWords,
  probeWords,
  STAGE_TITLES,
  STOP,
  sectionTitle,
  silentLines,
  stepsOf,
} from './meter-words.ts';

const STAGES = [1, 2, 3] as const;

/** Faults told with a wrong reading on paper. */
const TOLD_ON_PAPER = 3;

/** Steps with boxes to tick in text and Markdown; on paper readings are a table with blanks. */
export function meterDocument(sheet: MeterSheet): Block[] {
  const told = checkLine(sheet);
  const head: Block[] = [
    heading(1, `Commissioning sheet: ${sheet.title}`, { only: WRITTEN }),
    ...(told === undefined ? [] : [paragraph(told, { close: true })]),
  ];
  if (isWithheld(sheet)) return head;
  return [
    ...head,
    paragraph(summary(sheet), { only: WRITTEN, close: true }),
    paragraph(INTRO),
    {
      kind: 'frame',
      blocks: [paragraph('Stop, unplug, and call an electrician when'), list('dash', STOP, { close: true })],
    },
    ...STAGES.flatMap((stage) => stageBlocks(sheet, stage)),
    paragraph(cover(sheet), { only: PRINTED }),
    ...moreBlocks(sheet),
    ...silentBlocks(sheet),
  ];
}

const summary = ({ detected, detectable, steps }: MeterSheet) =>
  `${steps.length} steps. Together they show ${detected === detectable ? 'all' : `${detected} of`} ${detectable} single faults that readings at the terminals can show.`;

const cover = ({ detected, detectable }: MeterSheet) =>
  `Together these readings show ${detected} of the ${detectable} single faults that a meter at the terminals can show.`;

function stageBlocks(sheet: MeterSheet, stage: (typeof STAGES)[number]): Block[] {
  const steps = stepsOf(sheet.steps, stage);
  const own = sheet.setup.filter((s) => s.stage === stage);
  const alone = steps.filter(isAlone);
  const others = steps.filter((s) => !isAlone(s));
  return [
    heading(2, `Stage ${stage}: ${STAGE_TITLES[stage]}`, steps.length === 0 ? { only: WRITTEN } : {}),
    ...(alone.length === 0 ? [] : stepBlocks(alone)),
    list(
      'dash',
      own.flatMap((s) => s.text),
      steps.length === 0 ? { only: WRITTEN } : {},
    ),
    ...sectionsOf(others).flatMap(({ title, own: under }) => [
      ...(title === undefined ? [] : [heading(3, title)]),
      ...stepBlocks(under),
    ]),
    ...listed(own.flatMap((s) => s.after)),
  ];
}

/** Readings of a supply by itself come before its cores are put back. */
const isAlone = (step: MeterStep) => step.kind === 'read' && step.alone !== null;

/** Nothing at all where there is nothing to say. */
const listed = (text: readonly string[]) => (text.length === 0 ? [] : [list('dash', text)]);

function stepBlocks(steps: readonly MeterStep[]): Block[] {
  return [
    list('box', steps.map(stepItem), { only: WRITTEN, loose: true }),
    checkTable(steps.filter((s) => s.kind === 'check')),
    readingTable(steps.filter((s) => s.kind === 'read')),
  ];
}

/** Steps that stand under one title; all of them without one where no zone is read by itself. */
function sectionsOf(steps: readonly MeterStep[]): { title: string | undefined; own: MeterStep[] }[] {
  const zoned = steps.some((s) => zoneOf(s) !== undefined);
  const found: { title: string | undefined; own: MeterStep[] }[] = [];
  for (const step of steps) {
    const title = zoned ? sectionTitle(zoneOf(step)) : undefined;
    const last = found.at(-1);
    if (last !== undefined && last.title === title) last.own.push(step);
    else found.push({ title, own: [step] });
  }
  return found;
}

const zoneOf = (step: MeterStep) => (step.kind === 'read' ? (step.zone ?? undefined) : undefined);

function stepItem(step: MeterStep): Item {
  const { number } = step;
  if (step.kind === 'check') return { number, text: step.text };
  return {
    number,
    text: `${probeWords(step)}; ${step.range}; ${positionWords(step)}`,
    more: [
      ...beforeWords(step),
      [`expect ${expectWords(step)}; read: `, { blank: true }],
      ...meaningLines(step).map(({ wrong, means }) => ({ dash: `${wrong}: ${means}` })),
    ],
  };
}

function checkTable(steps: readonly CheckStep[]): Block {
  return table(
    steps,
    [
      { head: '', of: () => ({ box: 'tick' }) },
      { head: 'no', of: (s) => `${s.number}` },
      { head: 'look at', of: (s) => s.text },
    ],
    { only: PRINTED, name: 'look' },
  );
}

/** What a wrong reading means stays on the page of its reading. */
function readingTable(steps: readonly ReadStep[]): Block {
  return table(
    steps,
    [
      { head: 'no', of: (s) => `${s.number}` },
      { head: 'red on', of: (s) => ({ text: s.red, terminal: true }) },
      { head: 'black on', of: (s) => ({ text: `${s.black}${s.far ? ' (long lead)' : ''}`, terminal: true }) },
      { head: 'range', of: (s) => s.range },
      { head: 'position', of: positionWords },
      { head: 'expect', of: expectWords },
      { head: 'found', of: () => ({ box: 'blank' }) },
    ],
    { only: PRINTED, name: 'readings' },
    (step) => {
      const wrong = meaningLines(step, TOLD_ON_PAPER, '').map((w) => `${w.wrong}: ${w.means}.`);
      return {
        below: [...beforeWords(step), ...(wrong.length === 0 ? [] : [`If it shows ${wrong.join(' If ')}`])],
      };
    },
  );
}

/** Where the causes stand that paper has no room for. */
function moreBlocks({ steps }: MeterSheet): Block[] {
  const most = Math.max(
    0,
    ...steps.flatMap((s) => (s.kind === 'read' ? s.wrong.map((w) => w.faults.length) : [])),
  );
  return most > TOLD_ON_PAPER ? [paragraph(MORE, { only: PRINTED })] : [];
}

function silentBlocks({ silent }: MeterSheet): Block[] {
  if (silent.length === 0) return [];
  return [
    heading(2, 'What no reading at the terminals tells', { only: WRITTEN }),
    heading(2, 'What no reading shows', { only: PRINTED }),
    list('dash', silentLines(silent)),
  ];
}
