import { isLanded } from '../../circuit/terminals.ts';
import { isFixedFeed } from '../../plan/fixed-feed.ts';
import type { OutletPart, PlugPart } from '../../plan/part-types.ts';
import type { Plan } from '../../plan/plan.ts';
import { defaults } from '../../ratings/defaults.ts';
import { phasesOf } from '../../ratings/horsepower.ts';
import { motorCurrents } from '../../ratings/motor.ts';
import { patternsMeant } from '../../ratings/pattern-names.ts';
import { judgePlug, type PlugJudgement } from '../../ratings/receptacle.ts';
import type { Study } from '../../study/study.ts';
import { rounded, roundedOrNull } from '../../text/numbers.ts';
import { listOf } from '../../text/word-list.ts';
import type { Check, FindingEntry } from '../entry.ts';
import { COMMON_PRACTICE, found } from '../finding.ts';
import type { Finding } from '../report-model.ts';
import { loadsOnWrongVolts, suits, type WrongVolts } from './load-volts.ts';
import { type FedPlug, fedPlugs, type Load, outletsBehind } from './plug-loads.ts';

const entry: FindingEntry = {
  id: 'plug-mismatch',
  title: 'plug, outlet, motor and circuit do not belong together',
  severity: 'danger',
  question: 7,
  base: 'dc-chain',
  meaning:
    'A plug or outlet is made for less current or another voltage than this circuit, or the motor for another voltage. It overheats, or takes a machine that does not belong there. A core may lie on a neutral or an earth that the pattern has no contact for. A pattern that is not stated or not known is a doubt.',
  wrong: '    pattern: NEMA 5-15',
  right: '    pattern: NEMA L5-30',
  basis: 'NEMA WD 6, CEE 7, BS 1363, IEC 60309, AS/NZS 3112',
  followsFrom: [],
};

export const plugMismatch: Check = { entry, find };

function find(study: Study): Finding[] {
  const unsuited = new Set(
    fedPlugs(study).flatMap((fed) => fed.loads.filter((l) => isOfOtherVolts(fed.plug, l))),
  );
  const wired = loadsOnWrongVolts(study).filter(({ load }) => statesVolts(load) && !unsuited.has(load));
  return [...byPlugs(study), ...wired.map((w) => onWrongVolts(study, w))];
}

function onWrongVolts({ plan }: Study, { load, source, poles, volts }: WrongVolts): Finding {
  const [made, gets] = [load.volts.volts, rounded(volts)];
  return found(plan, entry, {
    severity: source.mains ? 'danger' : 'warning',
    parts: [load.name, source.part],
    at: load.where.get('volts') ?? load.at,
    message: `${load.name} is made for ${made} V and gets ${gets} V, between ${poles.map((t) => `${source.part}.${t}`).join(' and ')}`,
    why: 'On too many volts it overheats or bursts, on too few it does not start.',
    fix: `Join ${load.name} to conductors with ${made} V between them, or use one made for ${gets} V.`,
    figures: [
      { name: 'made for', value: made, unit: 'V' },
      { name: 'gets', value: gets, unit: 'V' },
    ],
    basis: COMMON_PRACTICE,
    twin: { name: load.name, alike: `${made} ${gets} ${source.part}` },
  });
}

function byPlugs(study: Study): Finding[] {
  return fedPlugs(study).flatMap((fed) => [
    ...patternMisfits(study, fed).map((misfit) => wrongPattern(study, misfit)),
    ...fed.loads
      .filter((load) => isOfOtherVolts(fed.plug, load))
      .map((load) => wrongVolts(study, fed.plug, load)),
    ...(isOddlyNamed(study, fed.plug) ? [oddlyNamed(study, fed.plug)] : []),
  ]);
}

/** A plug or outlet that does not suit its circuit. */
interface Misfit {
  readonly part: PlugPart | OutletPart;
  /** it, and what has the same mistake */
  readonly names: string[];
  readonly judged: PlugJudgement;
  /** what hangs on it */
  readonly fed: FedPlug;
}

/** The plug, and the outlets that hang on it. */
function patternMisfits(study: Study, fed: FedPlug): Misfit[] {
  const { plan } = study;
  const { plug, loads } = fed;
  const running = loads.map((l) => motorCurrents(l, plan.practice).running?.amps);
  const total = running.some((r) => r === undefined) ? undefined : running.reduce((a, b) => a! + b!, 0);
  const misfits: Misfit[] = [];
  const seen = new Set<string | undefined>();
  for (const part of [plug, ...outletsBehind(study, plug)]) {
    const judged = judgePlug({
      pattern: part.pattern,
      volts: voltsAt(plug, part),
      phases: part.feed === 'three-phase' || loads.some((l) => phasesOf(l) === 3) ? 3 : 1,
      running: total,
      ...(plug.breaker === undefined ? {} : { breaker: plug.breaker }),
      practice: plan.practice,
      wired: wiredOf(plan, part.name),
      isSocket: part.kind === 'outlet' && part.pattern !== plug.pattern,
    });
    const bad = judged.find((j) => j.verdict === 'fail') ?? judged.find((j) => j.verdict === 'cannot-tell');
    if (!bad) continue;
    const [first] = misfits;
    // A plug and its outlet of one pattern are one mistake.
    if (first && seen.has(part.pattern)) first.names.push(part.name);
    else misfits.push({ part, names: [part.name], judged: bad, fed });
    seen.add(part.pattern);
  }
  return misfits;
}

/** V of an outlet of one leg or phase are those to the neutral. */
function voltsAt({ volts, feed }: PlugPart, part: PlugPart | OutletPart): number {
  if (part.feed !== 'single' || part.kind === 'plug') return volts.volts;
  if (feed === 'three-phase') return volts.volts / Math.sqrt(3);
  return feed === 'two-leg' ? volts.volts / 2 : volts.volts;
}

/** Volts that are mostly those between two legs or phases, and hardly ever those of a line to the neutral. */
const betweenLines = ({ practice }: Plan) =>
  practice === 'nec' ? defaults.betweenLinesNec : defaults.betweenLinesIec;

/** A wired-in circuit of such volts, of which the plan calls one conductor the neutral. */
function isOddlyNamed({ plan, circuit }: Study, plug: PlugPart): boolean {
  const { low, high } = betweenLines(plan);
  const { volts } = plug.volts;
  return (
    plug.feed === 'single' &&
    isFixedFeed(plug) &&
    volts >= low &&
    volts <= high &&
    isLanded(circuit, plug, 'N')
  );
}

function oddlyNamed({ plan }: Study, plug: PlugPart): Finding {
  const { volts } = plug.volts;
  return found(plan, entry, {
    severity: 'doubt',
    parts: [plug.name],
    at: plug.where.get('volts') ?? plug.at,
    message: `whether ${plug.name}.N is a neutral cannot be told: ${volts} V are mostly those between two live ${plan.practice === 'nec' ? 'legs' : 'phases'}`,
    why: 'Then both conductors are live, each has to be opened, and neither may wear the colour of a neutral.',
    fix: `Land the cores on ${plug.name}.L1 and ${plug.name}.L2 in the plan if both are live; else state the volts between line and neutral.`,
    basis: `${betweenLines(plan).basis} (from memory)`,
    twin: { name: plug.name },
  });
}

/** Terminals of a part that cores land on. */
function wiredOf(plan: Plan, name: string): string[] {
  const ends = plan.runs.flatMap((run) => run.cores.flatMap((core) => [core.a, core.b]));
  return ends.flatMap((end) => (end.part === name ? [end.terminal] : []));
}

/** What is wrong, the rating of the pattern first. */
function misfitWords({ part, judged, fed: { plug, loads } }: Misfit): string {
  const [needed, madeFor] = [roundedOrNull(judged.needed), roundedOrNull(judged.found)];
  const names = listOf(loads.map((l) => l.name));
  const is = `${part.name} (${part.pattern}) is made for`;
  switch (judged.aspect) {
    case 'voltage':
      return `${is} ${madeFor} V and the circuit has ${needed} V`;
    case 'phases':
      return `${is} ${madeFor === 1 ? 'one phase' : 'three phases'} and ${names} for ${needed === 1 ? 'one' : 'three'}`;
    case 'contacts':
      return `${part.name} (${part.pattern}) has no contact for ${judged.missing === 'PE' ? 'the earth' : 'a neutral'}, and a core is on ${part.name}.${judged.missing}`;
    case 'breaker':
      return `${is} ${madeFor} A and stands behind a breaker of ${plug.breaker} A, which lets more through`;
    default:
      return `${is} ${madeFor} A and ${names} ${loads.length > 1 ? 'draw' : 'draws'} ${needed} A`;
  }
}

/** What the pattern that was typed may be meant for. */
function meantWords({ pattern }: PlugPart | OutletPart): string {
  const meant = pattern === undefined ? [] : patternsMeant(pattern);
  if (meant.length === 0) return '';
  return ` ${pattern} ${meant.length === 1 ? `is perhaps ${meant[0]}` : `may be any of ${listOf(meant)}`}.`;
}

function wrongPattern({ plan }: Study, misfit: Misfit): Finding {
  const { part, names, judged } = misfit;
  const [needed, madeFor] = [roundedOrNull(judged.needed), roundedOrNull(judged.found)];
  const { unit } = judged;
  const fails = judged.verdict === 'fail';
  return found(plan, entry, {
    severity: fails ? 'danger' : 'doubt',
    parts: names,
    at: part.where.get('pattern') ?? part.at,
    message: fails
      ? misfitWords(misfit)
      : `whether ${part.name} suits the motor cannot be told: ${judged.missing ?? 'its pattern'} is not stated or not known`,
    why: fails
      ? judged.aspect === 'contacts'
        ? `What hangs on that core has no ${judged.missing === 'PE' ? 'earth: its metal can become live' : 'way back, or comes back over the earth or another leg'}.`
        : 'A plug or socket below its load overheats; one of another voltage may take the wrong machine.'
      : 'A figure that is not stated is never taken as enough.',
    fix: fails
      ? `${names.join(' and ')} ${names.length === 1 ? 'is' : 'are'} made for another circuit.`
      : `State pattern: of ${part.name} (such as NEMA 5-20, BS 1363, CEE 7/4, IEC 60309 16 A blue 2P+E), or fixed.${meantWords(part)}`,
    figures: [
      { name: 'needed', value: needed, unit },
      { name: 'made for', value: madeFor, unit },
    ],
    basis: judged.basis,
  });
}

/** Whether the plan says of the volts of a load that they are others than those of its plug; what is left out is asked for. */
const isOfOtherVolts = (plug: PlugPart, load: Load): boolean => statesVolts(load) && !voltsSuit(plug, load);

const statesVolts = (load: Load): boolean => load.where.get('volts') !== undefined;

/** Within 15 % above and 20 % below what a load of its kind gets from the plug, whole or between a leg and neutral. */
function voltsSuit(plug: PlugPart, load: Load): boolean {
  const full = plug.volts.volts;
  const single = load.feed === 'single';
  const offers = [
    full,
    ...(single && plug.feed === 'two-leg' ? [full / 2] : []),
    ...(single && plug.feed === 'three-phase' ? [full / Math.sqrt(3)] : []),
  ];
  return offers.some((v) => suits(load.volts.volts, v));
}

function wrongVolts({ plan }: Study, plug: PlugPart, load: Load): Finding {
  return found(plan, entry, {
    parts: [load.name, plug.name],
    at: load.where.get('volts') ?? load.at,
    message: `${load.name} is made for ${load.volts.volts} V and ${plug.name} gives ${plug.volts.volts} V`,
    why: 'A motor on the wrong voltage overheats or does not start.',
    fix: `${load.name} and ${plug.name} have to be of one voltage.`,
    figures: [
      { name: 'motor', value: load.volts.volts, unit: 'V' },
      { name: 'circuit', value: plug.volts.volts, unit: 'V' },
    ],
    basis: COMMON_PRACTICE,
  });
}
