/** What must be so before the readings of each stage: which plugs are out, which supplies on. */
import { listOf } from '../checks/study.ts';
import type { Part, Plan } from '../plan/plan.ts';
import type { CheckStep, StageSetup } from './meter-sheet.ts';

type Kind<K extends Part['kind']> = Extract<Part, { kind: K }>;

function ofKind<K extends Part['kind']>(plan: Plan, ...kinds: readonly K[]): Kind<K>[] {
  return [...plan.parts.values()].filter((p): p is Kind<K> => (kinds as readonly string[]).includes(p.kind));
}

const names = (parts: readonly Part[]) => listOf(parts.map((p) => p.name));

/** The adjustment of the switch at each gate; nothing is measured. */
export function gateChecks(plan: Plan): Omit<CheckStep, 'number'>[] {
  return ofKind(plan, 'gate').map((gate) => ({
    stage: 1,
    kind: 'check',
    part: gate.name,
    text: `Move the slide of ${gate.name} slowly from shut to open and back: its switch trips between a quarter and three quarters of the travel both ways, and the slide comes to rest on its own stop, not on the plunger or lever of the switch.`,
  }));
}

/** `loopNeedsMains`: a low-voltage supply gets its power through a plug of the plan. */
export function setups(plan: Plan, loopNeedsMains: boolean): StageSetup[] {
  const supplies = ofKind(plan, 'supply', 'battery');
  const plugs = ofKind(plan, 'plug');
  const loads = ofKind(plan, 'motor', 'load');
  return [
    { stage: 1, text: dead(supplies, plugs, loads) },
    { stage: 2, text: loop(supplies, plugs, loads, loopNeedsMains) },
    { stage: 3, text: mains(plugs, loads) },
  ];
}

const fixed = (plug: Kind<'plug'>) => plug.pattern?.toLowerCase() === 'fixed';
const pluggedIn = (load: Kind<'motor' | 'load'>) => load.pluggedInto !== undefined;

function dead(
  supplies: readonly Kind<'supply' | 'battery'>[],
  plugs: readonly Kind<'plug'>[],
  loads: readonly Kind<'motor' | 'load'>[],
): string[] {
  const text: string[] = [];
  const loose = plugs.filter((p) => !fixed(p));
  if (loose.length > 0) text.push(`Unplug ${names(loose)} and keep the pins in sight.`);
  for (const p of plugs.filter(fixed))
    text.push(
      `${p.name} is wired in: an electrician switches its breaker off, locks it and proves it dead before anything is opened.`,
    );
  const out = loads.filter(pluggedIn);
  if (out.length > 0) text.push(`Unplug ${names(out)} too.`);
  if (supplies.length > 0)
    text.push(
      `Switch off ${names(supplies)} and take the loop's cores off the output. Cores that share a terminal stay twisted together; where a step names that terminal, the probe goes on them.`,
    );
  text.push('Touch the probes together first, and take what the meter shows then off every reading in ohms.');
  return text;
}

function loop(
  supplies: readonly Kind<'supply' | 'battery'>[],
  plugs: readonly Kind<'plug'>[],
  loads: readonly Kind<'motor' | 'load'>[],
  needsMains: boolean,
): string[] {
  if (supplies.length === 0) return ['There is no low-voltage supply in this plan; nothing is read here.'];
  const on = `Put the cores back on ${names(supplies)} and switch it on.`;
  if (!needsMains) {
    const out = plugs.length > 0 ? [`${names(plugs)} stays out.`] : [];
    const unplugged = loads.filter(pluggedIn);
    return [on, ...out, ...(unplugged.length > 0 ? [`${names(unplugged)} stays unplugged.`] : [])];
  }
  const wired = loads.filter((l) => !pluggedIn(l));
  return [
    `${on} It gets its power through ${names(plugs)}, so mains is in the box as well: from here on this is work for a competent person, and the probes touch low-voltage terminals only.`,
    ...(wired.length > 0
      ? [`${names(wired)} is wired in: part it from the line, so that it cannot start.`]
      : ['Whatever is plugged in stays unplugged.']),
  ];
}

function mains(plugs: readonly Kind<'plug'>[], loads: readonly Kind<'motor' | 'load'>[]): string[] {
  if (plugs.length === 0) return ['There is no mains in this plan; nothing is read here.'];
  const text = [
    'Only a competent person does this stage, with probes and a meter made for mains, one hand at a time, the box closed except while reading.',
  ];
  const three = plugs.some((p) => p.feed === 'three-phase');
  const lamp = three ? 'lamps between the lines' : 'a lamp';
  text.push(
    `The first load is ${lamp} for the volts of ${names(plugs)}, in place of ${loads.length > 0 ? names(loads) : 'the collector'}. The collector comes last, when every step has read as it should.`,
  );
  if (three)
    text.push('Before the motor turns for good, its direction of rotation is tried with a short start.');
  return text;
}
