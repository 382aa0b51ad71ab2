/** Plans typed in a test, and readings of them by the names a person would type. */

import { buildCircuit } from '../../src/circuit/build.ts';
import { readMeter } from '../../src/machine/read-meter.ts';
import type { Reading } from '../../src/machine/reading.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { readPlan } from '../../src/plan/read.ts';
import { Study } from '../../src/study/study.ts';

/** A plan from its text without `format: 1`; throws with the messages of a plan that cannot be read. */
export function planOf(text: string, file = 'test.yaml'): Plan {
  const whole = text.includes('format:') ? text : `format: 1\n${text}`;
  const result = readPlan(new TextEncoder().encode(whole), file);
  if (!result.ok) throw new Error(result.errors.map((e) => e.message).join('\n'));
  return result.plan;
}

function probe(plan: Plan, text: string) {
  const [part, ...rest] = text.split('.');
  const terminal = plan.terminals.get(part!)?.find(rest.join('.'));
  if (terminal === undefined) throw new Error(`no terminal ${text}`);
  return { part: part!, terminal };
}

/** Numbers of inputs by name, `mode.hand` for a selector's position. */
export function inputs(plan: Plan, names: readonly string[]): number[] {
  const all = buildCircuit(plan).inputs;
  return names.map((name) => {
    const found = all.find((i) => name === (i.position === undefined ? i.part : `${i.part}.${i.position}`));
    if (!found) throw new Error(`no input ${name}`);
    return found.index;
  });
}

/** Volts between two terminals. */
export function across(plan: Plan, a: string, b: string, moved: readonly string[] = []): Reading {
  return readMeter(Study.of(plan), {
    moved: inputs(plan, moved),
    dead: false,
    between: [probe(plan, a), probe(plan, b)],
  });
}

/** Ohms between two terminals with the power off. */
export function dead(plan: Plan, a: string, b: string, moved: readonly string[] = []): Reading {
  return readMeter(Study.of(plan), {
    moved: inputs(plan, moved),
    dead: true,
    between: [probe(plan, a), probe(plan, b)],
  });
}

/** Every conductor and core. */
export function tables(plan: Plan, moved: readonly string[] = []): Reading {
  return readMeter(Study.of(plan), { moved: inputs(plan, moved), dead: false });
}

/** Every number of a value is finite; gives the path of the first that is not. */
export function notFinite(value: unknown, path = ''): string | undefined {
  if (typeof value === 'number') return Number.isFinite(value) ? undefined : path;
  if (value === null || typeof value !== 'object') return undefined;
  for (const [key, inner] of Object.entries(value)) {
    const found = notFinite(inner, `${path}.${key}`);
    if (found !== undefined) return found;
  }
  return undefined;
}
