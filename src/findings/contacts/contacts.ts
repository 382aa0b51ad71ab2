import { switchedBy } from '../../logic/intent.ts';
import type { Contact, LoadPart, MotorPart, Part } from '../../plan/plan.ts';
import { judgeContact } from '../../ratings/contact.ts';
import { contactAdvice } from '../../ratings/contact-advice.ts';
import { type ContactDuty, type ContactJudgement, SLACK } from '../../ratings/judgement.ts';
import { combineLoads } from '../../ratings/load.ts';
import type { Study } from '../../study/study.ts';
import { rounded, roundedOrNull } from '../../text/numbers.ts';
import { finding } from '../finding.ts';
import type { ContactFigures, Finding } from '../report-model.ts';
import { judgePilots } from './contact-pilot.ts';
import { contactFinding, figureWords, type Judged, withEditions } from './contact-words.ts';

/** Loads behind one switching part. */
interface Group {
  readonly part: Part;
  readonly contact: Contact;
  readonly pole: number;
  readonly loads: (MotorPart | LoadPart)[];
}

/** Question 6: each contact against what it switches: a mains load running and starting, or another relay's coil. */
export function checkContacts(study: Study): { findings: Finding[]; contacts: ContactFigures[] } {
  const all = judgeAll(study);
  const findings = all.flatMap((g) => [
    ...openOf(g).map((j) => contactFinding(study, g, j)),
    ...solidState(study, g),
  ]);
  return { findings: oncePerPart(findings), contacts: all.map(figuresOf) };
}

/** The answer of question 6 where all is well: the contact with the least to spare and its figure. */
export function contactFigure(study: Study): string | undefined {
  const shares = judgeAll(study).flatMap((g) => {
    const j = decisive(g);
    return j?.needed === undefined || !j.found
      ? []
      : [{ share: j.needed / j.found, words: figureWords(g, j) }];
  });
  return shares.sort((a, b) => b.share - a.share)[0]?.words;
}

function judgeAll(study: Study): Judged[] {
  return [...groups(study).map((g) => judgeGroup(study, g)), ...judgePilots(study)];
}

/** What the contact makes decides; a contact that makes nothing hard, what it carries. */
function decisive({ judged }: Judged): ContactJudgement | undefined {
  // a horsepower mark lets a rough starting figure pass that is above the test current; it decides nothing then
  const known = judged.filter(
    (j) => j.needed !== undefined && j.found !== undefined && !(j.verdict === 'pass' && beyond(j)),
  );
  const of = (...aspects: string[]) => known.find((j) => aspects.includes(j.aspect));
  return of('starting', 'motor-rated') ?? of('running') ?? of('horsepower') ?? known[0];
}

const beyond = (j: ContactJudgement) => j.aspect !== 'voltage' && (j.needed ?? 0) > (j.found ?? 0) * SLACK;

/** One field that is missing leaves several aspects open; it is asked for once. */
function openOf({ judged }: Judged): ContactJudgement[] {
  const asked = new Set<string>();
  return judged.filter((j) => {
    if (j.verdict === 'pass' || (j.missing !== undefined && asked.has(j.missing))) return false;
    if (j.missing !== undefined) asked.add(j.missing);
    return true;
  });
}

function judgeGroup({ plan }: Study, group: Group): Judged {
  const { part, loads } = group;
  const combined = combineLoads(loads, plan.practice);
  const hardest = loads.reduce((a, b) => (b.volts.volts > a.volts.volts ? b : a));
  const device = deviceOf(part, loads);
  const duty: ContactDuty = {
    contact: group.contact,
    currents: combined.currents,
    volts: hardest.volts.volts,
    kind: hardest.volts.kind,
    phases: combined.phases,
    nature: combined.nature,
    ...(combined.horsepower === undefined ? {} : { horsepower: combined.horsepower }),
    ...(combined.watts === undefined ? {} : { watts: combined.watts }),
    ...(device === undefined ? {} : { device }),
    practice: plan.practice,
  };
  return {
    part,
    pole: group.pole,
    loads: loads.map((l) => l.name),
    feeds: 'load',
    currents: combined.currents,
    volts: duty.volts,
    kind: duty.kind,
    ...(device === undefined ? {} : { device }),
    judged: judgeContact(duty),
    advice: contactAdvice(duty),
  };
}

/** A hand switch counts as one only in the line of a single motor. */
function deviceOf(part: Part, loads: Group['loads']): Judged['device'] {
  if ('technology' in part && part.technology === 'solid-state') return 'solid-state';
  const hand = part.kind === 'switch' || part.kind === 'selector';
  return hand && loads.length === 1 && loads[0]!.kind === 'motor' ? 'hand-switch' : undefined;
}

function figuresOf(g: Judged): ContactFigures {
  const worst =
    g.judged.find((j) => j.verdict === 'fail') ?? g.judged.find((j) => j.verdict === 'cannot-tell');
  const used = worst ?? decisive(g);
  return {
    relay: g.part.name,
    pole: g.pole,
    load: g.loads.join(', '),
    running: roundedOrNull(g.currents.running?.amps),
    starting: roundedOrNull(g.currents.starting?.amps),
    ratingUsed: used?.ratingUsed || null,
    multiple: roundedOrNull(used?.multiple),
    verdict: worst ? (worst.verdict === 'fail' ? 'no' : 'cannot tell') : 'yes',
    basis: withEditions(used?.basis ?? '') || 'no rating stated',
  };
}

function oncePerPart(list: readonly Finding[]): Finding[] {
  const seen = new Set<string>();
  return list.filter((f) => {
    const key = `${f.id}/${f.parts.join('/')}`;
    return seen.has(key) ? false : seen.add(key);
  });
}

function groups(study: Study): Group[] {
  const { plan, circuit } = study;
  const byPart = new Map<string, (MotorPart | LoadPart)[]>();
  for (const load of plan.parts.values()) {
    if (load.kind !== 'motor' && load.kind !== 'load') continue;
    for (const name of switchedBy(circuit, load.name)) byPart.set(name, [...(byPart.get(name) ?? []), load]);
  }
  const found: Group[] = [];
  for (const [name, loads] of byPart) {
    const part = plan.parts.get(name)!;
    if ('poles' in part) {
      const live = part.poles.filter((p) =>
        circuit.contacts.some(
          (c) =>
            c.part === name &&
            c.pole === p.index &&
            study.sides.mains.has(c.a) &&
            study.sides.mains.has(c.b) &&
            c.terminals.every((t) => circuit.landed.has(`${name}.${t}`)),
        ),
      );
      for (const pole of live.length > 0 ? live : part.poles.slice(0, 1))
        found.push({ part, contact: pole.contact, pole: pole.index, loads });
    } else if ('contact' in part) found.push({ part, contact: part.contact, pole: 1, loads });
  }
  return found;
}

/** W of heat for each ampere, A that need a heat sink, A that leak where not stated; makers' data, heat from memory. */
const SOLID = { watts: [1, 1.5], sink: [3, 5], leak: [0.001, 0.01] } as const;

function solidState(study: Study, g: Judged): Finding[] {
  const { part } = g;
  if (g.feeds !== 'load' || g.device !== 'solid-state') return [];
  const stated = 'off_leakage' in part ? part.off_leakage : undefined;
  const milli = (a: number) => Number((a * 1000).toPrecision(3));
  const leak =
    stated === undefined ? `${milli(SOLID.leak[0])} to ${milli(SOLID.leak[1])} mA` : `${milli(stated)} mA`;
  const amps = g.currents.running?.amps;
  const watts = (x: number) => Number((x * (amps ?? 0)).toPrecision(2));
  const heat =
    amps === undefined
      ? `each ampere makes ${SOLID.watts[0]} to ${SOLID.watts[1]} W of heat`
      : `${rounded(amps)} A make ${watts(SOLID.watts[0])} to ${watts(SOLID.watts[1])} W of heat`;
  const sink = `it needs a heat sink above ${SOLID.sink[0]} to ${SOLID.sink[1]} A`;
  return [
    finding(study.plan, {
      id: 'contact-leakage',
      severity: 'warning',
      question: 6,
      parts: [part.name, ...g.loads],
      at: part.where.get('technology') ?? part.at,
      message: `${leak} still reach ${g.loads.join(', ')} with ${part.name} off: it is solid-state`,
      why: `Off is not isolation: the motor lead reads live on a meter. When it fails it mostly stays on. Inside it, ${heat}; ${sink}.`,
      fix: `Use a contactor, or put one in line as the means of stopping: ${g.advice}.`,
      figures: [
        { name: 'leakage', value: stated === undefined ? null : roundedOrNull(stated), unit: 'A' },
        { name: 'running', value: roundedOrNull(amps), unit: 'A' },
      ],
      basis: 'relay makers’ application guidance, several agree; heat from memory; 29 CFR 1910.147(b)',
    }),
  ];
}
