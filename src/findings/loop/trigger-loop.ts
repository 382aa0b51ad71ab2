import { sayMoved } from '../../circuit/input-words.ts';
import { defaults } from '../../ratings/defaults.ts';
import type { Study } from '../../study/study.ts';
import { type TriggerLoop, triggerLoops } from '../../study/timers/triggers.ts';
import { rounded } from '../../text/numbers.ts';
import type { Check, FindingEntry } from '../entry.ts';
import { found } from '../finding.ts';
import type { Finding } from '../report-model.ts';

const entry: FindingEntry = {
  id: 'trigger-loop',
  title: 'the loop of a dry trigger has too many ohms',
  severity: 'fault',
  question: 5,
  base: 'timer',
  meaning:
    'A timer takes its dry trigger as closed up to so many ohms of wire and contacts; above them it may not see that a gate is open. Where the plan does not state the figure, up to 200 ohm suit all and above 1000 ohm none. Use thicker wire, or put a small relay beside the timer.',
  wrong: 'trigger-resistance: 0.4 ohm',
  right: 'trigger-resistance: 220 ohm',
  basis:
    'trigger data of timers: closed below 200 ohm to 1 kohm of loop (one maker read, the rest from memory)',
  followsFrom: [],
};

export const triggerLoop: Check = { entry, find };

function find(study: Study): Finding[] {
  const { low, high } = defaults.triggerOhms;
  return triggerLoops(study).flatMap((loop) => {
    const stated = loop.part.triggerResistance;
    if (loop.ohms > (stated ?? high)) return [tooHigh(study, loop, stated ?? high)];
    return stated === undefined && loop.ohms > low ? [unsaid(study, loop)] : [];
  });
}

const figuresOf = ({ ohms }: TriggerLoop, limit: number) => [
  { name: 'loop', value: rounded(ohms), unit: 'ohm' },
  { name: 'counts as closed up to', value: rounded(limit), unit: 'ohm' },
];

function whyOf({ circuit }: Study, { metres, moved }: TriggerLoop): string {
  return `It has ${rounded(metres)} m of conductor there and back, with ${sayMoved(circuit, moved)}.`;
}

function tooHigh(study: Study, loop: TriggerLoop, limit: number): Finding {
  const { part, ohms } = loop;
  return found(study.plan, entry, {
    parts: [part.name],
    at: part.where.get('trigger-resistance') ?? part.at,
    message: `the trigger loop of ${part.name} has ${rounded(ohms)} ohm and counts as closed up to ${rounded(limit)} ohm`,
    why: whyOf(study, loop),
    fix: `Use thicker wire between ${part.name} and the gates, or put a small relay beside it.`,
    figures: figuresOf(loop, limit),
    basis: entry.basis,
  });
}

function unsaid(study: Study, loop: TriggerLoop): Finding {
  const { part, ohms } = loop;
  const { low, high } = defaults.triggerOhms;
  return found(study.plan, entry, {
    severity: 'doubt',
    parts: [part.name],
    message: `whether ${part.name} sees its trigger close through ${rounded(ohms)} ohm cannot be told: trigger-resistance is not stated`,
    why: `${whyOf(study, loop)} Timers count ${low} to ${high} ohm as closed at most.`,
    fix: `State trigger-resistance: of ${part.name}; ${rounded(ohms)} ohm or more settles it.`,
    figures: figuresOf(loop, low),
    basis: entry.basis,
  });
}
