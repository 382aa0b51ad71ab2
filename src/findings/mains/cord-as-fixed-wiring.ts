import { netAt } from '../../circuit/terminals.ts';
import type { PlugPart } from '../../plan/part-types.ts';
import type { Core, Run } from '../../plan/plan.ts';
import type { Study } from '../../study/study.ts';
import { listOf } from '../../text/word-list.ts';
import type { Check, FindingEntry } from '../entry.ts';
import { found } from '../finding.ts';
import type { Finding } from '../report-model.ts';
import { fixedPlugs } from './branch-motors.ts';
import { withinOneBox } from './within-box.ts';

const entry: FindingEntry = {
  id: 'cord-as-fixed-wiring',
  title: 'flexible cord used as fixed wiring',
  severity: 'warning',
  question: 7,
  base: 'fixed-motor',
  meaning:
    'Cord is made for what is plugged in and moved. Fixed along a wall or through it, it chafes, dries out and is struck by what leans there. Use building wire in conduit, or put a plug on the cord. Where practice is iec it is a notice: cord has to be protected along its way.',
  wrong: 'insulation: 600 V, flexible: true',
  right: 'insulation: 600 V, flexible: false',
  basis: 'NEC 400.12 (400.8 before 2017), IEC 60364-5-52 (both from memory)',
  followsFrom: [],
};

export const cordAsFixedWiring: Check = { entry, find };

function find(study: Study): Finding[] {
  return fixedPlugs(study).flatMap((plug) => {
    const cords = study.plan.runs.filter(
      (run) =>
        run.cable?.flexible &&
        !withinOneBox(study.plan, run) &&
        run.cores.some((c) => behind(study, plug, c)),
    );
    return cords.length > 0 ? [asWiring(study, plug, cords)] : [];
  });
}

const WORDS = {
  nec: {
    severity: 'warning',
    why: 'Cord is for what is plugged in. Along a wall or through it, it chafes and dries out, and its ampacity is not that of building wire.',
    fix: 'Use building wire in conduit or a cable made for walls (flexible: false), or put a plug on the cord (pattern:).',
    basis: 'NEC 400.12 (400.8 before 2017), from memory',
  },
  iec: {
    severity: 'notice',
    why: 'Flexible cord is fixed wiring here; on its own it stands neither knocks nor crushing for years.',
    fix: 'Protect it along its whole way, in conduit or trunking, and hold it where it enters.',
    basis: 'IEC 60364-5-52, choice of wiring system and outside influences (from memory)',
  },
} as const;

function asWiring({ plan }: Study, plug: PlugPart, cords: readonly Run[]): Finding {
  const ends = [...new Set(cords.flatMap((r) => r.cores.flatMap((c) => [c.a.part, c.b.part])))];
  return found(plan, entry, {
    parts: ends,
    at: cords[0]?.at,
    message: `flexible cord is the fixed wiring of ${plug.name}, at ${listOf(ends)}`,
    ...WORDS[plan.practice],
    twin: { name: plug.name },
  });
}

/** The core is on the plug's side of the mains; with one plug, all mains is. */
function behind({ circuit, sides, verified }: Study, plug: PlugPart, core: Core): boolean {
  const net = netAt(circuit, core.a.part, core.a.terminal) ?? -1;
  if (!sides.mains.has(net)) return false;
  const sources = circuit.sources.filter((s) => s.mains);
  const source = sources.find((s) => s.part === plug.name);
  const reach = source && verified?.model.railReach[source.index];
  if (sources.length === 1 || !reach) return source !== undefined;
  return reach.some((r) => r.has(net));
}
