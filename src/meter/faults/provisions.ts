/** What in a design would take a failure's effect away: each tried in the circuit with the failure in it. */
import type { WiredCircuit } from '../../circuit/build.ts';
import { isLow } from '../../circuit/sides.ts';
import { terminalKey } from '../../plan/terminal-key.ts';
import type { Study } from '../../study/study.ts';
import type { Fault } from '../fault.ts';
import { joined } from '../fault-wires.ts';
import { marksOf } from '../probe-words.ts';
import type { Edit } from './edits.ts';

/** One thing to add, in words and as a change to the right circuit. */
export interface Provision {
  readonly words: string;
  readonly edit: Edit;
  /** terminals that it joins */
  readonly at: readonly string[];
  /** whether it is worth trying against a failure */
  readonly against: (fault: Fault) => boolean;
}

/** Ways back from the last gates of the loop, and second contacts in line with those that carry mains. */
export function provisionsOf(study: Study): Provision[] {
  return [...rings(study), ...secondPoles(study)];
}

/**
 * A cable from a gate at an end of the loop back to where its two conductors come from. It joins what is one conductor in
 * the right circuit, so that it changes nothing there.
 */
function rings({ plan, circuit, wired, sides }: Study): Provision[] {
  const mark = marksOf(plan);
  const home = homes(plan, circuit.netOf, wired.landed);
  const ends = [...plan.parts.values()].filter((p) => p.kind === 'gate');
  const found: Provision[] = [];
  for (const gate of ends) {
    const keys = ['COM', 'NO', 'NC'].map((t) => terminalKey(gate.name, t)).filter((k) => wired.landed.has(k));
    if (keys.length !== 2 || keys.some((key) => wired.landed.get(key) !== 1)) continue;
    if (!keys.every((key) => isLow(sides, circuit.netOf.get(key)))) continue;
    const back = keys.map((key) => home.get(circuit.netOf.get(key)!));
    if (back.some((key) => key === undefined) || back[0] === back[1]) continue;
    found.push({
      words: `a ring: a cable with the same two cores from ${keys.map(mark).join(' and ')} back to ${back.map((k) => mark(k!)).join(' and ')}`,
      at: [...keys, ...back.map((key) => key!)],
      edit: (c) => keys.reduce((made: WiredCircuit, key, i) => joined(made, key, back[i]!), c),
      against: ({ mode }) => mode === 'core-open' || mode === 'core-poor' || mode === 'tab-loose',
    });
    if (found.length >= MOST_RINGS) break;
  }
  return found;
}

/** Gates at ends of the loop from which a way back is tried. */
const MOST_RINGS = 3;

/** For each conductor of the loop a terminal of it that is not at a gate: where its cable starts. */
function homes(
  plan: Study['plan'],
  netOf: ReadonlyMap<string, number>,
  landed: ReadonlyMap<string, number>,
): Map<number, string> {
  const home = new Map<number, string>();
  const rank = (key: string) => {
    const kind = plan.parts.get(key.split('.')[0]!)?.kind;
    return kind === 'supply' || kind === 'battery' ? 0 : kind === 'joint' ? 2 : kind === 'gate' ? 9 : 1;
  };
  for (const key of [...landed.keys()].sort((x, y) => rank(x) - rank(y))) {
    const net = netOf.get(key);
    if (net !== undefined && rank(key) < 9 && !home.has(net)) home.set(net, key);
  }
  return home;
}

/** A second contact of the same relay in line with one that carries mains. */
function secondPoles({ circuit, wired, sides }: Study): Provision[] {
  const seen = new Set<string>();
  return wired.contacts.flatMap((c): Provision[] => {
    const keys = c.terminals.map((t) => terminalKey(c.part, t));
    const name = keys.join(' ');
    if (c.when.by !== 'relay' || !c.when.value || seen.has(name)) return [];
    seen.add(name);
    const onMains = keys.every(
      (key) => wired.landed.has(key) && sides.mains.has(circuit.netOf.get(key) ?? -1),
    );
    if (!onMains) return [];
    return [
      {
        at: keys,
        words: `a second contact of ${c.part} in line with this one`,
        edit: (made) => {
          const net = made.netCount;
          const contacts = made.contacts.flatMap((x) =>
            x.part === c.part && x.terminals.join() === c.terminals.join()
              ? [
                  { ...x, b: net },
                  { ...x, a: net, terminals: ['', ''] as [string, string] },
                ]
              : [x],
          );
          return { ...made, netCount: net + 1, contacts, netOf: new Map(made.netOf).set(keys[1]!, net) };
        },
        against: ({ mode, parts, at }) =>
          mode === 'never-breaks' && parts[0] === c.part && keys.every((key) => at.includes(key)),
      },
    ];
  });
}
