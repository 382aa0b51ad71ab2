/** Single defects of parts, and parts mounted the wrong way round. */
import type { WiredCircuit } from '../circuit/build.ts';
import type { ContactEdge, DiodeEdge, Relay } from '../circuit/circuit.ts';
import type { Plan } from '../plan/plan.ts';
import { type Fault, RANK } from './fault.ts';
import { feedFaults, plugFuseFault, supplyFaults } from './fault-supply.ts';
import { joined } from './fault-wires.ts';
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
  const groups = new Map<string, ContactEdge[]>();
  for (const c of circuit.contacts) {
    const key = `${c.part} ${c.terminals.join(' ')}`;
    groups.set(key, [...(groups.get(key) ?? []), c]);
  }
  const faults: Fault[] = [];
  const turned = new Set<string>();
  for (const [group, edges] of groups) {
    const [c] = edges as [ContactEdge];
    const kind = plan.parts.get(c.part)!.kind;
    const names = c.terminals.map((t) => mark(`${c.part}.${t}`));
    const of = `${c.part}: contact ${names.map(bareMark).join('-')}`;
    const bare = c.terminals.filter((t) => !circuit.landed.has(`${c.part}.${t}`));
    const own = (x: ContactEdge) => `${x.part} ${x.terminals.join(' ')}` === group;
    const base = { parts: [c.part], at: c.terminals.map((t) => `${c.part}.${t}`) };
    if (kind === 'fuse') {
      faults.push({
        ...base,
        text: `${c.part} has blown or sits badly`,
        rank: RANK.fuse,
        circuit: without(own),
      });
      continue;
    }
    if (bare.length > 0) {
      faults.push({
        ...base,
        text: `${of} does not make or does not break`,
        rank: RANK.contact,
        untried: `no core is on ${bare.map((t) => bareMark(mark(`${c.part}.${t}`))).join(' or ')}, so the contact switches nothing`,
      });
    } else {
      faults.push(
        { ...base, text: `${of} never makes`, rank: RANK.contact, circuit: without(own) },
        {
          ...base,
          text: `${of} never breaks (welded or stuck)`,
          rank: RANK.contact,
          circuit: (x) => joined(x, `${c.part}.${c.terminals[0]}`, `${c.part}.${c.terminals[1]}`),
        },
      );
    }
    if (c.when.by === 'input' && kind !== 'selector' && !turned.has(c.part)) {
      turned.add(c.part);
      faults.push(inverted(circuit, c.part, kind));
    }
  }
  return faults;
}

function without(own: (c: ContactEdge) => boolean): (c: WiredCircuit) => WiredCircuit {
  return (c) => ({ ...c, contacts: c.contacts.filter((x) => !own(x)) });
}

function inverted(circuit: WiredCircuit, part: string, kind: string): Fault {
  const landed = circuit.contacts.some(
    (c) => c.part === part && c.terminals.every((t) => circuit.landed.has(`${part}.${t}`)),
  );
  return {
    text:
      kind === 'gate'
        ? `${part}: the switch is mounted the wrong way round, pressed when it ought to be free`
        : `${part} works the wrong way round`,
    parts: [part],
    at: ['COM', 'NO', 'NC'].map((t) => `${part}.${t}`),
    rank: RANK.inverted,
    circuit: (x) => ({
      ...x,
      contacts: x.contacts.map((c) =>
        c.part === part && c.when.by === 'input' ? { ...c, when: { ...c.when, value: !c.when.value } } : c,
      ),
    }),
    ...(landed ? {} : { untried: 'no contact of it has a core on both its tabs' }),
  };
}

function diodeFaults(d: DiodeEdge): Fault[] {
  const own = (x: DiodeEdge) => x.part === d.part;
  const base = { parts: [d.part], at: [`${d.part}.A`, `${d.part}.K`] };
  const open: Fault = {
    ...base,
    text: `${d.part} is broken (open)`,
    rank: RANK.coil,
    circuit: (c) => ({ ...c, diodes: c.diodes.filter((x) => !own(x)) }),
    hidden:
      'an ohmmeter does not open a diode and it carries no current while anything is still; try it on the diode range with one end off',
  };
  return [
    {
      ...base,
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
      text: `${d.part} is shorted through`,
      rank: RANK.coil,
      circuit: (c) => joined(c, `${d.part}.A`, `${d.part}.K`),
    },
  ];
}

/** A relay that stays out whatever its coil gets. */
function never(c: WiredCircuit, relay: Relay): WiredCircuit {
  const senses: Relay['senses'] = relay.senses.map((s) =>
    s.by === 'joined' ? s : { ...s, pullIn: Number.POSITIVE_INFINITY, dropOut: Number.POSITIVE_INFINITY },
  );
  return { ...c, relays: c.relays.map((r) => (r.part === relay.part ? { ...r, senses } : r)) };
}

function coilFaults(plan: Plan, relay: Relay): Fault[] {
  const board = plan.parts.get(relay.part)!.kind === 'board';
  const ends = board ? (['VCC', 'GND'] as const) : (['A1', 'A2'] as const);
  const what = board ? `${relay.part}: the circuit between its supply pins` : `the coil of ${relay.part}`;
  const base = { parts: [relay.part], at: ends.map((t) => `${relay.part}.${t}`), rank: RANK.coil };
  const faults: Fault[] = [
    {
      ...base,
      text: `${what} is open`,
      circuit: (c) => {
        const out = never(c, relay);
        return { ...out, passives: out.passives.filter((p) => p.part !== relay.part || p.what !== 'coil') };
      },
    },
    {
      ...base,
      text: `${what} is shorted`,
      circuit: (c) => joined(never(c, relay), `${relay.part}.${ends[0]}`, `${relay.part}.${ends[1]}`),
    },
  ];
  if (board) faults.push({ ...base, text: `${relay.part} does not answer`, circuit: (c) => never(c, relay) });
  return faults;
}
