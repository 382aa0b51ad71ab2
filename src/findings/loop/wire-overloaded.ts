import type { Study } from '../../study/study.ts';
import { ampsText } from '../../text/numbers.ts';
import { listOf } from '../../text/word-list.ts';
import type { Check, FindingEntry } from '../entry.ts';
import { found } from '../finding.ts';
import type { Finding } from '../report-model.ts';
import { ampsFigure } from './amps-figure.ts';
import { type ThinWire, thinWires } from './thin-wires.ts';
import { unfusedZones } from './zone-fuses.ts';

const entry: FindingEntry = {
  id: 'wire-overloaded',
  title: 'a wire can get more current than it stands',
  severity: 'fault',
  question: 5,
  base: 'battery',
  meaning:
    'Either the coils draw more than the thinnest wire carries, or a fuse or supply lets more than that through when the cable is pinched. The wire then gets hot before anything stops the current. The fuse must not be above what the thinnest wire behind it carries.',
  wrong: '  F1: {kind: fuse, rating: 10 A}',
  right: '  F1: {kind: fuse, rating: 1 A}',
  basis: 'NEC 402.5 (from memory), BS 7671 Table 4F3A; wire thinner than 18 AWG common practice',
  followsFrom: [],
};

export const wireOverloaded: Check = { entry, find };

function find(study: Study): Finding[] {
  return thinWires(study).map((wire) => overloaded(study, wire));
}

function overloaded(study: Study, wire: ThinWire): Finding {
  const { plan } = study;
  const { source, by, runs, amps, carries, basis } = wire;
  const names = runs.flatMap((r) => plan.runs[r]!.cores.flatMap((c) => [c.a.part, c.b.part]));
  const fuse = by === undefined ? undefined : plan.parts.get(by);
  const zones = unfusedZones(study, wire);
  const relays = zones?.without.map((z) => z.relay) ?? [];
  return found(plan, entry, {
    parts: [by ?? source.part, ...relays, ...names],
    at: fuse?.where.get('rating') ?? plan.runs[runs[0]!]!.at,
    message: `${zones ? `${zoneNames(relays)} no fuse of ${relays.length > 1 ? 'their' : 'its'} own: ` : ''}${message(study, wire)}`,
    why:
      by === undefined
        ? `With every coil in that can be in together, from ${source.part}.`
        : `The wire gets hot before anything stops the current.${zones ? ` In the other zones ${listOf(zones.fuses)} ${zones.fuses.length > 1 ? 'stand' : 'stands'} ahead of such wire.` : ''}`,
    fix: `The ${wire.cable.gauge} wire would have to carry ${ampsText(amps - carries)} more than it does.`,
    figures: [ampsFigure('current', amps), { name: 'wire', value: carries, unit: 'A' }],
    basis,
  });
}

const zoneNames = (relays: readonly string[]): string =>
  relays.length > 1 ? `the zones of ${listOf(relays)} have` : `the zone of ${listOf(relays)} has`;

const isFuse = ({ plan }: Study, name: string): boolean => plan.parts.get(name)?.kind === 'fuse';

function message(study: Study, { cable: { gauge }, by, amps, carries }: ThinWire): string {
  if (by === undefined) return `${gauge} wire carries ${ampsText(amps)}; it is good for ${ampsText(carries)}`;
  return isFuse(study, by)
    ? `fuse ${by} of ${ampsText(amps)} lets a pinched ${gauge} wire carry more than its ${ampsText(carries)}`
    : `${by} can push ${ampsText(amps)} through a pinched ${gauge} wire, which is good for ${ampsText(carries)}`;
}
