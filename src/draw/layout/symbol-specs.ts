/** What has to be drawn: the symbols of a plan with their terminals, before any of them has a place. */
import type { Part, Plan, Pole } from '../../plan/plan.ts';
import { terminalKey } from '../../plan/terminal-key.ts';
import { printable } from '../../text/escape.ts';
import { captionOf } from '../captions.ts';
import type { Figure, Side } from '../drawing.ts';

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

/** `[terminal, side]` row by row; a row may hold one on either side. */
type Rows = readonly (readonly [left?: string | undefined, right?: string | undefined])[];

/** Every symbol of a plan, in the order of its parts. A part with nothing to wire still gets one. */
export function symbolSpecs(plan: Plan): SymbolSpec[] {
  const reader = new Specs(plan);
  return [...plan.parts.values()].flatMap((part) => reader.of(part));
}

class Specs {
  readonly #written = new Map<string, string>();
  readonly #plugged = new Map<string, Part[]>();
  readonly #drawn = new Set<string>();

  constructor(private readonly plan: Plan) {
    for (const run of plan.runs)
      for (const core of run.cores)
        for (const ref of [core.a, core.b]) {
          const key = terminalKey(ref.part, ref.terminal);
          const dot = ref.written.indexOf('.');
          if (!this.#written.has(key)) this.#written.set(key, dot < 0 ? '' : ref.written.slice(dot + 1));
        }
    for (const part of plan.parts.values()) {
      const into = this.#standsIn(part);
      if (into !== undefined) this.#plugged.set(into, [...(this.#plugged.get(into) ?? []), part]);
    }
  }

  of(part: Part): SymbolSpec[] {
    switch (part.kind) {
      case 'supply': {
        const [p, q] = part.output.kind === 'dc' ? ['+', '-'] : ['~1', '~2'];
        const primary = this.#landed(part, ['L', 'N', 'L1', 'L2']);
        return [
          this.#spec(part, 'source', [[p, q]]),
          ...(primary.length > 0
            ? [
                this.#spec(
                  part,
                  'primary',
                  primary.map((t) => [t]),
                  'mains',
                ),
              ]
            : []),
        ];
      }
      case 'battery':
        return [this.#spec(part, 'source', [['+', '-']])];
      case 'gate':
      case 'switch':
      case 'button':
        return [this.#changeover(part, part.kind, 'COM', 'NO', 'NC', part.tabs)];
      case 'cutout': {
        const overload = this.#landed(part, ['95', '96', '97', '98']).length > 0;
        const plain = this.#landed(part, ['COM', 'NO', 'NC']).length > 0;
        return [
          ...(overload
            ? [
                this.#spec(part, 'cutout', [
                  ['95', '96'],
                  ['97', '98'],
                ]),
              ]
            : []),
          ...(plain || !overload
            ? [this.#changeover(part, 'cutout', 'COM', 'NO', 'NC', part.tabs, overload ? 'tabs' : undefined)]
            : []),
        ];
      }
      case 'selector': {
        const ways = part.positions.filter((p) => p !== 'off' || this.#landed(part, ['off']).length > 0);
        const [first, ...others] = ways;
        return [
          this.#spec(part, 'selector', [['COM', first], ...others.map((p) => [undefined, p] as const)]),
        ];
      }
      case 'relay':
        return [this.#spec(part, 'coil', [['A1', 'A2']]), ...this.#poles(part)];
      case 'timer': {
        const dry = this.#landed(part, ['T1', 'T2']).length > 0;
        return [
          this.#spec(part, 'timer', [['A1', 'A2'], ...(dry ? [['T1', 'T2'] as const] : [])]),
          ...this.#poles(part),
        ];
      }
      case 'board':
        return [this.#spec(part, 'board', [['VCC', 'GND'], ['IN']]), ...this.#poles(part)];
      case 'diode':
      case 'led':
        return [this.#spec(part, part.kind, [['A', 'K']])];
      case 'resistor':
      case 'lamp':
      case 'fuse':
        return [this.#spec(part, part.kind, [['1', '2']])];
      case 'joint':
        return [this.#spec(part, 'joint', [['']])];
      case 'plug':
        return [
          this.#spec(
            part,
            'plug',
            this.#mainsNames(part).map((t) => [undefined, t]),
          ),
        ];
      case 'outlet':
        return [
          this.#spec(
            part,
            'outlet',
            this.#mainsNames(part).map((t) => [t]),
          ),
        ];
      case 'motor':
      case 'load':
        return this.#standsIn(part) === undefined
          ? [
              this.#spec(
                part,
                part.kind,
                this.#mainsNames(part).map((t) => [t]),
              ),
            ]
          : [];
      case 'box':
        return [this.#spec(part, 'box', part.metal || this.#landed(part, ['PE']).length > 0 ? [['PE']] : [])];
    }
  }

  /** The outlet a motor or load is drawn in: plugged into it, and with no core on a terminal of its own. */
  #standsIn(part: Part): string | undefined {
    if ((part.kind !== 'motor' && part.kind !== 'load') || part.pluggedInto === undefined) return undefined;
    return this.#landed(part, this.plan.terminals.get(part.name)!.names).length === 0
      ? part.pluggedInto
      : undefined;
  }

  #landed(part: Part, names: readonly string[]): string[] {
    return names.filter((t) => this.#written.has(terminalKey(part.name, t)));
  }

  /** Conductors and earth; a neutral that a two-leg or three-phase part may have, and an earth it needs not, only where wired. */
  #mainsNames(part: Extract<Part, { kind: 'plug' | 'outlet' | 'motor' | 'load' }>): string[] {
    const needsNot = new Set<string>();
    if (part.feed !== 'single') needsNot.add('N');
    if ('class2Insulated' in part && part.class2Insulated) needsNot.add('PE');
    const { names } = this.plan.terminals.get(part.name)!;
    return names.filter((t) => !needsNot.has(t) || this.#written.has(terminalKey(part.name, t)));
  }

  #poles(part: Extract<Part, { poles: readonly Pole[] }>): SymbolSpec[] {
    const figure = part.technology === 'solid-state' ? 'static-pole' : 'pole';
    return part.poles.map((p) =>
      this.#changeover(part, figure, p.common, p.make, p.break, undefined, `${p.index}`),
    );
  }

  #changeover(
    part: Part,
    figure: Figure,
    common: string,
    make: string | undefined,
    rest: string | undefined,
    tabs?: readonly string[],
    sub?: string,
  ): SymbolSpec {
    const has = (name: string | undefined) =>
      name !== undefined && (tabs === undefined || tabs.includes(name)) ? name : undefined;
    const others = [has(make), has(rest)].filter((t) => t !== undefined);
    const rows: Rows = [[has(common), others[0]], ...others.slice(1).map((t) => [undefined, t] as const)];
    return this.#spec(part, figure, rows, sub);
  }

  #spec(part: Part, figure: Figure, rows: Rows, sub?: string): SymbolSpec {
    const id = sub === undefined ? part.name : `${part.name}/${sub}`;
    const terminals: TerminalSpec[] = [];
    rows.forEach((pair, row) => {
      (['left', 'right'] as const).forEach((side, i) => {
        const name = pair[i];
        if (name === undefined) return;
        const key = terminalKey(part.name, name);
        if (this.#drawn.has(key)) return;
        this.#drawn.add(key);
        terminals.push({ key, name, mark: printable(this.#written.get(key) ?? name), side, row });
      });
    });
    const plugged = (this.#plugged.get(part.name) ?? []).map((p) => ({
      part: p.name,
      figure: p.kind === 'motor' ? ('motor' as const) : ('load' as const),
      caption: captionOf(p, p.kind === 'motor' ? 'motor' : 'load'),
    }));
    return {
      id,
      part,
      figure,
      name: part.name,
      caption: captionOf(part, figure),
      brief: captionOf(part, figure, true),
      terminals,
      plugged,
    };
  }
}
