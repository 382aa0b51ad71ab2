import { sayMoved } from '../../circuit/input-words.ts';
import { isLanded, netAt } from '../../circuit/terminals.ts';
import { UnionFind } from '../../circuit/union-find.ts';
import { FALSE } from '../../logic/bdd.ts';
import { inputVariable } from '../../logic/conduction.ts';
import { runsFromRest } from '../../logic/entry-states.ts';
import type { Wanted } from '../../logic/intent.ts';
import { type Moved, movedIn, relaysAt, type Verified } from '../../logic/verify.ts';
import type { Study } from '../../study/study.ts';
import { listOf } from '../../text/word-list.ts';
import { COMMON_PRACTICE, finding } from '../finding.ts';
import type { Finding } from '../report-model.ts';

/** Nets joined by contacts in one settled state, leaving out one part's own contacts. */
export function joinedIn(v: Verified, moved: Moved, without?: string): UnionFind {
  const sets = new UnionFind(v.circuit.netCount);
  const on = new Set(moved);
  const relays = relaysAt(v, moved);
  for (const c of v.circuit.contacts) {
    if (c.part === without) continue;
    const closed =
      c.when.by === 'always' ||
      (c.when.by === 'input' ? on.has(c.when.input) === c.when.value : relays[c.when.relay] === c.when.value);
    if (closed) sets.union(c.a, c.b);
  }
  return sets;
}

/** Why one entry of the intent, worked alone, does not start its load. */
export function deadCause(
  study: Study,
  v: Verified,
  w: Wanted,
  entry: Wanted['entries'][number],
  state: Moved,
  diode: string | undefined,
): { readonly group: string; readonly finding: Finding } {
  const { plan, circuit } = study;
  const name = entry.refs[0]!.part;
  const cause = diode === undefined ? switchCause(study, v, w, entry, state) : diodeCause(diode, w.target);
  const label = entry.refs
    .map((r) => (r.position === undefined ? r.part : `${r.part}.${r.position}`))
    .join(' with ');
  const kind = plan.parts.get(name)?.kind === 'gate' ? 'opening the' : 'working the';
  const made = finding(plan, {
    id: 'gate-dead',
    severity: 'fault',
    question: 2,
    parts: [name, ...cause.parts, w.target],
    terminals: cause.terminals,
    at: cause.terminals.length > 0 ? undefined : circuit.plan.parts.get(name)?.at,
    message: `${kind} ${label} ${plan.parts.get(name)?.kind === 'gate' ? 'gate ' : ''}does nothing: ${cause.what}`,
    why: cause.why,
    fix: cause.fix,
    basis: COMMON_PRACTICE,
    ...(diode === undefined ? {} : { cause: { what: 'diode', terminals: cause.terminals } }),
  });
  return { group: cause.group ?? name, finding: made };
}

function diodeCause(diode: string, target: string): Cause {
  return {
    group: `diode ${diode}`,
    what: `diode ${diode} is the wrong way round`,
    why: `With ${diode} turned every load does what is meant; as it is, it blocks this gate and may let others through.`,
    fix: `Turn ${diode}: its band (K) towards the coil that starts ${target}.`,
    parts: [diode],
    terminals: [`${diode}.A`, `${diode}.K`],
  };
}

export interface Cause {
  /** gates dead of one cause share this */
  readonly group?: string;
  readonly what: string;
  readonly why: string;
  readonly fix: string;
  readonly parts: readonly string[];
  readonly terminals: readonly string[];
}

function switchCause(
  study: Study,
  v: Verified,
  w: Wanted,
  entry: Wanted['entries'][number],
  state: Moved,
): Cause {
  const { plan, circuit } = study;
  const name = entry.refs[0]!.part;
  const part = plan.parts.get(name);
  const none = { parts: [], terminals: [] };
  const t = (tab: string) => `${name}.${tab}`;
  if (
    part &&
    (part.kind === 'gate' || part.kind === 'switch' || part.kind === 'button' || part.kind === 'cutout')
  ) {
    const makes = part.kind !== 'gate' || part.pressedWhen === 'open';
    const [right, wrong] = makes ? ['NO', 'NC'] : ['NC', 'NO'];
    const landed = ['COM', 'NO', 'NC'].filter((tab) => isLanded(circuit, part, tab));
    if (landed.length === 0)
      return {
        ...none,
        what: 'nothing is wired to it',
        why: `No core lands on ${name}.`,
        fix: `Wire COM and ${right} of ${name} into the loop.`,
      };
    if (!landed.includes('COM'))
      return {
        what: 'COM is empty',
        why: 'NO and NC are never joined to each other; only COM meets either.',
        fix: `Move one core to ${t('COM')} and the other to ${t(right)}.`,
        parts: [],
        terminals: landed.map(t),
      };
    const com = netAt(circuit, name, 'COM');
    const same = landed.find((tab) => tab !== 'COM' && netAt(circuit, name, tab) === com);
    if (same)
      return {
        group: `one conductor ${com}`,
        what: 'both its cores are on one conductor',
        why: `${t('COM')} and ${t(same)} are joined already, so the switch changes nothing.`,
        fix: `Take one of the two cores over to the other conductor of the loop.`,
        parts: [],
        terminals: [t('COM'), t(same)],
      };
    if (landed.length === 1)
      return {
        what: 'only COM is wired',
        why: `Neither ${t('NO')} nor ${t('NC')} has a core.`,
        fix: `Land the return core on ${t(right)}.`,
        parts: [],
        terminals: [t('COM')],
      };
    if (!landed.includes(right!))
      return {
        what: `the core is on ${wrong} where ${right} is wanted`,
        why: `${t('COM')} and ${t(wrong!)} part when the gate opens.`,
        fix: `Move the core from ${t(wrong!)} to ${t(right!)}.`,
        parts: [],
        terminals: [t(wrong!)],
      };
  }
  const { bdd } = v.model;
  const runs = runsFromRest(v, w.target);
  // States in which this entry makes the difference: the load runs with it and not with it put back.
  const without = bdd.compose(runs, new Map([...bdd.support(entry.works)].map((x) => [x, FALSE])));
  const together = movedIn(
    circuit,
    bdd,
    bdd.every([runs, entry.works, bdd.not(without), bdd.not(w.blocked)]),
  );
  const others = together?.filter((i) => !state.includes(i)).map((i) => circuit.inputs[i]!.part) ?? [];
  if (others.length > 0)
    return {
      group:
        others.length === 1
          ? `line ${[name, others[0]!].find((p) => lineHead(study, v, w, p)) ?? others[0]}`
          : `line ${others.join()}`,
      what: `it lies in line with ${listOf(others)}`,
      why: `It starts ${w.target} only with ${sayMoved(circuit, together!)}.`,
      fix: `Wire ${name} side by side with ${listOf(others)}: COM to the fed core, ${'the other tab'} to the return core.`,
      parts: others,
      terminals: [],
    };
  return pathCause(study, v, name, tabsOf(entry.refs[0]!), state);
}

/** The gate in whose place the through core was cut: more than one other gate works only while it is open. */
function lineHead(study: Study, v: Verified, w: Wanted, name: string): boolean {
  const { bdd } = v.model;
  const own = w.entries.find((e) => e.refs.length === 1 && e.refs[0]!.part === name);
  if (!own) return false;
  const runs = runsFromRest(v, w.target);
  const shut = bdd.compose(runs, new Map([...bdd.support(own.works)].map((x) => [x, FALSE])));
  const freed = w.entries.filter((e) => {
    if (e === own) return false;
    const both = bdd.every([own.works, e.works]);
    const vars = new Set([...bdd.support(e.works), ...bdd.support(own.works)]);
    const alone = bdd.every(
      study.circuit.inputs
        .map((i) => inputVariable(study.circuit, i.index))
        .filter((x) => !vars.has(x))
        .map((x) => bdd.not(bdd.variable(x))),
    );
    return bdd.and(bdd.and(both, alone), runs) !== FALSE && bdd.and(bdd.and(e.works, alone), shut) === FALSE;
  });
  return freed.length > 1;
}

/** The terminals a switch joins: its three tabs, or the common and the one position of a selector. */
function tabsOf(ref: { position?: string }): readonly string[] {
  return ref.position === undefined ? ['COM', 'NO', 'NC'] : ['COM', ref.position];
}

/** No feed, no return, a diode the wrong way round: found by walking from the switch in its working position. */
function pathCause(
  study: Study,
  v: Verified,
  name: string,
  terminals: readonly string[],
  state: Moved,
): Cause {
  const { circuit } = study;
  const sets = joinedIn(v, state, name);
  const tabs = terminals.filter((tab) => isLanded(circuit, name, tab));
  const poles = circuit.sources.filter((s) => !s.mains).flatMap((s) => s.rails.map((r) => r.net));
  const reaches = (tab: string, nets: readonly number[]) => {
    const net = netAt(circuit, name, tab);
    return net !== undefined && nets.some((n) => sets.joined(n, net));
  };
  const ends = [
    ...circuit.relays.flatMap((r) => r.senses.flatMap((s) => [s.a, s.b])),
    ...circuit.diodes.flatMap((d) => [d.anode, d.cathode]),
  ];
  const fed = tabs.filter((tab) => reaches(tab, poles));
  const leads = tabs.filter((tab) => reaches(tab, ends) && !fed.includes(tab));
  const t = tabs.map((tab) => `${name}.${tab}`);
  if (fed.length === 0)
    return {
      group: 'no feed',
      what: 'it has no feed',
      why: `Neither core of ${name} leads to the supply.`,
      fix: 'Carry the fed core on from the joint or gate before it.',
      parts: [],
      terminals: t,
    };
  const stranded = strandedCoil(
    study,
    sets,
    netAt(circuit, name, fed[0]!)!,
    leads.map((tab) => netAt(circuit, name, tab)!),
  );
  if (stranded)
    return {
      group: `return of ${stranded.coil}`,
      what: `the return of ${stranded.coil} does not come back to ${stranded.source}`,
      why: `${name} is fed from ${stranded.source}, and the other end of the coil of ${stranded.coil} leads to no pole of ${stranded.source}.`,
      fix: `Join the minus (or common) of the two supplies, or feed ${name} from the supply that ${stranded.coil} returns to.`,
      parts: [stranded.coil, stranded.source],
      terminals: t,
    };
  if (leads.length === 0)
    return {
      group: 'no return',
      what: 'its return core leads nowhere',
      why: `From ${listOf(t)} no core leads on to a coil; the return core ends somewhere on the way.`,
      fix: 'Carry the return core on through every joint and gate as far as the coil.',
      parts: [],
      terminals: t,
    };
  return {
    group: 'open loop',
    what: 'the loop is open',
    why: `${name} is fed and leads to a coil, yet the circuit does not close with ${sayMoved(circuit, state)}.`,
    fix: 'Trace the loop from the supply through this gate to the coil and back.',
    parts: [],
    terminals: t,
  };
}

/** A coil that the gate's way on does reach, and whose far end does not return to the supply that feeds the gate. */
function strandedCoil(
  study: Study,
  sets: UnionFind,
  fed: number,
  nets: readonly number[],
): { coil: string; source: string } | undefined {
  const { circuit } = study;
  const feeder = circuit.sources.find((s) => !s.mains && s.rails.some((r) => sets.joined(r.net, fed)));
  if (!feeder) return undefined;
  const onward = new Set(nets.map((n) => sets.find(n)));
  for (let grew = true; grew; ) {
    grew = false;
    for (const d of circuit.diodes)
      if (!d.load && onward.has(sets.find(d.anode)) && !onward.has(sets.find(d.cathode))) {
        onward.add(sets.find(d.cathode));
        grew = true;
      }
  }
  for (const relay of circuit.relays)
    for (const sense of relay.senses) {
      const near = [sense.a, sense.b].find((n) => onward.has(sets.find(n)));
      if (sense.by !== 'volts' || near === undefined) continue;
      const far = near === sense.a ? sense.b : sense.a;
      const home = circuit.sources.find(
        (s) => s !== feeder && !s.mains && s.rails.some((r) => sets.joined(r.net, far)),
      );
      if (home && !feeder.rails.some((r) => sets.joined(r.net, far)))
        return { coil: relay.part, source: feeder.part };
    }
  return undefined;
}
