/**
 * The commissioning sheet of a plan: the fewest readings that show every single fault that a reading can show. What a
 * meter reads is never worked out here, it comes from the instruments in machine/.
 */

import type { WiredCircuit } from '../circuit/build.ts';
import { UnionFind } from '../circuit/union-find.ts';
import { judge } from '../findings/judge.ts';
import { toldOf } from '../findings/verdict-line.ts';
import { loopNeedsMains } from '../machine/power.ts';
import { readMeter } from '../machine/read-meter.ts';
import { push } from '../plan/map-entries.ts';
import type { Plan } from '../plan/plan.ts';
import { splitTerminalKey } from '../plan/terminal-key.ts';
import { Study } from '../study/study.ts';
import { type Fault, RANK } from './fault.ts';
import { partFaults } from './fault-parts.ts';
import { wiringFaults } from './fault-wires.ts';
import { withBareUntried } from './faults/bare-parts.ts';
import type { Measure } from './measure.ts';
import { marksOf } from './probe-words.ts';
import { type Progress, type Searched, searchReadings } from './search.ts';
import { gateChecks, setups } from './setup.ts';
import type { HiddenFault, Meaning, MeterSheet, MeterStep, ReadStep, Wrong } from './sheet/sheet-model.ts';
import { heldInputs, stanceWords } from './stance.ts';
import { withSuppliesAlone } from './supply-alone.ts';
import { unplugged } from './unplugged.ts';

/** Every single fault of a plan that is tried, in the order of the plan's cores and parts. */
export function faultsOf(study: Study): Fault[] {
  const { plan, wired } = study;
  const mark = marksOf(plan);
  return withBareUntried(study, [...wiringFaults(plan, mark), ...partFaults(plan, wired, mark)]);
}

/** Works out the sheet. `progress` is told of every trial; never throws for a plan that was read. */
export function meterSheet(study: Study, progress?: Progress): MeterSheet {
  return commission(study, progress).sheet;
}

/** One single fault and the readings that show it, for those who judge a sheet. */
interface MeterFault {
  readonly text: string;
  /** parts at which the fault lies */
  readonly parts: readonly string[];
  /** true when any reading tried tells it from the right circuit */
  readonly detectable: boolean;
  /** numbers of the steps that show it, in order */
  readonly steps: readonly number[];
}

/**
 * The sheet with every fault that was tried and the steps that show it. A plan with a finding of danger gets neither:
 * nothing that is wired like it is to be measured or powered.
 */
export function commission(
  study: Study,
  progress?: Progress,
): { readonly sheet: MeterSheet; readonly faults: readonly MeterFault[] } {
  const { plan, wired: circuit } = study;
  const told = toldOf(study);
  const danger = told.verdict === 'fail' ? firstDanger(study) : undefined;
  if (danger !== undefined) return { sheet: withheld(plan, danger), faults: [] };
  const found = withSuppliesAlone(study, searchReadings(study, faultsOf(study), progress));
  const { faults } = found;
  const { checks, adjust } = adjustments(plan, circuit, found);
  const steps: MeterStep[] = [
    ...checks.map((c, i) => ({ ...c, number: i + 1 })),
    ...readSteps(study, circuit, faults, found, checks.length).map((step, k) => ({
      ...step,
      adjust: adjust[k]!,
    })),
  ];
  const shown = shownBy(faults, found, checks.length);
  return {
    sheet: {
      format: 1,
      title: plan.title,
      check: told,
      setup: setups(plan, {
        loopNeedsMains: loopNeedsMains(circuit),
        lead: lastLead(found.measures),
        lineOhms: found.measures.some((m) => m.stage === 2 && m.expect.unit === 'ohm'),
      }),
      steps,
      detectable: found.detectable.size,
      detected: shown.filter((f) => f.steps.length > 0).length,
      silent: hiddenFaults(plan, circuit, faults, found),
    },
    faults: shown,
  };
}

function lastLead(measures: readonly Measure[]): 0 | 1 | 2 {
  const stages = measures.flatMap((m) => (m.clipped.length > 0 ? [m.stage] : []));
  return stages.includes(2) ? 2 : stages.includes(1) ? 1 : 0;
}

/** Message of the first finding that somebody comes to harm by. */
export function firstDanger(study: Study): string | undefined {
  return judge(study).findings.find((f) => f.severity === 'danger')?.message;
}

function withheld({ title }: Plan, finding: string): MeterSheet {
  const nothing = { setup: [], steps: [], detectable: 0, detected: 0, silent: [] };
  return { format: 1, title, check: { verdict: 'fail', finding }, ...nothing };
}

function shownBy(faults: readonly Fault[], found: Searched, before: number): MeterFault[] {
  const steps = new Map<number, number[]>();
  for (const [k, wrong] of found.wrong.entries())
    for (const i of wrong.keys()) push(steps, i, before + k + 1);
  return faults.map((f, i) => ({
    text: f.text,
    parts: f.parts,
    detectable: found.detectable.has(i),
    steps: steps.get(i) ?? [],
  }));
}

/** Each gate's switch is adjusted with the first reading that opens the gate; on its own where none does. */
function adjustments(plan: Plan, circuit: WiredCircuit, found: Searched) {
  const adjust = found.measures.map((): string[] => []);
  const checks = gateChecks(plan).filter(({ part, text }) => {
    const input = circuit.inputs.find((i) => i.part === part)?.index ?? -1;
    const k = found.measures.findIndex((m) => m.stage < 3 && m.stance.moved.includes(input));
    adjust[k]?.push(text);
    return k < 0;
  });
  return { checks, adjust };
}

function readSteps(
  study: Study,
  circuit: WiredCircuit,
  faults: readonly Fault[],
  found: Searched,
  before: number,
): Omit<ReadStep, 'adjust'>[] {
  const mark = marksOf(study.plan);
  const known = new Set<number>();
  const dead = Study.of(unplugged(study.plan));
  return found.measures.map((m, k): Omit<ReadStep, 'adjust'> => {
    const wrong = found.wrong[k]!;
    const fresh = [...wrong.keys()].filter((i) => !known.has(i));
    for (const i of fresh) known.add(i);
    return {
      number: before + k + 1,
      stage: m.stage,
      kind: 'read',
      zone: found.zones[k]!,
      red: mark(m.pair.a),
      black: mark(m.pair.b),
      between: [splitTerminalKey(m.pair.a), splitTerminalKey(m.pair.b)],
      clipped: m.clipped.map(mark),
      clippedAt: m.clipped.map(splitTerminalKey),
      far: m.pair.far,
      alone: m.alone ?? null,
      range: m.range,
      moved: m.stance.moved,
      positions: stanceWords(circuit, m.stance.moved),
      first: stanceWords(circuit, m.stance.first),
      movedFirst: m.stance.first,
      held: heldInputs(circuit, m.stance.moved),
      expect: { ...m.expect, nominal: nominal(study, dead, m, found.near) },
      wrong: [...meanings(faults, wrong, fresh), ...spoiling(faults, found.spoiled[k]!)],
    };
  });
}

/**
 * As the meter is said to read elsewhere, to the last digit; what holds itself in is known here alone, and a large shop is
 * not solved in whole once more for what is known of the circuit near the probes.
 */
function nominal(study: Study, unpluggedStudy: Study, m: Measure, near: boolean): number | null {
  if (near || m.alone !== undefined || m.stance.first.length > 0) return m.expect.nominal;
  const { moved } = m.stance;
  const between = [splitTerminalKey(m.pair.a), splitTerminalKey(m.pair.b)] as const;
  if (m.expect.unit === 'ohm') {
    const clipped = m.clipped.map(splitTerminalKey);
    return readMeter(unpluggedStudy, {
      moved,
      dead: true,
      loop: m.stage === 2,
      clipped,
      between,
    }).ohms;
  }
  return readMeter(study, { moved, dead: false, between }).volts;
}

const ORDER: readonly Wrong[] = ['open', 'shorted', 'reversed', 'too low', 'too high'];

/** Faults by wrong reading, the likeliest first; the reading with the likeliest fault leads. */
function meanings(
  faults: readonly Fault[],
  wrong: ReadonlyMap<number, Wrong>,
  fresh: readonly number[],
): Meaning[] {
  const sorted = [...fresh].sort((x, y) => faults[x]!.rank - faults[y]!.rank || x - y);
  const groups = ORDER.map((w) => ({ wrong: w, of: sorted.filter((i) => wrong.get(i) === w) }));
  return groups
    .filter((g) => g.of.length > 0)
    .sort((x, y) => faults[x.of[0]!]!.rank - faults[y.of[0]!]!.rank)
    .map((g) => ({ wrong: g.wrong, faults: [...new Set(g.of.map((i) => faults[i]!.text))] }));
}

/** Faults for which a reading tells nothing, the likeliest first. */
function spoiling(faults: readonly Fault[], spoiled: ReadonlySet<number>): Meaning[] {
  if (spoiled.size === 0) return [];
  const sorted = [...spoiled].sort((x, y) => faults[x]!.rank - faults[y]!.rank || x - y);
  return [{ wrong: 'tells nothing', faults: [...new Set(sorted.map((i) => faults[i]!.text))] }];
}

function hiddenFaults(
  plan: Plan,
  circuit: WiredCircuit,
  faults: readonly Fault[],
  found: Searched,
): HiddenFault[] {
  const landed = [...circuit.landed.keys()].sort();
  return faults.flatMap((f, i) => {
    if (found.detectable.has(i)) return [];
    return [
      { item: f.item, fault: f.text, why: f.untried ?? f.hidden ?? whyHidden(plan, circuit, f, landed) },
    ];
  });
}

function whyHidden(plan: Plan, circuit: WiredCircuit, fault: Fault, landed: readonly string[]): string {
  const built = fault.plan ? Study.of(fault.plan(plan)).wired : circuit;
  const same = conductors(fault.circuit?.(built) ?? built, landed) === conductors(circuit, landed);
  if (same && fault.rank <= RANK.wrongTab)
    return 'the same terminals stay joined by another path or are one conductor already, and what that adds is too little to be read';
  if (same && fault.rank <= RANK.neighbour && fault.rank !== RANK.contact && fault.rank !== RANK.coil)
    return 'the terminals it changes are one conductor already, so the same terminals stay joined';
  return 'each reading that it changes stays within the tolerances, or passes a winding or electronics whose resistance the plan does not state; with the cores off that part, what they join can be read';
}

/** Which of these terminals wires and what touches join, as text that is the same for the same conductors. */
function conductors(circuit: WiredCircuit, keys: readonly string[]): string {
  const sets = new UnionFind(circuit.netCount);
  for (const w of circuit.wires) sets.union(w.a, w.b);
  for (const c of circuit.contacts) if (c.part === '') sets.union(c.a, c.b);
  const first = new Map<number, string>();
  return keys
    .map((key) => {
      const net = circuit.netOf.get(key);
      if (net === undefined) return `${key} alone`;
      const root = sets.find(net);
      if (!first.has(root)) first.set(root, key);
      return `${key}=${first.get(root)}`;
    })
    .join(' ');
}
