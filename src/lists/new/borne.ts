/** Cautions that no choice of parts spares: they come from what the shop is, from the answers, or go with every plan. */

/** Ids with the reason why no default spares them. */
const BORNE: Readonly<Record<string, string>> = {
  'restarts-by-itself': 'any shop whose gates start the collector has it, until a start button is added',
  'motor-unprotected':
    'the protector of the motor resets by itself, as was answered; without any there is an overload relay',
  'C-LOCAL': 'goes with every plan',
  'C-LIMIT': 'goes with every plan',
  'C-UNPLUG': 'goes with every plan',
  'C-CONTROLNOTISOLATION': 'goes with every plan',
  'C-NOTINTERLOCK': 'goes with every plan',
  'C-REMOTESTART': 'goes with every plan',
  'C-HANDSTOP': 'goes with every plan',
  'C-DUSTFIRE': 'goes with every plan',
  'C-CABLEDAMAGE': 'every loop of gates has wires to damage',
  'C-CAPACITOR': 'the motor has one',
  'C-STRAIN': 'a collector on a plug has cords',
  'C-LOCKOUT': 'a collector that is wired in has no plug to pull',
  'C-PLUGHP': 'the plug of the collector',
  'C-GFCI': 'a collector on a plug has a socket',
  'C-DUSTCLASS': 'the size of the shop',
  'C-AIRFIRST': 'goes with every plan on mains',
  'C-UK': 'goes with every plan of its practice',
  'C-EU': 'goes with every plan of its practice',
  'C-CA': 'goes with every plan of its practice',
  'C-AUTORESET': 'the protector of the motor resets by itself, as was answered',
  'C-NOLOADVOLTS': 'every transformer gives more at light load; one is taken only where it is asked for',
};

export const isBorne = (id: string): boolean => Object.hasOwn(BORNE, id);
