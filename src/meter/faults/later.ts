/** Failures that come with use or by a hand at the machine, which the commissioning sheet does not look for. */
import type { WiredCircuit } from '../../circuit/build.ts';
import type { ContactEdge, Relay } from '../../circuit/circuit.ts';
import type { Wire } from '../../circuit/nets.ts';
import { isOwn } from '../../circuit/positions.ts';
import { isLow } from '../../circuit/sides.ts';
import type { Core, Plan, Run } from '../../plan/plan.ts';
import { splitTerminalKey, terminalKey } from '../../plan/terminal-key.ts';
import { figuresFor } from '../../study/corner-figures.ts';
import type { Study } from '../../study/study.ts';
import { coreFromTo } from '../../text/core-names.ts';
import { type Fault, RANK } from '../fault.ts';
import { bareMark, keyOf, marksOf } from '../probe-words.ts';
import { withBareUntried } from './bare-parts.ts';
import {
  halfCoil,
  looseTerminal,
  poorContact,
  poorCore,
  stuck,
  stuckInput,
  without,
  type Yardstick,
} from './edits.ts';
import { landedTerminals, meetings } from './meetings.ts';
import { supplyMixUps } from './supply-mix-ups.ts';

/** Every such failure, in the order of the plan's cores and parts. */
export function laterFaults(study: Study): Fault[] {
  const all = [...new Later(study).all(), ...meetings(study), ...supplyMixUps(study.plan)];
  return withBareUntried(study, all);
}

class Later {
  private readonly plan: Plan;
  private readonly wired: WiredCircuit;
  private readonly mark: (key: string) => string;
  private readonly yard: Yardstick | undefined;
  /** ohm that leaves no coil on the loop its pull-in; undefined where no coil of it states any */
  private readonly ohms: number | undefined;

  constructor(private readonly study: Study) {
    this.plan = study.plan;
    this.wired = study.wired;
    this.mark = marksOf(study.plan);
    const figures = figuresFor(this.plan, 'reading');
    this.yard = yardstick(this.wired.wires, (w) => figures.wire(w));
    const coils = this.wired.passives.flatMap((p) => {
      const z = p.what === 'coil' && this.isLow(p.a) ? figures.passive(p, true) : undefined;
      return z === undefined ? [] : [Math.hypot(z.re, z.im)];
    });
    this.ohms = coils.length > 0 ? Math.max(...coils) : undefined;
  }

  all(): Fault[] {
    const { plan, wired } = this;
    const own = wired.relays.filter(isOwn);
    return [
      ...plan.runs.flatMap((run) => run.cores.flatMap((core, i) => this.badJoint(run, core, i))),
      ...[...wired.landed.keys()].flatMap((key) => this.loose(key)),
      ...this.inputs(),
      ...this.contacts(),
      ...own.flatMap((r) => this.relay(r)),
      ...this.others(),
    ];
  }

  private isLow(net: number | undefined): boolean {
    const key = net === undefined ? undefined : this.wired.terminals[net]?.[0];
    return key !== undefined && isLow(this.study.sides, this.study.circuit.netOf.get(key));
  }

  private badJoint(run: Run, core: Core, index: number): Fault[] {
    const { yard, ohms } = this;
    const wire = this.wired.wires.find((w) => w.run === run.index && w.core === index);
    if (wire === undefined || yard === undefined || ohms === undefined || !this.isLow(wire.a)) return [];
    const item = coreFromTo({ colour: core.colour, a: core.a.written, b: core.b.written });
    return [
      {
        item,
        mode: 'core-poor',
        text: `${item} has a bad joint (many ohm)`,
        parts: [...new Set([core.a.part, core.b.part])],
        at: [keyOf(core.a), keyOf(core.b)],
        rank: RANK.open,
        poor: true,
        circuit: poorCore(wire, ohms, yard),
      },
    ];
  }

  /** A joint has no terminal of its own; of a plug or outlet the screws are the electrician's. */
  private loose(key: string): Fault[] {
    const { part, terminal } = splitTerminalKey(key);
    const kind = this.plan.parts.get(part)?.kind;
    if (kind === undefined || kind === 'joint' || kind === 'box') return [];
    const cores = this.wired.landed.get(key) ?? 0;
    const written = this.mark(key);
    return [
      {
        item: written,
        mode: 'tab-loose',
        text: `${written} is loose${cores > 1 ? ', its cores still joined to each other' : ''}`,
        parts: [part],
        at: [key],
        rank: RANK.open,
        circuit: looseTerminal(part, terminal, key),
      },
    ];
  }

  private inputs(): Fault[] {
    const { plan, wired } = this;
    return [...new Set(wired.inputs.map((i) => i.part))].flatMap((name): Fault[] => {
      const part = plan.parts.get(name)!;
      const own = new Set(wired.inputs.filter((i) => i.part === name).map((i) => i.index));
      const contacts = wired.contacts.filter((c) => c.part === name && c.when.by === 'input');
      if (!contacts.some((c) => c.terminals.every((t) => wired.landed.has(terminalKey(name, t))))) return [];
      const base = {
        item: name,
        parts: [name],
        at: [...new Set(contacts.flatMap((c) => c.terminals.map((t) => terminalKey(name, t))))],
        rank: RANK.adjusted,
      };
      if (part.kind === 'gate')
        return [
          {
            ...base,
            mode: 'lever-not-reached',
            text: `${name}: open, it does not move the lever of its switch`,
            byFinger: true,
            circuit: stuckInput(own, false),
          },
          {
            ...base,
            mode: 'blade-not-home',
            text: `${name}: shut, its switch stays as when it is open (blade not home, or lever stuck)`,
            circuit: stuckInput(own, true),
          },
        ];
      if (part.kind !== 'cutout') return [];
      return [
        {
          ...base,
          mode: 'tripped',
          text: `${name} has tripped and not gone back`,
          circuit: stuckInput(own, true),
        },
      ];
    });
  }

  private contacts(): Fault[] {
    const { yard, ohms, wired } = this;
    if (yard === undefined || ohms === undefined) return [];
    const seen = new Set<string>();
    return wired.contacts.flatMap((c): Fault[] => {
      const keys = c.terminals.map((t) => terminalKey(c.part, t));
      const is = (x: ContactEdge) => x.part === c.part && x.terminals.join() === c.terminals.join();
      const kind = this.plan.parts.get(c.part)?.kind;
      if (kind === undefined || kind === 'fuse' || seen.has(keys.join())) return [];
      seen.add(keys.join());
      if (!keys.every((key) => wired.landed.has(key)) || !this.isLow(c.a) || !this.isLow(c.b)) return [];
      return [
        {
          item: c.part,
          mode: 'poor-contact',
          text: `${c.part}: contact ${keys.map((key) => bareMark(this.mark(key))).join('-')} makes badly (many ohm)`,
          parts: [c.part],
          at: keys,
          rank: RANK.contact,
          poor: true,
          circuit: poorContact(is, ohms, yard),
        },
      ];
    });
  }

  private relay(relay: Relay): Fault[] {
    const part = this.plan.parts.get(relay.part)!;
    const base = {
      item: relay.part,
      parts: [relay.part],
      at: landedTerminals(this.study, relay.part),
      rank: RANK.coil,
    };
    const faults: Fault[] = [
      {
        ...base,
        mode: 'stays-in',
        text: `${relay.part} does not let go (jammed, or held by what is left in its iron)`,
        circuit: stuck(relay, true),
      },
    ];
    const out = stuck(relay, false);
    if (part.kind === 'relay' || part.kind === 'timer')
      faults.push({
        ...base,
        mode: 'stays-out',
        text: `${relay.part} does not move although its coil is fed`,
        circuit: out,
      });
    if (part.kind === 'relay' && part.technology === 'contact')
      faults.push({
        ...base,
        mode: 'coil-part-shorted',
        text: `the coil of ${relay.part} is shorted in part`,
        circuit: (c) => halfCoil(relay)(out(c)),
      });
    if (relay.delay !== undefined)
      faults.push({
        ...base,
        mode: 'mistimed',
        text: `${relay.part} keeps another time than it is set to`,
        circuit: (c) => c,
      });
    return faults;
  }

  private others(): Fault[] {
    return [...this.plan.parts.values()].flatMap((part): Fault[] => {
      const base = {
        item: part.name,
        parts: [part.name],
        at: landedTerminals(this.study, part.name),
        rank: RANK.coil,
      };
      switch (part.kind) {
        case 'lamp':
        case 'led':
        case 'resistor':
          return [
            { ...base, mode: 'dark', text: `${part.name} is burnt out (open)`, circuit: without(part.name) },
          ];
        case 'motor':
          return [
            {
              ...base,
              mode: 'does-not-turn',
              text: `${part.name} is fed but does not turn`,
              still: part.name,
              circuit: (c) => c,
            },
          ];
        case 'plug': {
          const source = this.wired.sources.find((s) => s.part === part.name);
          if (source === undefined || part.pattern === 'fixed') return [];
          return [
            {
              ...base,
              mode: 'unplugged',
              text: `${part.name} is out of its socket`,
              rank: RANK.supply,
              circuit: (c) => ({ ...c, sources: c.sources.filter((s) => s.part !== part.name) }),
            },
          ];
        }
        default:
          return [];
      }
    });
  }
}

/** The first core of known ohms. */
function yardstick(wires: readonly Wire[], ohms: (w: Wire) => number): Yardstick | undefined {
  for (const w of wires) {
    const perMetre = w.metres > 0 ? ohms(w) / w.metres : 0;
    if (perMetre > 0) return { run: w.run, core: w.core, ohmsPerMetre: perMetre };
  }
  return undefined;
}
