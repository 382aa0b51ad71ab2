/** What is printed on a part, in words that a shop understands, and which parts are the same thing to buy. */
import type { Cable, Coil, Contact, Limit, Part, Pole, Power, Volts } from '../plan/plan.ts';
import { rounded } from '../text/numbers.ts';

const num = (x: number): string => `${rounded(x, 4)}`;
const volts = (v: Volts): string => `${num(v.volts)} V ${v.kind.toUpperCase()}`;
const amps = (a: number | undefined): string =>
  a === undefined ? '' : a < 0.1 ? `${num(a * 1000)} mA` : `${num(a)} A`;

function power(p: Power | undefined): string {
  if (p === undefined) return '';
  if (p.unit === 'hp') return `${num(p.horsepower ?? p.watts / 745.7)} hp`;
  return `${num(p.watts)} ${p.unit}`;
}

function limit(word: string, value: Limit | undefined): string {
  if (value === undefined) return '';
  return `${word} ${'volts' in value ? `${num(value.volts)} V` : `${num(value.fraction * 100)} %`}`;
}

function contactWords(c: Contact): string[] {
  const at = (a: number | undefined, what: string) => (a === undefined ? '' : `${what} ${amps(a)}`);
  return [
    ...c.ratings.map((r) => `${amps(r.amps)} ${volts(r)}`),
    ...c.motor.map((m) => `${num(m.horsepower)} hp ${volts(m)}${m.phases === 3 ? ' 3-phase' : ''}`),
    at(c.ac3, 'AC-3'),
    at(c.ac15, 'AC-15'),
    at(c.dc13, 'DC-13'),
    c.pilot === undefined ? '' : `pilot duty ${c.pilot}`,
    at(c.lockedRotor, 'locked rotor'),
    at(c.make, 'makes'),
    c.least === undefined ? '' : `least ${amps(c.least.amps)} ${volts(c.least)}`,
    c.metal ?? '',
  ];
}

function coilWords(c: Coil): string[] {
  return [
    `coil ${volts(c.rated)}${c.frequency === undefined ? '' : ` ${num(c.frequency)} Hz`}`,
    c.resistance === undefined ? amps(c.current) || power(c.power) : `${num(c.resistance)} ohm`,
    limit('pull-in', c.pullIn),
    c.suppressor === undefined || c.suppressor === 'none' ? '' : `with built-in ${c.suppressor}`,
  ];
}

function poleWords(poles: readonly Pole[]): string[] {
  const forms = poles.map((p) =>
    p.make === undefined ? 'break' : p.break === undefined ? 'make' : 'change-over',
  );
  const kinds = [...new Set(forms)];
  const counted = kinds.map((k) => `${forms.filter((f) => f === k).length} ${k}`).join(' and ');
  const contacts = [...new Set(poles.map((p) => contactWords(p.contact).filter(Boolean).join(', ')))];
  return [`${counted} contact${poles.length === 1 ? '' : 's'}`, ...contacts];
}

function words(part: Part): string[] {
  switch (part.kind) {
    case 'supply': {
      const most =
        part.limit.printed === 'A'
          ? amps(part.limit.value)
          : `${num(part.limit.value)} ${part.limit.printed}`;
      return [volts(part.output), most, part.regulation ?? '', part.class2 === true ? 'Class 2' : ''];
    }
    case 'battery':
      return [volts(part.output), part.capacity === undefined ? '' : `${num(part.capacity)} Ah`];
    case 'gate':
    case 'switch':
    case 'button':
    case 'cutout':
      return [...contactWords(part.contact), `tabs ${part.tabs.join(' ')}`];
    case 'selector':
      return [`positions ${part.positions.join(' ')}`, ...contactWords(part.contact)];
    case 'relay':
    case 'timer':
      return [
        part.kind === 'timer' ? `${part.function} ${num(part.time)} s` : '',
        ...coilWords(part.coil),
        part.technology === 'solid-state' ? 'solid-state' : '',
        ...poleWords(part.poles),
      ];
    case 'board':
      return [volts(part.supply), `input ${part.input}`, ...poleWords(part.poles)];
    case 'diode': {
      const zener = part.zener === undefined ? '' : `zener ${num(part.zener)} V`;
      return [amps(part.current), part.reverse === undefined ? '' : `${num(part.reverse)} V reverse`, zener];
    }
    case 'resistor':
    case 'lamp':
      return [
        part.resistance === undefined ? '' : `${num(part.resistance)} ohm`,
        part.rated === undefined ? '' : volts(part.rated),
        part.rated?.watts === undefined ? amps(part.rated?.amps) : `${num(part.rated.watts)} W`,
      ];
    case 'led':
      return [part.forward === undefined ? '' : `${num(part.forward)} V`, amps(part.current)];
    case 'fuse':
      return [amps(part.rating)];
    case 'plug':
      return [
        part.pattern ?? 'pattern not stated',
        volts(part.volts),
        part.breaker === undefined
          ? ''
          : `on a ${amps(part.breaker)} ${part.curve ?? ''} breaker`.replace('  ', ' '),
        part.fuse === undefined ? '' : `fuse ${amps(part.fuse)}`,
      ];
    case 'outlet':
      return [part.pattern ?? 'pattern not stated'];
    case 'motor':
    case 'load':
      return [power(part.power), amps(part.amps), volts(part.volts), part.type ?? ''];
    case 'box': {
      const volume =
        part.volume === undefined
          ? 'volume not stated'
          : `${num(part.volume / 0.0254 ** 3)} in3 (${num(part.volume * 1e6)} cm3)`;
      return [
        part.metal ? 'metal' : 'plastic',
        volume,
        part.divider === true ? 'with divider' : '',
        part.enclosure ?? '',
      ];
    }
    case 'joint':
      return [];
  }
}

const NOUNS: Partial<Record<Part['kind'], string>> = {
  gate: 'gate switch',
  cutout: 'cut-out',
  led: 'light-emitting diode',
};

/** `relay: coil 12 V DC, 155 ohm, ...`, from what the plan says. */
export function specOf(part: Part): string {
  const said = words(part).filter((w) => w !== '');
  const noun = NOUNS[part.kind] ?? part.kind;
  return said.length === 0 ? noun : `${noun}: ${said.join(', ')}`;
}

/** `bell: 20 AWG, 2 cores, solid, 150 V`. */
export function cableSpec(cable: Cable): string {
  return [
    cable.gauge,
    cable.cores === 1 ? '1 core' : `${cable.cores} cores`,
    cable.strands === 'fine' ? 'fine strands' : cable.strands,
    cable.flexible ? 'flexible' : '',
    cable.insulation === undefined ? 'insulation not stated' : `${num(cable.insulation)} V`,
  ]
    .filter((w) => w !== '')
    .join(', ');
}

/** What a shop does not sell: the name, the place in the file, and how the part is fitted and fed. */
const NOT_BOUGHT = new Set([
  'name',
  'at',
  'where',
  'pressedWhen',
  'fedFrom',
  'pluggedInto',
  'holds',
  'startsPerHour',
]);

/** Parts with the same key are the same thing to buy. */
export function buyingKey(part: Part): string {
  return JSON.stringify(
    Object.entries(part)
      .filter(([key]) => !NOT_BOUGHT.has(key))
      .sort(([a], [b]) => (a < b ? -1 : 1)),
  );
}
