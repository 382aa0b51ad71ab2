/** `npm run repairs`: makes single mistakes in the right examples and counts how well the first repair undoes them. */
import { readdirSync, readFileSync } from 'node:fs';
import type { Edit } from '../../src/edit/edits.ts';
import { planAfter } from '../../src/edit/expected-plan.ts';
import { judge } from '../../src/findings/judge.ts';
import type { Finding } from '../../src/findings/report-model.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { readPlan } from '../../src/plan/read.ts';
import { terminalKey } from '../../src/plan/terminal-key.ts';
import { check } from '../../src/repair/check.ts';
import { mend } from '../../src/repair/mend.ts';
import { Study } from '../../src/study/study.ts';
import { dice } from '../oracles/corpus/corpus.ts';

const GRAVE = ['danger', 'warning', 'fault'];
const args = process.argv.slice(2);
const option = (name: string, other: string): string => {
  const at = args.indexOf(`--${name}`);
  return at < 0 ? other : args[at + 1]!;
};
const each = Number(option('each', '20'));
const only = option('plans', '');
const verbose = args.includes('--verbose');
const [part, parts] = option('part', '1/1').split('/').map(Number);

type Kind = 'move' | 'swap' | 'remove';

/** Which terminals are one conductor, as text that is the same for the same wiring. */
function conductors(study: Study): string {
  return study.circuit.terminals
    .filter((t) => t.length > 1)
    .map((t) => [...t].sort().join(' '))
    .sort()
    .join('\n');
}

function mistakes(plan: Plan, seed: number): Edit[] {
  const roll = dice(seed);
  const below = (n: number) => Math.floor(roll() * n);
  const terminals = [...plan.terminals].flatMap(([n, t]) => t.names.map((m) => terminalKey(n, m)));
  const made: Edit[] = [];
  const seen = new Set<string>();
  for (let tries = 0; made.length < each && tries < 60 * each; tries++) {
    const run = below(plan.runs.length);
    const cores = plan.runs[run]!.cores;
    if (cores.length === 0) continue;
    const core = below(cores.length);
    const end = below(2) === 0 ? 'a' : 'b';
    const kind = (['move', 'move', 'swap', 'remove'] as const)[below(4)]!;
    const c = cores[core]!;
    const ends = [c.a, c.b].map((e) => terminalKey(e.part, e.terminal));
    let edit: Edit | undefined;
    if (kind === 'remove') edit = { do: 'remove', run, core };
    else if (kind === 'swap' && cores.length > 1) {
      const other = (core + 1 + below(cores.length - 1)) % cores.length;
      edit = { do: 'swap', first: { run, core, end }, second: { run, core: other, end } };
    } else if (kind === 'move') {
      // A hand slips to a neighbour more often than across the shop.
      const near = below(2) === 0;
      const own = end === 'a' ? c.a.part : c.b.part;
      const pool = near ? terminals.filter((t) => t.startsWith(`${own}.`)) : terminals;
      const to = pool[below(pool.length)];
      if (to !== undefined && !ends.includes(to)) edit = { do: 'move', run, core, end, to };
    }
    const key = JSON.stringify(edit);
    if (!edit || seen.has(key)) continue;
    seen.add(key);
    made.push(edit);
  }
  return made;
}

const harmed = (findings: readonly Finding[]) =>
  findings.some((f) => f.question <= 3 && GRAVE.includes(f.severity));
const idsOf = (findings: readonly Finding[]) =>
  new Set(findings.flatMap((f) => [f.id, ...f.also.map((a) => a.id)]));

interface Count {
  harmful: number;
  told: number;
  undone: number;
  /** the first repair, or one told as being as likely, restores the conductors */
  among: number;
  /** more than one is told as likely */
  open: number;
  fresh: number;
  /** the finding names one change and the repair another */
  apart: number;
  ms: number;
}
const counts = new Map<string, Count>();

function count(name: string): Count {
  let c = counts.get(name);
  if (!c) {
    c = { harmful: 0, told: 0, undone: 0, among: 0, open: 0, fresh: 0, apart: 0, ms: 0 };
    counts.set(name, c);
  }
  return c;
}

const files = readdirSync('examples')
  .filter((f) => f.endsWith('.yaml') && (only === '' || only.split(',').includes(f.slice(0, -5))))
  .filter((_, i) => i % parts! === part! - 1);
for (const file of files) {
  const read = readPlan(readFileSync(`examples/${file}`), file);
  if (!read.ok) continue;
  const right = Study.of(read.plan);
  const before = idsOf(judge(right).findings);
  const wanted = conductors(right);
  mistakes(read.plan, 20261129).forEach((edit) => {
    const wrong = Study.of(planAfter(read.plan, [edit])!);
    if (conductors(wrong) === wanted || !harmed(judge(wrong).findings)) return;
    const start = performance.now();
    const { repairs } = mend(wrong);
    const ms = performance.now() - start;
    const first = repairs[0];
    const after = first && Study.of(planAfter(wrong.plan, first.edits)!);
    const undone = after !== undefined && conductors(after) === wanted;
    const likely = repairs.filter((r) => r.asLikely);
    const among = likely.some((r) => conductors(Study.of(planAfter(wrong.plan, r.edits)!)) === wanted);
    const fresh = after ? [...idsOf(judge(after).findings)].filter((id) => !before.has(id)) : [];
    const causes = check(wrong).findings.filter((f) => f.cause !== null);
    const ends = (first?.edits ?? []).flatMap((e) => (e.do === 'move' ? [e.to] : []));
    const apart =
      first !== undefined && causes.some((f) => !ends.some((t) => f.cause!.terminals.includes(t)));
    for (const c of [count('all'), count(edit.do as Kind), count(file)]) {
      c.harmful++;
      if (first) c.told++;
      if (undone) c.undone++;
      if (among) c.among++;
      if (likely.length > 1) c.open++;
      if (fresh.length > 0) c.fresh++;
      if (apart) c.apart++;
      c.ms += ms;
    }
    if (verbose && (!undone || apart)) {
      const at = (e: Edit) => ('run' in e ? read.plan.runs[e.run]!.cores[e.core]! : undefined);
      const core = at(edit);
      const said = core ? `${core.a.written}-${core.b.written}` : '';
      console.log(
        `${file}: ${JSON.stringify(edit)} (${said})\n    ${first ? first.words.join(' ') : 'nothing told'}${fresh.length > 0 ? ` NEW ${fresh.join()}` : ''}${apart ? ` APART ${causes.map((f) => f.message).join()}` : ''}`,
      );
    }
  });
}
for (const [name, c] of counts) {
  const share = (n: number, of: number) => `${((100 * n) / Math.max(1, of)).toFixed(1)} %`;
  console.log(
    `${name.padEnd(34)} harmful ${String(c.harmful).padStart(5)}  told ${share(c.told, c.harmful)}  undone ${share(c.undone, c.harmful)}  of told ${share(c.undone, c.told)}  among the likeliest ${share(c.among, c.told)} (${share(c.open, c.told)} with more than one)  new findings ${c.fresh}  finding and repair apart ${c.apart}  ${(c.ms / c.harmful).toFixed(0)} ms each`,
  );
}
