import { isMains } from '../../circuit/sides.ts';
import type { Study } from '../../study/study.ts';
import { triggered } from '../../study/timers/triggers.ts';
import { type Check, extract, type FindingEntry } from '../entry.ts';
import { found } from '../finding.ts';
import type { Finding } from '../report-model.ts';

const entry: FindingEntry = {
  id: 'trigger-may-be-live',
  title: 'the trigger of a timer fed with mains may be at mains potential',
  severity: 'doubt',
  question: 1,
  base: 'timer',
  meaning:
    'In many timers for 24 to 240 V the terminals of the trigger hang together with the supply inside. Fed with mains, their T1 and T2 can then kill, and so can every gate switch and every core of bell wire on them. Feed the timer at extra-low voltage, or state isolation: reinforced where its data say so.',
  wrong: extract(
    '  - {cable: flex, length: 1 m, cores: {brown: [P1.L, KT1.A1]}}',
    '  - {cable: flex, length: 1 m, cores: {blue: [P1.N, KT1.A2]}}',
  ),
  right: extract('  - {link: [plus, KT1.A1]}', '  - {link: [minus, KT1.A2]}'),
  basis: 'data of wide-range timers (memory); IEC 61140 and 60664-1 for reinforced insulation (memory)',
  followsFrom: ['mains-meets-low-voltage'],
};

export const triggerMayBeLive: Check = { entry, find };

function find(study: Study): Finding[] {
  const { sides, plan } = study;
  return triggered(study).flatMap(({ part, relay }) => {
    const supply = relay.senses.find((s) => s.by === 'volts');
    const onMains = supply !== undefined && [supply.a, supply.b].some((net) => isMains(sides, net));
    if (!onMains || part.isolation === 'reinforced') return [];
    const sure = part.isolation !== undefined;
    return [
      found(plan, entry, {
        ...(sure && { severity: 'danger' as const }),
        parts: [part.name],
        terminals: [`${part.name}.T1`, `${part.name}.T2`],
        at: part.where.get('isolation') ?? part.at,
        message: sure
          ? `T1 and T2 of ${part.name} are not parted from its mains supply by reinforced insulation`
          : `whether T1 and T2 of ${part.name} are at mains potential cannot be told: isolation is not stated`,
        why: `${part.name} is fed with mains, and its trigger leads out to the gates. One fault, or none at all, puts mains on their switches.`,
        fix: `Feed ${part.name} from the low-voltage supply; or use one whose data give reinforced insulation between supply and trigger, and state isolation: reinforced.`,
        basis: entry.basis,
      }),
    ];
  });
}
