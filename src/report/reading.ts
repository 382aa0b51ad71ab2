/** A meter reading for people: one line for two terminals, two tables for the whole plan. */
import type { NetReading, Reading } from '../machine/reading.ts';
import { ascii, printable } from '../text/escape.ts';
import { rounded } from '../text/numbers.ts';
import { columns, pad, wrap } from '../text/wrap.ts';

/** Columns under which volts and terminals do not stand side by side. */
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

/** Lines no wider than `width` where the names allow; ends in a line break. */
export function renderReading(reading: Reading, width: number, unicode = true): string {
  const clean = (text: string) => (unicode ? printable(text) : ascii(printable(text)));
  const lines: string[] = [];
  const say = (text: string, first = '', rest?: string) =>
    lines.push(...wrap(clean(text), width, first, rest));
  say(stateLine(reading));
  lines.push('');
  if (reading.between) say(answer(reading));
  else lines.push(...tables(reading, width, clean));
  for (const note of reading.notes) say(note, '- ', '  ');
  return `${lines.join('\n').trimEnd()}\n`;
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

function tables(reading: Reading, width: number, clean: (text: string) => string): string[] {
  const against = [...new Set(reading.nets.map((n) => n.against))];
  const out: string[] = [];
  for (const reference of against) {
    const nets = reading.nets.filter((n) => n.against === reference);
    const head = reference === null ? 'tied to no supply' : `volts against ${reference}`;
    out.push(...wrap(clean(head), width), ...nets.flatMap((n) => netLines(n, width, clean)), '');
  }
  if (reading.cores.length > 0) {
    const rows = reading.cores.map((c) => [
      `  ${c.name ?? `run ${c.run}`}`,
      c.colour,
      `${c.from} to ${c.to}`,
      c.amps === null ? '-' : metric(c.amps, 'A'),
    ]);
    out.push(
      ...wrap('current in every core, from the first terminal to the second', width),
      ...aligned(rows, width, clean),
      '',
    );
  }
  return out;
}

function netLines(net: NetReading, width: number, clean: (text: string) => string): string[] {
  const value = net.volts === null ? '' : volts(net.volts, net.kind);
  if (width < NARROW) return wrap(clean(`${value} ${net.terminals.join(' ')}`), width, '  ', '    ');
  return wrap(clean(net.terminals.join(' ')), width, `  ${pad(value, 12)} `, ' '.repeat(15));
}

/** In columns where they fit, else each row filled like a sentence. */
function aligned(
  rows: readonly (readonly string[])[],
  width: number,
  clean: (text: string) => string,
): string[] {
  const cells = rows.map((r) => r.map(clean));
  const widths = cells[0]!.map((_, i) => Math.max(...cells.map((c) => columns(c[i]!))));
  const lines = cells.map((c) =>
    c.map((text, i) => (i === c.length - 1 ? text : pad(text, widths[i]!))).join('  '),
  );
  if (lines.every((l) => columns(l) <= width)) return lines;
  return cells.flatMap((c) => wrap(c.join('  ').trimStart(), width, '  ', '    '));
}
