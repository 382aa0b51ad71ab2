import { netAt } from '../../circuit/terminals.ts';
import type { Study } from '../../study/study.ts';
import { type Check, extract, type FindingEntry } from '../entry.ts';
import { COMMON_PRACTICE, finding } from '../finding.ts';
import type { Finding } from '../report-model.ts';

const entry: FindingEntry = {
  id: 'fuse-bypassed',
  title: 'both ends of a fuse are on one conductor',
  severity: 'warning',
  question: 5,
  ofWiring: true,
  base: 'battery',
  meaning:
    'A wire joins the two ends of the fuse. All works as before, and whatever flows goes past it: in a fault nothing opens before the wire burns. Look for a jumper that was put there to try something, or a core on the wrong end.',
  wrong: extract('  - {cable: twin, length: 15 cm, cores: {red: [BAT.+, F1.1]}}', '  - {link: [F1.1, F1.2]}'),
  right: '  - {cable: twin, length: 15 cm, cores: {red: [BAT.+, F1.1]}}',
  basis: COMMON_PRACTICE,
  followsFrom: [],
};

export const fuseBypassed: Check = { entry, find };

function find({ plan, circuit, sides }: Study): Finding[] {
  return [...plan.parts.values()].flatMap((part) => {
    if (part.kind !== 'fuse') return [];
    const [a, b] = ['1', '2'].map((t) => netAt(circuit, part.name, t));
    if (a === undefined || a !== b) return [];
    return [
      finding(plan, {
        ...{ id: entry.id, severity: entry.severity },
        question: sides.mains.has(a) ? 7 : entry.question,
        parts: [part.name],
        terminals: [`${part.name}.1`, `${part.name}.2`],
        message: `both ends of fuse ${part.name} are on one conductor: nothing goes through it`,
        why: 'What flows in a fault goes past it, and nothing opens before the wire burns.',
        fix: `Take off what joins ${part.name}.1 and ${part.name}.2, so that all that it protects comes from one end alone.`,
        basis: entry.basis,
        twin: { alike: 'bypassed' },
      }),
    ];
  });
}
