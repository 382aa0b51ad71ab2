/**
 * Published thresholds for a plan with one slip in its data, each in three parts: past the figure by any reading,
 * within it by any reading, or between the two and left open.
 */
import { Machine } from '../brute-machine.ts';
import { type Fields, figures, isAc, isMap, listOf, type Part, text, type Wiring } from '../brute-read.ts';
import { coilVolts } from '../coil-volts.ts';
import { mainsCords } from './cord-rules.ts';
import { graphOf, reach } from './graph.ts';
import { contactsOfLoads } from './load-path.ts';
import type { Ruling } from './ruling.ts';
import type { Sheet } from './sheet.ts';

/** V between the printed most of a coil and the volts that are past it whatever the air round it. */
const NEAR_MOST = 1.05;

/** Coil volts against pull-in and the most a coil stands; `coil-volts.ts` works them out. */
function coilRules(source: string, w: Wiring, out: Ruling): void {
  let rows: ReturnType<typeof coilVolts>;
  try {
    rows = coilVolts(source);
  } catch {
    out.open.push('coil volts');
    return;
  }
  for (const row of rows) {
    const coil = w.parts.get(row.relay)!.fields.coil as Fields;
    const most = figures(coil.most);
    const rated = figures(coil.rated).V!;
    const limit = most.V ?? ((most['%'] ?? 110) / 100) * rated;
    if (row.margin < 0) out.symptoms.push('coil-too-low');
    if (row.volts.max > limit * NEAR_MOST) out.symptoms.push('coil-too-high');
    else if (row.volts.max > limit * 0.9) out.open.push('coil near its most');
  }
}

/** A coil on a supply of more volts than it stands, whatever the inputs: for coils that are fed at rest. */
function printedVolts(w: Wiring, out: Ruling): void {
  const supplies = [...w.parts.values()].filter((p) => p.kind === 'supply' || p.kind === 'battery');
  if (supplies.length !== 1) return;
  const volts = figures(supplies[0]!.fields.output).V!;
  for (const p of w.parts.values()) {
    if (p.kind === 'board' || !isMap(p.fields.coil)) continue;
    const rated = figures(p.fields.coil.rated).V!;
    const most = figures(p.fields.coil.most);
    if (volts > (most.V ?? ((most['%'] ?? 110) / 100) * rated) * NEAR_MOST)
      out.symptoms.push('coil-too-high');
  }
}

/** A coil that only current of the other kind can reach (IEC 61810-1, 5.1). */
function kindRules(w: Wiring, out: Ruling): void {
  const g = graphOf(w);
  const source = (key: string): Part | undefined => {
    const p = w.parts.get(key.split('.')[0]!);
    return g.sources.has(key) ? p : undefined;
  };
  for (const p of w.parts.values()) {
    if (!['relay', 'timer', 'board'].includes(p.kind)) continue;
    const ac = isMap(p.fields.coil) && p.kind !== 'board' ? isAc(p.fields.coil.rated) : false;
    const near = reach(
      g,
      `${p.name}.${p.kind === 'board' ? 'VCC' : 'A1'}`,
      false,
      (k) => source(k) !== undefined,
    );
    const feeds = [...near].flatMap((k) => source(k) ?? []);
    const onMains = g.pins.some((pin) => near.has(pin.key));
    if (feeds.some((f) => isAc(f.fields.output) !== ac) || (onMains && !ac)) out.symptoms.push('coil-kind');
  }
}

/** Draw of all coils at once against the supply's limit; AC by the inrush VA where it is printed. */
function supplyRules(w: Wiring, out: Ruling): void {
  const parts = [...w.parts.values()];
  const supplies = parts.filter((p) => p.kind === 'supply');
  if (supplies.length !== 1) return;
  const { output, limit } = supplies[0]!.fields;
  const volts = figures(output).V!;
  const f = figures(limit);
  const amps = f.A ?? (f.VA ?? f.W ?? 0) / volts;
  const draw = parts.reduce((sum, p) => {
    const coil = isMap(p.fields.coil) ? p.fields.coil : undefined;
    if (!coil || p.kind === 'board' || (figures(coil.rated).V ?? 0) > 60) return sum;
    const rated = figures(coil.rated).V!;
    const q = figures(coil.power);
    const held = isAc(coil.rated) ? (figures(coil.inrush).VA ?? q.VA) : q.W;
    const ohm = figures(coil.resistance).ohm ?? (held ? rated ** 2 / held : Number.POSITIVE_INFINITY);
    return sum + volts / ohm;
  }, 0);
  if (draw > amps * 1.3) out.symptoms.push('supply-overloaded');
  else if (draw > amps * 0.7) out.open.push('supply near its limit');
}

/** A box with mains and the loop in it and no barrier (NEC 725.136; IEC 60364-4-41, 414.4). */
function boxRules(w: Wiring, doc: Fields, out: Ruling): void {
  const g = graphOf(w);
  const mains = new Set(g.pins.flatMap((p) => [...reach(g, p.key, false, (k) => g.gates.has(k))]));
  const low = new Set([...g.sources].flatMap((k) => [...reach(g, k, true, () => false)]));
  const holds = (box: Part, nets: Set<string>): boolean =>
    listOf(box.fields.holds).some((n) => [...nets].some((k) => k.split('.')[0] === text(n)));
  for (const box of w.parts.values()) {
    if (box.kind !== 'box' || box.fields.divider === true || !holds(box, mains) || !holds(box, low)) continue;
    if (doc.practice === 'iec') out.open.push('insulation in a shared box');
    else out.symptoms.push('sides-share-box');
  }
}

/** A motor above what the contact in its way is printed for (NEC 430.83(A); IEC 60947-4-1, AC-3). */
function motorRules(source: string, w: Wiring, out: Ruling): void {
  for (const c of contactsOfLoads(source)) {
    const load = w.parts.get(c.load)!;
    if (load.kind !== 'motor') continue;
    const contact = w.parts.get(c.part)!.fields.contact as Fields | undefined;
    const amps = figures(load.fields.amps).A ?? 0;
    const hp = /([\d.]+)\s*hp/.exec(text(load.fields.power))?.[1];
    const rated = /([\d.]+)\s*hp/.exec(text(listOf(contact?.motor)[0]))?.[1];
    const ac3 = figures(contact?.['ac-3']).A;
    const running = Math.max(...listOf(contact?.ratings).map((r) => (isAc(r) ? (figures(r).A ?? 0) : 0)));
    if (amps > running) out.symptoms.push('contact-overloaded');
    else if (hp && rated && !ac3 && Number(hp) > Number(rated)) out.symptoms.push('contact-horsepower');
    else if (ac3 && !rated && amps > ac3) out.symptoms.push('contact-overloaded');
    else if (!(ac3 && amps <= 0.9 * ac3) && !(hp && rated && Number(hp) <= Number(rated)))
      out.open.push('contact');
  }
}

/** All thresholds on one plan. */
export function dataRules(s: Sheet, doc: unknown): Ruling {
  const out: Ruling = { symptoms: [], open: [] };
  const top = isMap(doc) ? doc : {};
  const w = new Machine(s.text).wiring;
  coilRules(s.text, w, out);
  printedVolts(w, out);
  kindRules(w, out);
  supplyRules(w, out);
  boxRules(w, top, out);
  motorRules(s.text, w, out);
  mainsCords(s, top, out);
  return { symptoms: [...new Set(out.symptoms)], open: [...new Set(out.open)] };
}
