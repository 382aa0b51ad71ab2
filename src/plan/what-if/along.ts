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

/** Plugs of the volts that a motor or load had take its new ones, and lose with their outlets the pattern made for the old. */
export function alongWith(before: Plan, after: Plan): Along[] {
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
