/** Checks that are still made several at a time. */
import { perStudy } from '../study/per-study.ts';
import type { Study } from '../study/study.ts';
import { checkCoils } from './coil/coil.ts';
import { checkContacts } from './contacts/contacts.ts';
import { motorUnprotected } from './contacts/overload.ts';
import { checkStartsPerHour } from './contacts/starts-per-hour-found.ts';
import type { Check, FindingEntry } from './entry.ts';
import { checkBatteries } from './loop/battery.ts';
import { checkLoop } from './loop/loop.ts';
import { checkSupplies } from './loop/supplies.ts';
import { checkWires } from './loop/wires.ts';
import type { Finding } from './report-model.ts';

const GROUPS: readonly ((s: Study) => readonly Finding[])[] = [
  (s) => checkSupplies(s),
  (s) => checkCoils(s).findings,
  (s) => checkLoop(s, s.coilStates),
  (s) => checkWires(s, s.electrics, s.coilStates),
  (s) => checkBatteries(s, s.electrics),
  (s) => checkContacts(s).findings,
  (s) => [...s.plan.parts.values()].flatMap((p) => (p.kind === 'motor' ? motorUnprotected(s, p) : [])),
  (s) => checkStartsPerHour(s),
];

const all = perStudy((s) => GROUPS.flatMap((group) => group(s)));

export function grouped(entry: FindingEntry): Check {
  return { entry, find: (s) => all(s).filter((f) => f.id === entry.id) };
}
