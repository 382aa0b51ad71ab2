/** The exact method would not end within its budget: the question is left open, and nothing is guessed. */
export class Undecided extends Error {
  override readonly name = 'Undecided';
}
