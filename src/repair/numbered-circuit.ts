/** A plan's parts with their terminals by number, so that its cores can be put on others without a circuit made anew. */
import type { Consumer, ContactEdge, Rail, Relay, Source } from '../circuit/circuit.ts';
import { kept, push } from '../plan/map-entries.ts';
import type { Plan } from '../plan/plan.ts';
import { terminalKey } from '../plan/terminal-key.ts';
import { mayHaveResistor } from '../study/indicators.ts';
import type { Study } from '../study/study.ts';
import { kindOf } from './kinds.ts';

/** The ends of something, as terminal numbers. */
export type Ends = readonly [number, number];
/** The ends of every core of every run. A core that was taken out has both on one terminal. */
export type Cores = readonly (readonly Ends[])[];

/** Closed while all of its links are; a selector's resting contact is a chain, one link for each position it must not be in. */
export interface NumberedContact {
  readonly a: number;
  readonly b: number;
  readonly links: readonly ContactEdge[];
}

/** What sees volts: the coil of a relay, or a lamp. */
export interface NumberedSense {
  readonly part: string;
  readonly polarised: boolean;
  /** dry trigger, which counts once a core is on it */
  readonly trigger: Ends | undefined;
  /** the dry trigger counts even with no core on it */
  readonly permanent?: boolean;
  /** a board's input pin with the pole that makes it pull in */
  readonly input: { readonly pin: number; readonly with: number } | undefined;
}

export interface NumberedRelay extends NumberedSense {
  readonly relay: Relay;
  /** undefined for a cam, which senses nothing */
  readonly coil: Ends | undefined;
}

export interface NumberedLamp extends NumberedSense {
  readonly coil: Ends;
}

/** Terminals of its own at which a supply takes its mains once a core is on one of them. */
const OWN_MAINS = [
  ['L', 'N'],
  ['L1', 'L2'],
] as const;
const PLUG_PINS = ['L', 'N', 'L1', 'L2', 'L3', 'PE'];

/** Sources and consumers are the circuit's own, with terminal numbers in place of nets. */
export class NumberedCircuit {
  /** name of every terminal, `PART.TERMINAL`, by its number */
  readonly names: readonly string[];
  readonly cores: Cores;
  readonly contacts: readonly NumberedContact[];
  readonly relays: readonly NumberedRelay[];
  readonly consumers: readonly Consumer[];
  /** lamps with an intent, seen as coils; not those that share their volts with a resistor */
  readonly lamps: readonly NumberedLamp[];
  readonly diodes: readonly Ends[];
  /** terminals of loads and outlets that a plug joins, and of loads that return through metal */
  readonly plugged: readonly Ends[];
  readonly parts: Plan['parts'];
  private readonly numbers: ReadonlyMap<string, number>;
  private readonly marks: Plan['terminals'];
  /** the mains first, which may feed the others */
  private readonly sources: readonly Source[];
  private readonly ownMains: ReadonlyMap<Source, readonly Ends[]>;
  private readonly mainsPoles: readonly number[];
  private readonly lowPoles: readonly number[];

  constructor({ plan, wired: circuit }: Study) {
    this.parts = plan.parts;
    this.marks = plan.terminals;
    const numbers = numbersOf(plan);
    // A contact may end at a tab that its part does not have.
    const at = (part: string, terminal: string) =>
      kept(numbers, terminalKey(part, terminal), () => numbers.size);
    this.numbers = numbers;
    this.cores = plan.runs.map((run) =>
      run.cores.map(({ a, b }): Ends => [at(a.part, a.terminal), at(b.part, b.terminal)]),
    );
    this.contacts = contactsOf(circuit.contacts, at);
    this.relays = circuit.relays.map((r) => numberedRelay(plan, r, at));
    const sources = circuit.sources.map(
      (s): Source => ({
        ...s,
        rails: [...s.rails, ...this.unusedNeutral(s)].map((r) => ({ ...r, net: at(s.part, r.terminal) })),
      }),
    );
    // What feeds others comes before them: plugs, then secondaries at mains volts, then the rest.
    const rank = (s: Source) => Number(s.mains) + Number(s.mains && s.feed.by === 'always');
    this.sources = sources.sort((x, y) => rank(y) - rank(x));
    this.mainsPoles = this.polesOf(true);
    this.lowPoles = this.polesOf(false);
    this.ownMains = new Map(this.sources.map((s) => [s, this.ownMainsOf(s)]));
    this.consumers = circuit.consumers.map(
      (c): Consumer => ({ ...c, nets: new Map([...c.nets.keys()].map((t) => [t, at(c.part, t)])) }),
    );
    this.lamps = (plan.lampIntents ?? []).flatMap(({ target }) => numberedLamp(plan, target, at));
    this.diodes = circuit.diodes
      .filter((d) => !d.load && !d.builtIn)
      .map((d): Ends => [at(d.part, 'A'), at(d.part, 'K')]);
    this.plugged = [...plan.parts.values()].flatMap((p): Ends[] =>
      'pluggedInto' in p && p.pluggedInto !== undefined
        ? this.pinsOf(p.name, p.pluggedInto)
        : 'returnsThrough' in p && p.returnsThrough !== undefined
          ? [[at(p.name, '-'), at(p.returnsThrough, '')]]
          : [],
    );
    this.names = [...numbers.keys()];
  }

  /** The neutral pin of a plug on which no core lies: a core may belong there. */
  private unusedNeutral({ part, rails }: Source): Rail[] {
    const has = this.parts.get(part)?.kind === 'plug' && this.numbers.has(`${part}.N`);
    return !has || rails.some((r) => r.terminal === 'N')
      ? []
      : [{ net: -1, terminal: 'N', re: 0, im: 0, live: false }];
  }

  private pinsOf(load: string, outlet: string): Ends[] {
    return PLUG_PINS.flatMap((t): Ends[] => {
      const [x, y] = [this.terminal(`${load}.${t}`), this.terminal(`${outlet}.${t}`)];
      return x === undefined || y === undefined ? [] : [[x, y]];
    });
  }

  private ownMainsOf({ part, feed }: Source): Ends[] {
    const owner = this.parts.get(part);
    if (owner?.kind !== 'supply' || feed.by === 'part') return [];
    const taps = owner.taps?.map((t): [string, string] => ['0', String(t)]);
    return (taps ?? OWN_MAINS).flatMap(([a, b]): Ends[] => {
      const [x, y] = [this.terminal(`${part}.${a}`), this.terminal(`${part}.${b}`)];
      return x === undefined || y === undefined ? [] : [[x, y]];
    });
  }

  /** Terminals of a supply that take its mains together. */
  get mainsPairs(): readonly Ends[] {
    return [...this.ownMains.values()].flat();
  }

  /** The sources as cores on these terminals feed them. */
  sourcesWith(hasCore: (terminal: number) => boolean): readonly Source[] {
    return this.sources.map((s) => {
      const ways = this.ownMains.get(s)!;
      if (this.parts.get(s.part)?.kind !== 'supply' || s.feed.by === 'part') return s;
      const own = ways.find((ends) => ends.every(hasCore)) ?? ways.find((ends) => ends.some(hasCore));
      return { ...s, feed: own ? { by: 'nets', a: own[0], b: own[1] } : { by: 'always' } };
    });
  }

  /** Number of a terminal, where the plan's parts have it. */
  terminal(name: string): number | undefined {
    return this.numbers.get(name);
  }

  /** What is printed on the terminals of a part. */
  marksOf(part: string): readonly string[] {
    return this.marks.get(part)?.names ?? [];
  }

  /** Poles of sources by side, for the rules on mains and low voltage. */
  poles(mains: boolean): readonly number[] {
    return mains ? this.mainsPoles : this.lowPoles;
  }

  /** Live pins of plugs. */
  get livePins(): readonly number[] {
    const plugs = this.sources.filter((s) => this.parts.get(s.part)?.kind === 'plug');
    return plugs.flatMap((s) => s.rails.filter((r) => r.live).map((r) => r.net));
  }

  private polesOf(mains: boolean): number[] {
    return this.sources.filter((s) => s.mains === mains).flatMap((s) => s.rails.map((r) => r.net));
  }
}

function numbersOf(plan: Plan): Map<string, number> {
  const names = [...plan.terminals].flatMap(([part, marks]) => marks.names.map((t) => terminalKey(part, t)));
  return new Map(names.map((name, i) => [name, i]));
}

function contactsOf(
  contacts: readonly ContactEdge[],
  at: (part: string, terminal: string) => number,
): NumberedContact[] {
  const chains = new Map<string, ContactEdge[]>();
  for (const c of contacts) push(chains, `${c.part}/${c.terminals.join('-')}/${c.pole}`, c);
  return [...chains.values()].map((links) => {
    const { part, terminals } = links[0]!;
    return { a: at(part, terminals[0]), b: at(part, terminals[1]), links };
  });
}

function numberedRelay(
  plan: Plan,
  relay: Relay,
  at: (part: string, terminal: string) => number,
): NumberedRelay {
  const { part: name, senses } = relay;
  const part = plan.parts.get(name)!;
  if (relay.of !== undefined) {
    const coil: Ends | undefined = senses.length > 0 ? [at(name, 'B1'), at(name, 'B2')] : undefined;
    const polarised = senses.some((s) => s.by === 'volts' && s.polarised);
    return { part: name, relay, coil, polarised, trigger: undefined, input: undefined };
  }
  const coil = kindOf(part).coil!.map((t) => at(name, t)) as [number, number];
  if (part.kind === 'board') {
    const input = { pin: at(name, 'IN'), with: coil[part.input === 'low' ? 1 : 0] };
    return { part: name, relay, coil, polarised: true, trigger: undefined, input };
  }
  return {
    part: name,
    relay,
    coil,
    polarised: senses.some((s) => s.by === 'volts' && s.polarised),
    trigger: part.kind === 'timer' ? [at(name, 'T1'), at(name, 'T2')] : undefined,
    permanent: part.kind === 'timer' && part.supplied === 'permanent',
    input: undefined,
  };
}

function numberedLamp(
  plan: Plan,
  name: string,
  at: (part: string, terminal: string) => number,
): NumberedLamp[] {
  const isLed = plan.parts.get(name)?.kind === 'led';
  if (isLed && mayHaveResistor(plan, name)) return [];
  const [a, b] = isLed ? ['A', 'K'] : ['1', '2'];
  const coil: Ends = [at(name, a!), at(name, b!)];
  return [{ part: name, coil, polarised: isLed, trigger: undefined, input: undefined }];
}
