import type { CutoutPart, MotorPart } from '../../plan/part-types.ts';
import { judgeSetting, type SettingBounds, settingBounds } from '../../ratings/overload.ts';
import type { Study } from '../../study/study.ts';
import { rounded } from '../../text/numbers.ts';
import { listOf } from '../../text/word-list.ts';
import type { Check, FindingEntry } from '../entry.ts';
import { type Found, found } from '../finding.ts';
import type { Finding } from '../report-model.ts';
import { cutoutsOf, isOverload, stops } from './overload-relays.ts';

const entry: FindingEntry = {
  id: 'overload-setting',
  title: "the overload relay is not set to the motor's current",
  severity: 'warning',
  question: 6,
  base: 'armed',
  meaning:
    "An overload relay trips by the current on its dial. Set above what the motor may carry for long it lets a jammed motor burn, set below its full-load current it stops a healthy one. The dial goes to the current on the motor's plate; one relay for several motors sees their sum. A setting or a current that is not stated is a doubt.",
  wrong: 'setting: 15 A',
  right: 'setting: 9.4 A',
  basis: 'NEC 430.32(A)(1); IEC 60204-1 clause 7.3, IEC 60947-4-1 (from memory)',
  followsFrom: [],
};

export const overloadSetting: Check = { entry, find };

/** Motors whose current one relay sees. */
interface Seen {
  readonly relay: CutoutPart;
  readonly motors: readonly MotorPart[];
}

/** Relays and motors beyond which no search is made for who sees whom. */
const MOST_PAIRED = 5;

function find(study: Study): Finding[] {
  const motors = [...study.plan.parts.values()].filter((p): p is MotorPart => p.kind === 'motor');
  const groups = new Map<string, { relays: CutoutPart[]; motors: readonly MotorPart[] }>();
  for (const relay of cutoutsOf(study).filter((c) => isOverload(study, c))) {
    const stopped = motors.filter((m) => stops(study, relay, m));
    if (stopped.length === 0) continue;
    const key = stopped.map((m) => m.name).join('\n');
    const group = groups.get(key) ?? { relays: [], motors: stopped };
    group.relays.push(relay);
    groups.set(key, group);
  }
  return [...groups.values()].flatMap((g) => ofGroup(study, g.relays, g.motors));
}

const ownProtector = ({ protector }: MotorPart) => protector === 'manual' || protector === 'automatic';

/** Relays that all stop the same motors: the plan does not say which of the motors' conductors pass through which. */
function ofGroup(study: Study, relays: readonly CutoutPart[], motors: readonly MotorPart[]): Finding[] {
  const bare = motors.filter((m) => !ownProtector(m));
  const unset = relays.filter((r) => r.setting === undefined);
  if (unset.length > 0) return bare.length === 0 ? [] : [settingUnsaid(study, unset, bare)];
  const unsaid = motors.filter((m) => m.amps === undefined);
  if (unsaid.length > 0) return [ampsUnsaid(study, relays, unsaid)];
  const pairing = pairings(relays, motors).find((p) => p.every((s) => verdictOf(study, s) === 'fits'));
  if (pairing) return pairing.flatMap((seen) => seesOnlySum(study, seen));
  return likeliest(relays, bare.length > 0 ? bare : motors).flatMap((seen) => misset(study, seen));
}

function boundsOf({ plan }: Study, { motors }: Seen): SettingBounds {
  const plates = motors.map(({ amps = 0, serviceFactor }) => ({
    amps,
    ...(serviceFactor !== undefined && { serviceFactor }),
  }));
  return settingBounds(plates, plan.practice);
}

const verdictOf = (study: Study, seen: Seen) => judgeSetting(seen.relay.setting ?? 0, boundsOf(study, seen));

/** Every way to share the motors out, each relay with one at least; a motor with a protector of its own may have none. */
function pairings(relays: readonly CutoutPart[], motors: readonly MotorPart[]): Seen[][] {
  if (relays.length > MOST_PAIRED || motors.length > MOST_PAIRED) return [likeliest(relays, motors)];
  // With more relays than motors some stand in line, and each sees all.
  if (relays.length > motors.length) return [relays.map((relay) => ({ relay, motors }))];
  let ways: MotorPart[][][] = [relays.map(() => [])];
  for (const motor of motors)
    ways = ways.flatMap((way) => [
      ...relays.map((_, k) => way.map((own, i) => (i === k ? [...own, motor] : own))),
      ...(ownProtector(motor) ? [way] : []),
    ]);
  return ways
    .filter((way) => way.every((own) => own.length > 0))
    .map((way) => way.map((own, i) => ({ relay: relays[i]!, motors: own })));
}

/** The greatest setting for the greatest motor, and so on down; what is left over goes to the last. */
function likeliest(relays: readonly CutoutPart[], motors: readonly MotorPart[]): Seen[] {
  if (relays.length > motors.length) return relays.map((relay) => ({ relay, motors }));
  const bySetting = [...relays].sort((a, b) => (b.setting ?? 0) - (a.setting ?? 0));
  const byAmps = [...motors].sort((a, b) => (b.amps ?? 0) - (a.amps ?? 0));
  return bySetting.map((relay, i) => ({
    relay,
    motors: i === bySetting.length - 1 ? byAmps.slice(i) : [byAmps[i]!],
  }));
}

const namesOf = (motors: readonly { readonly name: string }[]) => listOf(motors.map((m) => m.name));
const sumOf = (motors: readonly MotorPart[]) => motors.reduce((sum, m) => sum + (m.amps ?? 0), 0);

function told(
  study: Study,
  { relay, motors }: Seen,
  words: Omit<Parameters<typeof found>[2], 'parts'>,
): Found {
  return found(study.plan, entry, {
    parts: [relay.name, ...motors.map((m) => m.name)],
    at: relay.where.get('setting') ?? relay.at,
    ...words,
  });
}

function misset(study: Study, seen: Seen): Found[] {
  const { relay, motors } = seen;
  const bounds = boundsOf(study, seen);
  const verdict = verdictOf(study, seen);
  if (verdict === 'fits') return [];
  const setting = relay.setting ?? 0;
  const [sum, set] = [rounded(sumOf(motors)), rounded(setting)];
  const together = motors.length > 1 ? ' together' : '';
  const takes = `${namesOf(motors)} ${motors.length > 1 ? 'take' : 'takes'} ${sum} A${together}`;
  const common = {
    figures: [
      { name: 'setting', value: setting, unit: 'A' },
      { name: 'least', value: bounds.least, unit: 'A' },
      { name: 'most', value: bounds.most, unit: 'A' },
    ],
    basis: bounds.basis,
    fix: `Set ${relay.name} to ${sum} A, as on the plate${motors.length > 1 ? 's together' : ''} (setting: ${sum} A).`,
  };
  if (verdict === 'too-low')
    return [
      told(study, seen, {
        ...common,
        message: `${relay.name} is set to ${set} A and trips on a healthy motor: ${takes}`,
        why: `Below ${rounded(bounds.least)} A it may open at full load.`,
      }),
    ];
  if (verdict === 'too-high')
    return [
      told(study, seen, {
        ...common,
        message: `${relay.name} is set to ${set} A and does not protect: ${takes}`,
        why: `More than ${rounded(bounds.perhaps)} A lets a jammed or overloaded motor burn before the relay opens.`,
      }),
    ];
  return [
    told(study, seen, {
      ...common,
      severity: 'doubt',
      message: `whether ${relay.name} at ${set} A protects ${namesOf(motors)} turns on the service factor`,
      why: `Without a service factor of 1.15 on the plate the most is ${rounded(bounds.most)} A, with it ${rounded(bounds.perhaps)} A.`,
      fix: `State service-factor: of ${namesOf(motors)}, as on the plate, or set ${relay.name} to ${sum} A.`,
    }),
  ];
}

/** One relay set right for several motors still lets one of them take the share of the others. */
function seesOnlySum(study: Study, seen: Seen): Found[] {
  const bare = seen.motors.filter((m) => !ownProtector(m));
  if (seen.motors.length < 2 || bare.length === 0) return [];
  return [
    told(study, seen, {
      severity: 'caution',
      message: `${seen.relay.name} sees only the sum of ${namesOf(seen.motors)}: one of them alone may burn`,
      why: `Set to ${rounded(seen.relay.setting ?? 0)} A it carries a jammed motor as long as the others are off or lightly loaded.`,
      fix: 'Give each motor an overload relay of its own, all with their contacts 95-96 in line.',
      basis: boundsOf(study, seen).basis,
    }),
  ];
}

function settingUnsaid(study: Study, relays: readonly CutoutPart[], motors: readonly MotorPart[]): Found {
  const [relay] = relays;
  const known = motors.every((m) => m.amps !== undefined) && relays.length === 1;
  const by = known ? `, by the plate${motors.length > 1 ? 's' : ''} ${rounded(sumOf(motors))} A` : '';
  return told(
    study,
    { relay: relay!, motors },
    {
      severity: 'doubt',
      message: `whether ${namesOf(relays)} ${relays.length > 1 ? 'protect' : 'protects'} ${namesOf(motors)} cannot be told: no setting is stated`,
      why: 'A relay set too high lets a jammed motor burn. A figure that is not stated is never taken as right.',
      fix: `State setting: of ${namesOf(relays)}, as its dial stands${by}.`,
      basis: entry.basis,
    },
  );
}

function ampsUnsaid(study: Study, relays: readonly CutoutPart[], motors: readonly MotorPart[]): Found {
  return told(
    study,
    { relay: relays[0]!, motors },
    {
      severity: 'doubt',
      message: `whether ${namesOf(relays)} ${relays.length > 1 ? 'fit' : 'fits'} ${namesOf(motors)} cannot be told: no current is stated`,
      why: 'An overload relay goes by the current on the plate, not by a table.',
      fix: `State amps: of ${namesOf(motors)}, as on the plate.`,
      basis: entry.basis,
    },
  );
}
