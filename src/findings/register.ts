/** Every finding there is, in the order of the questions. */
import { apartChecks } from './apart/register.ts';
import { coilChecks } from './coil/register.ts';
import { contactsChecks } from './contacts/register.ts';
import type { Check, FindingEntry } from './entry.ts';
import type { FindingId } from './finding-ids.ts';
import { loopChecks } from './loop/register.ts';
import { mainsChecks } from './mains/register.ts';
import { startsChecks } from './starts/register.ts';

export const REGISTER: readonly Check[] = [
  ...apartChecks,
  ...startsChecks,
  ...coilChecks,
  ...loopChecks,
  ...contactsChecks,
  ...mainsChecks,
];

const byId = new Map(REGISTER.map(({ entry }) => [entry.id, entry]));

export function entryOf(id: FindingId): FindingEntry {
  return byId.get(id)!;
}
