/** A hunt as it stands: who is suspected, what to look at next, or what to do. */
import type { HuntSuspect, HuntTold } from '../meter/hunt/hunt-model.ts';
import { type Block, heading, list, paragraph } from './blocks.ts';
import { STOP } from './meter-words.ts';
import { toldBlocks } from './told.ts';

/** Suspects that the document names. */
const NAMED = 8;
/** Suspects under which those are named as well that something speaks against. */
const FEW = 4;

const CARE =
  'No probe goes on live mains: mains is looked at unplugged, or by a lamp or a plug-in tester in an outlet. Local codes and licensed practice come first.';

/** The whole of it, for one call; `pullin hunt` in a terminal prints its parts one after the other. */
export function huntDocument(hunt: HuntTold): Block[] {
  return [
    heading(1, `Fault hunt: ${hunt.title}`),
    ...toldBlocks(hunt.check, 'The hunt takes the plan as it stands for what was built.'),
    ...careBlocks(),
    ...answersBlocks(hunt),
    ...standBlocks(hunt),
  ];
}

/** What no probe goes on, and when to leave off. */
export function careBlocks(): Block[] {
  return [
    paragraph(CARE),
    paragraph('Stop, unplug, and call an electrician when', { close: true }),
    list('dash', STOP),
  ];
}

function answersBlocks({ answers }: HuntTold): Block[] {
  if (answers.length === 0) return [];
  return [
    heading(2, 'Seen so far'),
    list(
      'number',
      answers.map((text, i) => ({ text, number: i + 1 })),
    ),
  ];
}

/** Suspects, and what comes next. */
export function standBlocks(hunt: HuntTold): Block[] {
  return [
    ...(hunt.danger === null ? [] : [paragraph(hunt.danger)]),
    ...doubtBlocks(hunt),
    ...suspectBlocks(hunt),
    ...(hunt.next === null
      ? []
      : [
          heading(2, 'Look at this next'),
          paragraph(hunt.next.question),
          paragraph(`To answer in plain form: ${hunt.next.line}`),
        ]),
    ...endBlocks(hunt),
  ];
}

function doubtBlocks({ fits, doubtful, answers }: HuntTold): Block[] {
  if (fits === 'nothing wrong')
    return [
      paragraph(
        'All of it is what the circuit of the plan does. What is suspected below shows in nothing that was looked at.',
      ),
    ];
  if (fits === 'two faults') return [paragraph('No single fault agrees with all of it. Two at once do.')];
  if (fits !== 'none') return [];
  const which =
    doubtful === null
      ? ''
      : ` The answer that most speaks against is ${doubtful}: "${answers[doubtful - 1]}". Look again.`;
  return [paragraph(`Neither one fault nor two at once agree with all of it.${which}`)];
}

function suspectBlocks({ suspects, agreeing, answers }: HuntTold): Block[] {
  if (answers.length === 0) return [];
  // Those that agree with everything; where they are few, the next beside them.
  const agree = suspects.filter((r) => r.against.length === 0).slice(0, NAMED);
  const others = suspects.filter((r) => r.against.length > 0).slice(0, Math.max(0, FEW - agree.length));
  const shown = [...agree, ...others];
  const more = agreeing - agree.length;
  return [
    heading(2, 'Suspected, the likeliest first'),
    list('dash', [
      ...shown.map(suspectText),
      ...(more > 0 ? [`and ${more} more that agree with all of it`] : []),
    ]),
  ];
}

function suspectText({ faults, against }: HuntSuspect): string {
  const what = faults.map((f) => f.text).join(', and ');
  if (against.length === 0) return what;
  return `${what} (against it: ${against.length === 1 ? 'answer' : 'answers'} ${against.join(', ')})`;
}

function endBlocks({ end, mended }: HuntTold): Block[] {
  if (mended !== null)
    return [
      heading(2, 'Mended'),
      paragraph(`What put it right: ${mended}. Another fault is another hunt, with a log of its own.`),
      ...(end === null ? [] : [paragraph(`For the notes kept with the plan: ${end.log}.`)]),
    ];
  if (end === null) return [];
  return [
    heading(2, 'What to do'),
    paragraph("Pull every plug and take the loop's supply off before anything is touched.", { close: true }),
    list(
      'number',
      end.cure.map((text, i) => ({ text, number: i + 1 })),
    ),
    ...(end.proof.length === 0
      ? []
      : [
          paragraph('Once that is put right it ought to do this, which it did not:', {
            close: true,
          }),
          list('dash', end.proof),
        ]),
    paragraph(`For the notes kept with the plan: ${end.log}.`),
  ];
}
