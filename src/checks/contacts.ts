import { switchedBy } from '../logic/intent.ts';
import type { Contact, LoadPart, MotorPart, Part, PlugPart } from '../plan/plan.ts';
import { type ContactJudgement, judgeContact } from '../ratings/contact.ts';
import { combineLoads } from '../ratings/load.ts';
import type { ContactFigures, Finding } from '../report/model.ts';
import { finding, listOf, type Study } from './study.ts';

/** Loads behind one switching part, with the plug that feeds them. */
interface Group {
  readonly part: Part;
  readonly contact: Contact;
  readonly pole: number;
  readonly loads: (MotorPart | LoadPart)[];
}

export function plugOf(study: Study): PlugPart | undefined {
  return [...study.plan.parts.values()].find((p): p is PlugPart => p.kind === 'plug');
}

/** Question 6: each contact on the way to a mains load, against what the load draws running and starting. */
export function checkContacts(study: Study): { findings: Finding[]; contacts: ContactFigures[] } {
  const findings: Finding[] = [];
  const contacts: ContactFigures[] = [];
  for (const group of groups(study)) {
    const combined = combineLoads(group.loads, study.plan.practice);
    const plug = plugOf(study);
    const first = group.loads[0]!;
    const volts = first.volts.volts;
    const judged = judgeContact({
      contact: group.contact,
      currents: combined.currents,
      volts: plug && plug.feed !== 'two-leg' ? Math.max(volts, 0) : volts,
      kind: first.volts.kind,
      phases: combined.phases,
      nature: combined.nature,
      ...(combined.horsepower === undefined ? {} : { horsepower: combined.horsepower }),
      ...(combined.watts === undefined ? {} : { watts: combined.watts }),
      practice: study.plan.practice,
    });
    const worst = judged.find((j) => j.verdict === 'fail') ?? judged.find((j) => j.verdict === 'cannot-tell');
    const used = worst ?? judged.find((j) => j.aspect === 'starting') ?? judged.at(-1);
    contacts.push({
      relay: group.part.name,
      pole: group.pole,
      load: group.loads.map((l) => l.name).join(', '),
      running: tidy(combined.currents.running?.amps),
      starting: tidy(combined.currents.starting?.amps),
      ratingUsed: used?.ratingUsed || null,
      multiple: used?.multiple ?? null,
      verdict: worst ? (worst.verdict === 'fail' ? 'no' : 'cannot tell') : 'yes',
      basis: used?.basis ?? '',
    });
    // One field that is missing leaves several aspects open; it is asked for once.
    const asked = new Set<string>();
    for (const j of judged) {
      if (j.verdict === 'pass' || (j.missing !== undefined && asked.has(j.missing))) continue;
      if (j.missing !== undefined) asked.add(j.missing);
      findings.push(fromJudgement(study, group, j));
    }
    findings.push(...solidState(study, group));
  }
  return { findings: oncePerPart(findings), contacts };
}

const tidy = (x: number | undefined) => (x === undefined ? null : Number(x.toPrecision(4)));

function oncePerPart(list: readonly Finding[]): Finding[] {
  const seen = new Set<string>();
  return list.filter((f) => {
    const key = `${f.id}/${f.parts[0]}`;
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

function fromJudgement(study: Study, group: Group, j: ContactJudgement): Finding {
  const fails = j.verdict === 'fail';
  const name = group.part.name;
  const loads = listOf(group.loads.map((l) => l.name));
  const num = (x: number | undefined) =>
    x === undefined ? 'an unknown amount' : `${Number(x.toPrecision(3))} ${j.unit}`;
  const printed = j.ratingUsed ? ` (printed: ${j.ratingUsed})` : '';
  const words: Record<string, string> = {
    'contact-voltage': `the contact of ${name} is not rated for ${num(j.needed)}${printed}`,
    'contact-running': `${loads} draws ${num(j.needed)}; the contact of ${name} carries ${num(j.found)}${printed}`,
    'contact-starting': `${loads} starts at ${num(j.needed)}; the contact of ${name} can make ${num(j.found)}${printed}`,
    'contact-horsepower': `${loads} has ${num(j.needed)}; the contact of ${name} is rated ${num(j.found)}${printed}`,
    'contact-not-motor-rated': `${loads} starts at ${num(j.needed)}; the contact of ${name} has only a resistive rating, good for making ${num(j.found)}${printed}`,
  };
  const motor = group.loads.find((l) => l.kind === 'motor');
  const hp = motor?.power?.horsepower;
  const lookFor =
    study.plan.practice === 'nec'
      ? `a contact marked ${hp === undefined ? 'in horsepower for this motor' : `at least ${Number(hp.toPrecision(3))} hp`} at ${group.loads[0]!.volts.volts} V AC`
      : `a contactor with an AC-3 rating above the motor's full-load current at ${group.loads[0]!.volts.volts} V`;
  const doubt = j.missing === undefined ? '' : ` The plan does not state ${j.missing}.`;
  return finding(study.plan, {
    id: j.findingId,
    severity: fails ? (j.findingId === 'contact-voltage' ? 'danger' : 'warning') : 'doubt',
    question: 6,
    parts: [name, ...group.loads.map((l) => l.name)],
    at: group.part.where.get('contact.ratings') ?? group.part.where.get('contact') ?? group.part.at,
    message: fails
      ? words[j.findingId]!
      : `whether the contact of ${name} suits ${loads} cannot be told: ${j.missing ? `${j.missing} is missing` : `${num(j.needed)} against ${num(j.found)} decides nothing`}`,
    why: fails
      ? j.findingId === 'contact-voltage'
        ? 'The gap and the insulation are not made for that voltage or kind of current.'
        : 'A contact that is made on more current than it is built for welds shut, and the motor does not stop.'
      : `A rating that is not stated is never taken as enough.${doubt}`,
    fix: fails
      ? `Look for ${lookFor}.`
      : `State ${j.missing ?? 'the figures printed on the parts'}; look for ${lookFor}.`,
    figures: [
      { name: 'needed', value: tidy(j.needed), unit: j.unit },
      { name: 'contact', value: tidy(j.found), unit: j.unit },
    ],
    basis: j.basis || 'a missing figure is never a pass',
  });
}

function solidState(study: Study, group: Group): Finding[] {
  if (!('technology' in group.part) || group.part.technology !== 'solid-state') return [];
  return [
    finding(study.plan, {
      id: 'contact-leakage',
      severity: 'warning',
      question: 6,
      parts: [group.part.name, ...group.loads.map((l) => l.name)],
      message: `${group.part.name} is solid-state: it leaks when off, and when it fails it usually stays on`,
      why: 'Off is not isolation: some milliamperes pass, and the motor lead reads live on a meter.',
      fix: 'Use a contactor, or put one in line as the means of stopping.',
      basis: 'relay makers’ application guidance, several agree; 29 CFR 1910.147(b)',
    }),
  ];
}
