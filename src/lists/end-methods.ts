/** The ways in which the end of a core is joined. Common practice, no source. */

export const END_METHODS = ['tab', 'screw', 'splice', 'clamp', 'lead', 'earth', 'battery'] as const;

/** How the end of a core is joined. */
export type EndMethod = (typeof END_METHODS)[number];

/** What each method is, for the legend of a list. */
export const METHOD_WORDS: Readonly<Record<EndMethod, string>> = {
  tab: 'quick-connect tab crimped on, or soldered, at a snap switch; where two cores go to one blade, both are crimped in one connector',
  screw: 'screw terminal of a supply, relay socket, board, control or fuse holder',
  splice: 'wire nut or splicing connector, all wires of the joint together',
  clamp: 'screw clamp under the fixed cap of a plug or outlet',
  lead: "soldered or crimped to the part's own lead, and sleeved",
  earth: 'ring tongue under the earth screw of the box or of the motor',
  battery: 'quick-connect tab crimped on, at a battery',
};
