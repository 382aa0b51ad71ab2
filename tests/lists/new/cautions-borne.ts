/**
 * Cautions that a new plan may have, with the reason why no other default would have spared them. Kept apart from the
 * product's own list, so that one of them alone does not make a caution acceptable.
 */
export const BORNE: ReadonlyMap<string, string> = new Map([
  [
    'restarts-by-itself',
    'gates that start a collector start it again after a power cut; new asks for no start button',
  ],
  ['C-LOCAL', 'printed with every plan'],
  ['C-LIMIT', 'printed with every plan'],
  ['C-UNPLUG', 'printed with every plan'],
  ['C-CONTROLNOTISOLATION', 'printed with every plan'],
  ['C-NOTINTERLOCK', 'printed with every plan'],
  ['C-REMOTESTART', 'printed with every plan'],
  ['C-HANDSTOP', 'printed with every plan'],
  ['C-DUSTFIRE', 'printed with every plan'],
  ['C-AIRFIRST', 'printed with every plan that has mains'],
  ['C-UK', 'printed with every plan of practice iec'],
  ['C-EU', 'printed with every plan of practice iec'],
  ['C-CA', 'printed with every plan of practice nec'],
  ['C-CABLEDAMAGE', 'every plan with gates'],
  ['C-CAPACITOR', 'the motor has a capacitor'],
  ['C-DUSTCLASS', 'the size of the collector or the number of gates'],
  ['C-STRAIN', 'a cord into the box: the collector has a plug'],
  ['C-GFCI', 'a socket: the collector has a plug'],
  ['C-PLUGHP', 'a plug above 1/3 hp'],
  ['C-LOCKOUT', 'the collector is wired in'],
]);

/** Cautions that come of an answer, and the answer they come of. */
export const OF_ANSWERS: ReadonlyMap<string, readonly [key: string, answer: RegExp]> = new Map([
  ['motor-unprotected', ['protector', /^automatic$/]],
  ['C-AUTORESET', ['protector', /^automatic$/]],
  ['C-NOLOADVOLTS', ['supply', /AC|unregulated/]],
  ['C-TOOHIGHVOLTS', ['supply', /AC/]],
  ['C-NOTCLASS2', ['supply', /^(?!choose)(?!.*class 2)/]],
  ['C-RELAYISOLATION', ['relay', /^coil/]],
] as const);
