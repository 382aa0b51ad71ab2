/** What lengths are given in, for the schemas of lists. Not loaded by a command. */
import * as z from 'zod';

export const lengthUnitSchema = z.enum(['m', 'ft']);
