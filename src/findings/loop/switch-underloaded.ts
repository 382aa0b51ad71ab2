import type { Contact } from '../../plan/device-figures.ts';
import { defaults } from '../../ratings/defaults.ts';
import type { Study } from '../../study/study.ts';
import { switchesOf, type Triggered, triggered } from '../../study/timers/triggers.ts';
import { ampsText, rounded } from '../../text/numbers.ts';
import { listOf } from '../../text/word-list.ts';
import type { Check, FindingEntry } from '../entry.ts';
import { found } from '../finding.ts';
import type { Finding } from '../report-model.ts';
import { ampsFigure } from './amps-figure.ts';
import { aloneAmps, overRating, type SwitchCurrents, switchCurrents } from './switch-currents.ts';

const entry: FindingEntry = {
  id: 'switch-underloaded',
  title: 'too little current to keep the switch clean',
  severity: 'caution',
  question: 5,
  base: 'board',
  meaning:
    'Silver contacts need a certain current to break the film that grows on them. Below it the switch works when new and becomes unreliable after a damp winter. A switch that states no least current is taken to need 10 mA, one with gold contacts 1 mA. Boards and small relays want gold.',
  wrong: 'least: 100 mA 5 V DC',
  right: 'least: 1 mA 5 V DC',
  basis: 'least current as printed on the switch; 10 mA for a switch that states none is common practice',
  followsFrom: [],
};

export const switchUnderloaded: Check = { entry, find };

/** A below which a switch of unknown metal, taken as silver, grows unreliable. */
const SILVER_LEAST = 0.01;

function find(study: Study): Finding[] {
  const { verified: v } = study;
  if (!v) return [];
  const loops = switchCurrents(study)
    .filter((s) => s.rating !== undefined && overRating(s) === undefined)
    .flatMap((s) => underloaded(study, s, aloneAmps(v, s) ?? s.held));
  return [...loops, ...triggered(study).flatMap((t) => onTrigger(study, t))];
}

/** Switches in the loop of a dry trigger, which carry what little the timer sends through them. */
function onTrigger(study: Study, t: Triggered): Finding[] {
  const { plan } = study;
  const { low, high } = defaults.triggerAmps;
  const stated = t.part.triggerCurrent;
  return switchesOf(study, t).flatMap((name) => {
    const part = plan.parts.get(name);
    if (!part || !('contact' in part)) return [];
    const needs = leastAmps(part.contact);
    if ((stated ?? low) >= needs - 1e-12) return [];
    const sure = stated !== undefined || high < needs - 1e-12;
    const sent = stated === undefined ? `${ampsText(low)} to ${ampsText(high)}` : ampsText(stated);
    return [
      found(plan, entry, {
        ...(sure ? {} : { severity: 'doubt' as const }),
        parts: [name, t.part.name],
        message: sure
          ? `only ${sent} flows through ${name} to the trigger of ${t.part.name}; it needs ${ampsText(needs)} to keep its contacts clean`
          : `whether ${name} stays clean at the trigger of ${t.part.name} cannot be told: trigger-current is not stated`,
        why: `The timer itself sends what flows there${stated === undefined ? `: ${sent} by make` : ''}. ${part.contact.least ? 'Contacts that switch too little grow a film and become unreliable.' : 'Its metal is not stated and taken as silver; silver that switches too little grows a film.'}`,
        fix: sure
          ? `${name} has to be one that stays clean on ${sent}: gold contacts, ${ampsText(defaults.goldLeastAmps.value)} or less.`
          : `State trigger-current: of ${t.part.name}; ${ampsText(needs)} or more settles it.`,
        figures: [ampsFigure('current', stated ?? low), ampsFigure('least', needs)],
        basis:
          'least current as printed on the switch; currents of dry triggers from timer data (memory, one data sheet read)',
        twin: {
          alike: `${t.part.name} ${sure}`,
          badness: needs,
          several: (names) =>
            sure ? { fix: `${listOf(names)} have to be such as stay clean on ${sent}: gold contacts.` } : {},
        },
      }),
    ];
  });
}

/** A below which contacts grow a film, as printed or by their metal. */
const leastAmps = ({ least, metal }: Contact): number =>
  least?.amps ?? (metal === 'gold' ? defaults.goldLeastAmps.value : SILVER_LEAST);

/** Too little current (A) or voltage (V) to keep the contacts clean; a switch that says nothing is taken as silver. */
function underloaded({ plan }: Study, { part, kind, volts }: SwitchCurrents, held: number): Finding[] {
  const { least, metal } = part.contact;
  const needs = leastAmps(part.contact);
  const low = least !== undefined && volts < least.volts - 1e-9;
  if (held <= 0 || (held >= needs - 1e-12 && !low)) return [];
  const flows = held < needs - 1e-12;
  return [
    found(plan, entry, {
      parts: [part.name],
      message: flows
        ? `only ${ampsText(held)} flows through ${part.name}; it needs ${ampsText(needs)} to keep its contacts clean`
        : `${part.name} switches ${rounded(volts)} V; it needs ${rounded(least!.volts)} V to keep its contacts clean`,
      why: least
        ? `Silver contacts that switch too little grow a film and become unreliable.${least.kind === kind ? '' : ` Its figure is stated for ${least.kind.toUpperCase()}.`}`
        : `Its metal is not stated${metal === 'gold' ? '' : ' and taken as silver'}; silver that switches too little grows a film.`,
      fix: `${part.name} has to be one that stays clean on ${flows ? ampsText(held) : `${rounded(volts)} V`}.`,
      figures: flows
        ? [ampsFigure('current', held), ampsFigure('least', needs)]
        : [
            { name: 'volts', value: rounded(volts), unit: 'V' },
            { name: 'least', value: rounded(least!.volts), unit: 'V' },
          ],
      basis: least
        ? 'least current and voltage as printed on the switch'
        : 'common practice; silver power switches ask for 100 mA at 5 to 12 V (maker’s data)',
      twin: { badness: flows ? needs / held : least!.volts / volts },
    }),
  ];
}
