/** Arbitrary texts of single parts and cables for the random loops: values typed or left out at random. */
import fc from 'fast-check';

export type Text = fc.Arbitrary<string>;
export type SourceKind = 'regulated' | 'unregulated' | 'battery' | 'transformer';

export const oneOf = <T>(...xs: T[]): fc.Arbitrary<T> => fc.constantFrom(...xs);
export const whole = (min: number, max: number): fc.Arbitrary<number> => fc.integer({ min, max });
const fixed = (x: string): Text => fc.constant(x);
const joined = (...bits: Text[]): Text => fc.tuple(...bits).map((b) => b.join(''));
/** A field that a plan may leave out. */
const maybe = (field: string, value: Text): Text =>
  fc.oneof(
    fixed(''),
    value.map((v) => `, ${field}: ${v}`),
  );
const counted = (min: number, max: number, unit: string, each = 1): Text =>
  whole(min, max).map((n) => `${Number((n * each).toFixed(6))} ${unit}`);
const percent = (min: number, max: number): Text => counted(min, max, '%');

const gauge = oneOf(
  '16 AWG',
  '18 AWG',
  '20 AWG',
  '22 AWG',
  '24 AWG',
  '0.5 mm2',
  '0.75 mm2',
  '1.5 mm2',
  '0.22 mm2',
);

export const cable: Text = joined(
  gauge.map((g) => `{kind: cable, gauge: ${g}, cores: 2, insulation: 300 V`),
  maybe('strands', oneOf('solid', 'stranded', 'fine')),
  fixed('}'),
);

/** 1 m to `max` m, typed in m or ft */
export const length = (max: number): Text =>
  fc.oneof(counted(1, max, 'm'), counted(10, 10 * max, 'm', 0.1), counted(4, Math.floor(max / 0.3048), 'ft'));

/** Contact data of a switch, with its resistance now and then. */
export const contact: Text = joined(
  fixed('{ratings: [5 A 250 V AC, 5 A 30 V DC], least: 1 mA 5 V DC'),
  maybe('resistance', counted(10, 200, 'ohm', 0.001)),
  fixed('}'),
);

function supply(
  kind: SourceKind,
  volts: number,
  limit: Text,
  regulation: Text,
  noLoad: [number, number],
): Text {
  return joined(
    limit.map(
      (l) => `{kind: supply, output: ${volts} V ${kind === 'transformer' ? 'AC' : 'DC'}, limit: ${l}`,
    ),
    regulation,
    maybe('tolerance', percent(1, 4)),
    maybe('no-load', counted(...noLoad, 'V', volts / 100)),
    fixed(', class-2: true}'),
  );
}

export function source(kind: SourceKind, volts: number): Text {
  const amps = counted(3, 20, 'mA', 100);
  switch (kind) {
    case 'regulated':
      return supply(kind, volts, amps, maybe('regulation', fixed('regulated')), [100, 104]);
    case 'unregulated':
      return supply(
        kind,
        volts,
        fc.oneof(amps, fixed('150 mA')),
        fixed(', regulation: unregulated'),
        [110, 175],
      );
    case 'transformer':
      return supply(
        kind,
        volts,
        oneOf('8 VA', '10 VA', '20 VA', '30 VA', '40 VA', '1 A'),
        maybe('regulation', fixed('transformer')),
        [105, 130],
      );
    case 'battery':
      return joined(
        fixed(`{kind: battery, output: ${volts} V DC`),
        maybe('internal-resistance', counted(2, 300, 'ohm', 0.01)),
        maybe('lowest', counted(75, 95, 'V', volts / 100)),
        maybe('highest', counted(105, 125, 'V', volts / 100)),
        fixed('}'),
      );
  }
}

const dcMark = (volts: number): Text =>
  fc.oneof(
    counted(5, 50, 'ohm', volts).map((r) => `resistance: ${r}`),
    counted(15, 120, 'mA').map((a) => `current: ${a}`),
    counted(3, 25, 'W', 0.1).map((w) => `power: ${w}`),
  );
const acMark: Text = joined(
  fc.oneof(
    counted(12, 90, 'VA', 0.1).map((va) => `power: ${va}`),
    counted(50, 400, 'mA').map((a) => `current: ${a}`),
  ),
  maybe('power-factor', oneOf('0.3', '0.5', '0.8')),
  maybe('inrush', counted(10, 60, 'VA')),
  maybe('inrush-power-factor', oneOf('0.6', '0.75', '0.9')),
);

/** A relay, or now and then a contactor; `inside` builds its suppressor diode in. */
export function relay(ac: boolean, volts: number, inside: boolean): Text {
  const limit = (min: number, max: number): Text =>
    fc.oneof(percent(min, max), counted(min, max, 'V', volts / 100));
  return joined(
    fixed(`{kind: relay, coil: {rated: ${volts} V ${ac ? 'AC' : 'DC'}, `),
    ac ? acMark : joined(dcMark(volts), maybe('tolerance', percent(1, 15))),
    maybe('pull-in', limit(70, 80)),
    maybe('drop-out', limit(5, 30)),
    maybe('hot-rise', counted(20, 45, 'K')),
    fixed(`, suppressor: ${inside && !ac ? 'diode' : 'none'}}, contact: {ratings: [10 A 250 V AC]}`),
    oneOf('}', '}', ', poles: [{form: make, marks: [1, 2]}, {form: make, marks: [3, 4]}]}'),
  );
}

export const lamp = (ac: boolean, volts: number): Text =>
  fc.oneof(
    oneOf('0.5 W', '1 W', '40 mA').map((x) => `{kind: lamp, rated: ${volts} V ${ac ? 'AC' : 'DC'} ${x}}`),
    counted(10, 100, 'ohm', volts).map((r) => `{kind: lamp, resistance: ${r}}`),
  );

export const led: Text = joined(
  fixed('{kind: led'),
  maybe('forward', counted(16, 33, 'V', 0.1)),
  maybe('current', counted(2, 20, 'mA')),
  fixed('}'),
);

export const resistor: Text = counted(33, 220, 'ohm', 10).map((r) => `{kind: resistor, resistance: ${r}}`);
