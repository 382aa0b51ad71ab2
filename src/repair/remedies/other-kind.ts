/** The loop of a supply with the other kind of current: its output on other terminals, and coils that are made for it. */
import type { CurrentKind } from '../../plan/device-figures.ts';
import type { Part } from '../../plan/part-types.ts';
import type { Plan, TerminalRef } from '../../plan/plan.ts';
import { terminalKey } from '../../plan/terminal-key.ts';
import { Terminals } from '../../plan/terminals.ts';
import type { Study } from '../../study/study.ts';

/** The terminals of a supply by its kind of current. */
export const OUTPUT: Readonly<Record<CurrentKind, readonly [string, string]>> = {
  dc: ['+', '-'],
  ac: ['~1', '~2'],
};

/** The plan with the cores of a supply's output on terminals of the other kind; the supply itself is as it was. */
export function outputAs(plan: Plan, supply: string, kind: CurrentKind): Plan {
  const to = OUTPUT[kind];
  const from = OUTPUT[kind === 'dc' ? 'ac' : 'dc'];
  const moved = (t: TerminalRef): TerminalRef => {
    const i = t.part === supply ? from.indexOf(t.terminal) : -1;
    return i < 0 ? t : { ...t, terminal: to[i]!, written: terminalKey(t.part, to[i]!) };
  };
  const marks = plan.terminals.get(supply)!.names;
  const names = marks.map((m) => (from.includes(m) ? to[from.indexOf(m)]! : m));
  const terminals = new Map(plan.terminals).set(supply, new Terminals(names));
  const runs = plan.runs.map((r) => ({
    ...r,
    cores: r.cores.map((c) => ({ ...c, a: moved(c.a), b: moved(c.b) })),
  }));
  return { ...plan, terminals, runs };
}

/** The plan without the diodes across some coils, which on AC are a short. */
export function withoutDiodes({ plan, circuit }: Study, relays: readonly string[]): Plan {
  const net = (part: string, terminal: string) => circuit.netOf.get(terminalKey(part, terminal));
  const across = new Set(
    [...plan.parts.values()]
      .filter((p) => p.kind === 'diode')
      .filter((p) => {
        const ends = [net(p.name, 'A'), net(p.name, 'K')];
        return relays.some((r) => ['A1', 'A2'].every((t) => ends.includes(net(r, t))));
      })
      .map((p) => p.name),
  );
  const parts = [...plan.parts]
    .filter(([name]) => !across.has(name))
    .map(([name, p]): [string, Part] => [
      name,
      p.kind === 'box' ? { ...p, holds: p.holds.filter((h) => !across.has(h)) } : p,
    ]);
  const runs = plan.runs.map((r) => ({
    ...r,
    cores: r.cores.filter((c) => !across.has(c.a.part) && !across.has(c.b.part)),
  }));
  return {
    ...plan,
    parts: new Map(parts),
    terminals: new Map([...plan.terminals].filter(([name]) => !across.has(name))),
    runs,
  };
}
