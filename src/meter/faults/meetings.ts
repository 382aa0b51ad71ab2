/** Where the loop touches mains or earth: in one box, or on one part. */
import { isLow, isMains } from '../../circuit/sides.ts';
import { terminalKey } from '../../plan/terminal-key.ts';
import type { Study } from '../../study/study.ts';
import { type Fault, RANK } from '../fault.ts';
import { joined } from '../fault-wires.ts';

/** Terminals of a part with a core on them, `PART.TERMINAL`. */
export function landedTerminals({ plan, wired }: Study, part: string): string[] {
  const names = plan.terminals.get(part)?.names ?? [];
  return names.map((t) => terminalKey(part, t)).filter((key) => wired.landed.has(key));
}

/** One fault for each box, or part outside of one, that holds a core of the loop beside mains, and beside earth. */
export function meetings(study: Study): Fault[] {
  const { sides, circuit } = study;
  return placesOf(study).flatMap(({ name, parts }): Fault[] => {
    const keys = parts.flatMap((p) => landedTerminals(study, p));
    const of = (which: (net: number | undefined) => boolean) =>
      keys.find((key) => which(circuit.netOf.get(key)));
    const loop = of((net) => isLow(sides, net) && !isMains(sides, net));
    if (loop === undefined) return [];
    const meets = (key: string | undefined, mode: 'meets-mains' | 'meets-earth', what: string): Fault[] =>
      key === undefined
        ? []
        : [
            {
              item: name,
              mode,
              text: `in ${name} a core of the loop touches ${what}`,
              parts: [name],
              at: [loop, key],
              rank: RANK.neighbour,
              circuit: (c) => joined(c, loop, key),
              ...(mode === 'meets-mains' ? { untold: true as const } : {}),
            },
          ];
    const line = of((net) => isLine(study, net));
    const earth = of((net) => net !== undefined && sides.bareEarth.has(net));
    return [...meets(line, 'meets-mains', 'mains'), ...meets(earth, 'meets-earth', 'earth')];
  });
}

/** Boxes with what they hold, and relays that stand in none. */
function placesOf({ plan }: Study): { readonly name: string; readonly parts: readonly string[] }[] {
  const boxes = [...plan.parts.values()].flatMap((p) =>
    p.kind === 'box' ? [{ name: p.name, parts: [p.name, ...p.holds] }] : [],
  );
  const boxed = new Set(boxes.flatMap((p) => p.parts));
  const alone = [...plan.parts.values()].flatMap((p) =>
    'poles' in p && !boxed.has(p.name) ? [{ name: p.name, parts: [p.name] }] : [],
  );
  return [...boxes, ...alone];
}

/** A line conductor, not the neutral. */
function isLine({ circuit, sides }: Study, net: number | undefined): boolean {
  if (net === undefined || !isMains(sides, net)) return false;
  return !circuit.sources.some((s) => s.mains && s.rails.some((r) => r.net === net && !r.live));
}
