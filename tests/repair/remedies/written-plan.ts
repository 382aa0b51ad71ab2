/** A plan's text with the figures of a remedy written into it, by hand so to say: shares no code with what tried it. */
import { parse, stringify } from 'yaml';
import type { FigureChange } from '../../../src/findings/report-model.ts';
import type { Plan } from '../../../src/plan/plan.ts';
import { planOf } from '../../helpers/plan-of.ts';

export type Tree = { [key: string]: unknown };
export interface PlanTree extends Tree {
  stock?: Record<string, Tree>;
  parts: Record<string, Tree>;
  runs: Tree[];
}

const isMap = (x: unknown): x is Tree => typeof x === 'object' && x !== null && !Array.isArray(x);

function merged(base: Tree, over: Tree): Tree {
  const all = structuredClone(base);
  for (const [key, value] of Object.entries(over)) {
    const below = all[key];
    all[key] = isMap(below) && isMap(value) ? merged(below, value) : structuredClone(value);
  }
  return all;
}

export function treeOf(text: string): PlanTree {
  const tree = parse(text) as PlanTree;
  for (const [name, part] of Object.entries(tree.parts)) tree.parts[name] = whole(tree, part);
  for (const run of tree.runs)
    if (typeof run.cable === 'string') run.cable = structuredClone(tree.stock![run.cable]);
    else if (isMap(run.cable)) run.cable = whole(tree, run.cable);
  return tree;
}

/** A part or cable with what it takes from stock written out. */
function whole(tree: PlanTree, part: Tree): Tree {
  const { from, ...own } = part;
  return typeof from === 'string' ? merged(tree.stock![from]!, own) : own;
}

export const textOf = (tree: PlanTree): string => stringify(tree, { aliasDuplicateObjects: false });

function setField(part: Tree, path: string, text: string | null): void {
  if (path.startsWith('contact') && !path.includes('.') && Array.isArray(part.poles))
    for (const pole of part.poles as Tree[]) delete pole.contact;
  const keys = path.split('.');
  if (keys[0] === 'poles') {
    for (const pole of part.poles as Tree[])
      pole.contact = merged((part.contact ?? {}) as Tree, (pole.contact ?? {}) as Tree);
    delete part.contact;
  }
  let at: Tree = part;
  for (const key of keys.slice(0, -1)) {
    at[key] ??= {};
    at = at[key] as Tree;
  }
  if (text === null) delete at[keys.at(-1)!];
  else at[keys.at(-1)!] = parse(text);
}

/** Ends of every core that stand on one terminal, as setters, each with the part at the other end. */
function endsAt(tree: PlanTree, plan: Plan, key: string) {
  return plan.runs.flatMap((run, r) =>
    run.cores.flatMap((core, c) =>
      (['a', 'b'] as const).flatMap((side) => {
        const ref = core[side];
        const other = core[side === 'a' ? 'b' : 'a'];
        if (`${ref.part}.${ref.terminal}` !== key) return [];
        const raw = tree.runs[r]!;
        const pair = (run.link ? raw.link : Object.values(raw.cores as Tree)[c]) as string[];
        return [{ run: r + 1, other: other.part, put: (to: string) => (pair[side === 'a' ? 0 : 1] = to) }];
      }),
    ),
  );
}

export function withChanges(text: string, changes: readonly FigureChange[]): string {
  let tree = treeOf(text);
  for (const c of changes) {
    // Each step is read again, so that terminals that a step before put in are known.
    const plan = planOf(textOf(tree));
    if (c.change === 'part')
      for (const [path, value] of Object.entries(c.fields)) setField(tree.parts[c.part]!, path, value);
    if (c.change === 'cable') for (const r of c.runs) (tree.runs[r - 1]!.cable as Tree).gauge = c.gauge;
    if (c.change === 'core-colours') {
      const run = tree.runs[c.run - 1]!;
      const marks = (run['marked-as'] ?? {}) as Tree;
      for (const core of Object.keys(c.colours)) delete marks[core];
      if (Object.keys(marks).length === 0) delete run['marked-as'];
      run.cores = Object.fromEntries(
        Object.entries(run.cores as Tree).map(([core, ends]) => [c.colours[core] ?? core, ends]),
      );
    }
    if (c.change === 'marked-as') {
      const run = tree.runs[c.run - 1]!;
      run['marked-as'] = { ...((run['marked-as'] ?? {}) as Tree), ...c.marks };
    }
    if (c.change === 'cable-flexible')
      for (const r of c.runs) (tree.runs[r - 1]!.cable as Tree).flexible = false;
    if (c.change === 'fuse') {
      for (const end of endsAt(tree, plan, c.terminal))
        if (c.behind?.includes(end.run) ?? true) end.put(`${c.part}.2`);
      tree.parts[c.part] = { kind: 'fuse', rating: c.rating };
      tree.runs.push({ link: [c.terminal, `${c.part}.1`] });
    }
    if (c.change === 'relay') {
      for (const mark of ['A1', 'A2'])
        for (const end of endsAt(tree, plan, `${c.coil}.${mark}`))
          if (!['diode', 'resistor', 'lamp', 'led'].includes(plan.parts.get(end.other)!.kind))
            end.put(`${c.part}.${mark}`);
      tree.parts[c.part] = Object.fromEntries(Object.entries(c.fields).map(([k, v]) => [k, parse(v)]));
      for (const box of Object.values(tree.parts))
        if (Array.isArray(box.holds) && box.holds.includes(c.coil)) box.holds.push(c.part);
      tree.runs.push({ link: [c.feed[0]!, `${c.part}.COM`] });
      tree.runs.push({ link: [`${c.part}.NO`, `${c.coil}.A1`] });
      tree.runs.push({ link: [`${c.coil}.A2`, c.feed[1]!] });
    }
    tree = treeOf(textOf(tree));
  }
  return textOf(tree);
}
