/** A plan made from answers, for people: what was written and what to do next, or why there is none and what comes nearest. */
import { verdictLine } from '../findings/report-sentences.ts';
import type { NewPlan } from '../lists/new/new-plan.ts';
import { type Block, heading, list, paragraph, terms } from './blocks.ts';

const WORD = 9;

/** What was taken where nobody answered, each with its reason. */
function takenBlocks({ taken }: NewPlan): Block[] {
  if (taken.length === 0) return [];
  return [
    paragraph('Taken where nothing was answered:'),
    list(
      'dash',
      taken.map(({ key, text, because }) => `${key}: ${text}, since ${because}`),
      { close: true },
    ),
  ];
}

/** After a plan was made; `name` is undefined where it went to standard output. */
export function writtenPlan(made: NewPlan, name: string | undefined): Block[] {
  const file = name ?? 'PLAN';
  const { report } = made;
  const cautions = report.findings.filter((f) => f.severity === 'caution');
  return [
    heading(1, name === undefined ? verdictLine(report) : `${name}: written. ${verdictLine(report)}`, {
      tone: 'strong',
    }),
    ...(made.usesRelay
      ? []
      : [
          paragraph(
            'The relay you have is left out: it cannot switch this collector by itself, and the timer works what can.',
          ),
        ]),
    ...takenBlocks(made),
    ...(cautions.length === 0
      ? []
      : [
          paragraph('Worth knowing of it:'),
          list(
            'dash',
            cautions.map((f) => `${f.message} [${f.id}]`),
            { close: true },
          ),
        ]),
    paragraph(
      'It is made of ordinary parts: its comments say what to look for. Put in what is printed on those you buy, and check again. Pull every plug before you wire; leave the mains side to someone licensed where the law asks for it.',
    ),
    paragraph('Next:'),
    list('indent', [`pullin check ${file}`, `pullin draw ${file}`, `pullin materials ${file}`], {
      close: true,
    }),
  ];
}

/** The names that a new plan gives its parts, for those who have not seen one. */
const LEGEND =
  'Here Q1 is what switches the collector, K1 a relay between gates and Q1, KT1 the timer, PS1 or T1 the low-voltage supply, P1 the plug or the circuit, OL1 an overload relay.';

/**
 * `supply: 12 V DC in place of 12 V DC 30 mA, which comes to 12 V DC, 0.5 A, regulated. What differs: 0.5 A in place of 30 mA.
 * Left as it was: PS1 gives 30 mA; Q1 can draw 142 mA [supply-overloaded]`
 */
function changeWords({
  key,
  from,
  to,
  found,
  differs,
  since,
}: NonNullable<NewPlan['nearest']>[number]): string {
  const only = to.startsWith(from) && to !== from ? ', if that is printed on it' : '';
  const comes = found === undefined ? '' : `, which comes to ${found}`;
  const other = differs === undefined ? '' : ` What differs: ${differs.join('; ')}.`;
  return `${key}: ${to} in place of ${from}${only}${comes}.${other} Left as it was: ${since.message} [${since.id}].`;
}

/** Where the answers cannot pass: which check fails by what figure, and the nearest answers with which it does not. */
export function impossiblePlan(made: NewPlan): Block[] {
  const { against, nearest } = made;
  return [
    heading(1, 'No plan was written: with these answers none passes the check.', { tone: 'danger' }),
    terms(
      WORD,
      against.map((f) => ({
        term: f.severity.toUpperCase(),
        text: `${f.message} [${f.id}]`,
        tone: f.severity,
      })),
    ),
    paragraph(LEGEND),
    ...(nearest === null
      ? [paragraph('No other answer that was tried passes either.')]
      : [
          paragraph('Nearest that passes, tried in whole; every other answer stays as it is:'),
          list('dash', nearest.map(changeWords), { close: true }),
        ]),
    paragraph('"pullin explain NAME" tells more of any name in brackets.'),
  ];
}
