/** Direct current in place of a transformer: a regulated supply, and every coil that it feeds in its DC version. */
import type { Finding } from '../../findings/report-model.ts';
import type { Coil } from '../../plan/device-figures.ts';
import type { RelayPart, SupplyPart } from '../../plan/part-types.ts';
import type { Plan } from '../../plan/plan.ts';
import { coilAmps } from '../../ratings/coil.ts';
import type { FedCoil } from '../../study/fed-coils.ts';
import { rounded } from '../../text/numbers.ts';
import type { Bench } from './bench.ts';
import { type Change, partChange } from './change.ts';
import { OUTPUT, outputAs } from './other-kind.ts';
import { withCoil, withLimit, withParts } from './put.ts';
import type { Option } from './search.ts';
import { COIL_POWERS, SUPPLY_AMPS } from './series.ts';

/** V for which both DC coils and regulated supplies are sold for loops; common practice. */
const VOLTS: readonly number[] = [12, 24, 48];
/** Share of its volts at which a DC coil that is sold pulls in; makers' data. */
const PULL_IN = 0.75;
/** Share of its limit up to which nothing is said of a supply's load. */
const EASY = 0.8;
/** Sizes of supply that are tried. */
const MOST_SIZES = 3;

const num = (x: number): string => `${rounded(x, 6)}`;

/** A relay whose coil is exchanged, with the most W that its DC version may take. */
interface Exchanged {
  readonly relay: RelayPart;
  readonly watts: number;
}

/**
 * For trouble of a coil on a transformer. A DC coil has no inrush, holds its volts at a third of its pull-in and is fed by a
 * supply that neither rises unloaded nor sags.
 */
export function directCurrent(bench: Bench, f: Finding): Option[] {
  const { study } = bench;
  const sources = new Set([
    ...f.parts,
    ...study.fedCoils.filter((c) => f.parts.includes(c.part.name)).map((c) => c.source.part),
  ]);
  return [...sources].flatMap((name) => {
    const supply = study.plan.parts.get(name);
    return supply?.kind === 'supply' && supply.output.kind === 'ac' ? forSupply(bench, supply) : [];
  });
}

function forSupply(bench: Bench, supply: SupplyPart): Option[] {
  const { volts } = supply.output;
  // Marks of its own would have to say which of them is + and which is -.
  if (!VOLTS.includes(volts) || supply.where.has('marks')) return [];
  const fed = bench.study.fedCoils.filter((c) => c.source.part === supply.name);
  const exchanged = fed.flatMap((c) => dcVersion(c, volts) ?? []);
  const kept = fed.filter((c) => c.model.either);
  if (exchanged.length === 0 || exchanged.length + kept.length < fed.length) return [];
  const held = kept.reduce((sum, { model }) => sum + (coilAmps(model) ?? 0) * (model.at ?? model.rated), 0);
  const watts = exchanged.reduce((sum, e) => sum + e.watts, held);
  const coils = exchanged.map((e) => coilChange(e, volts));
  const sizes = SUPPLY_AMPS.filter((amps) => amps * volts * EASY >= watts)
    .slice(0, MOST_SIZES)
    .map((amps) => [supplyChange(supply, amps), ...coils]);
  return [{ sizes }];
}

/** By the VA that it holds with: a DC coil of the same relay takes no more W (data of relays and contactors, from memory). */
function dcVersion({ part, model }: FedCoil, volts: number): Exchanged | undefined {
  if (part.kind !== 'relay' || part.coil.upTo !== undefined || model.kind !== 'ac' || model.rated !== volts)
    return undefined;
  const va = coilAmps(model);
  const watts = va === undefined ? undefined : COIL_POWERS.find((w) => w >= va * volts * (1 - 1e-9));
  return watts === undefined ? undefined : { relay: part, watts };
}

function coilChange({ relay, watts }: Exchanged, volts: number): Change {
  const coil: Coil = {
    rated: { volts, kind: 'dc' },
    power: { watts, unit: 'W' },
    pullIn: { fraction: PULL_IN },
    suppressor: 'varistor',
  };
  const text = `{rated: ${num(volts)} V DC, power: ${num(watts)} W, pull-in: ${num(PULL_IN * 100)} %, suppressor: varistor}`;
  return partChange(
    relay.name,
    { coil: text },
    `${relay.name} with a coil for ${num(volts)} V DC that takes ${num(watts)} W or less, pulls in at ${num(PULL_IN * 100)} % or less and has a varistor built in`,
    (p) => (p.kind === 'relay' ? withCoil(p, coil) : p),
    true,
  );
}

function supplyChange(own: SupplyPart, amps: number): Change {
  const { volts } = own.output;
  const [plus, minus] = OUTPUT.dc;
  const [first, second] = OUTPUT.ac;
  const apply = (plan: Plan): Plan =>
    withParts(outputAs(plan, own.name, 'dc'), [own.name], (p) => {
      if (p.kind !== 'supply') return p;
      const { noLoad: _n, tolerance: _t, frequency: _f, ...rest } = p;
      return withLimit({ ...rest, output: { volts, kind: 'dc' }, regulation: 'regulated' }, amps);
    });
  const limited = own.class2 === true ? ', that limits itself as the transformer does,' : '';
  return {
    told: {
      change: 'part',
      part: own.name,
      fields: {
        output: `${num(volts)} V DC`,
        limit: `${num(amps)} A`,
        regulation: 'regulated',
        ...{ tolerance: null, 'no-load': null, frequency: null },
        marks: `{"${first}": "${plus}", "${second}": "${minus}"}`,
      },
    },
    words: `use a regulated supply of ${num(volts)} V DC for ${num(amps)} A${limited} as ${own.name}, its ${plus} where ${first} is and its ${minus} where ${second} is,`,
    apply,
    anew: true,
  };
}
