/** What has to be drawn: the symbols of a plan with their terminals, before any of them has a place. */

import { push } from '../../plan/map-entries.ts';
import type { Part } from '../../plan/part-types.ts';
import type { Plan } from '../../plan/plan.ts';
import { terminalKey } from '../../plan/terminal-key.ts';
import { printable } from '../../text/escape.ts';
import type { Figure, Side } from '../drawing.ts';
import { drawnKind } from '../kinds.ts';
import type { SymbolForm, Wired } from '../symbol-forms.ts';

export interface TerminalSpec {
  readonly key: string;
  /** canonical name within its part */
  readonly name: string;
  /** as the plan writes it */
  readonly mark: string;
  /** side and row by habit; a mirrored symbol swaps the sides */
  readonly side: Side;
  readonly row: number;
}

export interface SymbolSpec {
  readonly id: string;
  readonly part: Part;
  readonly figure: Figure;
  readonly name: string;
  readonly caption: string;
  /** the caption where there is little room */
  readonly brief: string;
  /** short mark of the findings that speak of the part */
  readonly finding?: string;
  readonly terminals: readonly TerminalSpec[];
  readonly plugged: readonly {
    readonly part: string;
    readonly figure: 'motor' | 'load';
    readonly caption: string;
  }[];
}

/** Every symbol of a plan, in the order of its parts. A part with nothing to wire still gets one. */
export function symbolSpecs(plan: Plan): SymbolSpec[] {
  const wiring = new Wiring(plan);
  return [...plan.parts.values()].flatMap((part) => {
    if (wiring.standsIn(part) !== undefined) return [];
    const placed = new Set<string>();
    const forms = drawnKind(part).symbols(part, wiring.of(part));
    return forms.map((form) => specOf(part, inUseFirst(form, wiring.of(part)), wiring, placed));
  });
}

/**
 * A contact with make and break of which only the break is wired has that in its first row, level with its common. Gates
 * keep to one form, so that a core on the other tab is seen to leave it.
 */
function inUseFirst(form: SymbolForm, { lands }: Wired): SymbolForm {
  const [first, second, ...more] = form.rows;
  const [common, make] = first ?? [];
  const [left, opened] = second ?? [];
  const swaps =
    form.figure !== 'gate' &&
    form.figure !== 'selector' &&
    more.length === 0 &&
    left === undefined &&
    make !== undefined &&
    opened !== undefined &&
    lands(opened) &&
    !lands(make);
  return swaps
    ? {
        ...form,
        rows: [
          [common, opened],
          [undefined, make],
        ],
      }
    : form;
}

/** `placed` grows by the symbol's terminals: a terminal that several symbols share stands in the first. */
function specOf(part: Part, form: SymbolForm, wiring: Wiring, placed: Set<string>): SymbolSpec {
  const { figure, rows, sub } = form;
  const terminals: TerminalSpec[] = [];
  rows.forEach((pair, row) => {
    (['left', 'right'] as const).forEach((side, i) => {
      const name = pair[i];
      if (name === undefined || placed.has(name)) return;
      placed.add(name);
      const key = terminalKey(part.name, name);
      terminals.push({ key, name, mark: printable(wiring.written.get(key) ?? name), side, row });
    });
  });
  return {
    id: sub === undefined ? part.name : `${part.name}/${sub}`,
    part,
    figure,
    name: part.name,
    caption: captionOf(part, figure),
    brief: captionOf(part, figure, true),
    terminals,
    plugged: wiring.pluggedInto(part.name),
  };
}

/** What is printed on a part, in a few words; empty where its name says enough. */
function captionOf(part: Part, figure: Figure, brief = false): string {
  const words = drawnKind(part).caption(part, figure, brief);
  return printable(words.filter((w) => w !== '').join(', '));
}

/** Where the cores of a plan land, and what stands plugged into its outlets. */
class Wiring {
  /** terminals that cores land on, by key, as the plan writes them first */
  readonly written = new Map<string, string>();
  readonly #plugged = new Map<string, SymbolSpec['plugged'][number][]>();

  constructor(private readonly plan: Plan) {
    for (const run of plan.runs)
      for (const core of run.cores)
        for (const ref of [core.a, core.b]) {
          const key = terminalKey(ref.part, ref.terminal);
          const dot = ref.written.indexOf('.');
          if (!this.written.has(key)) this.written.set(key, dot < 0 ? '' : ref.written.slice(dot + 1));
        }
    for (const part of plan.parts.values()) {
      const into = this.standsIn(part);
      if (into === undefined) continue;
      const figure = part.kind === 'motor' ? 'motor' : 'load';
      push(this.#plugged, into, { part: part.name, figure, caption: captionOf(part, figure) });
    }
  }

  of(part: Part): Wired {
    return {
      names: this.plan.terminals.get(part.name)!.names,
      lands: (name) => this.written.has(terminalKey(part.name, name)),
    };
  }

  /** The outlet a motor or load is drawn in: plugged into it, and with no core on a terminal of its own. */
  standsIn(part: Part): string | undefined {
    if ((part.kind !== 'motor' && part.kind !== 'load') || part.pluggedInto === undefined) return undefined;
    const { names, lands } = this.of(part);
    return names.some(lands) ? undefined : part.pluggedInto;
  }

  pluggedInto(name: string): SymbolSpec['plugged'] {
    return this.#plugged.get(name) ?? [];
  }
}
