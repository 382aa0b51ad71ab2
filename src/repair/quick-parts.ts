/** The parts of the quick simulation, with terminals by number. */
import type { Consumer, Sense, Source } from '../circuit/circuit.ts';
import type { Plan } from '../plan/plan.ts';

/** Ends of one core, as terminal numbers. */
export type Ends = readonly [number, number];

export interface QuickContact {
  readonly a: number;
  readonly b: number;
  /** all must hold: input or relay number and the value it must have */
  readonly when: readonly { readonly relay: boolean; readonly index: number; readonly value: boolean }[];
}

export interface QuickRelay {
  readonly part: string;
  readonly coil: Ends;
  readonly polarised: boolean;
  /** dry trigger, or a board's input pin with the pole that makes it pull in */
  readonly trigger: Ends | undefined;
  readonly input: { readonly pin: number; readonly with: number } | undefined;
}

export interface QuickSource {
  readonly source: Source;
  readonly rails: readonly number[];
  /** an outlet or plug; or the mains terminals of its own, which count once a core is on one of them */
  readonly feed: { readonly part: string } | { readonly pairs: readonly Ends[] };
}

export interface QuickLoad {
  readonly consumer: Consumer;
  readonly terminals: readonly number[];
}

export function feedOf(plan: Plan, source: Source, at: (name: string) => number): QuickSource['feed'] {
  if (source.feed.by === 'part') return { part: source.feed.part };
  const names = plan.terminals.get(source.part)?.names ?? [];
  const pairs = [
    ['L', 'N'],
    ['L1', 'L2'],
  ] as const;
  const own = source.mains ? [] : pairs.filter((p) => p.every((t) => names.includes(t)));
  return { pairs: own.map(([a, b]): Ends => [at(`${source.part}.${a}`), at(`${source.part}.${b}`)]) };
}

export function quickRelay(
  plan: Plan,
  part: string,
  senses: readonly Sense[],
  at: (name: string) => number,
): QuickRelay {
  const owner = plan.parts.get(part);
  if (owner?.kind === 'board') {
    const [vcc, gnd] = [at(`${part}.VCC`), at(`${part}.GND`)];
    return {
      part,
      coil: [vcc, gnd],
      polarised: true,
      trigger: undefined,
      input: { pin: at(`${part}.IN`), with: owner.input === 'low' ? gnd : vcc },
    };
  }
  const polarised = senses.some((s) => 'polarised' in s && s.polarised === true);
  return {
    part,
    coil: [at(`${part}.A1`), at(`${part}.A2`)],
    polarised,
    trigger: senses.some((s) => s.by === 'joined') ? [at(`${part}.T1`), at(`${part}.T2`)] : undefined,
    input: undefined,
  };
}
