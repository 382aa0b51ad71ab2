/** The group of one way of a contact, in the state it has or in both. */
import type { DrawnTerminal } from '../drawing.ts';
import { group } from '../strokes.ts';
import { type Frame, nameOf } from './frame.ts';

/** What of a way is drawn always, and in each state. */
export interface States {
  readonly fixed: string;
  readonly made: string;
  readonly open: string;
}

/** Whether the contact between two terminals is made. */
function isMade(frame: Frame, common: DrawnTerminal, other: DrawnTerminal): boolean {
  return frame.options.made(nameOf(frame, common), nameOf(frame, other));
}

/** `<g class="way" data-way="PART.COM PART.NO">` with `made`, `open` or both in it. */
export function wayGroup(frame: Frame, common: DrawnTerminal, other: DrawnTerminal, states: States): string {
  const made = isMade(frame, common, other);
  const both = frame.options.both === true;
  return group(
    'way',
    { way: `${common.key} ${other.key}` },
    states.fixed,
    both || made ? group('made', {}, states.made) : '',
    both || !made ? group('open', {}, states.open) : '',
  );
}

/**
 * The arm of a contact with several ways while it rests on none. Drawn where no way is made; with `both` it is there
 * always, in `<g class="neither">` that has `display="none"` while a way is made.
 */
export function restingArm(
  frame: Frame,
  common: DrawnTerminal,
  others: readonly DrawnTerminal[],
  ink: string,
): string {
  const some = others.some((other) => isMade(frame, common, other));
  if (!some) return group('neither', {}, ink);
  return frame.options.both === true ? `<g class="neither" display="none">${ink}</g>` : '';
}
