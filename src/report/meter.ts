/** The commissioning sheet for a terminal or as Markdown, with room to write in what was read. */
import type { MeterSheet, MeterStep } from '../meter/sheet-model.ts';
import { ascii, printable } from '../text/escape.ts';
import { wrap } from '../text/wrap.ts';
import {
  beforeWords,
  checkLine,
  expectWords,
  INTRO,
  isWithheld,
  meaningLines,
  positionWords,
  probeWords,
  STAGE_TITLES,
  STOP,
  stepsOf,
} from './meter-words.ts';

const STAGES = [1, 2, 3] as const;

const summary = ({ detected, detectable, steps }: MeterSheet) =>
  `${steps.length} steps. Together they show ${detected === detectable ? 'all' : `${detected} of`} ${detectable} single faults that readings at the terminals can show.`;

/** Lines no wider than `width`; ends in a line break. */
export function renderMeterText(sheet: MeterSheet, width: number, unicode = true): string {
  const clean = (text: string) => (unicode ? printable(text) : ascii(printable(text)));
  const lines: string[] = [];
  const say = (text: string, first = '', rest?: string) =>
    lines.push(...wrap(clean(text), width, first, rest));
  say(`Commissioning sheet: ${sheet.title}`);
  const told = checkLine(sheet);
  if (told !== undefined) say(told);
  if (isWithheld(sheet)) return `${lines.join('\n')}\n`;
  say(summary(sheet));
  lines.push('');
  say(INTRO);
  lines.push('');
  say('Stop, unplug, and call an electrician when');
  for (const when of STOP) say(when, '- ');
  for (const stage of STAGES) {
    lines.push('');
    say(`Stage ${stage}: ${STAGE_TITLES[stage]}`);
    for (const text of sheet.setup.find((s) => s.stage === stage)?.text ?? []) say(text, '- ');
    for (const step of stepsOf(sheet.steps, stage)) {
      lines.push('');
      textStep(step, say);
    }
  }
  if (sheet.silent.length > 0) {
    lines.push('');
    say('What no reading at the terminals tells');
    for (const { fault, why } of sheet.silent) say(`${fault}: ${why}`, '- ');
  }
  return `${lines.join('\n')}\n`;
}

function textStep(step: MeterStep, say: (text: string, first?: string, rest?: string) => void): void {
  const head = `[ ] ${step.number}. `;
  if (step.kind === 'check') {
    say(step.text, head, '      ');
    return;
  }
  say(`${probeWords(step)}; ${step.range}; ${positionWords(step)}`, head, '      ');
  for (const text of beforeWords(step)) say(text, '      ');
  say(`expect ${expectWords(step)}; read: ________`, '      ');
  for (const { wrong, means } of meaningLines(step)) say(`${wrong}: ${means}`, '      - ', '        ');
}

/** Text in which nothing is read as Markdown or HTML. */
function plain(text: string): string {
  return printable(text).replace(/[\\`*_{}[\]<>()#+!|~&$-]/g, (c) =>
    c === '<' ? '&lt;' : c === '&' ? '&amp;' : `\\${c}`,
  );
}

/** The sheet as Markdown with boxes to tick; ends in a line break. */
export function renderMeterMarkdown(sheet: MeterSheet): string {
  const told = checkLine(sheet);
  const head = [
    `# Commissioning sheet: ${plain(sheet.title)}`,
    ...(told === undefined ? [] : ['', plain(told)]),
  ];
  if (isWithheld(sheet)) return `${head.join('\n')}\n`;
  const lines = [
    ...head,
    '',
    plain(summary(sheet)),
    '',
    plain(INTRO),
    '',
    'Stop, unplug, and call an electrician when',
    '',
    ...STOP.map((when) => `- ${plain(when)}`),
  ];
  for (const stage of STAGES) {
    const setup = sheet.setup.find((s) => s.stage === stage)?.text ?? [];
    lines.push('', `## Stage ${stage}: ${STAGE_TITLES[stage]}`, '', ...setup.map((t) => `- ${plain(t)}`));
    const steps = stepsOf(sheet.steps, stage);
    if (steps.length > 0) lines.push('', ...steps.flatMap(markdownStep));
  }
  if (sheet.silent.length > 0)
    lines.push(
      '',
      '## What no reading at the terminals tells',
      '',
      ...sheet.silent.map(({ fault, why }) => `- ${plain(fault)}: ${plain(why)}`),
    );
  return `${lines.join('\n')}\n`;
}

function markdownStep(step: MeterStep): string[] {
  const head = `- [ ] **${step.number}**`;
  if (step.kind === 'check') return [`${head} ${plain(step.text)}`];
  return [
    `${head} ${plain(`${probeWords(step)}; ${step.range}; ${positionWords(step)}`)}`,
    ...beforeWords(step).map((text) => `  - ${plain(text)}`),
    `  - expect ${plain(expectWords(step))}; read: \\_\\_\\_\\_`,
    ...meaningLines(step).map(({ wrong, means }) => `  - ${plain(wrong)}: ${plain(means)}`),
  ];
}
