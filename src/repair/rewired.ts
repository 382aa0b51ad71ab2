/** A change of wiring with what it costs, and the cores after it. */
import type { Edit } from '../edit/edits.ts';
import type { Cores, Ends, NumberedCircuit } from './numbered-circuit.ts';

/** An edit with what it costs at the bench. */
export interface Candidate {
  readonly edits: readonly Edit[];
  /** ends taken off and put on */
  readonly ends: number;
  /** new cores */
  readonly added: number;
  /** the smaller, the likelier this is what went wrong: ends put where a twin part has one and this part none */
  readonly oddness: number;
  /** slips of a hand it stands for, where that is not told by its edits */
  readonly slips?: number;
}

/** The cores after an edit; the list's shape stays, so that indices in later edits still hold. */
export function rewired(circuit: NumberedCircuit, cores: Cores, edits: readonly Edit[]): Ends[][] {
  const out = cores.map((run) => [...run]);
  const put = (run: number, core: number, end: 'a' | 'b', terminal: number) => {
    const [a, b] = out[run]![core]!;
    out[run]![core] = end === 'a' ? [terminal, b] : [a, terminal];
  };
  const at = (e: { run: number; core: number; end: 'a' | 'b' }) =>
    out[e.run]![e.core]![e.end === 'a' ? 0 : 1];
  for (const e of edits) {
    if (e.do === 'move') put(e.run, e.core, e.end, circuit.terminal(e.to)!);
    else if (e.do === 'swap') {
      const [x, y] = [at(e.first), at(e.second)];
      put(e.first.run, e.first.core, e.first.end, y);
      put(e.second.run, e.second.core, e.second.end, x);
    } else if (e.do === 'remove') {
      const [a] = out[e.run]![e.core]!;
      out[e.run]![e.core] = [a, a];
    } else if (e.do === 'add') out.push([[circuit.terminal(e.from)!, circuit.terminal(e.to)!]]);
  }
  return out;
}
