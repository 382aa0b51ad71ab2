/** The rules that compare wiring before and after a repair: earth, protection, sides, reach, loose ends. Lists are of texts. */

import type { Edit } from '../../../src/edit/edits.ts';
import type { Plan } from '../../../src/plan/plan.ts';
import { Places } from './places.ts';
import { conductors, Joined, type Lead, type Sheet } from './sheet.ts';
import { type Setting, settings, settle } from './states.ts';

export interface Side {
  readonly plan: Plan;
  readonly sheet: Sheet;
}

const partOf = (terminal: string) => terminal.split('.')[0]!;
const isEarth = (terminal: string) => /\.PE$/.test(terminal);
const same = (l: Lead, m: Lead) =>
  l.run === m.run && l.colour === m.colour && ((l.a === m.a && l.b === m.b) || (l.a === m.b && l.b === m.a));

/** Cores of `one` that are not as they stand in `other`. */
const changed = (one: Sheet, other: Sheet): Lead[] =>
  one.leads.filter((l) => !other.leads.some((m) => same(l, m)));

/** Metal that the cores join to the earth pin of a plug, and nothing but earth with it. */
function earthed({ plan, sheet }: Side): Set<string> {
  const joined = conductors(sheet);
  const pins = [...plan.parts].filter(([, p]) => p.kind === 'plug').map(([n]) => `${n}.PE`);
  return new Set(
    [...plan.parts.keys()]
      .map((n) => `${n}.PE`)
      .filter((t) => !pins.includes(t) && pins.some((p) => joined.same(p, t))),
  );
}

/** Protective conductors taken out or led elsewhere, and metal that has lost its earth. */
export function earthHarmed(before: Side, after: Side): string[] {
  const [had, has] = [earthed(before), earthed(after)];
  const lost = [...had].filter((t) => !has.has(t)).map((t) => `${t} has lost its earth`);
  const joined = conductors(before.sheet);
  const terminals = before.sheet.leads.flatMap((l) => [l.a, l.b]);
  const pure = (t: string) => {
    const net = terminals.filter((x) => joined.same(x, t));
    return net.some(isEarth) && net.every((x) => isEarth(x) || !x.includes('.'));
  };
  const gains = [...has].some((t) => !had.has(t));
  const gone = changed(before.sheet, after.sheet).filter((l) => pure(l.a));
  const count = (s: Sheet) => s.leads.filter((l) => isEarth(l.a) || isEarth(l.b)).length;
  const removed = gone.length > 0 && count(after.sheet) < count(before.sheet);
  const moved =
    !gains || removed ? gone.map((l) => `protective conductor ${l.a} to ${l.b} taken from its place`) : [];
  return [...lost, ...moved];
}

/** Inputs that are meant to stop something: cut-outs, and what `blocked-by` and `stopped-by` name. */
function stops(plan: Plan): Setting[] {
  const named = (plan.intents ?? []).flatMap((i) => [...i.blockedBy, ...i.stoppedBy]);
  const from = named
    .filter((r) => plan.parts.get(r.part)?.kind !== 'gate' && plan.parts.get(r.part)?.kind !== 'switch')
    .map((r): [string, string] => [r.part, r.position ?? 'moved']);
  const cutouts = [...plan.parts]
    .filter(([, p]) => p.kind === 'cutout')
    .map(([n]): [string, string] => [n, 'moved']);
  const by = new Map(
    [...from, ...cutouts].map(([part, state]) => [`${part}=${state}`, new Map([[part, state]])]),
  );
  return [...by.values()];
}

/** `DEVICE round to COIL`: what is fed in some state although the device has opened. */
export function waysRound({ plan, sheet }: Side): Set<string> {
  const found = new Set<string>();
  const some = settings(sheet, 64);
  const all = new Set(sheet.coils.map((c) => c.part));
  const tell = (device: string, fixed: Setting, isOpen: (part: string) => boolean, lamps: boolean) => {
    for (const setting of some)
      for (const from of [new Set<string>(), all]) {
        const shown = settle(
          sheet,
          new Map([...setting, ...fixed]),
          from,
          (c) => isOpen(c.part) && c.closed !== 'out',
        );
        for (const r of shown?.relays ?? []) if (r !== device) found.add(`${device} round to ${r}`);
        if (lamps) for (const l of shown?.lamps ?? []) found.add(`${device} round to ${l}`);
        for (const l of shown?.loads ?? []) found.add(`${device} round to ${l}`);
      }
  };
  for (const fixed of stops(plan)) tell([...fixed.keys()][0]!, fixed, () => false, false);
  for (const [name, part] of plan.parts) {
    if (part.kind === 'fuse') tell(name, new Map(), (p) => p === name, true);
    if (part.kind === 'timer') tell(name, new Map(), (p) => p === name, false);
  }
  return found;
}

/**
 * Terminals that mains comes to and those that the low-voltage sources come to, whatever contact is closed; with
 * `through`, by way of coils, lamps and loads as well.
 */
function sides({ sheet }: Side, through: boolean): { mains: Set<string>; low: Set<string> } {
  const joined = new Joined([
    ...sheet.leads.map((l) => [l.a, l.b] as const),
    ...sheet.plugged,
    ...sheet.contacts.map((c) => [c.a, c.b] as const),
    ...sheet.diodes.map((d) => [d.a, d.k] as const),
    ...(through
      ? [
          ...sheet.resistors,
          ...sheet.lamps.map((l) => l.ends),
          ...sheet.coils.map((c) => c.ends),
          ...sheet.loads.flatMap((l) => l.lives.slice(1).map((t) => [l.lives[0]!, t] as const)),
        ]
      : []),
  ]);
  const terminals = new Set(sheet.leads.flatMap((l) => [l.a, l.b]));
  const at = (mains: boolean) =>
    new Set(
      [...terminals].filter((t) =>
        sheet.sources.some((s) => s.mains === mains && s.poles.some((p) => joined.same(p, t))),
      ),
    );
  return { mains: at(true), low: at(false) };
}

/** Mains and low voltage joined, or a core of one side led to the other. */
export function sidesCrossed(before: Side, after: Side, meant = before): string[] {
  const met = sides(after, true);
  const both = [...met.mains].filter((t) => met.low.has(t));
  const out = both.length > 0 ? [`mains and low voltage meet at ${both[0]}`] : [];
  const [was, is] = [sides(meant, false), sides(after, false)];
  const weigh = (run: string, side: Set<string>) =>
    meant.sheet.leads
      .filter((l) => l.run === run)
      .flatMap((l) => [l.a, l.b])
      .filter((t) => side.has(t)).length;
  for (const l of changed(after.sheet, before.sheet)) {
    if (l.link && !before.sheet.leads.some((m) => m.link && m.run === l.run)) continue;
    const [mains, low] = [weigh(l.run, was.mains), weigh(l.run, was.low)];
    if (mains > low && is.low.has(l.a)) out.push(`mains core now ${l.a} to ${l.b}`);
    if (low > mains && is.mains.has(l.a)) out.push(`low-voltage core now ${l.a} to ${l.b}`);
  }
  return out;
}

/**
 * Cores that the plan gives no ground to think long enough where they are to go. A new core is measured and cut, so of
 * those only links count.
 */
export function tooShort(
  before: Side,
  after: Side,
  edits: readonly Edit[],
  meant: Side | undefined,
): string[] {
  const places = new Places(before.plan, before.sheet);
  const cut = (l: Lead) =>
    edits.some(
      (e) =>
        e.do === 'add' && e.like !== undefined && [e.from, e.to].sort().join() === [l.a, l.b].sort().join(),
    );
  const lay = (l: Lead) => meant?.sheet.leads.some((m) => same(l, m)) === true;
  return changed(after.sheet, before.sheet)
    .filter((l) => !cut(l) && !lay(l) && !places.reaches(l.a, l.b, l.link ? undefined : l.length))
    .map((l) => `${l.link ? 'link' : `core of ${l.length?.toFixed(2)} m`} from ${l.a} to ${l.b}`);
}

/** Parts that had cores and have none, and ends that were led to where nothing goes on. */
export function leftLoose(before: Side, after: Side): string[] {
  const touched = (s: Sheet) => {
    const by = new Map<string, Set<string>>();
    for (const t of s.leads.flatMap((l) => [l.a, l.b]))
      by.set(partOf(t), (by.get(partOf(t)) ?? new Set()).add(t));
    return by;
  };
  const cores = (s: Sheet, t: string) => s.leads.filter((l) => l.a === t || l.b === t).length;
  const [was, is] = [touched(before.sheet), touched(after.sheet)];
  const out = [...was.keys()].filter((p) => !is.has(p)).map((p) => `${p} has no core left`);
  for (const l of after.sheet.leads) if (l.a === l.b) out.push(`both ends of a core on ${l.a}`);
  for (const [part, terminals] of was) {
    const now = is.get(part);
    const kind = after.plan.parts.get(part)!.kind;
    if (now === undefined) continue;
    if (kind === 'joint' && cores(before.sheet, part) > 1 && cores(after.sheet, part) === 1)
      out.push(`one core left at ${part}`);
    if (['gate', 'switch', 'button', 'cutout', 'fuse', 'diode', 'lamp', 'led', 'resistor'].includes(kind))
      if (terminals.size > 1 && now.size === 1) out.push(`one terminal left at ${part}`);
  }
  return out;
}

const list = (s: ReadonlySet<string>) => [...s].sort().join();

/**
 * Lamps that show something else in states in which relays and loads did the same before. Where it is known what was
 * meant: lamps that told it before and do not now, in states in which the loads do what was meant.
 */
export function lampsChanged(before: Side, after: Side, meant: Side | undefined): string[] {
  const { lamps, inputs } = before.sheet;
  if (lamps.length === 0) return [];
  for (const setting of settings(before.sheet, 64)) {
    const [was, is] = [before, after].map((s) => settle(s.sheet, setting, new Set()));
    if (was === undefined || is === undefined) continue;
    const should = meant === undefined ? was : settle(meant.sheet, setting, new Set());
    if (should === undefined || list(should.loads) !== list(is.loads)) continue;
    const wrong = lamps.find(
      ({ part }) =>
        was.lamps.has(part) === should.lamps.has(part) && is.lamps.has(part) !== should.lamps.has(part),
    );
    if (wrong === undefined) continue;
    const moved = [...setting].filter(([p, s]) => s !== inputs.find((i) => i.part === p)!.states[0]);
    const where = moved.map(([p, s]) => `${p} ${s}`).join(', ') || 'all at rest';
    return [`${wrong.part} ${is.lamps.has(wrong.part) ? 'lit' : 'dark'} with ${where}`];
  }
  return [];
}
