/** Which published tables apply to a plan that does not say so, by the patterns of its plugs and outlets. */
import type { Practice } from './device-figures.ts';

/** Patterns of NEMA WD 6, with or without the name of the standard, in capitals. */
const NEC = /^(NEMA|L?\d{1,2}-\d{2})/;
/** Patterns of CEE 7, BS 1363, IEC 60309 and AS/NZS 3112, in capitals. */
const IEC = /^(CEE|BS|IEC|EN|AS\b|AS\/|NZS)/;

function practiceOf(pattern: string): Practice | undefined {
  if (NEC.test(pattern)) return 'nec';
  return IEC.test(pattern) ? 'iec' : undefined;
}

/** What the patterns agree on; undefined where they name none or not the same. */
export function practiceByPatterns(patterns: readonly (string | undefined)[]): Practice | undefined {
  const told = new Set(
    patterns.flatMap((p) => (p === undefined ? [] : (practiceOf(p.trim().toUpperCase()) ?? []))),
  );
  return told.size === 1 ? [...told][0] : undefined;
}
