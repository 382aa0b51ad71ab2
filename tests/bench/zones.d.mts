/** The text of a plan of `zones` zones with `gates` gates each; see zones.mjs. */
export function zonesOf(
  zones: number,
  gates: number,
  options?: {
    readonly trunk?: 'chain' | 'star' | 'ring';
    readonly current?: 'dc' | 'ac';
    readonly lamps?: 'lamp' | 'led' | undefined;
    readonly suppressor?: 'none' | 'diode';
  },
): string;
