/** `zones` zones with `gates` gates each, as the text of a plan. */
export function zonesOf(
  zones: number,
  gates: number,
  options?: {
    readonly trunk?: 'chain' | 'star' | 'ring';
    readonly current?: 'dc' | 'ac';
    readonly lamps?: 'lamp' | 'led';
    readonly suppressor?: 'none' | 'diode';
  },
): string;
