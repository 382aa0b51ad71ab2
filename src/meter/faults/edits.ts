/** What a failure changes in a circuit, as functions from a circuit to another. Knows no words. */
import type { WiredCircuit } from '../../circuit/build.ts';
import type { ContactEdge, Relay } from '../../circuit/circuit.ts';
import type { Wire } from '../../circuit/nets.ts';
import type { Plan } from '../../plan/plan.ts';

export type Edit = (circuit: WiredCircuit) => WiredCircuit;

/** The list with some of it changed; the list itself where none is. */
function changed<T>(list: readonly T[], is: (x: T) => boolean, to: (x: T) => T): readonly T[] {
  return list.some(is) ? list.map((x) => (is(x) ? to(x) : x)) : list;
}

/** Ohm of one metre of some core of the plan, by which a bad joint is put in as a length of it. */
export interface Yardstick {
  readonly run: number;
  readonly core: number;
  readonly ohmsPerMetre: number;
}

/** A core with a bad joint in it. */
export function poorCore(wire: Wire, ohms: number, yard: Yardstick): Edit {
  return (c) => {
    const net = c.netCount;
    return {
      ...c,
      netCount: net + 1,
      wires: c.wires.flatMap((w) =>
        w.run !== wire.run || w.core !== wire.core
          ? [w]
          : [
              { ...w, b: net },
              { run: yard.run, core: yard.core, a: net, b: w.b, metres: ohms / yard.ohmsPerMetre },
            ],
      ),
    };
  };
}

/** A contact, all of its chain, behind so many ohm. */
export function poorContact(is: (c: ContactEdge) => boolean, ohms: number, yard: Yardstick): Edit {
  return (c) => {
    const own = c.contacts.find(is);
    if (own === undefined) return c;
    const net = c.netCount;
    return {
      ...c,
      netCount: net + 1,
      contacts: c.contacts.map((x) => (is(x) && x.b === own.b ? { ...x, b: net } : x)),
      wires: [
        ...c.wires,
        { run: yard.run, core: yard.core, a: net, b: own.b, metres: ohms / yard.ohmsPerMetre },
      ],
    };
  };
}

/** The part's own metal at one terminal hangs on nothing, while its cores stay joined to each other. */
export function looseTerminal(part: string, terminal: string, key: string): Edit {
  return (c) => {
    const net = c.netOf.get(key);
    if (net === undefined) return c;
    const off = c.netCount;
    const at = (n: number) => (n === net ? off : n);
    // What is plugged into an outlet hangs on the outlet's own metal.
    const own = (x: { readonly part: string }) => x.part === part || plugIn(c.plan, x.part) === part;
    const between = <T extends { readonly a: number; readonly b: number }>(x: T): T => ({
      ...x,
      a: at(x.a),
      b: at(x.b),
    });
    // Links may join a coil's terminal to one of a contact: only the one that is loose comes off.
    const onContact = (x: ContactEdge) => own(x) && x.terminals.includes(terminal);
    if (c.contacts.some(onContact))
      return { ...c, netCount: off + 1, contacts: changed(c.contacts, onContact, between) };
    return {
      ...c,
      netCount: off + 1,
      passives: changed(c.passives, own, between),
      diodes: changed(c.diodes, own, (d) => ({ ...d, anode: at(d.anode), cathode: at(d.cathode) })),
      relays: changed(c.relays, own, (r) => ({ ...r, senses: r.senses.map(between) })),
      sources: changed(c.sources, own, (s) => ({
        ...s,
        rails: s.rails.map((r) => ({ ...r, net: at(r.net) })),
        feed: s.feed.by === 'nets' ? between(s.feed) : s.feed,
      })),
      consumers: changed(c.consumers, own, (x) => ({
        ...x,
        nets: new Map([...x.nets].map(([t, n]) => [t, at(n)])),
      })),
    };
  };
}

function plugIn(plan: Plan, name: string): string | undefined {
  const part = plan.parts.get(name);
  return part !== undefined && 'pluggedInto' in part ? part.pluggedInto : undefined;
}

/** An input's contacts stay as they are at rest, or in its working position. */
export function stuckInput(inputs: ReadonlySet<number>, working: boolean): Edit {
  return (c) => ({
    ...c,
    contacts: c.contacts.flatMap((x) => {
      if (x.when.by !== 'input' || !inputs.has(x.when.input)) return [x];
      return x.when.value === working ? [{ ...x, when: { by: 'always' } as const }] : [];
    }),
  });
}

/** A relay's contacts stay as they are while it is in, or while it is out, whatever its coil gets. */
export function stuck(relay: Relay, into: boolean): Edit {
  return (c) => ({
    ...c,
    contacts: c.contacts.flatMap((x) => {
      if (x.when.by !== 'relay' || x.when.relay !== relay.index) return [x];
      return x.when.value === into ? [{ ...x, when: { by: 'always' } as const }] : [];
    }),
  });
}

/** A coil with half its ohms. */
export function halfCoil(relay: Relay): Edit {
  return (c) => ({
    ...c,
    passives: c.passives.flatMap((p) => (p.part === relay.part && p.what === 'coil' ? [p, { ...p }] : [p])),
  });
}

/** Without the light of a lamp or the path through a resistor. */
export function without(part: string): Edit {
  return (c) => ({
    ...c,
    passives: c.passives.filter((p) => p.part !== part),
    diodes: c.diodes.filter((d) => d.part !== part),
  });
}
