import { sayMoved } from '../../circuit/input-words.ts';
import type { LoadPart, MotorPart, OutletPart } from '../../plan/part-types.ts';
import { restartsAfterCut, type SelfStart } from '../../study/self-starts.ts';
import type { Study } from '../../study/study.ts';
import { listOf } from '../../text/word-list.ts';
import { type Check, extract, type FindingEntry } from '../entry.ts';
import { type Found, found } from '../finding.ts';
import type { Finding } from '../report-model.ts';
import { releasedStops } from './released-stops.ts';

const entry: FindingEntry = {
  id: 'restarts-by-itself',
  title: 'the machine starts by itself when power or a stop comes back',
  severity: 'caution',
  question: 6,
  base: 'armed',
  meaning:
    'A gate or a hand switch stays where it is during a power cut, so the machine starts again on its own with whoever has a hand in it; so it does where a stop or a bin switch that ended it is let go. Arm the circuit: a button pulls in a relay that holds itself through its own contact and feeds the gates, and a cut or any stop in its line lets it go. A saw or planer that a stay-put switch holds is a warning: the rules for woodworking machines ask for a switch that drops out.',
  wrong: extract(
    '  - {cable: bell, length: 9 m, cores: {red: [armed, saw.COM], black: [Q1.A1, saw.NO]}}',
    '',
    'intent:',
    '  fan: {runs-on: [saw], blocked-by: [STOP, OL]}',
  ),
  right: extract(
    '  - {cable: bell, length: 9 m, cores: {red: [call, saw.COM], black: [Q1.A1, saw.NO]}}',
    '',
    'intent:',
    '  fan: {runs-on: [saw], stays-on-after: [START], stopped-by: [STOP], blocked-by: [STOP, OL]}',
  ),
  basis: '29 CFR 1910.213(b)(3); IEC 60204-1 clauses 7.5, 9.2.5.4.2 and 10.7 (the last two from memory)',
  followsBeside: {},
  followsFrom: ['runs-with-all-shut', 'runs-without-cause', 'stays-on'],
};

export const restartsByItself: Check = { entry, find };

type Machine = MotorPart | LoadPart | OutletPart;

/** Machines that run once power is back, or a stop is let go, without a hand on any button that starts. */
function find(study: Study): Finding[] {
  const afterCut = restartsAfterCut(study);
  const cut = afterCut.flatMap((start) => {
    const { wanted } = start;
    const machines = machinesAt(study, wanted.target);
    if (machines.length === 0) return [];
    const handHeld = wanted.entries.every((e) => e.refs.every((r) => isHeldByHand(study, r.part)));
    const state = sayMoved(study.circuit, start.moved);
    if (handHeld && machines.some((m) => m.kind === 'motor')) return [forbidden(study, machines, state)];
    const byHand = wanted.entries.some((e) => e.refs.some((r) => isHeldByHand(study, r.part)));
    return [
      accepted(study, machines, state, { byHand, stops: releasedStops(study, wanted).map((s) => s.stop) }),
    ];
  });
  const wanteds = study.verified?.intents.wanted.filter((w) => !afterCut.some((s) => s.wanted === w)) ?? [];
  return [...cut, ...wanteds.flatMap((w) => letGo(study, w))];
}

/** A power cut lets go of what calls for it, but a stop does not. */
function letGo(study: Study, wanted: SelfStart['wanted']): Found[] {
  const machines = machinesAt(study, wanted.target);
  const stops = machines.length === 0 ? [] : releasedStops(study, wanted);
  if (stops.length === 0) return [];
  const of = listOf(stops.map((s) => s.stop));
  return [
    found(study.plan, entry, {
      parts: [...machines.map((m) => m.name), ...stops.map((s) => s.stop)],
      at: machines[0]!.at,
      message: `${names(machines)} ${verb(machines)} as soon as ${of} ${stops.length > 1 ? 'go' : 'goes'} back`,
      why: `With ${sayMoved(study.circuit, stops[0]!.moved)} what calls for it stays in while ${of} ${stops.length > 1 ? 'stop' : 'stops'} it; whoever lets go of a stop need not be the one who stands at the fan.`,
      fix: `Take ${of} into the line of the relay that the start button pulls in, ahead of its own contact.`,
      basis: LETS_GO,
      twin: { alike: 'stop' },
    }),
  ];
}

const LETS_GO =
  'IEC 60204-1:2005 clauses 9.2.5.4.2 and 10.7: letting go of a stop must not start anything (from memory)';

/** What starts with a load or an outlet; a lamp or a heater that comes back hurts nobody. */
function machinesAt({ plan }: Study, target: string): Machine[] {
  const part = plan.parts.get(target);
  if (part?.kind === 'motor' || (part?.kind === 'load' && part.type === undefined)) return [part];
  if (part?.kind !== 'outlet') return [];
  const plugged = [...plan.parts.values()].filter(
    (p): p is MotorPart | LoadPart => (p.kind === 'motor' || p.kind === 'load') && p.pluggedInto === target,
  );
  if (plugged.length === 0) return [part];
  return plugged.flatMap((p) => machinesAt({ plan } as Study, p.name));
}

/** A switch or a selector keeps its position; a gate does too, but belongs to the collector and not to a tool. */
function isHeldByHand({ plan }: Study, name: string): boolean {
  const kind = plan.parts.get(name)?.kind;
  return kind === 'switch' || kind === 'selector';
}

const names = (machines: readonly Machine[]) =>
  listOf(machines.map((m) => (m.kind === 'outlet' ? `what is plugged into ${m.name}` : m.name)));
const verb = (machines: readonly Machine[]) => (machines.length > 1 ? 'restart' : 'restarts');

interface Besides {
  readonly byHand: boolean;
  /** stops that start it too when they are let go */
  readonly stops: readonly string[];
}

function accepted(
  study: Study,
  machines: readonly Machine[],
  state: string,
  { byHand, stops }: Besides,
): Found {
  const released =
    stops.length === 0 ? '' : `, and when ${listOf(stops)} ${stops.length > 1 ? 'go' : 'goes'} back`;
  return found(study.plan, entry, {
    parts: machines.map((m) => m.name),
    at: machines[0]!.at,
    message: `${names(machines)} ${verb(machines)} after a power cut${released}`,
    why: `With ${state} the relays pull in again, with no button pressed.`,
    fix: `Shut every gate${byHand ? ' and switch' : ''}, or add a start button whose relay holds itself in.`,
    basis: stops.length === 0 ? basisOf(study) : `${basisOf(study)}; ${LETS_GO}`,
    twin: { alike: 'gate' },
  });
}

function forbidden(study: Study, machines: readonly Machine[], state: string): Found {
  return found(study.plan, entry, {
    severity: 'warning',
    parts: machines.map((m) => m.name),
    at: machines[0]!.at,
    message: `${names(machines)} ${verb(machines)} after a power cut: a switch that stays put holds ${machines.length > 1 ? 'them' : 'it'} on`,
    why: `With ${state} nothing but the power is missing, and it turns as soon as that is back, with nobody ready for it.`,
    fix: 'Start it by a button and a relay that holds itself in, stopped by a second button.',
    basis: basisOf(study),
    twin: { alike: 'switch' },
  });
}

function basisOf({ plan }: Study): string {
  return plan.practice === 'nec'
    ? '29 CFR 1910.213(b)(3), for woodworking machines at work'
    : 'IEC 60204-1:2016 clause 7.5 (one source)';
}
