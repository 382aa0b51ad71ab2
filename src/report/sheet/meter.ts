/** The meter sheet with blanks for the readings. */
import type { Expected, MeterStep, ReadStep } from '../../bench/meter-sheet.ts';
import { xml } from '../draw/xml.ts';
import { list, paragraph, table } from './html.ts';
import type { Cell, SheetParts } from './parts.ts';

const STAGES = {
  1: 'Unplugged and dead',
  2: 'Loop live, collector unplugged',
  3: 'Mains last, a lamp as first load',
} as const;

/** Three significant digits, as a cheap meter shows them. */
const short = (value: number): string => String(Number(value.toPrecision(3)));

/** The reading to expect, in words. */
export function expected({ shows, low, high, unit, kind }: Expected): string {
  if (shows === 'open') return 'no way through';
  if (shows === 'nothing')
    return high === null || high === 0 ? 'nothing' : `nothing, at most ${short(high)} ${unit}`;
  const words = unit === 'ohm' ? 'ohm' : `V${kind === null ? '' : ` ${kind.toUpperCase()}`}`;
  const band =
    low === null || high === null
      ? ''
      : low === high
        ? `${short(low)} ${words}`
        : `${short(low)} to ${short(high)} ${words}`;
  return shows === 'beeps' ? `beeps${high === null ? '' : `, at most ${short(high)} ohm`}` : band;
}

export function meterSheet({ meter }: SheetParts): string {
  const stages = ([1, 2, 3] as const).flatMap((stage) => {
    const steps = meter.steps.filter((s) => s.stage === stage);
    if (steps.length === 0) return [];
    const setup = meter.setup.filter((s) => s.stage === stage).flatMap((s) => s.text);
    return [`<h3>Stage ${stage}: ${STAGES[stage]}</h3>${list(setup)}${looked(steps)}${readings(steps)}`];
  });
  const silent = meter.silent.map((s) => `${s.fault}: ${s.why}`);
  const cover = `Together these readings show ${meter.detected} of the ${meter.detectable} single faults that a meter at the terminals can show.`;
  return `<section><h2>Meter sheet</h2>
${paragraph('Write down each reading. Stop at the first one that is not as expected, and mend that before you go on. Stop and call an electrician at the first sight of mains where none should be.', 'frame')}
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

/** Faults told with a wrong reading; the list of `pullin meter` has them all. */
const TOLD = 3;

function likeliest(faults: readonly string[]): string {
  const more = faults.length - TOLD;
  return `${faults.slice(0, TOLD).join('; ')}${more > 0 ? `; or ${more} less likely` : ''}`;
}

/** One reading, and below it what a wrong one means; the two stay together on a page. */
function reading(step: ReadStep): string {
  const position = [
    step.first.length === 0 ? '' : `first ${step.first.join(', ')}, then let go`,
    step.positions.length === 0 ? 'everything at rest' : step.positions.join(', '),
  ].filter((t) => t !== '');
  const cells = [
    `${step.number}`,
    step.red,
    step.black,
    step.range,
    position.join('; '),
    expected(step.expect),
  ];
  const wrong = step.wrong.map((w) => `${w.wrong}: ${likeliest(w.faults)}`).join('. ');
  return `<tbody><tr>${cells.map((c) => `<td>${xml(c)}</td>`).join('')}<td class="blank"></td></tr>${
    wrong === '' ? '' : `<tr class="wrong"><td></td><td colspan="6">if ${xml(wrong)}</td></tr>`
  }</tbody>`;
}
