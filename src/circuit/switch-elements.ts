/** Gates, switches, buttons, cut-outs and selectors as inputs with their contacts. */

import type { ButtonPart, CutoutPart, GatePart, SelectorPart, SwitchPart } from '../plan/part-types.ts';
import type { CircuitDraft } from './circuit-draft.ts';

/** `makes`: the working position closes COM-NO. Returns the number of the input. */
function addThrow(
  part: GatePart | SwitchPart | ButtonPart | CutoutPart,
  draft: CircuitDraft,
  makes: boolean,
): number {
  const input = draft.input(part, part.kind);
  if ('throws' in part && part.throws !== undefined) {
    for (const { common, make, break: rest, index } of part.throws) {
      if (make !== undefined) draft.contact(part, [common, make], { by: 'input', input, value: true }, index);
      if (rest !== undefined)
        draft.contact(part, [common, rest], { by: 'input', input, value: false }, index);
    }
    return input;
  }
  draft.contact(part, ['COM', 'NO'], { by: 'input', input, value: makes });
  draft.contact(part, ['COM', 'NC'], { by: 'input', input, value: !makes });
  return input;
}

/** A gate whose shut slide presses the lever is the reverse of one whose open slide does. */
export function addGate(part: GatePart, draft: CircuitDraft): void {
  addThrow(part, draft, part.pressedWhen === 'open');
}

export function addHandSwitch(part: SwitchPart | ButtonPart, draft: CircuitDraft): void {
  addThrow(part, draft, true);
}

/** What a plan may call the terminals of an overload relay's break contact that it also names by number. */
const BREAK_TABS = [
  ['95', 'COM'],
  ['96', 'NC'],
] as const;

/** Auxiliary contacts of an overload relay (EN 50012); a cut-out has them where a run uses one. */
export function addCutout(part: CutoutPart, draft: CircuitDraft): void {
  const input = addThrow(part, draft, true);
  if (!['95', '96', '97', '98'].some((terminal) => draft.used(part, terminal))) return;
  draft.contact(part, ['95', '96'], { by: 'input', input, value: false });
  draft.contact(part, ['97', '98'], { by: 'input', input, value: true });
  // Its break contact by the names of a switch is the same contact.
  for (const [mark, tab] of BREAK_TABS)
    if (draft.used(part, tab)) draft.contact(part, [mark, tab], { by: 'always' });
}

export function addSelector(part: SelectorPart, draft: CircuitDraft): void {
  const others = part.positions.filter((position) => position !== part.rest);
  const inputs = others.map((position) => draft.input(part, 'selector', position));
  others.forEach((position, i) => {
    if (position !== 'off')
      draft.contact(part, ['COM', position], { by: 'input', input: inputs[i]!, value: true });
  });
  if (part.rest === 'off') return;
  // The resting position is "none of the others": a chain of contacts, one for each of them.
  let from = draft.net(part, 'COM');
  for (const [i, input] of inputs.entries()) {
    const to = i === inputs.length - 1 ? draft.net(part, part.rest) : draft.wired.fresh();
    draft.contacts.push({
      a: from,
      b: to,
      when: { by: 'input', input, value: false },
      part: part.name,
      terminals: ['COM', part.rest],
      pole: 0,
    });
    from = to;
  }
}
