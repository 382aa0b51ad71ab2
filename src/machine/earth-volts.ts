/** Volts to earth where a plug has two legs whose middle is earthed: each leg has half of what lies between them. */
import type { Source } from '../circuit/circuit.ts';
import type { Figures } from '../electric/island.ts';
import { terminalKey } from '../plan/terminal-key.ts';
import { isOn, type SolvedIsland } from '../study/supply-limits.ts';
import { joinedByMetal } from './joined-nets.ts';
import type { MachineState } from './machine.ts';

/** A plug with an earthed middle, and the net of its protective pin; none where nothing is on that pin. */
interface Earthed {
  readonly source: Source;
  readonly pin: number;
}

export class EarthVolts {
  private readonly earthed: readonly Earthed[];
  private readonly joined: (a: number, b: number) => boolean;
  private islands: readonly SolvedIsland[] | undefined;

  constructor(
    private readonly state: MachineState,
    private readonly figures: Figures,
    private readonly solve: () => readonly SolvedIsland[],
  ) {
    const { circuit } = state;
    this.earthed = circuit.sources.flatMap((source) => {
      const pin = circuit.netOf.get(terminalKey(source.part, 'PE'));
      return source.earthed && pin !== undefined ? [{ source, pin }] : [];
    });
    this.joined = joinedByMetal(circuit, state.situation);
  }

  /** Whether a source is a plug with an earthed middle and something on its protective pin. */
  plugs(source: Source): boolean {
    return this.earthed.some((e) => e.source.part === source.part);
  }

  /** The plug on whose earth a net lies. */
  plugOf(net: number): Source | undefined {
    return this.earthed.find(({ pin }) => this.joined(pin, net))?.source;
  }

  /** V (RMS) at a net against the earth of a plug; undefined where it is no such earth, or the plug's legs do not reach the net. */
  between(net: number, earth: number): { readonly volts: number; readonly island: SolvedIsland } | undefined {
    if (this.earthed.length === 0) return undefined;
    const source = this.plugOf(earth);
    if (source === undefined || this.plugOf(net) !== undefined) return undefined;
    this.islands ??= this.solve();
    for (const island of this.islands) {
      const volts = this.potential(island, source, net);
      if (volts !== undefined) return { volts, island };
    }
    return undefined;
  }

  /** V (RMS) of a net against the middle of a source's legs; undefined where they do not reach it or nothing is worked out. */
  potential(island: SolvedIsland, source: Source, net: number): number | undefined {
    const here = island.flows.island.sources.find((s) => s.part === source.part);
    if (!here || island.notWorkedOut !== undefined || !isOn(island, this.state.situation, here))
      return undefined;
    const pole = here.rails[0]!;
    const v = island.flows.volts(net, pole.net);
    if (v === undefined) return undefined;
    const { scale } = this.figures.source(here);
    return Math.hypot(v.re + scale * pole.re, v.im + scale * pole.im);
  }
}
