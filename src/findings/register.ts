/** Every finding there is, in the order of the questions. */
import { apartEntries } from './apart/register.ts';
import { coilEntries } from './coil/register.ts';
import { contactsEntries } from './contacts/register.ts';
import type { FindingEntry } from './entry.ts';
import type { FindingId } from './finding-ids.ts';
import { loopEntries } from './loop/register.ts';
import { mainsEntries } from './mains/register.ts';
import { startsEntries } from './starts/register.ts';

export const REGISTER: readonly FindingEntry[] = [
  ...apartEntries,
  ...startsEntries,
  ...coilEntries,
  ...loopEntries,
  ...contactsEntries,
  ...mainsEntries,
];

const byId = new Map(REGISTER.map((entry) => [entry.id, entry]));

export function entryOf(id: FindingId): FindingEntry {
  return byId.get(id)!;
}
