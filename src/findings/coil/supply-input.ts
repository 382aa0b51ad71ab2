import type { Source } from '../../circuit/circuit.ts';
import { followedShare } from '../../circuit/feed-volts.ts';
import type { SupplyPart } from '../../plan/part-types.ts';
import type { Study } from '../../study/study.ts';
import { rounded } from '../../text/numbers.ts';
import type { Check, FindingEntry } from '../entry.ts';
import { COMMON_PRACTICE, found } from '../finding.ts';
import type { Finding } from '../report-model.ts';

const entry: FindingEntry = {
  id: 'supply-input',
  title: 'a supply is fed other volts than its input or tap is made for',
  severity: 'fault',
  question: 4,
  base: 'control-transformer',
  meaning:
    'The mains comes to a tap, or to an input, that is made for other volts. A transformer passes that on: fed 208 V on its 240 V tap it gives 87 % of its output, and a contactor hums or stays out; fed 240 V on its 208 V tap it gives 115 %, and it overheats together with every coil on it. Transformers are mostly delivered with the highest tap in use.',
  wrong: 'volts: 208 V AC, frequency: 60 Hz',
  right: 'volts: 240 V AC, frequency: 60 Hz',
  basis: COMMON_PRACTICE,
  followsFrom: [],
  ofWiring: true,
};

export const supplyInput: Check = { entry, find };

/** Shares of its input between which a supply does what its label says: the mains itself may stand 10 % off; common practice. */
const SHARES = { least: 0.9, most: 1.1 } as const;

function find(study: Study): Finding[] {
  const misfits = study.circuit.sources.filter(isMisfed);
  // What hangs on a supply that is itself misfed is mended with it.
  const behind = (s: Source) => misfits.some((m) => m !== s && feeds(study, m, s));
  return study.circuit.sources.flatMap((source) => {
    const part = study.plan.parts.get(source.part);
    if (part?.kind !== 'supply' || behind(source)) return [];
    const twice = wiredTaps(study, part);
    if (twice.length > 2) return [severalTaps(study, part, twice)];
    const { share, winding } = source;
    if (share === undefined || winding === undefined || !isMisfed(source)) return [];
    return [misfed(study, source, part, share, winding)];
  });
}

const isMisfed = ({ share }: Source): boolean =>
  share !== undefined && (share < SHARES.least - 1e-9 || share > SHARES.most + 1e-9);

/** Whether a supply's output comes to the mains side of another. */
function feeds({ verified: v }: Study, from: Source, to: Source): boolean {
  const { feed } = to;
  if (!v || feed.by !== 'nets') return false;
  const reach = v.model.railReach[from.index]!;
  return [feed.a, feed.b].every((net) => reach.some((r) => r.has(net)));
}

function wiredTaps({ circuit }: Study, { name, taps }: SupplyPart): string[] {
  return taps === undefined
    ? []
    : ['0', ...taps.map(String)].map((t) => `${name}.${t}`).filter((key) => circuit.landed.has(key));
}

function severalTaps({ plan }: Study, part: SupplyPart, terminals: readonly string[]): Finding {
  return found(plan, entry, {
    severity: 'warning',
    parts: [part.name],
    terminals,
    message: `${terminals.length} terminals of the primary of ${part.name} are wired, and it needs two`,
    why: 'Two taps on one conductor short the turns between them: the winding burns.',
    fix: `Leave 0 and the tap for the mains that comes, and take the core off the other.`,
    basis: entry.basis,
  });
}

function misfed(study: Study, source: Source, part: SupplyPart, share: number, winding: number): Finding {
  const { name, output, taps } = part;
  const gets = rounded(share * winding, 4);
  const made = rounded(winding, 4);
  const follows = followedShare(source, part) !== 1;
  const gives = rounded(output.volts * share, 4);
  const kind = output.kind.toUpperCase();
  const high = share > SHARES.most;
  const way = taps === undefined || source.feed.by !== 'nets' ? 'is made for' : 'is wired on its tap for';
  const right = taps?.find((t) => Math.abs((share * winding) / t - 1) < 0.05);
  const burns = `It overheats${follows ? `, and so does what it feeds` : ''}.`;
  return found(study.plan, entry, {
    severity: high ? 'warning' : 'fault',
    parts: [name],
    at: part.where.get('taps') ?? part.where.get('input') ?? part.at,
    message: `${name} ${way} ${made} V and gets ${gets} V${follows ? `: it gives ${gives} V ${kind} in place of ${rounded(output.volts, 4)} V` : ''}`,
    why: `${coilWords(study, source)}${high ? burns : follows ? '' : 'Electronics that get too little cut out, or never start.'}`.trim(),
    fix:
      right !== undefined && right !== winding
        ? `Its tap for ${right} V is the one for this mains.`
        : `Use one whose input is ${gets} V.`,
    figures: [
      { name: 'gets', value: gets, unit: 'V' },
      { name: 'made for', value: made, unit: 'V' },
    ],
    basis: entry.basis,
  });
}

/** What the coils behind it then get at worst, against what they need. */
function coilWords({ coilStates }: Study, source: Source): string {
  const own = coilStates.filter(({ fed }) => fed.source.part === source.part && fed.supply !== undefined);
  return own
    .map(({ fed, rows, pullIn }) => {
      const least = Math.min(...rows.map((r) => r.least));
      const most = Math.max(...rows.map((r) => r.most));
      return `The coil of ${fed.part.name} then gets ${rounded(least)} to ${rounded(most)} V; it is rated for ${rounded(fed.model.rated)} V and needs ${rounded(pullIn)} V. `;
    })
    .join('');
}
