/** Building blocks of the plan's schema: every value is typed as text and read into SI by a transform. */
import * as z from 'zod';
import { PILOT_CODES } from './plan.ts';
import * as q from './quantity.ts';
import type { Quantity } from './quantity-reader.ts';

// Compiling validators at run time costs more at start-up than one plan can win back.
z.config({ jitless: true });

/** A JSON Schema fragment that says how a value is typed in the file; `samples` become its `examples`. */
type Typed = Record<string, unknown>;

/** Builds a schema the first time it is asked for. */
export function once<T>(make: () => T): () => T {
  let made: { value: T } | undefined;
  return () => {
    made ??= { value: make() };
    return made.value;
  };
}

/** A value read by a parser of its own. */
function leaf<T>(quantity: Quantity<T>, description: string, typed: Typed) {
  return z
    .string()
    .transform((text, context): T => {
      const parsed = quantity.parse(text);
      if ('value' in parsed) return parsed.value;
      context.addIssue({ code: 'custom', message: parsed.problem });
      return z.NEVER;
    })
    .meta({ ...typed, description });
}

/** A number and a unit in one string. */
export function quantity<T>(of: Quantity<T>, description: string) {
  const units = of.units.length === 0 ? '' : ` A number and a unit: ${of.units.join(', ')}.`;
  return leaf(of, `${description}${units}`, { type: 'string', samples: of.examples });
}

/** A plain number. */
export function number(of: Quantity<number>, description: string) {
  return leaf(of, description, {
    type: ['number', 'string'],
    samples: of.examples.map((text) => Number(text) || text),
  });
}

export function choice<const T extends readonly [string, ...string[]]>(values: T, description: string) {
  return z.enum(values).describe(description);
}

/** `true` or `false`. */
export function flag(description: string) {
  const typed: Quantity<boolean> = {
    title: 'true or false',
    units: [],
    examples: [],
    parse: (text) =>
      text === 'true' || text === 'false'
        ? { value: text === 'true' }
        : { problem: `found "${text.slice(0, 40)}", expected true or false` },
  };
  return leaf(typed, description, { type: 'boolean' });
}

/** One of a few whole numbers. */
export function figure<const T extends number>(values: readonly T[], description: string) {
  const typed: Quantity<T> = {
    title: 'a number',
    units: [],
    examples: [],
    parse: (text) => {
      const value = values.find((item) => String(item) === text.trim());
      return value === undefined
        ? { problem: `found "${text.slice(0, 40)}", expected ${values.join(' or ')}` }
        : { value };
    },
  };
  return leaf(typed, description, { type: 'integer', enum: [...values] });
}

/** Free text or a name; a number is taken as the text it is typed as. */
export function text(description: string) {
  return z.string().meta({ type: ['string', 'number'], description });
}

export function list<T extends z.ZodType>(item: T, description: string) {
  return z.array(item).describe(description);
}

/** `marks:` */
export const marks = once(() =>
  z
    .record(z.string(), text('The plain name of the terminal.'))
    .describe('What is moulded on the part, translated to the plain terminal names: {1: COM, 2: NC, 3: NO}.'),
);

export const SUPPRESSORS = ['none', 'diode', 'zener', 'rc', 'varistor'] as const;

const percentOrVolts = 'A share of the rated voltage (75 %) or a voltage (9 V).';

export const coil = once(() =>
  z
    .strictObject({
      rated: quantity(q.voltsFrequency, 'Rated voltage of the coil, with its kind.'),
      frequency: quantity(q.hertz, 'Frequency an AC coil is made for.').optional(),
      resistance: quantity(q.ohms, "Resistance at 20 °C; an AC coil's is its copper only.").optional(),
      current: quantity(q.amps, 'Current at the rated voltage.').optional(),
      power: quantity(q.coilPower, 'Power at the rated voltage: W, or VA for AC.').optional(),
      'power-factor': number(q.ratio, 'Power factor of an AC coil while pulled in, 0 to 1.').optional(),
      'inrush-power-factor': number(
        q.ratio,
        'Power factor of an AC coil while it pulls in, 0 to 1.',
      ).optional(),
      'pull-in': quantity(
        q.limit,
        `Voltage at which it surely pulls in, coil at 20 °C. ${percentOrVolts}`,
      ).optional(),
      'drop-out': quantity(q.limit, `Voltage at which it surely lets go. ${percentOrVolts}`).optional(),
      most: quantity(q.limit, `Highest voltage it stands continuously. ${percentOrVolts}`).optional(),
      inrush: quantity(q.voltAmps, 'Apparent power an AC coil draws while it pulls in.').optional(),
      'hot-rise': quantity(q.kelvins, 'Warming of the coil at the rated voltage.').optional(),
      suppressor: choice(
        SUPPRESSORS,
        'What is built in across the coil against the voltage spike.',
      ).optional(),
      tolerance: quantity(q.share, 'Tolerance of the resistance.').optional(),
    })
    .meta({ id: 'coil', description: 'The coil. Give resistance, current or power, or several that agree.' }),
);

export const contact = once(() =>
  z
    .strictObject({
      ratings: list(
        quantity(q.rating, 'A current at a voltage and its kind.'),
        'Resistive or general-use ratings as printed, such as [5 A 250 V AC, 3 A 30 V DC].',
      ).optional(),
      motor: list(
        quantity(q.motorRating, 'A motor power at a voltage; ends in 3-phase if it is.'),
        'Horsepower ratings as printed, such as [2 hp 240 V AC]; single-phase unless they end in 3-phase.',
      ).optional(),
      'ac-3': quantity(q.amps, 'Current in category AC-3 (IEC 60947-4-1: starting cage motors).').optional(),
      pilot: choice(
        PILOT_CODES,
        'Pilot-duty code as printed, for a contact that feeds a coil; Q300 and R300 are for DC.',
      ).optional(),
      'ac-15': quantity(
        q.amps,
        'Current in category AC-15 (IEC 60947-5-1: coils on AC) at the voltage of the circuit.',
      ).optional(),
      'dc-13': quantity(
        q.amps,
        'Current in category DC-13 (IEC 60947-5-1: coils on DC) at the voltage of the circuit.',
      ).optional(),
      'locked-rotor': quantity(q.amps, 'Locked-rotor current the contact can make.').optional(),
      make: quantity(q.amps, 'Making capacity.').optional(),
      resistance: quantity(q.resistance0, 'Resistance of the closed contact.').optional(),
      least: quantity(
        q.rating,
        'Smallest current and voltage it switches reliably, such as 10 mA 5 V DC.',
      ).optional(),
      metal: choice(['silver', 'gold'], 'Metal of the contact faces, where stated.').optional(),
    })
    .meta({ id: 'contact', description: 'What the contact is rated for.' }),
);

export const FORMS = ['make', 'break', 'changeover'] as const;

export const pole = once(() =>
  z
    .strictObject({
      form: choice(FORMS, 'make closes when pulled in, break opens, changeover has both.'),
      marks: list(
        text('A terminal mark.'),
        'Terminal marks: two for make [13, 14] and break [21, 22]; for changeover common, break, make [11, 12, 14].',
      ).optional(),
      contact: contact().optional(),
    })
    .meta({ id: 'pole', description: 'One contact of the relay.' }),
);

export const STRANDS = ['solid', 'stranded', 'fine'] as const;

export const cable = once(() =>
  z
    .strictObject({
      kind: choice(['cable'], 'A cable.').optional(),
      gauge: quantity(q.gauge, 'Size of each core.'),
      cores: number(q.coreCount, 'Number of cores.'),
      insulation: quantity(q.insulationVolts, 'Voltage the insulation is made for.').optional(),
      flexible: flag('true for a cord that is made to be moved; default false.').optional(),
      strands: choice(STRANDS, 'IEC 60228 class 1, 2 or 5; default stranded.').optional(),
      'sheath-colours': list(text('A colour.'), 'Colours of the cores as sold.').optional(),
      rated: quantity(q.celsius, 'Highest temperature the insulation stands.').optional(),
      price: number(q.price, 'Price, for the shopping list.').optional(),
    })
    .describe('A cable by its printed data.'),
);
