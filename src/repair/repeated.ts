/** One mistake made at several parts of a kind: the same change made at each of them. */
import { type Edit, type EndRef, endsMoved } from '../edit/edits.ts';
import { push } from '../plan/map-entries.ts';
import type { Plan } from '../plan/plan.ts';
import { splitTerminalKey, terminalKey } from '../plan/terminal-key.ts';
import type { Candidate } from './rewired.ts';

/** Slips of a hand that the same slip at several parts stands for. */
const REPEATED = 1.1;
/** Parts of one kind at which a change is repeated at most. */
const MOST_PARTS = 400;

interface Landed extends EndRef {
  readonly part: string;
  readonly tab: string;
  /** what lies at the other end of the core */
  readonly far: string;
  readonly sign: string;
}

/** The parts of a plan by kind, with the ends of cores at each of their tabs. */
export class Repeated {
  private readonly kinds = new Map<string, string[]>();
  private readonly ends = new Map<string, Landed[]>();

  constructor(private readonly plan: Plan) {
    for (const part of plan.parts.values()) push(this.kinds, this.kindOf(part.name), part.name);
    for (const run of plan.runs)
      run.cores.forEach((core, c) => {
        for (const end of ['a', 'b'] as const) {
          const [own, other] = end === 'a' ? [core.a, core.b] : [core.b, core.a];
          const sign = run.link ? 'link' : core.colour;
          const far = terminalKey(other.part, other.terminal);
          const landed = { run: run.index, core: c, end, part: own.part, tab: own.terminal, far, sign };
          push(this.ends, terminalKey(own.part, own.terminal), landed);
        }
      });
  }

  /** Parts that are alike: of one kind, and gates mounted one way. */
  private kindOf(name: string): string {
    const part = this.plan.parts.get(name);
    return `${part?.kind} ${part?.kind === 'gate' ? part.pressedWhen : ''}`;
  }

  private twins(name: string): readonly string[] {
    const all = this.kinds.get(this.kindOf(name)) ?? [];
    return all.length > MOST_PARTS ? [] : all;
  }

  private at(part: string, tab: string): readonly Landed[] {
    return this.ends.get(terminalKey(part, tab)) ?? [];
  }

  /** All ends on one tab moved to another tab, or the ends on two tabs exchanged, at every part of a kind that has some. */
  *tabs(): Generator<Candidate> {
    for (const parts of this.kinds.values()) {
      if (parts.length < 2 || parts.length > MOST_PARTS) continue;
      const tabs = [...new Set(parts.flatMap((p) => this.plan.terminals.get(p)?.names ?? []))];
      if (tabs.length > 4 || tabs.includes('PE')) continue;
      for (const x of tabs)
        for (const y of tabs) {
          if (x === y) continue;
          yield* this.candidate(parts.flatMap((p) => this.moved(p, x, y)));
          if (x < y)
            yield* this.candidate(parts.flatMap((p) => [...this.moved(p, x, y), ...this.moved(p, y, x)]));
        }
    }
  }

  private moved(part: string, from: string, to: string): Edit[] {
    const key = terminalKey(part, to);
    return this.at(part, from)
      .filter((e) => e.far !== key)
      .map((e) => ({ do: 'move', run: e.run, core: e.core, end: e.end, to: key }));
  }

  /** A change at one part made at all parts of its kind where a core of the same colour lies on the same tab. */
  *like(edit: Edit): Generator<Candidate> {
    if (edit.do === 'move') yield* this.candidate(this.movesLike(edit));
    else if (edit.do === 'swap') yield* this.candidate(this.swapsLike(edit));
  }

  private partsAt(at: EndRef): string {
    const core = this.plan.runs[at.run]!.cores[at.core]!;
    return `${core.a.part} ${core.b.part}`;
  }

  private landed(at: EndRef): Landed {
    const core = this.plan.runs[at.run]!.cores[at.core]!;
    return this.at(core[at.end].part, core[at.end].terminal).find((e) => isSameEnd(e, at))!;
  }

  private movesLike(edit: Edit & { readonly do: 'move' }): Edit[] {
    const own = this.landed(edit);
    return this.twins(own.part).length > 1 ? this.movesAtTwins(edit, own) : this.movesFromTwins(edit, own);
  }

  private movesAtTwins(edit: Edit & { readonly do: 'move' }, own: Landed): Edit[] {
    const { part: to, terminal } = splitTerminalKey(edit.to);
    const [mine, others] = [this.twins(own.part), this.twins(to)];
    const ahead = others.indexOf(to) - mine.indexOf(own.part);
    const far = splitTerminalKey(own.far);
    return mine.flatMap((part, i): Edit[] => {
      // Each part to its own neighbour where the one moved to is such, and all to one place where it is not.
      const target = to === own.part ? part : others.length > 1 ? others[i + ahead] : to;
      if (target === undefined) return [];
      const key = terminalKey(target, terminal);
      return this.at(part, own.tab)
        .filter(
          (e) => e.sign === own.sign && splitTerminalKey(e.far).terminal === far.terminal && e.far !== key,
        )
        .map((e) => ({ do: 'move', run: e.run, core: e.core, end: e.end, to: key }));
    });
  }

  /** Cores that come to one terminal from the same tab of parts of a kind, all moved from there. */
  private movesFromTwins(edit: Edit & { readonly do: 'move' }, own: Landed): Edit[] {
    const far = splitTerminalKey(own.far);
    const twins = new Set(this.twins(far.part));
    if (twins.size < 2) return [];
    return this.at(own.part, own.tab)
      .filter((e) => {
        const from = splitTerminalKey(e.far);
        return (
          twins.has(from.part) && from.terminal === far.terminal && e.sign === own.sign && e.far !== edit.to
        );
      })
      .map((e) => ({ do: 'move', run: e.run, core: e.core, end: e.end, to: edit.to }));
  }

  private swapsLike({ first, second }: Edit & { readonly do: 'swap' }): Edit[] {
    const [x, y] = [this.landed(first), this.landed(second)];
    if (x.part !== y.part) return [];
    return this.twins(x.part).flatMap((part): Edit[] => {
      const [p, q] = [this.at(part, x.tab), this.at(part, y.tab)].map((l) =>
        l.length === 1 ? l[0] : undefined,
      );
      if (!p || !q || p.far === terminalKey(part, y.tab)) return [];
      return [{ do: 'swap', first: place(p), second: place(q) }];
    });
  }

  private *candidate(edits: readonly Edit[]): Generator<Candidate> {
    if (edits.length < 2) return;
    const parts = new Set(edits.map((e) => (e.do === 'move' ? this.partsAt(e) : JSON.stringify(e)))).size;
    if (parts < 2) return;
    yield { edits, ends: endsMoved(edits), added: 0, oddness: 0, slips: REPEATED };
  }
}

const place = ({ run, core, end }: EndRef): EndRef => ({ run, core, end });

function isSameEnd(x: EndRef, y: EndRef): boolean {
  return x.run === y.run && x.core === y.core && x.end === y.end;
}
