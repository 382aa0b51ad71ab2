import { isFixedFeed } from '../../plan/fixed-feed.ts';
import type { Study } from '../../study/study.ts';
import { milliampsText, rounded, roundedOrNull } from '../../text/numbers.ts';
import { type Check, extract, type FindingEntry } from '../entry.ts';
import { found } from '../finding.ts';
import { fedPlugs } from '../mains/plug-loads.ts';
import type { Finding } from '../report-model.ts';
import { contactOf, type JudgedContact } from './judged-contact.ts';
import { judgedContacts, oncePerPart } from './judged-contacts.ts';

const entry: FindingEntry = {
  id: 'contact-leakage',
  title: 'a solid-state output is never quite off',
  severity: 'warning',
  question: 6,
  base: 'fixed-motor',
  meaning:
    'A solid-state relay leaks a few milliamperes while off, so the motor lead tingles and reads live on a meter; and it makes 1 to 1.5 W of heat for each ampere. When it fails, it mostly fails in the on state. Use a contactor, or put one in line as the means of stopping. One that is rated for motors, behind a plug that can be pulled, is a caution.',
  wrong: extract('    kind: relay', '    technology: solid-state'),
  right: '    kind: relay',
  basis: 'relay makers’ application guidance, several agree; 29 CFR 1910.147(b)',
  followsFrom: [],
};

export const contactLeakage: Check = { entry, find };

/** W of heat for each ampere, A that need a heat sink, A that leak where not stated; makers' data, heat from memory. */
const SOLID = { watts: [1, 1.5], sink: [3, 5], leak: [0.001, 0.01] } as const;

function find(study: Study): Finding[] {
  const solid = judgedContacts(study).filter((g) => g.feeds === 'load' && g.device === 'solid-state');
  return oncePerPart(solid, (g) => g).map((g) => leaks(study, g));
}

/** Its label has a horsepower or AC-3 figure, as a semiconductor controller has (IEC 60947-4-2). */
function isMeantForMotor(g: JudgedContact): boolean {
  const contact = contactOf(g);
  return contact !== undefined && (contact.motor.length > 0 || contact.ac3 !== undefined);
}

/** What it feeds comes dead by pulling a plug. */
function isPlugIn(study: Study, { loads }: JudgedContact): boolean {
  const behind = fedPlugs(study).filter((f) => f.loads.some((l) => loads.includes(l.name)));
  return behind.length > 0 && behind.every((f) => !isFixedFeed(f.plug));
}

function leaks(study: Study, g: JudgedContact): Finding {
  const { plan } = study;
  const { part, loads } = g;
  const meantFor = isMeantForMotor(g) && isPlugIn(study, g);
  const stated = 'off_leakage' in part ? part.off_leakage : undefined;
  const leak =
    stated === undefined
      ? `${rounded(SOLID.leak[0] * 1000)} to ${milliampsText(SOLID.leak[1])}`
      : milliampsText(stated);
  const amps = g.currents.running?.amps;
  return found(plan, entry, {
    ...(meantFor && { severity: 'caution' as const }),
    parts: [part.name, ...loads],
    at: part.where.get('technology') ?? part.at,
    message: `${leak} still reach ${loads.join(', ')} with ${part.name} off: it is solid-state`,
    why: `Off is not isolation: the motor lead reads live on a meter. When it fails it mostly stays on. Inside it, ${heat(amps)}; it needs a heat sink above ${SOLID.sink[0]} to ${SOLID.sink[1]} A.`,
    fix: `${part.name} does not part ${loads.join(', ')} from the mains; ${meantFor ? 'pull the plug before you touch the motor or its lead' : 'a contact has to do that'}.`,
    figures: [
      { name: 'leakage', value: roundedOrNull(stated), unit: 'A' },
      { name: 'running', value: roundedOrNull(amps), unit: 'A' },
    ],
    basis: 'relay makers’ application guidance, several agree; heat from memory; 29 CFR 1910.147(b)',
  });
}

function heat(amps: number | undefined): string {
  const [least, most] = SOLID.watts;
  return amps === undefined
    ? `each ampere makes ${least} to ${most} W of heat`
    : `${rounded(amps)} A make ${rounded(least * amps, 2)} to ${rounded(most * amps, 2)} W of heat`;
}
