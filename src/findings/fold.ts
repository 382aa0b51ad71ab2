import { type Finding, SEVERITIES } from './report-model.ts';

/**
 * What follows from what: a finding on the left is folded under the first of the findings on the right that stands.
 * The cause keeps its own words and lists the effect under `also`.
 */
const FOLLOWS: Readonly<Record<string, readonly string[]>> = {
  'loop-dead': [
    'supply-shorted',
    'diode-backwards',
    'polarity-reversed',
    'coil-shorted',
    'coil-too-low',
    'coil-in-series',
    'chatters',
    'mains-shorted',
    'mains-meets-low-voltage',
    'supplies-joined',
    'earth-as-return',
  ],
  'gate-dead': [
    'diode-backwards',
    'polarity-reversed',
    'coil-shorted',
    'coil-too-low',
    'coil-in-series',
    'chatters',
    'mains-shorted',
    'supply-shorted',
    'mains-meets-low-voltage',
  ],
  'runs-with-all-shut': ['supply-shorted', 'mains-meets-low-voltage', 'mains-shorted'],
  'circuit-overloaded': ['plug-mismatch'],
  'gate-stops-load': [
    'supply-shorted',
    'mains-shorted',
    'polarity-reversed',
    'diode-backwards',
    'runs-with-all-shut',
  ],
  'stops-without-cause': ['supply-shorted', 'mains-shorted', 'polarity-reversed'],
  'depends-on-order': ['chatters', 'stays-on', 'mains-meets-low-voltage'],
  chatters: ['mains-meets-low-voltage', 'mains-shorted'],
  'loose-end': ['loop-dead', 'gate-dead', 'earth-broken', 'mains-meets-low-voltage'],
  'runs-without-cause': ['block-ignored', 'stays-on'],
  'line-not-switched': ['line-neutral-swapped'],
  'insulation-too-low': ['mains-through-gate', 'mains-meets-low-voltage', 'sides-share-cable'],
  'sides-share-cable': ['mains-meets-low-voltage'],
  'low-voltage-earthed': ['mains-meets-low-voltage'],
  'supply-shorted': ['mains-meets-low-voltage'],
  'coil-too-low': ['coil-in-series', 'supply-shorted', 'coil-shorted', 'supplies-joined'],
  'stays-on': ['coil-holds-in'],
  'coil-drops-at-start': ['coil-too-low'],
  'coil-thin-margin': ['coil-too-low'],
  'drop-large': ['coil-too-low', 'coil-thin-margin'],
  'supply-not-limited': ['wire-overloaded'],
  'coil-holds-in': ['coil-in-series', 'polarity-reversed', 'diode-backwards'],
  'fuse-too-small': ['supply-shorted', 'diode-backwards'],
  'contact-starting': ['contact-not-motor-rated', 'contact-horsepower'],
  'contact-running': ['contact-horsepower', 'contact-not-motor-rated'],
};

/** Findings of questions 2 and 3 that one proved move of a core does away with. */
const BY_A_MOVE = new Set([
  'loop-dead',
  'gate-dead',
  'gates-in-series',
  'runs-with-all-shut',
  'gate-stops-load',
  'runs-without-cause',
  'stops-without-cause',
  'block-ignored',
  'stays-on',
  'chatters',
  'depends-on-order',
  'supply-shorted',
  'loose-end',
  'coil-in-series',
  'coil-holds-in',
  'runs-on-dead-supply',
]);

/** Folds effects under causes, drops duplicates and puts the list in order: question, severity, place, id. */
export function arrange(all: readonly Finding[]): Finding[] {
  const list = withoutDuplicates(all);
  const also = new Map<Finding, string[]>();
  const kept: Finding[] = [];
  const move =
    list.find((f) => f.id === 'gate-on-wrong-tab') ??
    list.find((f) => f.id === 'gate-dead' && / is the wrong way round$/.test(f.message));
  for (const f of list) {
    const cause =
      move && f !== move && BY_A_MOVE.has(f.id)
        ? move
        : (FOLLOWS[f.id] ?? [])
            .map((id) =>
              list.find((c) => c.id === id && c !== f && related(f, c) && (isGrave(c) || !isGrave(f))),
            )
            .find((c) => c !== undefined);
    if (cause) also.set(cause, [...(also.get(cause) ?? []), `${f.message} [${f.id}]`]);
    else kept.push(f);
  }
  // A cause may itself have been folded under another; its effects then go one further up.
  const result = kept.map((f) => ({ ...f, also: [...f.also, ...gather(f, also, list)] }));
  return result.sort(
    (a, b) =>
      a.question - b.question ||
      SEVERITIES.indexOf(a.severity) - SEVERITIES.indexOf(b.severity) ||
      a.line - b.line ||
      a.column - b.column ||
      (a.id < b.id ? -1 : 1),
  );
}

/** A doubt or a notice explains no danger, warning or fault. */
function isGrave(f: Finding): boolean {
  return f.severity === 'danger' || f.severity === 'warning' || f.severity === 'fault';
}

/** A contact's figure follows from another of the same contact, a loose end from what its part has; the rest follow anywhere. */
function related(effect: Finding, cause: Finding): boolean {
  if (effect.id === 'contact-starting' || effect.id === 'contact-running')
    return effect.parts[0] === cause.parts[0];
  if (!['loose-end', 'line-not-switched'].includes(effect.id)) return true;
  return effect.parts.some(
    (p) => cause.parts.includes(p) || cause.terminals.some((t) => t.startsWith(`${p}.`)),
  );
}

function gather(
  f: Finding,
  also: ReadonlyMap<Finding, string[]>,
  list: readonly Finding[],
  seen = new Set<Finding>(),
): string[] {
  const original = list.find((x) => x.id === f.id && x.message === f.message)!;
  if (seen.has(original)) return [];
  seen.add(original);
  const own = also.get(original) ?? [];
  const below = list
    .filter((x) => own.includes(`${x.message} [${x.id}]`))
    .flatMap((x) => gather(x, also, list, seen));
  return [...own, ...below];
}

function withoutDuplicates(all: readonly Finding[]): Finding[] {
  const seen = new Set<string>();
  return all.filter((f) => {
    const key = `${f.id}|${f.message}`;
    return seen.has(key) ? false : seen.add(key);
  });
}
