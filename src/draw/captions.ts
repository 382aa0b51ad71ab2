/** The few words under a symbol's name, and those on a conductor. */
import type { Core, Part, Plan, Power, Run, Volts } from '../plan/plan.ts';
import { drawnInLetters, drawnInWords } from '../text/core-names.ts';
import { printable } from '../text/escape.ts';
import { rounded } from '../text/numbers.ts';
import type { Figure } from './drawing.ts';

/** At most four digits that matter, without a tail of noughts. */
const short = (value: number): string => String(rounded(value, 4));
const volts = (v: Volts): string => `${short(v.volts)} V ${v.kind.toUpperCase()}`;
const amps = (value: number | undefined): string => (value === undefined ? '' : `${short(value)} A`);

function power(p: Power | undefined): string {
  if (p === undefined) return '';
  if (p.unit === 'hp') return `${short(p.horsepower ?? p.watts / 745.7)} hp`;
  return p.watts >= 1000 && p.unit === 'W' ? `${short(p.watts / 1000)} kW` : `${short(p.watts)} ${p.unit}`;
}

/** What is printed on a part, in a few words; empty where its name says enough. */
export function captionOf(part: Part, figure: Figure, brief = false): string {
  return printable(
    words(part, figure, brief)
      .filter((w) => w !== '')
      .join(', '),
  );
}

function words(part: Part, figure: Figure, brief: boolean): string[] {
  switch (part.kind) {
    case 'supply':
      if (figure === 'primary') return ['mains side'];
      return [
        volts(part.output),
        part.fedFrom === undefined || part.fedFrom === 'always-live' ? '' : `from ${part.fedFrom}`,
      ];
    case 'battery':
      return [volts(part.output), 'battery'];
    case 'gate':
      return [part.pressedWhen === 'shut' ? 'pressed when shut' : ''];
    case 'cutout':
      return ['cut-out'];
    case 'relay':
      return figure === 'coil' ? [volts(part.coil.rated)] : [];
    case 'timer':
      return figure === 'timer'
        ? [part.function.replace('-', ' '), `${short(part.time)} s`, volts(part.coil.rated)]
        : [];
    case 'board':
      return figure === 'board' ? [volts(part.supply), `${part.input} input`] : [];
    case 'resistor':
    case 'lamp':
      return [
        part.resistance === undefined
          ? part.rated
            ? volts(part.rated)
            : ''
          : `${short(part.resistance)} ohm`,
      ];
    case 'fuse':
      return [amps(part.rating)];
    case 'plug':
      return brief ? [volts(part.volts)] : [part.pattern ?? '', volts(part.volts), amps(part.breaker)];
    case 'outlet':
      return brief ? [] : [part.pattern ?? ''];
    case 'motor':
    case 'load':
      return [power(part.power) || amps(part.amps), brief ? '' : volts(part.volts)];
    case 'box':
      return [
        part.metal ? 'metal box' : 'box',
        ...(brief || part.holds.length === 0 ? [] : [holds(part.holds)]),
      ];
    default:
      return [];
  }
}

/** How everything stands when nothing was moved. */
export function restWords({ parts }: Plan): string {
  const gates = [...parts.values()].some((p) => p.kind === 'gate');
  return gates ? 'everything at rest, all gates shut' : 'everything at rest';
}

/** Most names of what a box holds; the plan has them all. */
const HELD = 4;

function holds(names: readonly string[]): string {
  const more = names.length - HELD;
  return `holds ${names.slice(0, HELD).join(' ')}${more > 0 ? ` and ${more} more` : ''}`;
}

/** m as people say it: `4 m`, `35 cm`. */
export function lengthWords(metres: number): string {
  return metres < 1 ? `${short(metres * 100)} cm` : `${short(metres)} m`;
}

const drawn = (run: Run, { colour }: Core) => ({ run: run.index + 1, colour, link: run.link });

/** `3 white 20 AWG 4 m`: run, colour, gauge and length. */
export function coreWords(run: Run, core: Core): string {
  const length = run.length === undefined ? '' : lengthWords(run.length);
  return drawnInWords(drawn(run, core), run.cable?.gauge ?? '', length);
}

/** `3 WH`: run and colour alone, for narrow drawings. */
export function coreLetters(run: Run, core: Core): string {
  return drawnInLetters(drawn(run, core));
}
