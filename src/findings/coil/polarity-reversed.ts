import { sayMoved } from '../../circuit/input-words.ts';
import { drivenByDc } from '../../logic/driven.ts';
import { everIn } from '../../logic/entry-states.ts';
import type { Moved } from '../../logic/verify.ts';
import type { Part } from '../../plan/part-types.ts';
import { partOfKey } from '../../plan/terminal-key.ts';
import { perStudy } from '../../study/per-study.ts';
import type { Study } from '../../study/study.ts';
import { type Check, extract, type FindingEntry } from '../entry.ts';
import { found } from '../finding.ts';
import type { Finding } from '../report-model.ts';

const entry: FindingEntry = {
  id: 'polarity-reversed',
  title: 'a part with + and - is fed the wrong way round',
  severity: 'fault',
  question: 4,
  ofWiring: true,
  base: 'battery',
  meaning:
    'A coil with a built-in diode, a board or an indicator gets + where - belongs. A coil with a diode is a short circuit that way: the fuse blows or the adapter cuts out as soon as a gate opens. Most such relays want + on A1.',
  wrong: extract('  - {link: [barB, K1.A2]}', '  - {link: [minus, K1.A1]}'),
  right: extract('  - {link: [barB, K1.A1]}', '  - {link: [minus, K1.A2]}'),
  basis: 'common practice',
  followsFrom: [],
};

export const polarityReversed: Check = { entry, find };

const EFFECTS = {
  shorts: 'its built-in diode shorts the supply',
  'stays-out': 'it does not pull in',
  dark: 'it stays dark',
  backwards: 'it turns backwards',
  spoilt: 'it does not work, and may be spoilt',
} as const;

/** A part that is fed the wrong way round, with the terminals that want + and -. */
interface FedReversed {
  readonly part: string;
  readonly plus: string;
  readonly minus: string;
  readonly moved: Moved;
  readonly effect: keyof typeof EFFECTS;
}

/** Each part once; none where nothing was decided. */
export const fedReversed = perStudy((study): readonly FedReversed[] => {
  const v = study.verified;
  if (!v) return [];
  const told = new Set<string>();
  return polarised(study).flatMap(({ from, to, ...part }) => {
    const moved = told.has(part.part) ? undefined : everIn(v, drivenByDc(v, from, to));
    if (!moved) return [];
    told.add(part.part);
    return [{ ...part, moved }];
  });
});

/** Every part with + and -, and the nets `from` and `to` which current goes when it is reversed. */
function polarised({
  plan,
  circuit,
}: Study): (Omit<FedReversed, 'moved'> & { readonly from: number; readonly to: number })[] {
  const coils = circuit.relays.flatMap(({ part, senses }) => {
    const [plus, minus] =
      plan.parts.get(part)!.kind === 'board' ? (['VCC', 'GND'] as const) : (['A1', 'A2'] as const);
    const builtIn = circuit.diodes.some((d) => d.builtIn && d.part === part);
    const effect = builtIn ? ('shorts' as const) : ('stays-out' as const);
    return senses
      .filter((s) => s.by === 'volts' && s.polarised && s.what !== 'input')
      .map((s) => ({ part, plus, minus, effect, from: s.b, to: s.a }));
  });
  const indicators = circuit.diodes
    .filter((d) => d.load)
    .flatMap((d) =>
      behindResistors(circuit, d.cathode).flatMap((from) =>
        behindResistors(circuit, d.anode).map((to) => ({
          ...{ part: d.part, plus: 'A', minus: 'K', effect: 'dark' as const },
          ...{ from, to },
        })),
      ),
    )
    .filter(({ from, to }) => from !== to);
  const loads = circuit.consumers
    .filter((c) => c.dc && !isSymmetric(plan.parts.get(c.part)))
    .map(({ part, kind, nets }) => ({
      ...{ part, plus: '+', minus: '-', from: nets.get('-')!, to: nets.get('+')! },
      effect: kind === 'motor' ? ('backwards' as const) : ('spoilt' as const),
    }));
  return [...coils, ...indicators, ...loads];
}

/** A heater or a filament does not mind which way the current goes. */
function isSymmetric(part: Part | undefined): boolean {
  return part?.kind === 'load' && (part.type === 'heater' || part.type === 'lamp');
}

/** A net, and the one beyond a resistor that alone is joined to it: an indicator has its resistor on either side. */
function behindResistors({ plan, terminals, landed, passives }: Study['circuit'], net: number): number[] {
  const joined = terminals[net]!.filter(
    (key) => landed.has(key) && plan.parts.get(partOfKey(key))?.kind !== 'joint',
  );
  if (joined.length !== 2) return [net];
  const beyond = passives.flatMap((p) =>
    p.what === 'resistor' && p.a !== p.b ? (p.a === net ? [p.b] : p.b === net ? [p.a] : []) : [],
  );
  return [net, ...beyond];
}

function find(study: Study): Finding[] {
  return fedReversed(study).map(({ part, plus, minus, moved, effect }) =>
    found(study.plan, entry, {
      parts: [part],
      terminals: [`${part}.${plus}`, `${part}.${minus}`],
      message: `${part} is fed the wrong way round: ${EFFECTS[effect]}`,
      why: `With ${sayMoved(study.circuit, moved)} ${part}.${minus} is joined to + and ${part}.${plus} to -.`,
      fix: `Exchange the cores at ${part}: ${plus} towards +, ${minus} towards -.`,
      basis: entry.basis,
      twin: { alike: `${effect} ${plus}` },
    }),
  );
}
