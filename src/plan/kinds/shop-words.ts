/** Words that a shop has for a part, and the kind that a plan calls it. */

const TRIPS =
  "; a contact that opens by itself to stop something (float, bin, door, limit, pressure, heat, overload, emergency stop) is a cutout, a hand switch that stays put a switch, one that springs back a button, a blast gate's a gate";

const MEANT: readonly (readonly [RegExp, string])[] = [
  [
    /^(float|level|limit|pressure|vacuum|bin|door|thermostat|thermal|overload|interlock|e-?stop|emergency(-stop)?|sensor)([- ]?(switch|contact|relay|stop))?$/i,
    TRIPS,
  ],
  [/^(micro|snap|blast|roller)[- ]?(switch|gate)$/i, '; the snap switch of a blast gate is a gate'],
  [/^(toggle|rocker|hand|isolator|disconnect)([- ]?switch)?$/i, '; a hand switch that stays put is a switch'],
  [/^(push|start|stop)[- ]?button$/i, '; one that springs back is a button'],
  [/^(contactor|starter|solenoid)$/i, '; a contactor is a relay'],
  [/^(transformer|adapter|adaptor|psu|power[- ]?supply)$/i, '; it is a supply'],
  [/^(wire|cord|flex)$/i, '; a cable stands in stock, and runs name it'],
  [/^(socket|receptacle)$/i, '; it is an outlet'],
  [/^(breaker|mcb)$/i, '; a breaker is a figure of the plug or fixed feed it stands ahead of, breaker: 20 A'],
  [/^(splice|terminal|terminal[- ]?(strip|block)|wire[- ]?nut|junction)$/i, '; it is a joint'],
];

/** Letters beyond which a word is none of a shop's. */
const LONGEST = 40;

/** What a shop's word for a part is called in a plan, as the end of a complaint; undefined for any other word. */
export function inShops(word: string): string | undefined {
  if (word.length > LONGEST) return undefined;
  return MEANT.find(([pattern]) => pattern.test(word.trim()))?.[1];
}
