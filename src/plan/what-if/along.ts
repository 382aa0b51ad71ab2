/** What has to change with a what-if for it to be the plan that was meant: another motor's volts come from its mains. */
import type { LoadPart, MotorPart, Part } from '../part-types.ts';
import type { Plan } from '../plan.ts';

/** A field that takes another value along, or is left out. */
export interface Along {
  readonly name: string;
  readonly field: string;
  /** undefined where it is left out */
  readonly text: string | undefined;
  /** why, as the rest of a sentence */
  readonly because: string;
}

const isLoad = (p: Part | undefined): p is MotorPart | LoadPart => p?.kind === 'motor' || p?.kind === 'load';

/** Plugs take the new volts of what they feed, overload relays the new current of what they are set to. */
export function alongWith(before: Plan, after: Plan): Along[] {
  return [...withVolts(before, after), ...withAmps(before, after)];
}

/** Overload relays whose dial stood at the current of a motor's plate go to that of the plate it has now. */
function withAmps(before: Plan, after: Plan): Along[] {
  return [...after.parts.values()].flatMap((motor): Along[] => {
    const old = before.parts.get(motor.name);
    if (motor.kind !== 'motor' || old?.kind !== 'motor') return [];
    const { amps } = motor;
    const was = old.amps;
    if (amps === undefined || was === undefined || amps === was) return [];
    return [...before.parts.values()].flatMap((relay): Along[] => {
      const now = after.parts.get(relay.name);
      if (relay.kind !== 'cutout' || now?.kind !== 'cutout' || relay.setting === undefined) return [];
      // One of which the what-if itself speaks is left to it.
      if (Math.abs(relay.setting - was) > 1e-9 || now.setting !== relay.setting) return [];
      const because = `so that it stays set to the current on the plate of ${motor.name}`;
      return [{ name: relay.name, field: 'setting', text: `${amps} A`, because }];
    });
  });
}

/** Plugs of the volts that a motor or load had take its new ones, and lose with their outlets the pattern made for the old. */
function withVolts(before: Plan, after: Plan): Along[] {
  const parts = [...before.parts.values()];
  const found = new Map<string, Along>();
  for (const load of after.parts.values()) {
    const old = before.parts.get(load.name);
    if (!isLoad(load) || !isLoad(old) || load.volts.volts === old.volts.volts) continue;
    const { volts, kind } = load.volts;
    const because = `so that ${load.name} gets its volts`;
    for (const plug of parts) {
      if (plug.kind !== 'plug' || plug.volts.volts !== old.volts.volts || plug.volts.kind !== kind) continue;
      const changed = after.parts.get(plug.name);
      // A plug of which the what-if itself speaks is left to it.
      if (changed?.kind !== 'plug' || changed.volts.volts !== plug.volts.volts) continue;
      const text = `${volts} V ${kind.toUpperCase()}`;
      found.set(`${plug.name}.volts`, { name: plug.name, field: 'volts', text, because });
      for (const outlet of parts)
        if (outlet.kind === 'outlet' && outlet.pattern !== undefined && outlet.pattern === plug.pattern)
          found.set(`${outlet.name}.pattern`, {
            ...{ name: outlet.name, field: 'pattern', text: undefined },
            because: `which was made for ${plug.volts.volts} V`,
          });
    }
  }
  return [...found.values()];
}
