/** The buttons of the page. */
import { byData, byId } from './find.ts';

export interface Moves {
  toggle(input: number): void;
  release(part: string): void;
  toRest(): void;
  repower(): void;
}

export class Buttons {
  private readonly inputs = byData('input');
  private readonly rests = byData('rest');

  constructor(moves: Moves) {
    for (const [input, buttons] of this.inputs)
      for (const b of buttons) b.addEventListener('click', () => moves.toggle(Number(input)));
    for (const [part, buttons] of this.rests)
      for (const b of buttons) b.addEventListener('click', () => moves.release(part));
    byId('to-rest').addEventListener('click', () => moves.toRest());
    byId('repower').addEventListener('click', () => moves.repower());
  }

  /** `turned` are the selectors away from rest. */
  show(moved: readonly number[], turned: ReadonlySet<string>): void {
    for (const [input, buttons] of this.inputs)
      for (const b of buttons) press(b, moved.includes(Number(input)));
    for (const [part, buttons] of this.rests) for (const b of buttons) press(b, !turned.has(part));
  }

  /** What stands on the button of an input: the words of its two positions. */
  words(input: number): { readonly on: string; readonly off: string } {
    const b = this.inputs.get(String(input))?.[0];
    return { on: b?.dataset.on ?? '', off: b?.dataset.off ?? '' };
  }
}

function press(button: HTMLElement, pressed: boolean): void {
  button.setAttribute('aria-pressed', String(pressed));
  const word = button.querySelector('.word');
  if (word !== null) word.textContent = (pressed ? button.dataset.on : button.dataset.off) ?? '';
}
