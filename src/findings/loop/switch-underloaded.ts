import type { FindingEntry } from '../entry.ts';

export const switchUnderloaded: FindingEntry = {
  id: 'switch-underloaded',
  title: 'too little current to keep the switch clean',
  severity: 'caution',
  question: 5,
  base: 'board',
  meaning:
    'Silver contacts need a certain current to break the film that grows on them. Below it the switch works when new and becomes unreliable after a damp winter. A switch that states no least current is taken to need 10 mA, one with gold contacts 1 mA. Boards and small relays want gold.',
  wrong: 'least: 100 mA 5 V DC',
  right: 'least: 1 mA 5 V DC',
  basis: 'least current as printed on the switch; 10 mA for a switch that states none is common practice',
  followsFrom: [],
};
