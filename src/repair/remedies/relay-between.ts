/** A small relay in the loop, whose contact feeds the coil that is too heavy for the loop from its supply. */

import { judgedContacts } from '../../findings/contacts/judged-contacts.ts';
import type { Finding } from '../../findings/report-model.ts';
import type { Contact } from '../../plan/device-figures.ts';
import { lengthUnit } from '../../plan/length-unit.ts';
import type { Part, RelayPart } from '../../plan/part-types.ts';
import type { Core, Plan, Run, TerminalRef } from '../../plan/plan.ts';
import { splitTerminalKey, terminalKey } from '../../plan/terminal-key.ts';
import { Terminals } from '../../plan/terminals.ts';
import { coilAmps } from '../../ratings/coil.ts';
import type { FedCoil } from '../../study/fed-coils.ts';
import type { LengthUnit } from '../../text/lengths.ts';
import { rounded } from '../../text/numbers.ts';
import type { Bench } from './bench.ts';
import type { Change } from './change.ts';
import { placeText, plainContact } from './contact-sizes.ts';
import { freeName } from './fuse-remedy.ts';
import { entryBehind, withParts } from './put.ts';
import type { Option } from './search.ts';
import { COIL_AMPS } from './series.ts';

/** W of a DC coil, VA of an AC one, held and pulling in, of small relays as they are sold; makers’ data. */
const SMALL = { dc: { watts: 0.5 }, ac: { held: 1.2, inrush: 2 } } as const;
/** W or VA from which a coil is heavy for a loop. */
const HEAVY = 3;

/** Where the wiring of the new relay lands. */
interface Between {
  readonly relay: RelayPart;
  /** the relay whose coil it feeds */
  readonly heavy: string;
  /** poles of the supply */
  readonly poles: readonly [string, string];
}

/** By the least contact that switches the heavy coil. The leads from the supply to it are taken as links. */
export function relayBetween(bench: Bench, f: Finding): Option[] {
  const { study } = bench;
  const fed = study.fedCoils.filter((c) => f.parts.includes(c.part.name));
  const [only, ...more] = fed;
  if (!only || more.length > 0 || only.part.kind === 'board' || only.source.mains) return [];
  if (power(only) < HEAVY) return [];
  // Leads straight from the supply would go round a fuse that stands next to it.
  if (hasFuse(bench, only)) return [];
  const poles = only.source.rails.map((r) => terminalKey(only.source.part, r.terminal));
  if (poles.length !== 2) return [];
  const name = freeName(study.plan, 'K');
  const at = only.part.at;
  const sizes = COIL_AMPS.map((amps) => {
    const relay = small(name, at, only, amps);
    const between: Between = { relay, heavy: only.part.name, poles: [poles[0]!, poles[1]!] };
    return [inserted(between, amps, only, lengthUnit(study.plan))];
  });
  // What conducts does not depend on the size, so the plan is proved anew for one of them only.
  const last = sizes.length - 1;
  if (bench.outcome(f, sizes[last]!)?.passes !== true) return [];
  const largest = bench.after(sizes[last]!);
  const serves = (i: number): boolean => {
    const relay = small(name, at, only, COIL_AMPS[i]!);
    const plan = withParts(largest.plan, [name], () => relay);
    return judgedContacts(largest.withFigures(plan))
      .filter((g) => g.part.name === name)
      .every((g) => g.judged.every((j) => j.verdict === 'pass'));
  };
  return [{ sizes, serves }];
}

function hasFuse({ study }: Bench, { part }: FedCoil): boolean {
  const own = study.electrics;
  const relay = study.circuit.relays.find((r) => r.part === part.name);
  const contacts = (own && relay && own.islandOf(relay)?.contacts) ?? [];
  return contacts.some((c) => study.plan.parts.get(c.part)?.kind === 'fuse');
}

function power({ model }: FedCoil): number {
  return (coilAmps(model) ?? 0) * (model.at ?? model.rated);
}

function small(name: string, at: RelayPart['at'], { source }: FedCoil, amps: number): RelayPart {
  const volts = source.rails.reduce((most, r) => Math.max(most, r.re), 0);
  const { kind } = source;
  const contact: Contact = {
    ...plainContact(Math.max(1, amps), { volts, kind, phases: 1 }),
    ...(kind === 'ac' ? { ac15: amps } : { dc13: amps }),
  };
  const coil =
    kind === 'dc'
      ? {
          power: { watts: SMALL.dc.watts, unit: 'W' as const },
          pullIn: { fraction: 0.75 },
          suppressor: 'varistor' as const,
        }
      : { power: { watts: SMALL.ac.held, unit: 'VA' as const }, inrush: SMALL.ac.inrush };
  return {
    kind: 'relay',
    name,
    at,
    where: new Map(),
    coil: { rated: { volts, kind }, ...coil },
    poles: [{ index: 1, common: 'COM', make: 'NO', break: 'NC', contact }],
    technology: 'contact',
  };
}

/** The longest link that reading takes, in whole units. */
const LEADS = { m: '20 cm', ft: '7 in' } as const;

function inserted(between: Between, amps: number, { source }: FedCoil, unit: LengthUnit): Change {
  const { relay, heavy, poles } = between;
  const { rated } = relay.coil;
  const ac = rated.kind === 'ac';
  const place = placeText(rated);
  const category = `${ac ? 'ac-15' : 'dc-13'}: ${amps} A`;
  const draws = ac ? `${SMALL.ac.held} VA` : `${SMALL.dc.watts} W`;
  const coil = ac
    ? `{rated: ${place}, power: ${SMALL.ac.held} VA, inrush: ${SMALL.ac.inrush} VA}`
    : `{rated: ${place}, power: ${SMALL.dc.watts} W, pull-in: 75 %, suppressor: varistor}`;
  const contact = `{ratings: [${rounded(Math.max(1, amps))} A ${place}], ${category}}`;
  return {
    told: {
      change: 'relay',
      part: relay.name,
      coil: heavy,
      fields: { kind: 'relay', coil, contact },
      feed: [...poles],
    },
    words: `put a small relay (coil ${place}, ${draws} or less; contact ${ac ? 'AC-15' : 'DC-13'} ${amps} A or more) into the loop in place of the coil of ${heavy}, and let its contact feed ${heavy} straight from ${source.part} by leads of ${LEADS[unit]} at most`,
    apply: (plan) => withRelay(plan, between),
    anew: true,
  };
}

/** What only belongs to the coil itself, a diode, lamp or resistor across it, stays with it. */
const STAYS: ReadonlySet<Part['kind']> = new Set(['diode', 'resistor', 'lamp', 'led']);

function withRelay(plan: Plan, { relay, heavy, poles }: Between): Plan {
  const end = (key: string): TerminalRef => ({ ...splitTerminalKey(key), written: key, at: relay.at });
  const stays = (t: TerminalRef) => STAYS.has(plan.parts.get(t.part)!.kind);
  const moved = (t: TerminalRef, other: TerminalRef): TerminalRef =>
    t.part === heavy && (t.terminal === 'A1' || t.terminal === 'A2') && !stays(other)
      ? end(`${relay.name}.${t.terminal}`)
      : t;
  const runs = plan.runs.map((r) => ({
    ...r,
    cores: r.cores.map((c): Core => ({ ...c, a: moved(c.a, c.b), b: moved(c.b, c.a) })),
  }));
  const links = [
    [poles[0], `${relay.name}.COM`],
    [`${relay.name}.NO`, `${heavy}.A1`],
    [`${heavy}.A2`, poles[1]],
  ].map(([a, b], i): Run => {
    const index = runs.length + i;
    return {
      index,
      entry: entryBehind(runs) + i,
      at: relay.at,
      link: true,
      cores: [{ run: index, colour: 'link', a: end(a!), b: end(b!), at: relay.at }],
    };
  });
  const parts = [...plan.parts].map(([name, p]): [string, Part] => [
    name,
    p.kind === 'box' && p.holds.includes(heavy) ? { ...p, holds: [...p.holds, relay.name] } : p,
  ]);
  return {
    ...plan,
    parts: new Map([...parts, [relay.name, relay]]),
    terminals: new Map([...plan.terminals, [relay.name, new Terminals(['A1', 'A2', 'COM', 'NO', 'NC'])]]),
    runs: [...runs, ...links],
  };
}
