/** The cells of the sheet, by band and column: which are taken, by a symbol or by a conductor that runs through. */

export class Cells {
  readonly #taken = new Map<number, string>();

  constructor(private readonly columns: number) {}

  #key(band: number, column: number): number {
    return band * (this.columns + 2) + column;
  }

  /** Whether all cells of a band from one column to another are free, or taken by `owner` itself. */
  free(band: number, from: number, to: number, owner = ''): boolean {
    for (let column = from; column <= to; column++) {
      const by = this.#taken.get(this.#key(band, column));
      if (by !== undefined && by !== owner) return false;
    }
    return true;
  }

  take(band: number, from: number, to: number, owner: string): void {
    for (let column = from; column <= to; column++) this.#taken.set(this.#key(band, column), owner);
  }
}
