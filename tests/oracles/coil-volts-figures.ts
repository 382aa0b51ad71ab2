/**
 * Figures of the parts for the coil-voltage oracle, each at three corners: `low` (least volts at the coil),
 * `nominal` (20 °C, as printed) and `high` (most volts). Written from the published figures alone.
 */
import { type Fields, figures, isAc, isMap, listOf, text } from './brute-read.ts';

import { type ByCorner, type Place, warm } from './coil-volts-wire.ts';

const percent = (x: unknown, otherwise: number): number =>
  x === undefined ? otherwise : figures(x)['%']! / 100;

/** ohm of a closed contact, or of a fuse when it has no contact data */
export function contactOhms(...contacts: unknown[]): ByCorner<number> {
  for (const c of contacts) {
    const stated = isMap(c) ? figures(c.resistance).ohm : undefined;
    if (stated !== undefined) return { low: stated, nominal: stated, high: stated };
  }
  return { low: 0.1, nominal: 0.05, high: 0.015 };
}

export interface Source {
  ac: boolean;
  rated: number;
  /** V behind `ohm` */
  emf: ByCorner<number>;
  ohm: number;
  /** A that a regulated supply holds when more is asked of it */
  most?: number;
}

export function battery(fields: Fields): Source {
  const rated = figures(fields.output).V!;
  const stated = figures(fields['internal-resistance']).ohm;
  const low = figures(fields.lowest).V ?? 0.8 * rated;
  const high = figures(fields.highest).V ?? 1.1 * rated;
  return {
    ac: false,
    rated,
    emf: { low, nominal: rated, high },
    ohm: stated ?? (rated === 9 ? 3 : 0),
  };
}

function rise(regulation: string, rated: number, amps: number): number {
  if (regulation === 'unregulated') return amps < 0.2 ? 0.6 : 0.5;
  const va = rated * amps * (1 - 1e-12);
  return va <= 10 ? 0.25 : va <= 30 ? 0.2 : 0.15;
}

/** Adapter or transformer: a stiff source when regulated, else open-circuit volts behind a resistance. */
export function supply(fields: Fields, place: Place): Source {
  const ac = isAc(fields.output);
  const rated = figures(fields.output).V!;
  const noLoad = figures(fields['no-load']).V;
  const guess = ac ? 'transformer' : (noLoad ?? 0) > 1.05 * rated ? 'unregulated' : 'regulated';
  const regulation = text(fields.regulation) || guess;
  if (regulation === 'regulated') {
    const tolerance = percent(fields.tolerance, 0.05);
    const high = Math.max(rated * (1 + tolerance), noLoad ?? 0);
    const { A, VA, W } = figures(fields.limit);
    const most = A ?? (VA ?? W ?? Number.NaN) / rated;
    return { ac, rated, emf: { low: rated * (1 - tolerance), nominal: rated, high }, ohm: 0, most };
  }
  const limit = figures(fields.limit);
  const amps = limit.A ?? (limit.VA ?? limit.W!) / rated;
  const open = noLoad ?? rated * (1 + rise(regulation, rated, amps));
  const tolerance = percent(fields.tolerance, 0);
  const [sag, swell] = place.practice === 'nec' ? [0.05, 0.05] : [0.06, 0.1];
  const emf = { low: open * (1 - tolerance - sag), nominal: open, high: open * (1 + tolerance + swell) };
  return { ac, rated, emf, ohm: (open - rated) / amps };
}

/** ohm of a lamp or resistor */
export function lampOhms(fields: Fields): number {
  const stated = figures(fields.resistance).ohm;
  if (stated !== undefined) return stated;
  const { V, W, A } = figures(fields.rated);
  if (V === undefined) throw new Error('oracle: a lamp or resistor without figures');
  return W !== undefined ? V ** 2 / W : V / (A ?? 0.05);
}

export interface Coil {
  ac: boolean;
  rated: number;
  /** ohm, real and imaginary part */
  z: ByCorner<readonly [number, number]>;
  /** V at 20 °C */
  pullIn: number;
  /** V at the temperature of a coil that has run long */
  hotPullIn: number;
  /** V */
  dropOut: number;
  polarised: boolean;
  /** a diode inside it, cathode at A1 */
  diode: boolean;
}

const phasor = (ohm: number, factor: unknown): readonly [number, number] => {
  const cos = factor === undefined ? 1 : Number.parseFloat(text(factor));
  return [ohm * cos, ohm * Math.sqrt(Math.max(0, 1 - cos ** 2))];
};

function acImpedance(coil: Fields, rated: number, contactor: boolean): Coil['z'] {
  const { VA, W } = figures(coil.power);
  const amps = figures(coil.current).A;
  const held = VA ?? W ?? (amps === undefined ? Number.NaN : amps * rated);
  const inrush = figures(coil.inrush).VA ?? held * (contactor ? 4 : 1.6);
  if (!(held > 0 && inrush > 0)) throw new Error('oracle: an AC coil without its VA');
  const open = phasor(rated ** 2 / inrush, coil['inrush-power-factor']);
  return { low: open, nominal: open, high: phasor(rated ** 2 / held, coil['power-factor']) };
}

function dcResistance(coil: Fields, rated: number, hot: number): Coil['z'] {
  const amps = figures(coil.current).A;
  const { W, VA } = figures(coil.power);
  const byAmps = amps === undefined ? undefined : rated / amps;
  const ohm = figures(coil.resistance).ohm ?? byAmps ?? rated ** 2 / (W ?? VA ?? Number.NaN);
  if (!(ohm > 0)) throw new Error('oracle: a DC coil without its resistance');
  const tolerance = percent(coil.tolerance, 0.1);
  return { low: [ohm * (1 - tolerance) * hot, 0], nominal: [ohm, 0], high: [ohm * (1 + tolerance) * hot, 0] };
}

function limitVolts(x: unknown, rated: number, otherwise: number): number {
  const f = figures(x);
  return f['%'] !== undefined ? (f['%'] / 100) * rated : (f.V ?? otherwise * rated);
}

/** The coil of a relay. A contactor is a relay with a pole marked 1, 2; its stated floor holds when warm. */
export function relayCoil(fields: Fields, place: Place): Coil {
  const coil = isMap(fields.coil) ? fields.coil : {};
  const ac = isAc(coil.rated);
  const rated = figures(coil.rated).V!;
  const contactor = listOf(fields.poles).some((p) => isMap(p) && listOf(p.marks).map(text).join() === '1,2');
  const hotRise =
    coil['hot-rise'] === undefined ? (contactor ? 50 : 30) : Number.parseFloat(text(coil['hot-rise']));
  const hot = warm(place.ambient + hotRise);
  const pullIn = limitVolts(coil['pull-in'], rated, contactor ? 0.85 : ac ? 0.8 : 0.75);
  // IEC 60947-4-1 8.2.1.2 (from memory): limits of operation hold warm, and at 75 % the device may have opened.
  const floor = contactor ? 0.75 * rated : Number.POSITIVE_INFINITY;
  const warmAlready = ac || pullIn >= floor;
  const builtIn = !ac && coil.suppressor === 'diode';
  const polarised = !ac && (typeof fields.polarised === 'boolean' ? fields.polarised : builtIn);
  return {
    ac,
    rated,
    z: ac ? acImpedance(coil, rated, contactor) : dcResistance(coil, rated, hot),
    pullIn,
    hotPullIn: warmAlready ? pullIn : Math.min(pullIn * hot, floor),
    dropOut: limitVolts(coil['drop-out'], rated, ac ? (contactor ? 0.2 : 0.3) : 0.1),
    polarised,
    diode: builtIn && fields.polarised !== false,
  };
}
