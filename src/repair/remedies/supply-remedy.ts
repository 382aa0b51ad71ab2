/** Another supply: more amperes or volt-amperes, a regulated one, one of other volts, one with less tolerance. */
import type { FindingId } from '../../findings/finding-ids.ts';
import type { Finding } from '../../findings/report-model.ts';
import type { SupplyPart } from '../../plan/part-types.ts';
import { defaults } from '../../ratings/defaults.ts';
import { ratedAmps, supplyModel } from '../../ratings/supply.ts';
import { rounded } from '../../text/numbers.ts';
import type { Bench } from './bench.ts';
import { type Change, partChange } from './change.ts';
import { withLimit } from './put.ts';
import type { Option } from './search.ts';
import { RISES, SUPPLY_AMPS, SUPPLY_VA, SUPPLY_VOLTS, TOLERANCES } from './series.ts';

/** What a supply that is too weak brings about; one supply is to mend all of it that stands. */
const OF_SUPPLY: ReadonlySet<string> = new Set<FindingId>([
  'supply-overloaded',
  'coil-too-low',
  'coil-thin-margin',
  'coil-drops-at-start',
]);

/** Times its volts that a transformer of the larger kind mostly gives with nothing on it; makers' data, from memory. */
const USUAL_RISE = 1.1;
/** Times the size of a supply up to which a larger one is a cure. */
const MOST_LARGER = 20;

type Fields = Record<string, string | null>;

const num = (x: number): string => `${rounded(x, 6)}`;

function suppliesOf({ study }: Bench, f: Finding): SupplyPart[] {
  const named = f.parts.flatMap((p) => study.plan.parts.get(p) ?? []);
  const own = named.filter((p) => p.kind === 'supply');
  const fed = study.fedCoils.filter((c) => f.parts.includes(c.part.name)).map((c) => c.source.part);
  const feeding = fed.flatMap((name) => study.plan.parts.get(name) ?? []).filter((p) => p.kind === 'supply');
  return [...new Map([...own, ...feeding].map((p) => [p.name, p])).values()].slice(0, 1);
}

/** A supply like another but for some fields, told as `words`. */
function instead(own: SupplyPart, to: SupplyPart, fields: Fields, words: string): Change {
  const anew = to.output.volts !== own.output.volts;
  return partChange(own.name, fields, words, (p) => (p.kind === 'supply' ? to : p), anew);
}

const withoutNoLoad = ({ noLoad: _, ...rest }: SupplyPart): SupplyPart => rest;
const isLoose = (p: SupplyPart, practice: 'nec' | 'iec') => supplyModel(p, practice).sourceOhms > 0;

const limitText = (part: SupplyPart): string =>
  part.output.kind === 'ac' ? `${num(ratedAmps(part) * part.output.volts)} VA` : `${num(ratedAmps(part))} A`;
const outputText = ({ output }: SupplyPart): string => `${num(output.volts)} V ${output.kind.toUpperCase()}`;

/** V that a transformer like this one, for other volts, may give with nothing on it: the same share of them, or the usual one. */
function unloaded({ noLoad, output }: SupplyPart, volts: number): number {
  return rounded(noLoad === undefined ? USUAL_RISE * volts : (noLoad * volts) / output.volts, 4);
}

const riseWords = (noLoad: number | undefined): string =>
  noLoad === undefined ? '' : ` that gives no more than ${num(noLoad)} V with nothing on it`;

/**
 * The next sizes of the same supply. A transformer is to give no more with nothing on it than the plan's, or than such ones
 * mostly give, since on that its coils turn; the rise of an adapter that is not regulated is that usual for its size.
 */
function largerSupply(own: SupplyPart, practice: 'nec' | 'iec'): Change[][] {
  const ac = own.output.kind === 'ac';
  const have = ac ? ratedAmps(own) * own.output.volts : ratedAmps(own);
  return (ac ? SUPPLY_VA : SUPPLY_AMPS)
    .filter((size) => size > have * 1.001 && size <= MOST_LARGER * have)
    .map((size) => {
      const loose = isLoose(own, practice);
      const noLoad = ac && loose ? unloaded(own, own.output.volts) : undefined;
      const like = loose ? withoutNoLoad(own) : own;
      const to = withLimit(noLoad === undefined ? like : { ...like, noLoad }, size);
      const fields: Fields = {
        limit: limitText(to),
        ...(loose &&
          noLoad !== own.noLoad && { 'no-load': noLoad === undefined ? null : `${num(noLoad)} V` }),
      };
      const noun = ac ? 'a transformer' : 'a supply';
      const words = `use ${noun} of ${outputText(own)} for ${limitText(to)}${riseWords(noLoad)} as ${own.name}`;
      return [instead(own, to, fields, words)];
    });
}

/** Sizes, of which one has to mend all that the supply is at fault for, or else the finding alone. */
function joint(bench: Bench, f: Finding, own: SupplyPart, sizes: readonly Change[][]): Option[] {
  const fed = bench.study.fedCoils.filter((c) => c.source.part === own.name).map((c) => c.part.name);
  const others = bench.before.filter(
    (b) => OF_SUPPLY.has(b.id) && b.parts.some((p) => p === own.name || fed.includes(p)),
  );
  const all = (i: number) => [f, ...others].every((x) => bench.isGone(x, sizes[i]!));
  const together = sizes.length > 0 && others.length > 1 && all(sizes.length - 1);
  return together ? [{ sizes, serves: all }] : [{ sizes }];
}

/** For what is short of amperes. */
export function supplyForAmps(bench: Bench, f: Finding): Option[] {
  return suppliesOf(bench, f).flatMap((own) =>
    joint(bench, f, own, largerSupply(own, bench.study.plan.practice)),
  );
}

/** For coils that get too few volts. */
export function supplyForVolts(bench: Bench, f: Finding): Option[] {
  const { practice } = bench.study.plan;
  return suppliesOf(bench, f).flatMap((own) => [
    ...(isLoose(own, practice) ? joint(bench, f, own, largerSupply(own, practice)) : []),
    ...regulated(own, practice),
    ...otherVolts(bench, f, own, true),
    ...closer(own),
  ]);
}

/** For coils that get too many. */
export function supplyForFewerVolts(bench: Bench, f: Finding): Option[] {
  const { practice } = bench.study.plan;
  return suppliesOf(bench, f).flatMap((own) => [
    ...regulated(own, practice),
    ...otherVolts(bench, f, own, false),
    ...(own.output.kind === 'ac' && isLoose(own, practice)
      ? [{ sizes: largerSupply(own, practice) }, lessRise(own)]
      : []),
  ]);
}

/** The same transformer with fewer volts when nothing hangs on it, the widest that do first. */
function lessRise(own: SupplyPart): Option {
  const { volts } = own.output;
  const sizes = RISES.map((share) => share * volts)
    .filter((noLoad) => noLoad < (own.noLoad ?? Number.POSITIVE_INFINITY) - 1e-9)
    .map((noLoad) => {
      const text = `${num(noLoad)} V`;
      const words = `use a transformer of ${outputText(own)} that gives no more than ${text} with nothing on it as ${own.name}`;
      return [instead(own, { ...own, noLoad }, { 'no-load': text }, words)];
    });
  return { sizes };
}

/** The same volts, held whatever is drawn. */
function regulated(own: SupplyPart, practice: 'nec' | 'iec'): Option[] {
  if (own.output.kind !== 'dc' || !isLoose(own, practice)) return [];
  const to: SupplyPart = { ...withoutNoLoad(own), regulation: 'regulated' };
  const fields: Fields = { regulation: 'regulated', ...(own.noLoad !== undefined && { 'no-load': null }) };
  const words = `use a regulated supply of ${outputText(own)} as ${own.name}`;
  return [{ sizes: [[instead(own, to, fields, words)]] }];
}

/** Supplies of printed volts near those of the coils, the nearest first; of the same amperes or volt-amperes, and larger. */
function otherVolts({ study }: Bench, f: Finding, own: SupplyPart, short: boolean): Option[] {
  // The volts of a regulated supply do not depend on its size.
  const larger = short && isLoose(own, study.plan.practice);
  const rated = study.fedCoils.filter((c) => f.parts.includes(c.part.name)).map((c) => c.model.rated);
  const off = (volts: number) => Math.max(...rated.map((r) => Math.abs(Math.log(volts / r))));
  return SUPPLY_VOLTS.filter((v) => v !== own.output.volts && rated.length > 0 && off(v) < MOST_OFF)
    .sort((a, b) => off(a) - off(b))
    .slice(0, 2)
    .map((volts) => ({ sizes: ofVolts(own, volts).slice(0, larger ? undefined : 1) }));
}

function ofVolts(own: SupplyPart, volts: number): Change[][] {
  const { kind } = own.output;
  const have = kind === 'ac' ? ratedAmps(own) * own.output.volts : ratedAmps(own);
  const larger = (kind === 'ac' ? SUPPLY_VA : SUPPLY_AMPS).filter(
    (size) => size > have * 1.001 && size <= MOST_LARGER * have,
  );
  return [have, ...larger].map((size) => {
    const noLoad = kind === 'ac' ? unloaded(own, volts) : undefined;
    const like = { ...withoutNoLoad(own), output: { volts, kind } };
    const to = withLimit(noLoad === undefined ? like : { ...like, noLoad }, size);
    const fields: Fields = {
      output: outputText(to),
      limit: limitText(to),
      ...(noLoad !== own.noLoad && { 'no-load': noLoad === undefined ? null : `${num(noLoad)} V` }),
    };
    const more = size > have ? ` for ${limitText(to)}` : '';
    const words = `use a supply of ${outputText(to)}${more}${riseWords(noLoad)} as ${own.name}`;
    return [instead(own, to, fields, words)];
  });
}

/** Natural logarithm of the factor by which a supply may be off the volts printed on a coil. */
const MOST_OFF = Math.log(1.3);

/** The same regulated supply with its volts held closer. */
function closer(own: SupplyPart): Option[] {
  if (own.regulation !== 'regulated') return [];
  const has = own.tolerance ?? defaults.regulatedTolerance.value;
  const sizes = TOLERANCES.filter((t) => t < has - 1e-9).map((tolerance) => {
    const share = `${num(tolerance * 100)} %`;
    const words = `use a supply of ${outputText(own)} that holds its volts to ${share} as ${own.name}`;
    return [instead(own, { ...own, tolerance }, { tolerance: share }, words)];
  });
  return [{ sizes }];
}
