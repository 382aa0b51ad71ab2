/** Judging the symbols of a drawing: every part and terminal is there once, and no symbol covers another. */
import type { Box, Drawing, DrawnSymbol, DrawnTerminal } from '../../src/draw/drawing.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { terminalKey } from '../../src/plan/terminal-key.ts';
import { onEdge, overlap, Tiles, TOLERANCE, within } from './geometry-space.ts';

/** What stands more than once in a list. */
function twice(list: readonly string[]): Set<string> {
  const seen = new Set<string>();
  return new Set(list.filter((item) => seen.has(item) || !seen.add(item)));
}

/** Terminals that have to be drawn: those with a core, and the tabs of gates. */
function wanted(plan: Plan): Set<string> {
  const keys = new Set<string>();
  for (const { cores } of plan.runs)
    for (const { a, b } of cores) for (const end of [a, b]) keys.add(terminalKey(end.part, end.terminal));
  for (const part of plan.parts.values())
    if (part.kind === 'gate') for (const tab of part.tabs) keys.add(terminalKey(part.name, tab));
  return keys;
}

function portFaults(symbol: DrawnSymbol, { key, side, ports }: DrawnTerminal): string[] {
  if (ports.length === 0) return [`terminal ${key} has no port`];
  const { box } = symbol;
  const edge = side === 'left' ? box.x : box.x + box.width;
  // Lines may leave a joint all round.
  return ports
    .filter((p) => !onEdge(p, box) || (symbol.figure !== 'joint' && Math.abs(p.x - edge) > TOLERANCE))
    .map(
      (p) => `terminal ${key} has a port at ${p.x}, ${p.y}, which is not on the ${side} edge of its symbol`,
    );
}

function terminalFaults({ symbols }: Drawing, plan: Plan): string[] {
  const faults: string[] = [];
  const drawn = symbols.flatMap((s) => s.terminals.map((t) => t.key));
  const counts = new Map<string, number>();
  for (const key of drawn) counts.set(key, (counts.get(key) ?? 0) + 1);
  for (const [key, count] of counts) if (count > 1) faults.push(`terminal ${key} is drawn ${count} times`);
  for (const key of wanted(plan)) if (!counts.has(key)) faults.push(`terminal ${key} is not drawn`);
  for (const symbol of symbols) {
    const own = new Set(
      (plan.terminals.get(symbol.part)?.names ?? []).map((t) => terminalKey(symbol.part, t)),
    );
    for (const terminal of symbol.terminals) {
      const { key } = terminal;
      if (!own.has(key))
        faults.push(`terminal ${key} is drawn at ${symbol.id}, whose part has no such terminal`);
      faults.push(...portFaults(symbol, terminal));
    }
  }
  return faults;
}

/** Ports of two terminals at one place, unless a core of no length joins the two there. */
function sharedPorts({ symbols, cores }: Drawing): string[] {
  const joined = new Set(
    cores.filter((c) => c.path.length === 2).flatMap((c) => [`${c.from} ${c.to}`, `${c.to} ${c.from}`]),
  );
  const owners = new Map<string, string>();
  const faults: string[] = [];
  for (const { key, ports } of symbols.flatMap((s) => s.terminals)) {
    for (const { x, y } of ports) {
      const other = owners.get(`${x},${y}`);
      if (other !== undefined && other !== key && !joined.has(`${other} ${key}`))
        faults.push(`terminals ${other} and ${key} share a port`);
      owners.set(`${x},${y}`, key);
    }
  }
  return faults;
}

function presence({ symbols }: Drawing, plan: Plan): string[] {
  const plugged = symbols.flatMap((s) => s.plugged.map((p) => p.part));
  const shown = new Set([...symbols.map((s) => s.part), ...plugged]);
  return [
    ...[...plan.parts.keys()].filter((name) => !shown.has(name)).map((name) => `part ${name} is not drawn`),
    ...[...shown].filter((name) => !plan.parts.has(name)).map((name) => `part ${name} is not in the plan`),
    ...[...twice(symbols.map((s) => s.id))].map((id) => `symbol ${id} stands twice`),
    ...[...twice(plugged)].map((name) => `part ${name} is plugged in twice`),
  ];
}

function pluggedFaults(symbol: DrawnSymbol): string[] {
  const { plugged, id, box } = symbol;
  return plugged.flatMap((p, i) => [
    ...(within(p.box, box) ? [] : [`part ${p.part} stands out of ${id}, which it is plugged into`]),
    ...plugged
      .slice(i + 1)
      .filter((q) => overlap(p.box, q.box))
      .map((q) => `parts ${p.part} and ${q.part} overlap in ${id}`),
  ]);
}

function places({ width, height, symbols }: Drawing): string[] {
  const sheet: Box = { x: 0, y: 0, width, height };
  const tiles = new Tiles<DrawnSymbol>(width, height, symbols.length);
  const faults: string[] = [];
  for (const symbol of symbols) {
    const { box, id } = symbol;
    if (!within(box, sheet)) faults.push(`symbol ${id} stands out of the sheet`);
    if (box.width < 0 || box.height < 0) faults.push(`symbol ${id} has a box of negative size`);
    for (const other of tiles.near(box))
      if (overlap(box, other.box)) faults.push(`symbols ${other.id} and ${id} overlap`);
    tiles.add(symbol, box);
    faults.push(...pluggedFaults(symbol));
  }
  return faults;
}

/** Faults of symbols and their terminals; empty when right. */
export function partFaults(drawing: Drawing, plan: Plan): string[] {
  return [
    ...presence(drawing, plan),
    ...terminalFaults(drawing, plan),
    ...sharedPorts(drawing),
    ...places(drawing),
  ];
}
