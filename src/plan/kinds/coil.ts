/** A coil: its fields, what is checked of them, and what is made of them. */
import * as z from 'zod/mini';
import { ampsText } from '../../text/numbers.ts';
import { coilVolts } from '../coil-volts.ts';
import type { Coil, Limit } from '../device-figures.ts';
import * as q from '../quantity.ts';
import * as ratings from '../rated-quantity.ts';
import { choice, described, number, once, optional, quantity } from '../schema-fields.ts';
import { withoutUndefined } from '../without-undefined.ts';
import type { Add } from './kind-row.ts';

const SUPPRESSORS = ['none', 'diode', 'zener', 'rc', 'varistor'] as const;

const percentOrVolts = 'A share of the rated voltage (75 %) or a voltage (9 V).';

export const coil = once(() =>
  described(
    z.strictObject({
      rated: quantity(
        coilVolts,
        'Rated voltage of the coil, with its kind; of an electronic input the range and AC/DC as printed.',
      ),
      frequency: optional(quantity(q.hertz, 'Frequency an AC coil is made for.')),
      resistance: optional(quantity(q.ohms, "Resistance at 20 °C; an AC coil's is its copper only.")),
      current: optional(quantity(q.amps, 'Current at the rated voltage.')),
      power: optional(quantity(ratings.coilPower, 'Power at the rated voltage: W, or VA for AC.')),
      'power-factor': optional(number(q.ratio, 'Power factor of an AC coil while pulled in, 0 to 1.')),
      'inrush-power-factor': optional(
        number(q.ratio, 'Power factor of an AC coil while it pulls in, 0 to 1.'),
      ),
      'pull-in': optional(
        quantity(
          ratings.limit,
          `Voltage at which it surely pulls in: a relay with its coil at 20 °C, a contactor with it warm. ${percentOrVolts}`,
        ),
      ),
      'drop-out': optional(quantity(ratings.limit, `Voltage at which it surely lets go. ${percentOrVolts}`)),
      most: optional(quantity(ratings.limit, `Highest voltage it stands continuously. ${percentOrVolts}`)),
      inrush: optional(
        quantity(q.voltAmps, 'Apparent power an AC coil or an electronic input draws while it pulls in.'),
      ),
      'hot-rise': optional(quantity(q.kelvins, 'Warming of the coil at the rated voltage.')),
      suppressor: optional(
        choice(SUPPRESSORS, 'What is built in across the coil against the voltage spike.'),
      ),
      tolerance: optional(quantity(q.share, 'Tolerance of the resistance.')),
    }),
    {
      id: 'coil',
      description:
        'The coil. Give resistance, current or power, or several that agree; each figure left out is judged at both ends of what such coils have.',
    },
  ),
);
type CoilFields = z.output<ReturnType<typeof coil>>;

/** Two figures of one coil may differ by this before they contradict each other. */
const COIL_DISAGREEMENT = 1.1;

function inVolts(limit: Limit, rated: number): number {
  return 'volts' in limit ? limit.volts : limit.fraction * rated;
}

/** Adds what contradicts itself in a coil. */
export function checkCoil(coil: CoilFields, add: Add): void {
  const { rated } = coil;
  if (rated === undefined) return;
  const { resistance, current, power } = coil;
  const draws: [key: string, amps: number][] = [];
  if (rated.kind === 'dc') {
    if (resistance !== undefined) draws.push(['resistance', rated.volts / resistance]);
    if (current !== undefined) draws.push(['current', current]);
    if (power !== undefined) draws.push(['power', power.watts / rated.volts]);
    const sorted = [...draws].sort((a, b) => a[1] - b[1]);
    const least = sorted[0];
    const most = sorted.at(-1);
    if (least !== undefined && most !== undefined && most[1] > least[1] * COIL_DISAGREEMENT) {
      const second = draws.findLast(([key]) => key === least[0] || key === most[0])!;
      const list = draws.map(([key, value]) => `${key} gives ${ampsText(value)}`).join(', ');
      add(['coil', second[0]], `coil: the figures disagree by more than 10 % at ${rated.volts} V: ${list}`);
    }
    if (coil.frequency !== undefined) add(['coil', 'frequency'], 'coil.frequency: not with a DC coil');
    if (coil.inrush !== undefined && rated.upTo === undefined && rated.either !== true)
      add(['coil', 'inrush'], 'coil.inrush: a DC coil has no inrush; leave it out');
  }
  checkLimits(coil, rated.volts, rated.upTo ?? rated.volts, add);
}

function checkLimits(coil: CoilFields, rated: number, top: number, add: Add): void {
  const pull = coil['pull-in'];
  const drop = coil['drop-out'];
  const { most } = coil;
  if (pull !== undefined && inVolts(pull, rated) > rated * 1.0001) {
    add(['coil', 'pull-in'], 'coil.pull-in: above the rated voltage; expected 100 % or less');
  }
  if (pull !== undefined && drop !== undefined && inVolts(drop, rated) >= inVolts(pull, rated)) {
    add(
      ['coil', 'drop-out'],
      'coil.drop-out: not below pull-in; a relay lets go at a lower voltage than it pulls in',
    );
  }
  if (most !== undefined && inVolts(most, top) < top * 0.9999) {
    add(['coil', 'most'], 'coil.most: below the rated voltage; expected 100 % or more');
  }
}

export function buildCoil(fields: CoilFields): Coil {
  return withoutUndefined({
    rated: { volts: fields.rated.volts, kind: fields.rated.kind },
    upTo: fields.rated.upTo,
    either: fields.rated.either,
    frequency: fields.frequency ?? fields.rated.frequency,
    resistance: fields.resistance,
    current: fields.current,
    power: fields.power,
    powerFactor: fields['power-factor'],
    inrushPowerFactor: fields['inrush-power-factor'],
    pullIn: fields['pull-in'],
    dropOut: fields['drop-out'],
    most: fields.most,
    inrush: fields.inrush,
    hotRise: fields['hot-rise'],
    suppressor: fields.suppressor,
    tolerance: fields.tolerance,
  });
}
