/** The line of coils and loads that stays in view, each with its state. */
import type { StateView } from '../../machine/state-view.ts';
import { voltsText } from '../coil-words.ts';
import { byData } from './find.ts';

interface State {
  readonly on: boolean;
  readonly word: string;
  readonly wrong: boolean;
}

export class Chips {
  private readonly chips = byData('chip');

  /** `find` is called with the part whose chip was pressed. */
  constructor(find: (part: string) => void) {
    for (const [part, chips] of this.chips)
      for (const chip of chips) chip.addEventListener('click', () => find(part));
  }

  show(view: StateView): void {
    const states = statesOf(view);
    for (const [part, chips] of this.chips) {
      const state = states.get(part);
      for (const chip of state === undefined ? [] : chips) {
        const word = chip.querySelector('.word');
        if (word !== null) word.textContent = `${state!.wrong ? '! ' : ''}${state!.word}`;
        chip.classList.toggle('on', state!.on);
        chip.classList.toggle('wrong', state!.wrong);
      }
    }
  }
}

function statesOf({ relays, loads }: StateView): Map<string, State> {
  const wrong = new Set(loads.filter((l) => l.wanted !== null && l.wanted !== l.runs).map((l) => l.part));
  const states = new Map<string, State>();
  for (const { part, runs } of loads)
    states.set(part, { on: runs, word: runs ? 'runs' : 'stands', wrong: wrong.has(part) });
  for (const { part, in: isIn, volts } of relays) {
    const word = `${isIn ? 'in' : 'out'}${volts === null ? '' : `, ${voltsText(volts)}`}`;
    states.set(part, { on: isIn, word, wrong: wrong.has(part) });
  }
  return states;
}
