/** Single defects of parts, and parts mounted the wrong way round. */
import type { WiredCircuit } from '../circuit/build.ts';
import type { ContactEdge, DiodeEdge, Relay } from '../circuit/circuit.ts';
import { push } from '../plan/map-entries.ts';
import type { Plan } from '../plan/plan.ts';
import { terminalKey } from '../plan/terminal-key.ts';
import { type Fault, type Parted, RANK } from './fault.ts';
import { feedFaults, plugFuseFault, supplyFaults } from './fault-supply.ts';
import { joined } from './fault-wires.ts';
import { kindOf } from './kinds.ts';
import { bareMark } from './probe-words.ts';

/** Every defect of a part; `circuit` is that of the right plan. */
export function partFaults(plan: Plan, circuit: WiredCircuit, mark: (key: string) => string): Fault[] {
  return [
    ...contactFaults(plan, circuit, mark),
    ...circuit.diodes.filter((d) => !d.builtIn).flatMap(diodeFaults),
    ...circuit.relays.flatMap((r) => coilFaults(plan, r)),
    ...circuit.sources.filter((s) => !s.mains).flatMap((s) => supplyFaults(plan, circuit, s)),
    ...circuit.sources
      .filter((s) => s.mains)
      .flatMap((s) => [...plugFuseFault(plan, s), ...feedFaults(plan, s, mark)]),
  ];
}

/** Contacts of a part by its two terminals; a selector's resting contact is a chain of several. */
function contactFaults(plan: Plan, circuit: WiredCircuit, mark: (key: string) => string): Fault[] {
  const chains = new Map<string, ContactEdge[]>();
  for (const c of circuit.contacts) push(chains, chainOf(c), c);
  const turned = new Set<string>();
  return [...chains.values()].flatMap(([c]) => {
    const { part, when } = c!;
    const { blows, wrongWayRound } = kindOf(plan.parts.get(part)!);
    if (blows) return blown(c!);
    const faults = oneContact(circuit, c!, mark);
    if (when.by !== 'input' || !wrongWayRound || turned.has(part)) return faults;
    turned.add(part);
    return [...faults, inverted(circuit, part, wrongWayRound(part))];
  });
}

const chainOf = (c: ContactEdge) => `${c.part} ${c.terminals.join(' ')}`;

function blown(c: ContactEdge): Fault {
  return {
    item: c.part,
    mode: 'blown',
    parts: [c.part],
    at: endsOf(c),
    text: `${c.part} has blown or sits badly`,
    rank: RANK.fuse,
    circuit: without(c),
  };
}

const endsOf = ({ part, terminals: [a, b] }: ContactEdge) =>
  [terminalKey(part, a), terminalKey(part, b)] as const;

function oneContact(circuit: WiredCircuit, c: ContactEdge, mark: (key: string) => string): Fault[] {
  const ends = endsOf(c);
  const of = `${c.part}: contact ${ends.map((key) => bareMark(mark(key))).join('-')}`;
  const base = { item: c.part, parts: [c.part], at: ends, rank: RANK.contact };
  const bare = ends.filter((key) => !circuit.landed.has(key)).map((key) => bareMark(mark(key)));
  if (bare.length > 0) {
    const untried = `no core is on ${bare.join(' or ')}, so the contact switches nothing`;
    return [{ ...base, mode: 'never-makes', text: `${of} does not make or does not break`, untried }];
  }
  return [
    {
      ...base,
      mode: 'never-makes',
      text: `${of} never makes`,
      circuit: without(c),
      change: { parted: [parted(c)], joined: [] },
    },
    {
      ...base,
      mode: 'never-breaks',
      change: { parted: [], joined: [ends] },
      text: `${of} never breaks (welded or stuck)`,
      circuit: (x) => joined(x, ...ends),
    },
  ];
}

/** The two ends of a contact, and when it joins them; a relay may be in or out. */
function parted(c: ContactEdge): Parted {
  const { when } = c;
  return { ends: endsOf(c), ...(when.by === 'input' ? { while: when } : {}) };
}

/** The circuit without a contact, all of its chain. */
function without(contact: ContactEdge): (c: WiredCircuit) => WiredCircuit {
  const chain = chainOf(contact);
  return (c) => ({ ...c, contacts: c.contacts.filter((x) => chainOf(x) !== chain) });
}

function inverted(circuit: WiredCircuit, part: string, text: string): Fault {
  const own = circuit.contacts.filter((c) => c.part === part && c.when.by === 'input');
  const landed = circuit.contacts.some(
    (c) => c.part === part && c.terminals.every((t) => circuit.landed.has(`${part}.${t}`)),
  );
  return {
    text,
    item: part,
    mode: 'wrong-way-round',
    parts: [part],
    at: ['COM', 'NO', 'NC'].map((t) => `${part}.${t}`),
    rank: RANK.inverted,
    circuit: (x) => ({
      ...x,
      contacts: x.contacts.map((c) =>
        c.part === part && c.when.by === 'input' ? { ...c, when: { ...c.when, value: !c.when.value } } : c,
      ),
    }),
    change: { parted: own.map(parted), joined: own.map(endsOf) },
    ...(landed ? {} : { untried: 'no contact of it has a core on both its tabs' }),
  };
}

function diodeFaults(d: DiodeEdge): Fault[] {
  const own = (x: DiodeEdge) => x.part === d.part;
  const base = { item: d.part, parts: [d.part], at: [`${d.part}.A`, `${d.part}.K`] };
  const open: Fault = {
    ...base,
    mode: 'diode-open',
    text: `${d.part} is broken (open)`,
    rank: RANK.coil,
    circuit: (c) => ({ ...c, diodes: c.diodes.filter((x) => !own(x)) }),
    hidden:
      'an ohmmeter does not open a diode and it carries no current while anything is still; try it on the diode range with one end off',
  };
  return [
    {
      ...base,
      mode: 'reversed',
      text: `${d.part} is the wrong way round`,
      rank: RANK.reversed,
      circuit: (c) => ({
        ...c,
        diodes: c.diodes.map((x) => (own(x) ? { ...x, anode: x.cathode, cathode: x.anode } : x)),
      }),
    },
    open,
    {
      ...base,
      mode: 'diode-shorted',
      text: `${d.part} is shorted through`,
      rank: RANK.coil,
      circuit: (c) => joined(c, `${d.part}.A`, `${d.part}.K`),
    },
  ];
}

/** A relay that stays out whatever its coil gets. */
function stayingOut(c: WiredCircuit, relay: Relay): WiredCircuit {
  const senses: Relay['senses'] = relay.senses.map((s) =>
    s.by === 'joined' ? s : { ...s, pullIn: Number.POSITIVE_INFINITY, dropOut: Number.POSITIVE_INFINITY },
  );
  return { ...c, relays: c.relays.map((r) => (r.part === relay.part ? { ...r, senses } : r)) };
}

function coilFaults(plan: Plan, relay: Relay): Fault[] {
  const { ends, called, answers } = kindOf(plan.parts.get(relay.part)!).coil!;
  const [a, b] = [terminalKey(relay.part, ends[0]), terminalKey(relay.part, ends[1])];
  const what = called(relay.part);
  const base = { item: relay.part, parts: [relay.part], at: [a, b], rank: RANK.coil };
  const faults: Fault[] = [
    {
      ...base,
      mode: 'coil-open',
      text: `${what} is open`,
      circuit: (c) => {
        const out = stayingOut(c, relay);
        return { ...out, passives: out.passives.filter((p) => p.part !== relay.part || p.what !== 'coil') };
      },
    },
    {
      ...base,
      mode: 'coil-shorted',
      text: `${what} is shorted`,
      circuit: (c) => joined(stayingOut(c, relay), a, b),
    },
  ];
  if (answers)
    faults.push({
      ...base,
      mode: 'stays-out',
      text: `${relay.part} does not answer`,
      circuit: (c) => stayingOut(c, relay),
    });
  return faults;
}
