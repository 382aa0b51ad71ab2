/** Chance that comes out the same every time, with the ways of choosing that the fuzzer needs. */
import { dice } from '../../oracles/corpus/corpus.ts';

export class Dice {
  readonly #roll: () => number;

  /** One row of throws for each pair of a seed and a number. */
  constructor(seed: number, index: number) {
    this.#roll = dice(Math.imul(seed + 1, 0x9e3779b1) ^ Math.imul(index + 1, 0x85ebca6b));
    // Neighbouring states of the generator look alike at first.
    for (let i = 0; i < 8; i++) this.#roll();
  }

  /** 0 .. below - 1 */
  below(below: number): number {
    return Math.floor(this.#roll() * below);
  }

  chance(share: number): boolean {
    return this.#roll() < share;
  }

  of<T>(list: readonly T[]): T {
    return list[this.below(list.length)]!;
  }

  /** Mostly small, seldom up to `most`. */
  few(most: number): number {
    return Math.floor(most ** this.#roll());
  }

  some<T>(list: readonly T[], share: number): T[] {
    return list.filter(() => this.chance(share));
  }
}
