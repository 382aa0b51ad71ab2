/** What a coil leaves out. */
import { drawsAsContactor, isContactor } from '../../circuit/thresholds.ts';
import type { Coil, Limit } from '../../plan/device-figures.ts';
import type { BoardPart, RelayPart, TimerPart } from '../../plan/part-types.ts';
import { type Default, defaultDropOut, defaultPullIn, defaults } from '../defaults.ts';
import { ends, putting, type Unsaid } from './ends.ts';

type Coiled = RelayPart | TimerPart | BoardPart;
type Ranged = Default & { readonly low: number; readonly high: number };

const LOOP = [4, 5, 6] as const;

/** A from which a relay's contact counts as large, and with it its coil. */
const LARGE = 16;

const coilOf = (part: Coiled): Coil =>
  part.kind === 'board' ? (part.coil ?? { rated: part.supply }) : part.coil;

export function unsaidOfCoil(part: Coiled): Unsaid[] {
  const coil = coilOf(part);
  const ac = coil.rated.kind === 'ac';
  const contactor = isContactor(part);
  const field = (
    name: string,
    row: Ranged,
    at: Unsaid['at'],
    change: (value: number) => Partial<Coil>,
    unit: Unsaid['unit'] = row.unit,
  ): Unsaid => ({
    ...{ parts: [part.name], field: `coil.${name}`, row, unit, bears: LOOP, at },
    put: putting<Coiled>(
      [part.name],
      (p, value) => ({ ...p, coil: { ...coilOf(p), ...change(Number(value)) } }) as Coiled,
    ),
  });
  const share = (key: 'pullIn' | 'dropOut' | 'most') => (value: number) => ({
    [key]: { fraction: value } satisfies Limit,
  });
  const found: Unsaid[] = [...drawOf(part, coil, field)];
  if (coil.pullIn === undefined) {
    const row = ranged(defaultPullIn(coil.rated.kind, contactor));
    found.push(
      field('pull-in', row, ends(row.high, row.low, row.low, row.low), share('pullIn'), '% of rated'),
    );
  }
  if (coil.dropOut === undefined) {
    const row = ranged(defaultDropOut(coil.rated.kind, contactor));
    found.push(
      field('drop-out', row, ends(row.low, row.low, row.high, row.high), share('dropOut'), '% of rated'),
    );
  }
  if (coil.most === undefined) {
    const row = defaults.mostCoil;
    found.push(field('most', row, ends(row.high, row.low, row.high, row.high), share('most'), '% of rated'));
  }
  if (!ac && coil.hotRise === undefined) {
    const row = contactor ? defaults.hotRiseContactor : defaults.hotRiseRelay;
    found.push(
      field('hot-rise', row, ends(row.high, row.high, row.low, row.low), (hotRise) => ({ hotRise })),
    );
  }
  if (!ac && coil.tolerance === undefined) {
    const row = defaults.coilTolerance;
    found.push(
      field('tolerance', row, ends(row.high, row.high, row.low, row.low), (tolerance) => ({ tolerance })),
    );
  }
  return found;
}

type MakeField = (
  name: string,
  row: Ranged,
  at: Unsaid['at'],
  change: (value: number) => Partial<Coil>,
) => Unsaid;

/** What says how much the coil draws. */
function drawOf(part: Coiled, coil: Coil, field: MakeField): Unsaid[] {
  const heavy = (row: Ranged) => ends(row.high, row.low, row.low, row.high);
  const drawn = coil.resistance ?? coil.current ?? coil.power;
  if (coil.rated.kind === 'dc') {
    if (drawn !== undefined) return [];
    if (part.kind === 'board')
      return [
        field('current', defaults.boardCoilAmps, heavy(defaults.boardCoilAmps), (current) => ({ current })),
      ];
    const row = dcWatts(part);
    const power = field('power', row, heavy(row), (watts) => ({ power: { watts, unit: 'W' } }));
    return [{ ...power, usual: row.value }];
  }
  const contactor = isContactor(part);
  const found: Unsaid[] = [];
  if (coil.current === undefined && coil.power === undefined) {
    const row = contactor ? defaults.coilVaAcContactor : defaults.coilVaAc;
    const power = field('power', row, heavy(row), (watts) => ({ power: { watts, unit: 'VA' } }));
    found.push({ ...power, usual: row.value });
  }
  if (coil.powerFactor === undefined) {
    const row = defaults.coilPowerFactor;
    found.push(
      field('power-factor', row, ends(row.low, row.low, row.high, row.high), (powerFactor) => ({
        powerFactor,
      })),
    );
  }
  if (coil.inrushPowerFactor === undefined) {
    const row = defaults.coilInrushPowerFactor;
    found.push(
      field('inrush-power-factor', row, ends(row.high, row.low, row.low, row.low), (inrushPowerFactor) => ({
        inrushPowerFactor,
      })),
    );
  }
  if (coil.inrush === undefined) found.push(inrushOf(part, coil, field));
  return found;
}

/** By how many times it draws more with its armature open, of the VA that are stated or taken. */
function inrushOf(part: Coiled, coil: Coil, field: MakeField): Unsaid {
  const contactor = isContactor(part);
  const row = drawsAsContactor(part) ? defaults.inrushRatioContactor : defaults.inrushRatioRelay;
  const unsaid = contactor ? defaults.coilVaAcContactor : defaults.coilVaAc;
  const stated = sealedVA(coil);
  const at = ends(
    row.high * (stated ?? unsaid.high),
    row.low * (stated ?? unsaid.low),
    row.low * (stated ?? unsaid.low),
    row.low * (stated ?? unsaid.high),
  );
  return field('inrush', { ...row, unit: 'VA' }, at, (inrush) => ({ inrush }));
}

function sealedVA({ power, current, rated, powerFactor }: Coil): number | undefined {
  if (power?.unit === 'VA') return power.watts;
  if (current !== undefined) return current * rated.volts;
  return power && power.watts / (powerFactor ?? defaults.coilPowerFactor.high);
}

function dcWatts(part: Coiled): Ranged {
  if (isContactor(part)) return defaults.coilWattsDcContactor;
  const amps = part.poles.flatMap((p) => p.contact.ratings.map((r) => r.amps));
  if (amps.length === 0) return { ...defaults.coilWattsDc, high: defaults.coilWattsDcLarge.high };
  return Math.max(...amps) > LARGE ? defaults.coilWattsDcLarge : defaults.coilWattsDc;
}

/** A row that has no range is at both ends what it is. */
const ranged = (row: Default): Ranged => ({ ...row, low: row.low ?? row.value, high: row.high ?? row.value });
