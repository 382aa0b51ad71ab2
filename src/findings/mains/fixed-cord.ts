import { netAt } from '../../circuit/terminals.ts';
import type { Core, PlugPart, Run } from '../../plan/plan.ts';
import type { Study } from '../../study/study.ts';
import { listOf } from '../../text/word-list.ts';
import { finding } from '../finding.ts';
import type { Finding } from '../report-model.ts';

/** `cord-as-fixed-wiring`: flexible cord on the mains of a circuit that is wired in. */
export function cordsAsWiring(study: Study, plug: PlugPart): Finding[] {
  const { plan } = study;
  const runs = plan.runs.filter(
    (run) =>
      run.cable?.flexible && !withinOneBox(study, run) && run.cores.some((c) => behind(study, plug, c)),
  );
  const [first] = runs;
  if (first === undefined) return [];
  const ends = [...new Set(runs.flatMap((r) => r.cores.flatMap((c) => [c.a.part, c.b.part])))];
  const nec = plan.practice === 'nec';
  return [
    finding(plan, {
      id: 'cord-as-fixed-wiring',
      severity: nec ? 'warning' : 'notice',
      question: 7,
      parts: ends,
      at: first.at,
      message: `flexible cord is the fixed wiring of ${plug.name}, at ${listOf(ends)}`,
      why: nec
        ? 'Cord is for what is plugged in. Along a wall or through it, it chafes and dries out, and its ampacity is not that of building wire.'
        : 'Flexible cord is fixed wiring here; on its own it stands neither knocks nor crushing for years.',
      fix: nec
        ? 'Use building wire in conduit or a cable made for walls (flexible: false), or put a plug on the cord (pattern:).'
        : 'Protect it along its whole way, in conduit or trunking, and hold it where it enters.',
      basis: nec
        ? 'NEC 400.12 (400.8 before 2017), from memory'
        : 'IEC 60364-5-52, choice of wiring system and outside influences (from memory)',
    }),
  ];
}

/** Fine-stranded wire between terminals of one panel is no cord along the wall. */
function withinOneBox(study: Study, run: Run): boolean {
  const ends = run.cores.flatMap((c) => [c.a.part, c.b.part]);
  return [...study.plan.parts.values()].some(
    (p) => p.kind === 'box' && ends.every((name) => name === p.name || p.holds.includes(name)),
  );
}

/** The core is on the plug's side of the mains; with one plug, all mains is. */
function behind(study: Study, plug: PlugPart, core: Core): boolean {
  const net = netAt(study.circuit, core.a.part, core.a.terminal) ?? -1;
  if (!study.sides.mains.has(net)) return false;
  const sources = study.circuit.sources.filter((s) => s.mains);
  const source = sources.find((s) => s.part === plug.name);
  const reach = source && study.verified?.model.railReach[source.index];
  if (sources.length === 1 || !reach) return source !== undefined;
  return reach.some((r) => r.has(net));
}
