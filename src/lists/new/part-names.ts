/** Names that a new plan gives its own parts, which no gate or cut-out may have. */
const OWN = new Set(
  [
    'PS1',
    'T1',
    'F1',
    'K1',
    'KT1',
    'Q1',
    'OL1',
    'D1',
    'D2',
    'P1',
    'X1',
    'B1',
    'go',
    'call',
    'common',
    'neutral',
    'hand',
    'collector',
  ].map((name) => name.toLowerCase()),
);

export const isReserved = (name: string): boolean =>
  OWN.has(name.toLowerCase()) || /^feed(?:-\d+)?$/i.test(name);
