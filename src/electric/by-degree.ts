/** Nodes by the number of their neighbours, fewest first. An entry may be stale; its degree is read again. */
export class ByDegree {
  private readonly buckets: number[][] = [];
  private readonly taken: Uint8Array;
  private least = 0;

  constructor(private readonly rows: readonly { readonly size: number }[]) {
    this.taken = new Uint8Array(rows.length);
    for (let node = rows.length - 1; node >= 0; node--) this.changed(node);
  }

  /** To be called whenever a node has gained or lost neighbours. */
  changed(node: number): void {
    const degree = this.rows[node]!.size;
    while (this.buckets.length <= degree) this.buckets.push([]);
    this.buckets[degree]!.push(node);
    if (degree < this.least) this.least = degree;
  }

  /** The node with the fewest neighbours, once each; not to be called when none is left. */
  next(): number {
    for (;;) {
      const node = this.buckets[this.least]!.pop();
      if (node === undefined) this.least++;
      else if (this.taken[node] === 0 && this.rows[node]!.size === this.least) {
        this.taken[node] = 1;
        return node;
      }
    }
  }
}
