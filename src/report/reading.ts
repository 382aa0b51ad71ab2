/** A meter reading for people: one line for two terminals, two tables for the whole plan. */
import type { CoreReading, NetReading, Reading } from '../machine/reading.ts';
import { rounded } from '../text/numbers.ts';
import { type Block, heading, list, paragraph, table, terms } from './blocks.ts';

/** Columns that volts take, and under which they do not stand beside their terminals. */
const VOLTS = 13;
const NARROW = 40;

/** `11.92 V`, `4.1 mV`, `77 mA`, `1.2 kohm`: four figures and a prefix that suits. */
export function metric(value: number, unit: string): string {
  // Rounded first, so that what rounds up to a thousand takes the next prefix.
  const size = Math.abs(rounded(value, 4));
  const [factor, prefix] =
    size === 0
      ? [1, '']
      : size < 1e-3
        ? [1e6, 'u']
        : size < 1
          ? [1e3, 'm']
          : size < 1e3
            ? [1, '']
            : size < 1e6
              ? [1e-3, 'k']
              : [1e-6, 'M'];
  const small = unit === 'ohm' && size < 1;
  return `${Number((value * (small ? 1 : factor)).toPrecision(4))} ${small ? '' : prefix}${unit}`;
}

function volts(value: number | null, kind: 'dc' | 'ac' | null): string {
  if (value === null) return '-';
  return `${metric(value, 'V')}${kind === null ? '' : ` ${kind.toUpperCase()}`}`;
}

export function readingDocument(reading: Reading): Block[] {
  const { between, nets, cores, notes } = reading;
  const references = between ? [] : [...new Set(nets.map((n) => n.against))];
  return [
    paragraph(stateLine(reading)),
    ...(between ? [paragraph(answer(reading))] : []),
    ...references.flatMap((reference) => netBlocks(reference, nets)),
    ...(between || cores.length === 0 ? [] : coreBlocks(cores)),
    list('dash', notes, { close: between !== null }),
  ];
}

function stateLine({ state }: Reading): string {
  const moved = Object.entries(state.moved).map(([name, at]) => `${name} ${at}`);
  const relays = Object.entries(state.relays).map(([name, at]) => `${name} ${at}`);
  const off = Object.entries(state.supplies)
    .filter(([, at]) => at === 'off')
    .map(([name]) => `${name} off`);
  const here = moved.length === 0 ? 'everything at rest' : moved.join(', ');
  if (!state.power) return `Power off, ${here}:`;
  return `With ${[here, ...relays, ...off].join('; ')}:`;
}

function answer(reading: Reading): string {
  const [a, b] = reading.between!;
  const where = `${a} to ${b}`;
  if (reading.volts !== null) return `${where}: ${volts(reading.volts, reading.kind)}`;
  if (reading.ohms !== null)
    return `${where}: ${metric(reading.ohms, 'ohm')}, ${reading.beeps ? 'beeps' : 'no beep'}`;
  if (reading.through === false) return `${where}: no way through, no beep`;
  const sound = reading.beeps === null ? '' : reading.beeps ? ', beeps' : ', no beep';
  return `${where}: ${reading.through ? 'some ohms' : 'cannot tell'}${sound}`;
}

/** The conductors whose volts are against one terminal. */
function netBlocks(reference: string | null, nets: readonly NetReading[]): Block[] {
  return [
    heading(2, reference === null ? 'tied to no supply' : `volts against ${reference}`),
    terms(
      VOLTS,
      nets
        .filter((n) => n.against === reference)
        .map((n) => ({
          term: n.volts === null ? '' : volts(n.volts, n.kind),
          text: n.terminals.join(' '),
        })),
      { indent: 2, runInBelow: NARROW },
    ),
  ];
}

function coreBlocks(cores: readonly CoreReading[]): Block[] {
  const name = (c: CoreReading) => c.name ?? `run ${c.mark}`;
  const way = (c: CoreReading) => `${c.from} to ${c.to}`;
  const amps = (c: CoreReading) => (c.amps === null ? '-' : metric(c.amps, 'A'));
  return [
    heading(2, 'current in every core, from the first terminal to the second'),
    table(
      cores,
      [
        { head: 'run', always: true, of: name },
        { head: 'colour', always: true, of: (c) => c.colour },
        { head: 'between', always: true, of: way },
        { head: 'current', always: true, of: amps },
      ],
      { indent: 2, headless: true },
      (c) => ({ sentence: [name(c), c.colour, way(c), amps(c)].join('  ') }),
    ),
  ];
}
