/** The single-fault table: each failure of a plan with what it does, how it shows, and what would take it away. */
import { toldOf } from '../../findings/verdict-line.ts';
import type { Study } from '../../study/study.ts';
import type { Fault } from '../fault.ts';
import { faultsOf } from '../meter-sheet.ts';
import { EACH, type Effect, Effects, SEVERITIES } from './effect.ts';
import { detectionWords, effectWords } from './effect-words.ts';
import { FaultTrials } from './fault-trials.ts';
import { laterFaults } from './later.ts';
import { OwnReadings } from './own-reading.ts';
import { type Provision, provisionsOf } from './provisions.ts';
import type { FaultRow, FaultTable } from './table-model.ts';
import { weigh } from './weights.ts';

/** Mistakes of whoever wires it, which the check is for; the table is of what fails once it is right. */
const MISTAKES: ReadonlySet<Fault['mode']> = new Set(['wrong-terminal', 'changed-over', 'wrong-way-round']);

/** Every failure that the table has a row for. */
export function failuresOf(study: Study): Fault[] {
  return [...faultsOf(study), ...laterFaults(study)].filter(
    (f) => f.untried === undefined && !MISTAKES.has(f.mode),
  );
}

/** Works out the table. `progress` is told of each failure; never throws for a plan that was read. */
export function faultTable(study: Study, progress?: (done: number, of: number) => void): FaultTable {
  const trials = new FaultTrials(study);
  const effects = new Effects(study, trials);
  const provisions = provisionsOf(study);
  const weight = weigh(study, true);
  const own = new OwnReadings(study);
  const failures = failuresOf(study);
  const rows = failures.map((fault, i) => {
    const effect = effects.of(fault);
    progress?.(i + 1, failures.length);
    return {
      fault,
      effect,
      row: rowOf(study, fault, effect, provided(effects, provisions, fault, effect), own),
    };
  });
  rows.sort(
    (x, y) =>
      SEVERITIES.indexOf(x.effect.severity) - SEVERITIES.indexOf(y.effect.severity) ||
      weight(y.fault) - weight(x.fault),
  );
  const count = (is: (row: FaultRow) => boolean) => rows.filter(({ row }) => is(row)).length;
  return {
    format: 1,
    title: study.plan.title,
    check: toldOf(study),
    summary: {
      failures: rows.length,
      off: count((r) => r.off),
      on: count((r) => r.on),
      danger: count((r) => r.severity === 'danger'),
      worse: count((r) => r.severity === 'worse'),
      loss: count((r) => r.severity === 'loss'),
      nuisance: count((r) => r.severity === 'nuisance'),
      none: count((r) => r.severity === 'none'),
      silent: count((r) => r.silent),
    },
    rows: rows.map(({ row }) => row),
  };
}

function rowOf(
  study: Study,
  fault: Fault,
  effect: Effect,
  provision: Provision | undefined,
  own: OwnReadings,
): FaultRow {
  const seen = (is: (wrongly: string) => boolean) => effect.seen.some((s) => is(s.wrongly));
  return {
    item: fault.item,
    mode: fault.mode,
    failureMode: fault.text,
    effect: effectWords(study, fault, effect),
    severity: effect.severity,
    detection: detectionWords(study, fault, effect, (f) => own.of(f)),
    silent: effect.seen.length === 0 && effect.besides !== 'not worked out',
    off: seen((w) => w === 'off'),
    on: seen((w) => w === 'on' || w === 'on though blocked'),
    provision: provision?.words ?? null,
  };
}

/** The first addition with which the failure does nothing to any load any more. */
function provided(
  effects: Effects,
  provisions: readonly Provision[],
  fault: Fault,
  effect: Effect,
): Provision | undefined {
  const harmed = effect.seen.filter((s) => s.load !== null).map((s) => s.stance);
  if (harmed.length === 0) return undefined;
  const first = [harmed[0]!, harmed.at(-1)!, harmed[harmed.length >> 1]!];
  const others = effects.stances.length <= EACH ? effects.stances : effects.stances.slice(0, 1);
  return provisions.find((p) => {
    if (!p.against(fault)) return false;
    const circuit: Fault['circuit'] = (c) => fault.circuit?.(p.edit(c)) ?? p.edit(c);
    return effects.spares({ ...fault, circuit, at: [...fault.at, ...p.at] }, [...first, ...others]);
  });
}
