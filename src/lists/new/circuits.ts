/** The circuits a collector may be put on, the smaller first: plugs before wiring it in. */
import { defaults } from '../../ratings/defaults.ts';
import { ordinaryTables } from '../../ratings/ordinary.ts';
import { receptacleByName } from '../../ratings/pattern-names.ts';
import { breakerSizes } from '../../repair/remedies/series.ts';
import type { Answers } from './answers.ts';
import type { DesignCircuit } from './design.ts';

type Place = Omit<DesignCircuit, 'gauge'>;

/** Curves of IEC 60898-1 that start motors, the quicker first; NEC breakers have no letter. */
const curves = ({ practice }: Answers): readonly string[] => (practice === 'nec' ? [''] : [' C', ' D']);

const ampsOf = (text: string): number => Number(/[\d.]+/.exec(text)?.[0]);

/** Every breaker that a pattern's circuit may have. */
function onPattern(answers: Answers, pattern: string): Place[] {
  const { breaker } = answers.circuit;
  if (breaker !== undefined) return [placed(answers, pattern, breaker)];
  if (pattern === 'fixed') return wiredIn(answers);
  const row = receptacleByName(pattern, answers.mains);
  const rated = row?.amps ?? 16;
  const fitting = breakerSizes(answers.practice).filter((size) => size >= rated);
  if (row?.poles.includes('fused'))
    return FUSED_CURVES.map((c) => placed(answers, pattern, `${RING} A ${c}`));
  const least = fitting[0] ?? rated;
  return curves(answers).map((curve) => placed(answers, pattern, `${least} A${curve}`));
}

/** A, and curves of the circuits that sockets for fused plugs are on. */
const RING = defaults.breakerBs1363.value;
const FUSED_CURVES = ['B', 'C'];

/** With the fuse that a plug of its kind has of its own. */
function placed({ mains }: Answers, pattern: string, breaker: string): Place {
  const row = pattern === 'fixed' ? undefined : receptacleByName(pattern, mains);
  return row?.poles.includes('fused') ? { pattern, fuse: `${row.amps} A`, breaker } : { pattern, breaker };
}

function wiredIn(answers: Answers): Place[] {
  const least = ampsOf(answers.motor.amps);
  return breakerSizes(answers.practice)
    .filter((size) => size >= least)
    .flatMap((size) => curves(answers).map((curve) => ({ pattern: 'fixed', breaker: `${size} A${curve}` })));
}

/** Patterns that are on sale everywhere, by what they carry. */
function usualPatterns({ mains, practice }: Answers): readonly string[] {
  return ordinaryTables
    .plugs()
    .rows.filter(
      (r) =>
        r.practice === practice &&
        r.phases === mains.phases &&
        Math.abs(r.volts - mains.volts) < 0.1 * r.volts,
    )
    .map((r) => r.pattern);
}

/** The circuits to try, with no gauge yet. */
export function circuitsFor(answers: Answers): Place[] {
  const { pattern, breaker } = answers.circuit;
  if (pattern !== undefined) return onPattern(answers, pattern);
  const least = breaker === undefined ? ampsOf(answers.motor.amps) : 0;
  const plugs = usualPatterns(answers).filter(
    (p) => (receptacleByName(p, answers.mains)?.amps ?? 0) >= least,
  );
  return [...plugs.flatMap((p) => onPattern(answers, p)), ...onPattern(answers, 'fixed')];
}
