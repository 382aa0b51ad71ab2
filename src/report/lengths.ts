/** Lengths of cable in words. */

/** m to the centimetre, without a tail of noughts; `` for what is not known. */
export function metreWords(metres: number | null): string {
  return metres === null ? '' : `${Number(metres.toFixed(2))} m`;
}

/** `7 ft 3 in`, rounded up to the inch. */
export function feetWords(metres: number): string {
  const inches = Math.ceil(metres / 0.0254 - 1e-6);
  const feet = Math.floor(inches / 12);
  return [feet > 0 ? `${feet} ft` : '', inches % 12 > 0 || feet === 0 ? `${inches % 12} in` : '']
    .filter((w) => w !== '')
    .join(' ');
}
