/**
 * Circuits with printed answers, from open textbooks and public handbooks, as data. Every printed figure is to be
 * met to half a unit of its last digit.
 */
import { ac } from './published-ac.ts';
import { battery } from './published-battery.ts';
import type { Item } from './published-item.ts';
import { network } from './published-network.ts';
import { wire } from './published-wire.ts';

export const published: Readonly<Record<'network' | 'wire' | 'ac' | 'battery', readonly Item[]>> = {
  network,
  wire,
  ac,
  battery,
};
