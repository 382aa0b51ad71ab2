/** What is printed on a part, in words that a shop understands; an empty text for what the plan leaves out. */

import {
  CATEGORIES,
  type Coil,
  type Contact,
  type Limit,
  type Power,
  type Volts,
} from '../plan/device-figures.ts';
import type { Pole } from '../plan/part-types.ts';
import { printedVolts } from '../ratings/coil.ts';
import { rounded } from '../text/numbers.ts';

export const num = (x: number): string => `${rounded(x, 4)}`;
export const volts = (v: Volts): string => `${num(v.volts)} V ${v.kind.toUpperCase()}`;
export const amps = (a: number | undefined): string =>
  a === undefined ? '' : a < 0.1 ? `${num(a * 1000)} mA` : `${num(a)} A`;

export function power(p: Power | undefined): string {
  if (p === undefined) return '';
  if (p.unit === 'hp') return `${num(p.horsepower ?? p.watts / 745.7)} hp`;
  return `${num(p.watts)} ${p.unit}`;
}

function limit(word: string, value: Limit | undefined): string {
  if (value === undefined) return '';
  return `${word} ${'volts' in value ? `${num(value.volts)} V` : `${num(value.fraction * 100)} %`}`;
}

export function contactWords(c: Contact): string[] {
  const at = (a: number | undefined, what: string) => (a === undefined ? '' : `${what} ${amps(a)}`);
  const categories = CATEGORIES.map(({ field, name, kind }) => {
    const upTo = c.upTo?.[field];
    return `${at(c[field], name)}${upTo === undefined ? '' : ` ${volts({ volts: upTo, kind })}`}`;
  });
  return [
    ...c.ratings.map((r) => `${amps(r.amps)} ${volts(r)}`),
    ...c.motor.map((m) => `${num(m.horsepower)} hp ${volts(m)}${m.phases === 3 ? ' 3-phase' : ''}`),
    ...categories,
    c.pilot === undefined ? '' : `pilot duty ${c.pilot}`,
    at(c.lockedRotor, 'locked rotor'),
    at(c.make, 'makes'),
    c.least === undefined ? '' : `least ${amps(c.least.amps)} ${volts(c.least)}`,
    c.metal ?? '',
  ];
}

export function coilWords(c: Coil): string[] {
  return [
    `coil ${c.upTo === undefined && c.either !== true ? volts(c.rated) : printedVolts(c)}${c.frequency === undefined ? '' : ` ${num(c.frequency)} Hz`}`,
    c.resistance === undefined ? amps(c.current) || power(c.power) : `${num(c.resistance)} ohm`,
    limit('pull-in', c.pullIn),
    c.suppressor === undefined || c.suppressor === 'none' ? '' : `with built-in ${c.suppressor}`,
  ];
}

export function poleWords(poles: readonly Pole[]): string[] {
  const forms = poles.map((p) =>
    p.make === undefined ? 'break' : p.break === undefined ? 'make' : 'change-over',
  );
  const kinds = [...new Set(forms)];
  const counted = kinds.map((k) => `${forms.filter((f) => f === k).length} ${k}`).join(' and ');
  const contacts = [...new Set(poles.map((p) => contactWords(p.contact).filter(Boolean).join(', ')))];
  return [`${counted} contact${poles.length === 1 ? '' : 's'}`, ...contacts];
}

export const ohms = (x: number | undefined): string => (x === undefined ? '' : `${num(x)} ohm`);

const CUBIC_INCH = 0.0254 ** 3;

/** m³ in both units. */
export const volume = (x: number | undefined): string =>
  x === undefined ? 'volume not stated' : `${num(x / CUBIC_INCH)} in3 (${num(x * 1e6)} cm3)`;
