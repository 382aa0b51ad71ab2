/** Ohms and volts of every part, for one corner of the tolerances. */
import type { ContactEdge, DiodeEdge, Passive, Source } from '../circuit/circuit.ts';
import type { Wire } from '../circuit/nets.ts';
import { isContactor } from '../circuit/thresholds.ts';
import type { Figures } from '../electric/island.ts';
import type { Phasor } from '../electric/network.ts';
import { ohmsOf } from '../logic/ohms.ts';
import type {
  BatteryPart,
  BoardPart,
  Cable,
  Coil,
  Plan,
  RelayPart,
  SupplyPart,
  TimerPart,
} from '../plan/plan.ts';
import { partOfKey } from '../plan/terminal-key.ts';
import { type CoilModel, coilModel, copperFactor } from '../ratings/coil.ts';
import { defaults, mainsVariation } from '../ratings/defaults.ts';
import { type SupplyModel, supplyModel } from '../ratings/supply.ts';
import { ohmsPerMetre, strandingAllowance } from '../ratings/wire.ts';

/**
 * `low`: least volts at a coil - supply low, wires and contacts at their most, coil warm and of low resistance.
 * `nominal`: figures as printed, everything at 20 °C. `high`: most volts - supply high, contacts at their least, coil
 * warm and of high resistance. AC coils have their armature open in the first two and are pulled in in the last.
 * `strong`: most current for long - supply high, coils warm and of low resistance, AC coils pulled in.
 * `reading`: as nominal, each AC coil as it stands. `ohmmeter`: as nominal, AC coils by their copper alone.
 */
export type Corner = 'low' | 'nominal' | 'high' | 'strong' | 'reading' | 'ohmmeter';

export type Coiled = RelayPart | TimerPart | BoardPart;

export function coilOf(part: Coiled): Coil {
  if (part.kind !== 'board') return part.coil;
  return part.coil ?? { rated: part.supply };
}

/** °C of the air round the parts. */
export function ambientOf(plan: Plan): number {
  return plan.ambient ?? defaults.ambient.value;
}

const models = new WeakMap<Coiled, CoilModel>();
export function modelOf(part: Coiled): CoilModel {
  let model = models.get(part);
  if (!model) {
    model = coilModel(coilOf(part), { contactor: isContactor(part) });
    models.set(part, model);
  }
  return model;
}

/** °C of the copper after a long run at rated volts in the warmest air. */
export function warmCelsius(plan: Plan, model: CoilModel): number {
  return ambientOf(plan) + model.hotRise;
}

const SILICON = { drop: 0.7, ohms: 1e-4 };
/** Current of a gate circuit through a switched-off solid-state output where none is stated, A. */
const LEAKAGE = 0.001;

/**
 * Figures of a plan in one corner. `cableOf` may put another cable in a run's place, to try a remedy.
 */
export function figuresFor(
  plan: Plan,
  corner: Corner,
  swap: { readonly cableOf?: (run: number) => Cable | undefined; readonly metres?: number } = {},
): Figures {
  const ambient = ambientOf(plan);
  const contactOhms =
    corner === 'low' ? CONTACT.high : isHigh(corner) ? CONTACT.low : defaults.contactResistance.value;
  const perMetre = new Map<number, number>();
  const supplies = new Map<string, SupplyModel>();
  const wireOhms = (run: number): number => {
    const cable = swap.cableOf?.(run) ?? plan.runs[run]!.cable;
    if (!cable) return 0;
    return corner === 'low'
      ? ohmsPerMetre(cable, ambient) * strandingAllowance(cable)
      : ohmsPerMetre(cable, 20);
  };
  return {
    wire(w: Wire) {
      let ohms = perMetre.get(w.run);
      if (ohms === undefined) {
        ohms = wireOhms(w.run);
        perMetre.set(w.run, ohms);
      }
      return ohms * w.metres * (swap.metres ?? 1);
    },
    contact(c: ContactEdge) {
      return statedOhms(plan, c) ?? contactOhms;
    },
    leak(c: ContactEdge) {
      const part = plan.parts.get(c.part);
      if (!part || !('technology' in part) || part.technology !== 'solid-state') return undefined;
      const amps = ('off_leakage' in part ? part.off_leakage : undefined) ?? LEAKAGE;
      return amps > 0 ? highestVolts(plan) / amps : undefined;
    },
    passive(p: Passive, pulledIn: boolean): Phasor | undefined {
      const part = plan.parts.get(p.part);
      const coil = p.what === 'coil' && part && 'poles' in part;
      if (coil) return coilImpedance(plan, part, corner, pulledIn);
      const unknown =
        corner === 'ohmmeter' && (p.what === 'load' || p.what === 'primary' || p.what === 'input');
      return unknown ? undefined : { re: ohmsOf(plan, p), im: 0 };
    },
    diode(d: DiodeEdge) {
      return d.load ? indicator(plan, d) : SILICON;
    },
    source(s: Source) {
      const part = plan.parts.get(s.part);
      if (part?.kind !== 'supply' && part?.kind !== 'battery')
        return { scale: mainsScale(plan, corner), ohms: 0 };
      let model = supplies.get(s.part);
      if (!model) {
        model = supplyModel(part, plan.practice);
        supplies.set(s.part, model);
      }
      const { min, nominal, max } = model.openCircuit;
      const volts = corner === 'low' ? min : isHigh(corner) ? max : nominal;
      return { scale: volts / part.output.volts, ohms: model.sourceOhms };
    },
  };
}

const isHigh = (corner: Corner): boolean => corner === 'high' || corner === 'strong';

/** Mains against its nominal volts. */
function mainsScale(plan: Plan, corner: Corner): number {
  const { low, high } = mainsVariation(plan.practice);
  if (corner === 'low') return 1 - low.value;
  return isHigh(corner) ? 1 + high.value : 1;
}

const CONTACT = {
  low: defaults.contactResistance.low,
  high: defaults.contactResistance.high,
};

/** ohm, as printed on the switch or relay. */
export function statedOhms(plan: Plan, c: ContactEdge): number | undefined {
  const part = plan.parts.get(c.part);
  if (!part) return undefined;
  if ('poles' in part) return part.poles.find((p) => p.index === c.pole)?.contact.resistance;
  return 'contact' in part ? part.contact.resistance : undefined;
}

/** V of the highest low-voltage source, for what leaks or lights on it. */
export function highestVolts(plan: Plan): number {
  const own = [...plan.parts.values()].filter(
    (p): p is SupplyPart | BatteryPart => p.kind === 'supply' || p.kind === 'battery',
  );
  return Math.max(1, ...own.map((p) => p.output.volts));
}

/**
 * Impedance of a coil, ohm. DC: copper, warm and at the end of its tolerance where the corner asks for it. AC: from VA,
 * with the armature open or pulled in, at the stated power factor; without one its magnitude is taken as resistance,
 * which overstates the drop a little.
 */
export function coilImpedance(
  plan: Plan,
  part: Coiled,
  corner: Corner,
  pulledIn: boolean,
): Phasor | undefined {
  const model = modelOf(part);
  if (model.kind === 'dc') {
    const ohms = model.ohms ?? unknownOhms(part, model);
    const warm = copperFactor(warmCelsius(plan, model));
    if (corner === 'low' || corner === 'strong') return { re: ohms * (1 - model.tolerance) * warm, im: 0 };
    if (corner === 'high') return { re: ohms * (1 + model.tolerance) * warm, im: 0 };
    return { re: ohms, im: 0 };
  }
  if (corner === 'ohmmeter')
    return model.copperOhms === undefined ? undefined : { re: model.copperOhms, im: 0 };
  const sealed = isHigh(corner) || (corner === 'reading' && pulledIn);
  const ohms = (sealed ? model.ohms : model.inrushOhms) ?? model.ohms ?? model.inrushOhms;
  const size = ohms ?? unknownOhms(part, model);
  const cosine = Math.min(1, (sealed ? model.powerFactor : model.inrushPowerFactor) ?? 1);
  return { re: size * cosine, im: size * Math.sqrt(Math.max(0, 1 - cosine * cosine)) };
}

/** A coil whose current the plan does not give is taken to load nothing; the report has a doubt about it anyway. */
function unknownOhms(part: Coiled, model: CoilModel): number {
  return part.kind === 'board' ? model.rated / 0.08 : 1e5;
}

/**
 * An indicator. With a resistor beside it: its forward volts, rising by a tenth up to its current. Without one it is
 * taken as a panel indicator with a resistor of its own, made for the supply's volts.
 */
function indicator(plan: Plan, d: DiodeEdge): { drop: number; ohms: number } {
  const amps = d.amps ?? 0.02;
  if (hasResistor(plan, d.part)) return { drop: d.drop, ohms: (0.1 * d.drop) / amps };
  return { drop: d.drop, ohms: Math.max(1, (highestVolts(plan) - d.drop) / amps) };
}

const neighbours = new WeakMap<Plan, ReadonlySet<string>>();

/** Indicators one of whose ends lies on a conductor with a resistor. */
function hasResistor(plan: Plan, led: string): boolean {
  let found = neighbours.get(plan);
  if (!found) {
    found = ledsBesideResistors(plan);
    neighbours.set(plan, found);
  }
  return found.has(led);
}

function ledsBesideResistors(plan: Plan): Set<string> {
  const around = new Map<string, string[]>();
  const key = (e: { part: string; terminal: string }) =>
    e.terminal === '' ? e.part : `${e.part}.${e.terminal}`;
  for (const run of plan.runs)
    for (const core of run.cores)
      for (const [x, y] of [
        [key(core.a), key(core.b)],
        [key(core.b), key(core.a)],
      ] as const)
        around.set(x, [...(around.get(x) ?? []), y]);
  const found = new Set<string>();
  for (const part of plan.parts.values()) {
    if (part.kind !== 'led') continue;
    const queue = [`${part.name}.A`, `${part.name}.K`];
    const seen = new Set(queue);
    for (let at = queue.pop(); at !== undefined; at = queue.pop())
      for (const to of around.get(at) ?? []) if (!seen.has(to)) seen.add(to) && queue.push(to);
    if ([...seen].some((t) => plan.parts.get(partOfKey(t))?.kind === 'resistor')) found.add(part.name);
  }
  return found;
}
