/** The meter sheet with blanks for the readings. */
import type { MeterStep, ReadStep } from '../../meter/sheet-model.ts';
import { xml } from '../../text/xml.ts';
import {
  beforeWords,
  checkLine,
  expectWords,
  INTRO,
  isWithheld,
  meaningLines,
  positionWords,
  STAGE_TITLES,
  STOP,
  stepsOf,
} from '../meter-words.ts';
import { list, paragraph, table } from './html.ts';
import type { Cell, SheetParts } from './parts.ts';

export function meterSheet({ meter }: SheetParts): string {
  const told = checkLine(meter);
  const head = `<section><h2>Meter sheet</h2>${told === undefined ? '' : `\n${paragraph(told)}`}`;
  if (isWithheld(meter)) return `${head}</section>`;
  const stages = ([1, 2, 3] as const).flatMap((stage) => {
    const steps = stepsOf(meter.steps, stage);
    if (steps.length === 0) return [];
    const setup = meter.setup.filter((s) => s.stage === stage).flatMap((s) => s.text);
    return [
      `<h3>Stage ${stage}: ${STAGE_TITLES[stage]}</h3>${list(setup)}${looked(steps)}${readings(steps)}`,
    ];
  });
  const silent = meter.silent.map((s) => `${s.fault}: ${s.why}`);
  const cover = `Together these readings show ${meter.detected} of the ${meter.detectable} single faults that a meter at the terminals can show.`;
  return `${head}
${paragraph(INTRO)}
<div class="frame"><p>Stop, unplug, and call an electrician when</p>${list(STOP)}</div>
${stages.join('\n')}
${paragraph(cover)}
${silent.length === 0 ? '' : `<h3>What no reading shows</h3>${list(silent)}`}</section>`;
}

function looked(steps: readonly MeterStep[]): string {
  const rows = steps.flatMap((s): Cell[][] =>
    s.kind === 'check' ? [[{ tick: true }, `${s.number}`, s.text]] : [],
  );
  return table(['', 'no', 'look at'], rows, 'look');
}

function readings(steps: readonly MeterStep[]): string {
  const rows = steps.flatMap((s) => (s.kind === 'read' ? [reading(s)] : []));
  if (rows.length === 0) return '';
  const head = ['no', 'red on', 'black on', 'range', 'position', 'expect', 'found'];
  const heads = head.map((h) => `<th scope="col">${h}</th>`).join('');
  return `<table class="readings"><thead><tr>${heads}</tr></thead>${rows.join('\n')}</table>`;
}

/** Faults told with a wrong reading on paper. */
const TOLD = 3;

/** A terminal's mark, which may go on a second line after its dot. */
function terminal(mark: string): string {
  return xml(mark).replace('.', '.<wbr>');
}

/** One reading, and below it what a wrong one means; the two stay together on a page. */
function reading(step: ReadStep): string {
  const far = step.far ? ' (long lead)' : '';
  const cells = [
    xml(`${step.number}`),
    terminal(step.red),
    terminal(`${step.black}${far}`),
    ...[step.range, positionWords(step), expectWords(step)].map(xml),
  ];
  const wrong = meaningLines(step, TOLD, '').map((w) => `${w.wrong}: ${w.means}.`);
  const more = [...beforeWords(step), ...(wrong.length === 0 ? [] : [`If it shows ${wrong.join(' If ')}`])];
  return `<tbody><tr>${cells.map((c) => `<td>${c}</td>`).join('')}<td class="blank"></td></tr>${
    more.length === 0
      ? ''
      : `<tr class="wrong"><td></td><td colspan="6">${more.map(xml).join('<br>')}</td></tr>`
  }</tbody>`;
}
