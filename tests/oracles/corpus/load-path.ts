/** Contacts and cores that a load's current passes: those without which it stops. */
import { Machine } from '../brute-machine.ts';
import { figures, isMap, listOf, text, type Wiring } from '../brute-read.ts';
import { type Sheet, without } from './sheet.ts';

interface Running {
  machine: Machine;
  inputs: number[];
  bits: number;
  loads: number[];
}

/** The state with the most loads running among: each input worked alone, and all gates worked together. */
function busiest(m: Machine): Running {
  const { inputs } = m.circuit;
  const rest = inputs.map(() => 0);
  const tries = [
    inputs.map((x) => (x.kind === 'gate' ? 1 : 0)),
    ...inputs.map((_, i) => rest.with(i, 1)),
    rest,
  ];
  let best: Running = { machine: m, inputs: rest, bits: 0, loads: [] };
  for (const at of tries) {
    const bits = m.settle(at, 0).ends[0]!;
    const running = m.solve(at, bits).running;
    const loads = running.flatMap((on, i) => (on && m.circuit.consumers[i]!.kind !== 'outlet' ? [i] : []));
    if (loads.length > best.loads.length) best = { machine: m, inputs: at, bits, loads };
  }
  return best;
}

/** Names of the contacts in the order in which the machine lists them. */
function contactNames(w: Wiring): { part: string; pole: number; name: string }[] {
  return [...w.parts.values()].flatMap((p) => {
    const own = p.contacts.flatMap((k, pole) =>
      [k.no, k.nc].filter((t) => t).map((t) => ({ part: p.name, pole, name: `${p.name}.${k.com}-${t}` })),
    );
    const knob = p.kind === 'selector' ? listOf(p.fields.positions).map(text) : [];
    const ways = knob.filter((x) => x !== 'off');
    return [...own, ...ways.map((t) => ({ part: p.name, pole: 0, name: `${p.name}.COM-${t}` }))];
  });
}

export interface Carried {
  part: string;
  pole: number;
  name: string;
  load: string;
}

/** Contacts in the way of a running load, by holding each open with the relays left as they are. */
export function contactsOfLoads(source: string): Carried[] {
  const run = busiest(new Machine(source));
  const { circuit } = run.machine;
  const names = contactNames(run.machine.wiring);
  return circuit.closers.flatMap((k, i) => {
    const { at } = k;
    k.at = -1;
    const now = run.machine.solve(run.inputs, run.bits).running;
    k.at = at;
    const lost = run.loads.filter((x) => !now[x]);
    return lost.map((x) => ({ ...names[i]!, load: circuit.consumers[x]!.name }));
  });
}

/** Cores in the way of a running load. Relays are held where the whole plan puts them. */
function coresOfLoads(s: Sheet): string[] {
  const run = busiest(new Machine(s.text));
  const names = run.loads.map((i) => run.machine.circuit.consumers[i]!.name);
  return s.cores.flatMap((c) => {
    const m = new Machine(without(s, c));
    return names.filter((n) => !m.on(n, run.inputs, run.bits)).map((n) => `${c.run} ${c.colour} ${n}`);
  });
}

/** What every load's current passes, as one text to compare. */
export function pathsOf(s: Sheet): string {
  return [...contactsOfLoads(s.text).map((c) => `${c.name} ${c.load}`), ...coresOfLoads(s)].sort().join('; ');
}

/** A contact that carries a motor's running current above its printed AC rating (IEC 60947-4-1, 5.3). */
export function contactRules(source: string): string[] {
  const carried = contactsOfLoads(source);
  const { parts } = new Machine(source).wiring;
  const over = carried.some((c) => {
    const part = parts.get(c.part)!;
    const amps = figures(parts.get(c.load)!.fields.amps).A;
    const pole = listOf(part.fields.poles)[c.pole];
    const spec = isMap(pole) && isMap(pole.contact) ? pole.contact : part.fields.contact;
    const ac = isMap(spec)
      ? listOf(spec.ratings)
          .map(text)
          .filter((r) => /AC/.test(r))
      : [];
    const most = Math.max(...ac.map((r) => figures(r).A ?? 0), 0);
    return amps !== undefined && amps > most && ac.length > 0;
  });
  return over ? ['contact-overloaded'] : [];
}
