/** Another coil: of other volts, with a lower pull-in, one that stands more, one with its spike quenched. */
import type { Finding } from '../../findings/report-model.ts';
import type { Coil, Limit, Volts } from '../../plan/device-figures.ts';
import type { RelayPart, TimerPart } from '../../plan/part-types.ts';
import { coilOf } from '../../study/coil-models.ts';
import { worstRow } from '../../study/coil-states.ts';
import { numberText, rounded } from '../../text/numbers.ts';
import { listOf } from '../../text/word-list.ts';
import type { Bench } from './bench.ts';
import { type Change, partChange } from './change.ts';
import type { Option } from './search.ts';
import { COIL_VOLTS, MOSTS, PULL_INS } from './series.ts';

type WithCoil = RelayPart | TimerPart;

/** Coils that a finding is about; a board has its own inside, which nobody can change. */
function coilsOf({ study }: Bench, f: Finding): WithCoil[] {
  return f.parts.flatMap((name) => {
    const part = study.plan.parts.get(name);
    return part && (part.kind === 'relay' || part.kind === 'timer') ? [part] : [];
  });
}

const text = (x: number, unit: string): string => `${rounded(x, 6)} ${unit}`;
const percent = (share: number): string => text(share * 100, '%');

function withCoil(
  part: WithCoil,
  fields: Record<string, string | null>,
  words: string,
  change: Partial<Coil>,
): Change {
  return partChange(
    part.name,
    fields,
    words,
    (p) => (p.kind === 'relay' || p.kind === 'timer' ? { ...p, coil: { ...p.coil, ...change } } : p),
    true,
  );
}

/** Share of its rated volts that a coil may be away from those of its supply and still be the version for it. */
const NEAR = 0.05;

/** The version of each coil for the volts of its supply, with the same power and the same shares of its rated volts. */
export function coilVersion(bench: Bench, f: Finding): Option[] {
  const changes = coilsOf(bench, f).map((part): Change | undefined => {
    const fed = suppliedVolts(bench, part);
    const { rated } = part.coil;
    if (fed === undefined || rated.kind !== fed.kind || Math.abs(fed.volts / rated.volts - 1) <= NEAR)
      return undefined;
    return version(part, fed.volts);
  });
  const all = changes.filter((c) => c !== undefined);
  return all.length > 0 && all.length === changes.length ? [{ sizes: [all] }] : [];
}

/** What a coil is sold for that suits what feeds it; on mains that is told by what arrives, of two legs or of three phases. */
function suppliedVolts({ study }: Bench, part: WithCoil): Volts | undefined {
  const source = study.fedCoils.find((c) => c.part.name === part.name)?.source;
  if (source === undefined) return undefined;
  const owner = study.plan.parts.get(source.part);
  if (owner?.kind === 'supply' || owner?.kind === 'battery')
    return COIL_VOLTS.some((volts) => volts === owner.output.volts) ? owner.output : undefined;
  const state = study.coilStates.find((s) => s.fed.part.name === part.name);
  const arrives = state === undefined ? 0 : worstRow(state).nominal;
  const volts = COIL_VOLTS.reduce((x, y) => (Math.abs(y - arrives) < Math.abs(x - arrives) ? y : x));
  return Math.abs(volts / arrives - 1) <= NEAR ? { volts, kind: source.kind } : undefined;
}

/** Twice the volts at the same power is four times the ohms and half the current. */
export function version(part: WithCoil, volts: number): Change {
  const { coil } = part;
  const k = volts / coil.rated.volts;
  const fields: Record<string, string> = {};
  const change: { -readonly [K in keyof Coil]?: Coil[K] } = { rated: { volts, kind: coil.rated.kind } };
  fields['coil.rated'] = `${text(volts, 'V')} ${coil.rated.kind.toUpperCase()}`;
  if (coil.resistance !== undefined) {
    change.resistance = rounded(coil.resistance * k * k, 6);
    fields['coil.resistance'] = text(change.resistance, 'ohm');
  }
  if (coil.current !== undefined) {
    change.current = rounded(coil.current / k, 6);
    fields['coil.current'] = text(change.current, 'A');
  }
  const limit = (key: string, of: Limit | undefined): Limit | undefined => {
    if (of === undefined || !('volts' in of)) return of;
    const scaled = rounded(of.volts * k, 6);
    fields[`coil.${key}`] = text(scaled, 'V');
    return { volts: scaled };
  };
  const limits = {
    pullIn: limit('pull-in', coil.pullIn),
    dropOut: limit('drop-out', coil.dropOut),
    most: limit('most', coil.most),
  };
  for (const [key, value] of Object.entries(limits)) if (value) Object.assign(change, { [key]: value });
  const words = `use ${part.name} with a coil for ${fields['coil.rated']}`;
  return withCoil(part, fields, words, change);
}

/** One coil that pulls in at a lower share of its volts, the highest share first. */
export function coilPullsInLower(bench: Bench, f: Finding): Option[] {
  const [part, ...more] = coilsOf(bench, f);
  if (!part || more.length > 0) return [];
  const state = bench.study.coilStates.find((s) => s.fed.part.name === part.name);
  if (!state) return [];
  const { rated } = state.fed.model;
  const now = state.fed.model.pullInVolts / rated;
  const sizes = PULL_INS.filter((share) => share < now - 1e-6).map((fraction) => [
    withCoil(
      part,
      { 'coil.pull-in': percent(fraction) },
      `use a relay as ${part.name} that pulls in at ${numberText(fraction * rated)} V (${percent(fraction)}) or less`,
      { pullIn: { fraction } },
    ),
  ]);
  return [{ sizes }];
}

/** Share of rated volts that AC coils are sold to stand for long at most; data of relays and contactors, from memory. */
const MOST_AC = 1.2;

/** A coil that is made to stand more. */
export function coilStandsMore(bench: Bench, f: Finding): Option[] {
  const [part] = coilsOf(bench, f);
  if (!part) return [];
  const { volts, kind } = part.coil.rated;
  // An AC coil is near its limit at its own volts: above it the iron saturates.
  const sizes = MOSTS.filter((share) => kind === 'dc' || share <= MOST_AC).map((fraction) => [
    withCoil(
      part,
      { 'coil.most': percent(fraction) },
      `use a relay as ${part.name} whose data say that its coil stands ${numberText(fraction * volts)} V for long`,
      { most: { fraction } },
    ),
  ]);
  return [{ sizes }];
}

/** A coil made for the frequency it gets. */
export function coilOfFrequency(bench: Bench, f: Finding): Option[] {
  const [part] = coilsOf(bench, f);
  if (!part) return [];
  const { rated } = coilOf(part);
  const sizes = [50, 60].map((hertz) => [
    withCoil(
      part,
      { 'coil.rated': `${text(rated.volts, 'V')} AC ${hertz} Hz`, 'coil.frequency': null },
      `use a coil marked ${hertz} Hz or 50/60 Hz in ${part.name}`,
      { frequency: hertz },
    ),
  ]);
  return [{ sizes, scan: true }];
}

/** Every coil that the finding speaks of with its spike quenched. */
export function coilQuenched(bench: Bench, f: Finding): Option[] {
  const parts = coilsOf(bench, f);
  const [first] = parts;
  if (!first) return [];
  const names = listOf(parts.map((p) => p.name));
  const many = parts.length > 1;
  const words = {
    diode: many
      ? `fit a diode at each coil of ${names}, its band to the + side, or take relays with one built in`
      : `fit a diode at the coil of ${names}, its band to the + side, or a relay with one built in`,
    varistor: many
      ? `use relays with a varistor built in as ${names}`
      : `use a relay with a varistor built in as ${names}`,
  };
  const sizes = (['diode', 'varistor'] as const).map((suppressor) =>
    parts.map((part) =>
      withCoil(part, { 'coil.suppressor': suppressor }, part === first ? words[suppressor] : '', {
        suppressor,
      }),
    ),
  );
  return [{ sizes, scan: true }];
}
