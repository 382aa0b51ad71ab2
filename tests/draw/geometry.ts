/** Judges a laid-out drawing against its plan, by geometry alone and without knowing how it was laid out. */
import type { Drawing, DrawnCore, Point } from '../../src/draw/drawing.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { terminalKey } from '../../src/plan/terminal-key.ts';
import { barrierFaults, clearFaults } from './geometry-clear.ts';
import { placeKey, stepped } from './geometry-lines.ts';
import { meetFaults } from './geometry-meet.ts';
import { partFaults } from './geometry-parts.ts';
import { wordFaults } from './geometry-words.ts';

/** All numbers of a drawing, with what they belong to. */
function* numbers(drawing: Drawing): Iterable<[string, number]> {
  const { width, height, barrier = 0 } = drawing;
  for (const value of [width, height, barrier]) yield ['the sheet', value];
  for (const { box, id, terminals, plugged } of drawing.symbols) {
    for (const b of [box, ...plugged.map((p) => p.box)])
      for (const value of [b.x, b.y, b.width, b.height]) yield [`symbol ${id}`, value];
    for (const { x, y } of terminals.flatMap((t) => t.ports))
      for (const value of [x, y]) yield [`symbol ${id}`, value];
  }
  for (const { id, path } of drawing.cores)
    for (const { x, y } of path) for (const value of [x, y]) yield [`core ${id}`, value];
  for (const l of drawing.labels)
    for (const value of [l.x, l.y, l.width, l.height]) yield [`label ${l.of}`, value];
  for (const { x, y } of drawing.dots) for (const value of [x, y]) yield ['a dot', value];
}

function numberFaults(drawing: Drawing): string[] {
  const bad = new Set<string>();
  for (const [what, value] of numbers(drawing))
    if (!Number.isFinite(value)) bad.add(`${what} has a place that is no number`);
  return [...bad];
}

/** Faults in the shape of one path: level and upright pieces, none of no length unless both ports are one place. */
function pathFaults({ id, path }: DrawnCore): string[] {
  if (path.length < 2) return [`core ${id} has a path of ${path.length} points`];
  const [a, b] = path as [Point, Point];
  if (path.length === 2 && a.x === b.x && a.y === b.y) return [];
  const faults = new Set<string>();
  path.slice(1).forEach((q, i) => {
    const p = path[i]!;
    if (p.x !== q.x && p.y !== q.y) faults.add(`core ${id} has a slanting piece`);
    if (p.x === q.x && p.y === q.y) faults.add(`core ${id} has a piece of no length`);
  });
  return [...faults];
}

type Ports = ReadonlyMap<string, ReadonlySet<string>>;

function portsOf({ symbols }: Drawing): Ports {
  const ports = new Map<string, Set<string>>();
  for (const { key, ports: own } of symbols.flatMap((s) => s.terminals))
    ports.set(key, new Set([...(ports.get(key) ?? []), ...own.map((p) => placeKey(stepped(p)))]));
  return ports;
}

function endFaults({ id, from, to, path }: DrawnCore, ports: Ports): string[] {
  const ends: [string, Point | undefined][] = [
    [from, path[0]],
    [to, path.at(-1)],
  ];
  return ends
    .filter(([key, p]) => p === undefined || ports.get(key)?.has(placeKey(stepped(p))) !== true)
    .map(([key]) => `core ${id} does not end on a port of ${key}`);
}

function coreFaults(drawing: Drawing, plan: Plan): string[] {
  const wanted = new Map<string, { link: boolean; run: number; core: number; ends: string }>();
  const pair = (a: string, b: string): string => [a, b].sort().join(' to ');
  for (const { index, cores, link } of plan.runs)
    cores.forEach(({ a, b }, core) => {
      const ends = pair(terminalKey(a.part, a.terminal), terminalKey(b.part, b.terminal));
      wanted.set(`${index}/${core}`, { link, run: index, core, ends });
    });
  const ports = portsOf(drawing);
  const seen = new Set<string>();
  const faults: string[] = [];
  for (const core of drawing.cores) {
    const want = wanted.get(core.id);
    if (seen.has(core.id)) faults.push(`core ${core.id} is drawn twice`);
    seen.add(core.id);
    if (want === undefined) faults.push(`core ${core.id} is not in the plan`);
    else {
      if (want.run !== core.run || want.core !== core.core || want.link !== core.link)
        faults.push(`core ${core.id} has run, core or link wrong`);
      const drawn = pair(core.from, core.to);
      if (drawn !== want.ends) faults.push(`core ${core.id} joins ${drawn}, not ${want.ends}`);
    }
    faults.push(...pathFaults(core), ...endFaults(core, ports));
  }
  for (const id of wanted.keys()) if (!seen.has(id)) faults.push(`core ${id} is not drawn`);
  return faults;
}

/**
 * What is wrong with a drawing of a plan, one sentence each; empty when it is right. Cores are lines without breadth,
 * and boxes that only touch do not overlap. `across` is how far beside its place a line is drawn, in units of the
 * drawing: 0.5 where a unit is a whole column or line, so that a line at y 3 lies in the middle of a label at y 3.
 */
export function faultsOf(drawing: Drawing, plan: Plan, across = 0): string[] {
  const broken = numberFaults(drawing);
  if (broken.length > 0) return broken;
  return [
    ...coreFaults(drawing, plan),
    ...partFaults(drawing, plan),
    ...wordFaults(drawing, plan),
    ...clearFaults(drawing, across),
    ...meetFaults(drawing),
    ...barrierFaults(drawing),
  ];
}
