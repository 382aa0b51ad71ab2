/** The wrong supply out of the drawer: other volts, or the other kind of current. */
import type { BatteryPart, SupplyPart } from '../../plan/part-types.ts';
import type { Plan } from '../../plan/plan.ts';
import { type Fault, RANK } from '../fault.ts';
import practice from './practice.json' with { type: 'json' };

/** Volts that plug-in supplies are commonly sold for. */
const SOLD = practice.sold.volts;
/** Share by which a neighbour in that row has to differ to be another supply. */
const OTHER = 0.05;
/** V above which a supply is no plug-in one that could be taken for another. */
const MOST = 50;

/** For each supply and battery of the loop its two neighbours in volts, and for a supply the other kind of current. */
export function supplyMixUps(plan: Plan): Fault[] {
  return [...plan.parts.values()].flatMap((part) =>
    (part.kind === 'supply' || part.kind === 'battery') && part.output.volts <= MOST ? mixUps(part) : [],
  );
}

function mixUps(part: SupplyPart | BatteryPart): Fault[] {
  const { volts, kind } = part.output;
  const lower = SOLD.filter((v) => v < volts * (1 - OTHER)).at(-1);
  const higher = SOLD.find((v) => v > volts * (1 + OTHER));
  const base = { item: part.name, parts: [part.name], at: polesOf(part), rank: RANK.supply };
  const put = (other: number) => (plan: Plan) => ({
    ...plan,
    parts: new Map(plan.parts).set(part.name, withVolts(part, other)),
  });
  const faults: Fault[] = [lower, higher].flatMap((other): Fault[] =>
    other === undefined
      ? []
      : [
          {
            ...base,
            mode: 'wrong-volts',
            text: `${part.name} is one of ${other} V ${kind.toUpperCase()}`,
            plan: put(other),
          },
        ],
  );
  if (part.kind === 'supply') {
    const of = kind === 'dc' ? 'ac' : 'dc';
    faults.push({
      ...base,
      mode: 'wrong-kind',
      text: `${part.name} gives ${volts} V ${of.toUpperCase()}`,
      // What a coil made for the one does on the other is not worked out.
      untold: true,
      circuit: (c) => ({
        ...c,
        sources: c.sources.map((s) => (s.part === part.name ? { ...s, kind: of } : s)),
      }),
    });
  }
  return faults;
}

/** The same supply with other volts; what else is stated in volts goes along. */
function withVolts(part: SupplyPart | BatteryPart, volts: number): SupplyPart | BatteryPart {
  const share = volts / part.output.volts;
  const times = <K extends string>(key: K, value: number | undefined) =>
    value === undefined ? {} : { [key]: value * share };
  const output = { ...part.output, volts };
  if (part.kind === 'supply') return { ...part, output, ...times('noLoad', part.noLoad) };
  return { ...part, output, ...times('lowest', part.lowest), ...times('highest', part.highest) };
}

function polesOf({ name, output }: SupplyPart | BatteryPart): string[] {
  return (output.kind === 'dc' ? ['+', '-'] : ['~1', '~2']).map((t) => `${name}.${t}`);
}
