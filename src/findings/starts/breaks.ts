import { endKey } from '../../circuit/nets.ts';
import { isLanded, netAt } from '../../circuit/terminals.ts';
import { UnionFind } from '../../circuit/union-find.ts';
import { FALSE } from '../../logic/bdd.ts';
import { baseState, runsFromRest } from '../../logic/entry-states.ts';
import { runsAt, stateOf, type Verified } from '../../logic/verify.ts';
import { kept } from '../../plan/map-entries.ts';
import type { Study } from '../../study/study.ts';
import { listOf } from '../../text/word-list.ts';
import { COMMON_PRACTICE, finding } from '../finding.ts';
import type { Finding } from '../report-model.ts';

/** What a broken wire in the loop would do: start the load, or go unnoticed. */
export function checkBreaks(study: Study): Finding[] {
  const v = study.verified;
  if (!v || v.intents.wanted.length === 0 || v.deviations.length > 0 || v.chatter !== FALSE) return [];
  const started = breakStarts(study, v);
  return [...started, ...(started.length === 0 ? silent(study, v) : []), ...rings(study)];
}

/** A relay that is held in at rest and whose release starts the load: a broken wire does the same. */
function breakStarts(study: Study, v: Verified): Finding[] {
  const { plan, circuit } = study;
  const { bdd } = v.model;
  const found: Finding[] = [];
  for (const relay of circuit.relays) {
    for (const w of v.intents.wanted) {
      if (w.target === relay.part || found.some((f) => f.parts.includes(w.target))) continue;
      const base = baseState(v, w);
      const off = bdd.and(runsFromRest(v, w.target), stateOf(circuit, bdd, base)) === FALSE;
      if (!off || runsAt(v, relay.part, base) !== true) continue;
      if (!runsWithoutCoil(study, relay.part, w.target, base)) continue;
      found.push(
        finding(plan, {
          id: 'break-starts-load',
          severity: 'caution',
          question: 3,
          parts: [w.target, relay.part],
          message: `a broken wire in the loop of ${relay.part} starts ${w.target}`,
          why: `${relay.part} is held in while all gates are shut; ${w.target} runs as soon as it lets go, be it by a gate or by a break.`,
          fix: `Keep it only if running extraction is the wanted answer to a fault; else let the gates make the coil circuit of a relay that is out at rest.`,
          basis: COMMON_PRACTICE,
        }),
      );
    }
  }
  return found;
}

function runsWithoutCoil(study: Study, relay: string, target: string, base: readonly number[]): boolean {
  const moves = new Map<string, string>();
  for (const run of study.plan.runs)
    run.cores.forEach((core, i) => {
      for (const end of ['a', 'b'] as const)
        if (core[end].part === relay && (core[end].terminal === 'A1' || core[end].terminal === 'VCC'))
          moves.set(endKey(run.index, i, end), `#${relay}`);
    });
  const { verified } = study.rewired(moves);
  return verified !== undefined && runsAt(verified, target, base) === true;
}

/** Make contacts side by side: a broken core only looks like a gate that is never opened. */
function silent(study: Study, v: Verified): Finding[] {
  const gates = study.circuit.inputs.filter(
    (i) => i.kind === 'gate' && isLanded(study.circuit, i.part, 'COM'),
  );
  if (gates.length < 2) return [];
  const target = v.intents.wanted[0]!.target;
  return [
    finding(study.plan, {
      id: 'break-is-silent',
      severity: 'notice',
      question: 2,
      parts: [target],
      message: 'a broken core in this loop shows only when a gate no longer starts its load',
      why: 'The switches make the circuit; a break looks like a shut gate, and nothing reports it.',
      fix: 'Open every gate in turn once a month and listen for the collector.',
      basis: COMMON_PRACTICE,
    }),
  ];
}

/** Cores of the loop that close a ring: one break in it goes unnoticed until a second one takes out a group of gates. */
function rings(study: Study): Finding[] {
  const { plan, circuit, sides } = study;
  const ids = new Map<string, number>();
  const sets = new UnionFind();
  const id = (key: string) => {
    return kept(ids, key, () => sets.add());
  };
  const closing: string[] = [];
  let at: { line: number; column: number } | undefined;
  for (const run of plan.runs) {
    if (run.link) continue;
    for (const core of run.cores) {
      if (!sides.low.has(netAt(circuit, core.a.part, core.a.terminal) ?? -1)) continue;
      const [a, b] = [core.a, core.b].map((e) => `${e.part}.${e.terminal}`);
      if (sets.union(id(a!), id(b!))) continue;
      closing.push(`${core.a.written} to ${core.b.written}`);
      at ??= core.at;
    }
  }
  if (closing.length === 0) return [];
  return [
    finding(plan, {
      id: 'ring-hides-break',
      severity: 'notice',
      question: 2,
      parts: [],
      at,
      message: `the loop is a ring (${listOf(closing, 2)} closes it): one break in it goes unnoticed`,
      why: 'An open ring still works from both ends; a second break then takes out the gates between.',
      fix: 'Leave a link at one point that can be opened, and test from there that each core reads closed all the way round.',
      basis: 'common practice of ring-wired alarm loops',
    }),
  ];
}
