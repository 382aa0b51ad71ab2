/** Whether a contactor's coil may hang in the loop, or a small relay between the two is the better answer. */
import { isContactor } from '../../circuit/thresholds.ts';
import { judgedContacts } from '../../findings/contacts/judged-contacts.ts';
import type { Coil } from '../../plan/device-figures.ts';
import type { RelayPart } from '../../plan/part-types.ts';
import type { Plan } from '../../plan/plan.ts';
import { copperFactor } from '../../ratings/coil.ts';
import { defaults } from '../../ratings/defaults.ts';
import { Bench } from '../../repair/remedies/bench.ts';
import { withCoil, withParts } from '../../repair/remedies/put.ts';
import { relayBetween } from '../../repair/remedies/relay-between.ts';
import { COIL_POWERS } from '../../repair/remedies/series.ts';
import { ambientOf } from '../../study/corners.ts';
import { rounded } from '../../text/numbers.ts';
import type { Section, SizeFigure } from './size-model.ts';
import { type Tight, tight } from './tight.ts';
import { Trial } from './trial.ts';

/** Judgements that the search for a relay in between may ask for. */
const PURSE = { whole: 12, single: 60 };

const powerUnit = ({ coil }: RelayPart): 'W' | 'VA' => (coil.rated.kind === 'ac' ? 'VA' : 'W');
const usual = (relay: RelayPart) =>
  relay.coil.rated.kind === 'ac' ? defaults.coilVaAcContactor : defaults.coilWattsDcContactor;

/**
 * A contactor's coil of some power for the volts of the relay's own: it closes by IEC 60947-4-1 at 85 % while warm, so that
 * at 20 °C it needs so much less; all else at its worse end.
 */
function contactorCoil(plan: Plan, { coil }: RelayPart, power: number): Coil {
  const { rated } = coil;
  const ac = rated.kind === 'ac';
  const rise = defaults.hotRiseContactor.low;
  const share = defaults.pullInContactor.high;
  const common = {
    rated,
    ...(coil.frequency !== undefined && { frequency: coil.frequency }),
    power: { watts: power, unit: ac ? ('VA' as const) : ('W' as const) },
    dropOut: { fraction: ac ? defaults.dropOutAcContactor.low : defaults.dropOutDc.low },
    most: coil.most ?? { fraction: defaults.mostCoil.high },
    hotRise: rise,
    tolerance: defaults.coilTolerance.value,
  };
  if (!ac) {
    const warm = copperFactor(ambientOf(plan) + rise);
    return { ...common, pullIn: { fraction: share / warm }, suppressor: coil.suppressor ?? 'varistor' };
  }
  return {
    ...common,
    pullIn: { fraction: share },
    inrush: power * defaults.inrushRatioContactor.high,
    powerFactor: defaults.coilPowerFactor.low,
    inrushPowerFactor: defaults.coilInrushPowerFactor.high,
    suppressor: coil.suppressor ?? 'none',
  };
}

const withHeavy = (plan: Plan, relay: RelayPart, power: number): Plan =>
  withParts(plan, [relay.name], (p) =>
    p.kind === 'relay' ? withCoil(p, contactorCoil(plan, relay, power)) : p,
  );

/** Relays that switch a motor themselves and are no contactors. */
function motorRelays({ study }: Trial): RelayPart[] {
  const { plan } = study;
  const names = judgedContacts(study).flatMap((g) =>
    g.feeds !== 'coil' && g.loads.some((l) => plan.parts.get(l)?.kind === 'motor') ? [g.part.name] : [],
  );
  return [...new Set(names)].flatMap((name) => {
    const part = plan.parts.get(name);
    const fed = study.fedCoils.some((c) => c.part.name === name && !c.source.mains && c.supply !== undefined);
    return part?.kind === 'relay' && fed && !isContactor(part) && part.coil.upTo === undefined ? [part] : [];
  });
}

function verdictWords(trial: Trial, relay: RelayPart, heaviest: number): string {
  const { low, high } = usual(relay);
  const unit = powerUnit(relay);
  const range = `${low} to ${high} ${unit}`;
  const coils = `coils of contactors up to the size of a shop's motor hold with ${range}`;
  if (heaviest >= high) return `${coils}: any of them may hang in this loop`;
  if (heaviest >= low)
    return `${coils}: one of at most ${heaviest} ${unit} may hang in this loop; a heavier one wants ${between(trial, relay, high)}`;
  return `${coils}: none may hang in this loop. The better answer is ${between(trial, relay, high)}`;
}

/** The small relay between loop and contactor, where the plan with it in passes. */
function between(trial: Trial, relay: RelayPart, power: number): string {
  const study = trial.with(withHeavy(trial.study.plan, relay, power), true);
  const sub = new Trial(study);
  const finding = sub.quick(study, [4, 5]).find((f) => f.parts.includes(relay.name));
  const none = 'a small relay between the two; none was found that passes in this plan';
  if (finding === undefined) return none;
  const bench = new Bench(study, { ...PURSE, until: Number.POSITIVE_INFINITY });
  for (const { sizes, serves } of relayBetween(bench, finding)) {
    const i = sizes.findIndex((_, k) => serves?.(k) !== false);
    const changes = i < 0 ? undefined : sizes[i];
    if (changes === undefined) continue;
    const after = bench.after(changes);
    if (sub.whole(after, [1, 2, 3, 4, 5]).length > 0) continue;
    return `a small relay between the two, which passes in this plan: ${changes.map((c) => c.words).join('; ')}`;
  }
  return none;
}

/** The heaviest contactor coil that the loop bears in place of each relay that switches a motor. */
export function sizeContactor(trial: Trial): Section {
  const relays = motorRelays(trial);
  const heavy = [...COIL_POWERS].reverse();
  const figures: SizeFigure[] = [];
  const untold: string[] = [];
  for (const relay of relays) {
    const unit = powerUnit(relay);
    const found = tight(trial, {
      ...{ count: heavy.length, questions: [4, 5] as const, anew: true },
      planAt: (i) => withHeavy(trial.study.plan, relay, heavy[i]!),
      wordsAt: (i) => `${heavy[i]} ${unit}`,
    });
    if ('untold' in found)
      untold.push(
        `a contactor in place of ${relay.name}: ${found.untold}; the better answer is ${between(trial, relay, usual(relay).high)}`,
      );
    else figures.push(figureOf(trial, relay, heavy[found.index]!, found));
  }
  const why = 'no relay of a loop switches a motor by itself and is not a contactor already';
  return { figures, untold: relays.length === 0 ? [why] : untold };
}

function figureOf(trial: Trial, relay: RelayPart, heaviest: number, found: Tight): SizeFigure {
  const unit = powerUnit(relay);
  const { volts, kind } = relay.coil.rated;
  const inrush =
    kind === 'ac' ? `, ${rounded(heaviest * defaults.inrushRatioContactor.high)} VA at pull-in` : '';
  return {
    ...{ of: relay.name, parts: [relay.name], runs: [], what: 'contactor coil', value: heaviest, unit },
    words: `at most ${heaviest} ${unit} held${inrush}, ${volts} V ${kind.toUpperCase()}; ${verdictWords(trial, relay, heaviest)}`,
    cautions: found.cautions,
    limit: found.limit,
    next: found.next,
  };
}
