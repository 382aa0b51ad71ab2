/** A circuit while it is put together, part by part. */

import type { Part } from '../plan/part-types.ts';
import type { Plan } from '../plan/plan.ts';
import { terminalKey } from '../plan/terminal-key.ts';
import type {
  Circuit,
  Condition,
  Consumer,
  ContactEdge,
  DiodeEdge,
  Input,
  InputKind,
  Passive,
  Rail,
  Relay,
  Sense,
  Source,
} from './circuit.ts';
import { withFeedVolts } from './feed-volts.ts';
import type { JoinedTerminals } from './nets.ts';

export class CircuitDraft {
  readonly wired: JoinedTerminals;
  readonly inputs: Input[] = [];
  readonly contacts: ContactEdge[] = [];
  readonly diodes: DiodeEdge[] = [];
  readonly passives: Passive[] = [];
  readonly sources: Source[] = [];
  readonly relays: Relay[] = [];
  readonly consumers: Consumer[] = [];
  private readonly latches: { of: number; by: 'reset' | 'cam'; senses: readonly Sense[] }[] = [];

  constructor(
    wired: JoinedTerminals,
    readonly plan: Plan,
  ) {
    this.wired = wired;
  }

  /** Net of a terminal; it gets one here if it has none yet. */
  net(part: Part, terminal: string): number {
    return this.wired.net(terminalKey(part.name, terminal));
  }

  /** Whether a core or link ends at the terminal. */
  used(part: Part, terminal: string): boolean {
    return this.wired.used.has(terminalKey(part.name, terminal));
  }

  /** A contact between two terminals; `pole` counts from 1 at a relay and is 0 at all else. */
  contact(part: Part, terminals: readonly [string, string], when: Condition, pole = 0): void {
    const [a, b] = [this.net(part, terminals[0]), this.net(part, terminals[1])];
    this.contacts.push({ a, b, when, part: part.name, terminals, pole });
  }

  /** Returns the number of the input. */
  input(part: Part, kind: InputKind, position?: string): number {
    const index = this.inputs.length;
    this.inputs.push({ index, part: part.name, kind, ...(position === undefined ? {} : { position }) });
    return index;
  }

  /** Returns the number of the relay. */
  relay(part: Part, senses: readonly Sense[], more: Pick<Relay, 'delay'> = {}): number {
    const index = this.relays.length;
    this.relays.push({ index, part: part.name, senses, ...more });
    return index;
  }

  /** What makes a relay stay put: a cam, or a second coil with what that senses. */
  latch(of: number, by: 'reset' | 'cam', senses: readonly Sense[] = []): void {
    this.latches.push({ of, by, senses });
  }

  /** The pieces of relays after all relays, so that the number of a relay hangs on the parts alone. */
  private withPieces(): Relay[] {
    const own = [...this.relays];
    this.latches.forEach(({ of, by, senses }, k) => {
      const index = this.relays.length + k;
      own[of] = { ...own[of]!, latch: { by, relay: index } };
      own.push({ index, part: own[of]!.part, senses, of });
    });
    return own;
  }

  passive(part: Part, what: Passive['what'], a: number, b: number): void {
    this.passives.push({ a, b, part: part.name, what });
  }

  source(part: Part, source: Omit<Source, 'index' | 'part'>): void {
    this.sources.push({ index: this.sources.length, part: part.name, ...source });
  }

  /** A rail at one of the part's terminals, V; live where it has a voltage of its own. */
  rail(part: Part, terminal: string, re: number, im = 0): Rail {
    return { net: this.net(part, terminal), terminal, re, im, live: re !== 0 || im !== 0 };
  }

  done(): Circuit {
    const { plan, wired, inputs, contacts, diodes, passives, consumers } = this;
    const sources = withFeedVolts(this, wired.wires());
    return {
      plan,
      netCount: wired.count(),
      netOf: wired.netOf,
      terminals: wired.terminals(),
      inputs,
      contacts,
      diodes,
      passives,
      sources,
      relays: this.withPieces(),
      consumers,
      landed: wired.landed,
    };
  }
}
