/** A failure retold as another plan, in the words of a plan file: what the enumerating oracle can judge by itself. */
import { parse, stringify } from 'yaml';
import type { Fault } from '../../src/meter/fault.ts';
import type { Plan } from '../../src/plan/plan.ts';

interface RawRun {
  [key: string]: unknown;
  cores: Record<string, string[]>;
}
interface Raw {
  [key: string]: unknown;
  parts: Record<string, unknown>;
  runs: (RawRun | { link: string[] })[];
}

/** The plan with its runs one by one, each core with its ends as terminals are called in general. */
function spelledOut(text: string, plan: Plan): Raw {
  const raw = parse(text) as { parts: Record<string, unknown>; runs: Record<string, unknown>[] } & Raw;
  const end = ({ part, terminal }: { part: string; terminal: string }) =>
    terminal === '' ? part : `${part}.${terminal}`;
  const runs = plan.runs.map((run) => {
    const own = raw.runs[run.entry - 1] as unknown as Record<string, unknown>;
    if (run.link) return { link: [end(run.cores[0]!.a), end(run.cores[0]!.b)] };
    const { along: _, lengths: __, length: ___, cores: ____, ...rest } = own;
    return {
      ...rest,
      ...(run.length === undefined ? {} : { length: `${run.length} m` }),
      cores: Object.fromEntries(run.cores.map((c) => [c.colour, [end(c.a), end(c.b)]])),
    };
  });
  return { ...raw, runs: runs as Raw['runs'] };
}

/** All cores on one terminal put on a joint of their own, still joined to each other. */
function lifted(raw: Raw, key: string): Raw {
  const off = 'lifted-off';
  const put = (k: string) => (k === key ? off : k);
  return {
    ...raw,
    parts: { ...raw.parts, [off]: { kind: 'joint' } },
    runs: raw.runs.map((run) =>
      'link' in run
        ? { link: (run.link as string[]).map(put) }
        : {
            ...run,
            cores: Object.fromEntries(
              Object.entries((run as RawRun).cores).map(([c, ends]) => [c, ends.map(put)]),
            ),
          },
    ),
  };
}

const linked = (raw: Raw, a: string, b: string): Raw => ({ ...raw, runs: [...raw.runs, { link: [a, b] }] });

/** The text of a plan that is built as the fault has it; undefined where no plan says the same. */
export function retold(text: string, plan: Plan, fault: Fault): string | undefined {
  const raw = spelledOut(text, plan);
  const [a, b] = fault.at;
  const made = changed(raw, plan, fault, a!, b!);
  return made && stringify(made);
}

function changed(raw: Raw, plan: Plan, fault: Fault, a: string, b: string): Raw | undefined {
  switch (fault.mode) {
    case 'core-open': {
      const run = plan.runs.findIndex((r) =>
        r.cores.some(
          (c) =>
            fault.item.includes(`from ${c.a.written} to ${c.b.written}`) &&
            fault.item.includes(r.link ? 'link' : c.colour),
        ),
      );
      const own = raw.runs[run]!;
      if ('link' in own) return { ...raw, runs: raw.runs.filter((r) => r !== own) };
      const colour = plan.runs[run]!.cores.find((c) =>
        fault.item.includes(`the ${c.colour} core from ${c.a.written} to ${c.b.written}`),
      )!.colour;
      const { [colour]: _, ...cores } = (own as RawRun).cores;
      const rest = Object.keys(cores).length > 0 ? [{ ...own, cores } as RawRun] : [];
      return { ...raw, runs: raw.runs.flatMap((r) => (r === own ? rest : [r])) };
    }
    case 'tab-loose':
      return lifted(raw, a);
    case 'cores-touch':
      return linked(raw, a, fault.at[2]!);
    case 'never-breaks':
    case 'diode-shorted':
      return linked(raw, a, b);
    case 'blown':
      return plan.parts.get(fault.item)?.kind === 'fuse' ? lifted(raw, b) : undefined;
    default:
      return undefined;
  }
}
